"""Seed: the binomial law, seed that ages, packets and trays, and a shopping list by month."""

from dataclasses import replace
from datetime import date, timedelta
from fractions import Fraction
from math import comb

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binom

from planner.almanac import seed_life
from planner.bedwork import NoTrays, Seed, Trays, seed_of
from planner.garden import Garden, SeedKind
from planner.scheduling import Method, SowingState, comes_up_in, is_usable, seeds_to_sow
from planner.season import Season, make_season
from planner.terms import Figure, Source
from planner.writing import seed_record, seed_text
from tests.plan_text import garden_of, problem_kinds_of


@pytest.mark.parametrize(
    ("comes_up", "kept", "on_average", "at_nine_in_ten", "at_nineteen_in_twenty"),
    # Worked out from the binomial law beside the extension figures of propagation.
    [(0.80, 0.90, 17, 20, 21), (0.90, 0.95, 15, 16, 17), (0.60, 0.90, 23, 28, 30)],
)
def test_twelve_plants_need_the_seeds_of_the_binomial_table(
    comes_up: float, kept: float, on_average: int, at_nine_in_ten: int, at_nineteen_in_twenty: int
) -> None:
    share = comes_up * kept
    assert -(-12 // share) == on_average
    assert seeds_to_sow(12, share, 0.9) == at_nine_in_ten
    assert seeds_to_sow(12, share, 0.95) == at_nineteen_in_twenty


@given(
    plants=st.integers(1, 400),
    share=st.floats(0.05, 0.99),
    confidence=st.floats(0.5, 0.999),
)
def test_seeds_are_the_fewest_that_a_reference_library_finds_enough(
    plants: int, share: float, confidence: float
) -> None:
    seeds = seeds_to_sow(plants, share, confidence)
    assert binom.sf(plants - 1, seeds, share) >= confidence - 1e-9
    if seeds > plants:
        assert binom.sf(plants - 1, seeds - 1, share) < confidence + 1e-9


def test_a_small_count_is_exact() -> None:
    share = Fraction(18, 25)
    chances = [comb(20, n) * share**n * (1 - share) ** (20 - n) for n in range(12, 21)]
    assert sum(chances) >= Fraction(9, 10)
    fewer = [comb(19, n) * share**n * (1 - share) ** (19 - n) for n in range(12, 20)]
    assert sum(fewer) < Fraction(9, 10)
    assert seeds_to_sow(12, float(share), 0.9) == 20
    # With the plain mean of 17 seeds one sowing in three has fewer than 12 plants.
    assert 0.6 < binom.sf(11, 17, 0.72) < 0.7


def test_very_many_plants_are_counted_too() -> None:
    assert seeds_to_sow(5000, 0.72, 0.9) == pytest.approx(5000 / 0.72, rel=0.02)
    assert seeds_to_sow(7, 1.0, 0.9) == 7
    assert seeds_to_sow(0, 0.72, 0.9) == 0


# Age


def _kind(packed_in: int, life: float = 4.0, in_box: int = 100) -> SeedKind:
    source = Source("memory")
    return SeedKind(
        Figure(0.8, 0.8, "", source), Figure(life, life, "years", source), 0, packed_in, in_box
    )


@pytest.mark.parametrize(("packed_in", "expected"), [(0, 0.8), (2027, 0.8), (2025, 0.6)])
def test_old_seed_comes_up_less(packed_in: int, expected: float) -> None:
    # From memory: falling evenly to half at the end of the published seed life.
    assert comes_up_in(_kind(packed_in), 2027) == pytest.approx(expected)


def test_seed_at_the_end_of_its_life_comes_up_as_badly_as_a_test_tells_to_replace_it() -> None:
    # TRADE-S27: of ten seeds, 40 to 50 in 100 sow thicker or replace, below 40 replace.
    assert comes_up_in(_kind(2023), 2027) == pytest.approx(0.4)
    assert is_usable(_kind(2023), 2027)
    assert not is_usable(_kind(2022), 2027)


def test_seed_lives_as_long_as_is_published() -> None:
    # ISU_SEED1999 and TRADE-S27 as the almanac has them; they disagree on lettuce and spinach.
    assert (seed_life("radish").low, seed_life("radish").high) == (5, 5)
    assert (seed_life("leaf lettuce").low, seed_life("leaf lettuce").high) == (5, 6)
    assert (seed_life("spinach").low, seed_life("spinach").high) == (3, 5)
    assert seed_life("parsnip").middle == 1


# A plan

_PLAN = """\
plan = 1

[site]
latitude = 47.6
last_spring_freeze = "03-28"
first_fall_freeze = "11-09"

[season]
from = 2027-02-01
to = 2027-12-31

[[bed]]
name = "North 1"
length = "8 ft"
width = "4 ft"
soil_depth = "15 in"
sun = "full"

[[target]]
crop = "radish"
each_week = "10 roots"
from = 2027-05-03
to = 2027-06-06

[[target]]
crop = "broccoli"
once = "6 heads"
by = 2027-07-15

[[target]]
crop = "bulb onion"
once = "20 each"
by = 2027-08-15

{seed}
"""


def _plan(seed: str = "") -> str:
    return _PLAN.format(seed=seed)


def _season(seed: str = "") -> Season:
    garden = garden_of(_plan(seed))
    return make_season(garden, garden.wish.first, None, effort=0)


def _seed(written: str = "") -> Seed:
    season = _season(written)
    return seed_of(season.garden, season.sowings, season.as_of)


def _packet(*lines: str) -> str:
    return "\n".join(["[[packet]]", 'crop = "radish"', *lines])


def test_each_sowing_has_seeds_enough_by_the_law() -> None:
    for sowing in _season().sowings:
        sure = binom.sf(sowing.plants - 1, sowing.seeds, 0.72)
        assert sowing.seeds == sowing.plants if sowing.crop.name == "bulb onion" else sure >= 0.9


def test_surer_and_worse_seed_means_more_seeds_and_moves_no_sowing() -> None:
    plain = _season()
    surer = _season("[seed]\nconfidence = 0.99")
    worse = _season(_packet("germination = 0.5"))
    for other in (surer, worse):
        assert [(one.crop.name, one.sow_on, one.plants) for one in other.sowings] == [
            (one.crop.name, one.sow_on, one.plants) for one in plain.sowings
        ]
        assert other.basis == plain.basis
    radishes = [
        sum(one.seeds for one in season.sowings if one.crop.name == "radish")
        for season in (plain, surer, worse)
    ]
    assert radishes[0] < radishes[1] < radishes[2]


def test_packets_are_whole_and_what_is_in_the_box_is_used_first() -> None:
    seed = _seed(_packet("seeds = 50", "packed = 2026", "left = 30"))
    (radish,) = (one for one in seed.needs if one.crop.name == "radish")
    assert radish.in_box == 30
    assert radish.to_buy == radish.seeds - 30
    assert radish.packets == -(-radish.to_buy // 50)
    # One year of five: a tenth less comes up.
    assert radish.comes_up == pytest.approx(0.72)


def test_seed_beyond_its_life_is_not_counted_with() -> None:
    seed = _seed(_packet("seeds = 500", "packed = 2020", "left = 400"))
    (radish,) = (one for one in seed.needs if one.crop.name == "radish")
    assert (radish.in_box, radish.too_old) == (0, 400)
    assert radish.comes_up == pytest.approx(0.8)
    assert "too old" in seed_text(seed, 80)


def test_seed_is_ordered_its_lead_time_before_first_use() -> None:
    seed = _seed("[seed]\nlead_weeks = 6")
    for one in seed.needs:
        assert one.order_by == one.first_on - timedelta(weeks=6)
    assert [one.order_by for one in seed.needs] == sorted(one.order_by for one in seed.needs)


def test_the_day_of_ordering_is_that_of_the_sowing_the_box_no_longer_fills() -> None:
    season = _season()
    radishes = sorted(one.sow_on for one in season.sowings if one.crop.name == "radish")
    assert len(radishes) > 1
    first = next(one for one in season.sowings if one.sow_on == radishes[0])
    seed = _seed(_packet("packed = 2027", f"left = {first.seeds}"))
    (radish,) = (one for one in seed.needs if one.crop.name == "radish")
    assert radish.first_on == radishes[1]


def test_trays_hold_the_most_cells_of_any_day() -> None:
    season = _season("[seed]\ntray_cells = 6")
    trays = seed_of(season.garden, season.sowings, season.as_of).trays
    assert isinstance(trays, Trays)
    in_trays = [
        one.seeds
        for one in season.sowings
        if one.method is Method.INDOORS
        and one.set_out_on
        and one.sow_on <= trays.on < one.set_out_on
    ]
    assert trays.cells == sum(in_trays)
    assert trays.trays == -(-trays.cells // 6)


def test_what_has_begun_needs_no_seed_any_more() -> None:
    season = _season()
    *begun, last = season.sowings
    standing = [replace(one, state=SowingState.BEGUN) for one in begun]
    (left,) = seed_of(season.garden, [*standing, last], season.as_of).needs
    assert (left.crop, left.seeds) == (last.crop, last.seeds)
    all_begun = [replace(one, state=SowingState.BEGUN) for one in season.sowings]
    nothing = seed_of(season.garden, all_begun, date(2027, 6, 1))
    assert nothing.needs == ()
    assert isinstance(nothing.trays, NoTrays)
    assert seed_text(nothing, 80) == "Nothing is still to be sown."


def test_the_shopping_list_names_each_crop_under_its_month() -> None:
    seed = _seed()
    text = seed_text(seed, 80)
    assert all(one.crop.name in text for one in seed.needs)
    assert "20 sets" in text
    assert max(map(len, text.splitlines())) <= 80
    record = seed_record(seed)
    assert [one["crop"] for one in record["crops"]] == [one.crop.name for one in seed.needs]


@pytest.mark.parametrize(
    ("written", "kind"),
    [
        ("[seed]\nconfidence = 1", "out-of-range"),
        ("[seed]\nkept = 0", "out-of-range"),
        ("[seed]\ntray_cells = 0", "out-of-range"),
        ("[seed]\nlead_weeks = 99", "out-of-range"),
        ("[seed]\nlead = 4", "unknown-key"),
        (_packet("germination = 85"), "out-of-range"),
        (_packet("seeds = 0"), "out-of-range"),
        (_packet('seeds = "300"'), "wrong-type"),
        (_packet("left = 20"), "missing-key"),
        (_packet("packed = 25"), "out-of-range"),
        (_packet("pack = 2025"), "unknown-key"),
        ('[[packet]]\ncrop = "raddish"', "unknown-crop"),
        ("[[packet]]\nseeds = 300", "missing-key"),
        ('[packet]\ncrop = "radish"', "wrong-type"),
        ('[[packet]]\ncrop = "radish"\n[[packet]]\ncrop = "radishes"', "name-taken"),
    ],
)
def test_what_cannot_be_of_seed_is_one_problem(written: str, kind: str) -> None:
    assert problem_kinds_of(_plan(written)) == [kind]


def test_a_packet_may_be_told_by_another_name_of_its_crop() -> None:
    garden = garden_of(_plan('[[packet]]\ncrop = "Radishes"\nseeds = 300'))
    assert isinstance(garden, Garden)
    assert garden.seed.kinds["radish"].packet == 300
