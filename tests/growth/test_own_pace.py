"""The garden's own pace: learned slowly, never run away with, and counted in every date."""

import math
import random
from dataclasses import replace
from datetime import date
from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.climate import Climate
from planner.garden import Garden
from planner.growth import CropPace, Observation, OwnPace, Pace, Paces, at_own_pace, own_paces
from planner.reading import PlanFile, PlanFiles, read_garden
from tests.plans import GARDEN, garden_toml

DAYS = st.floats(0.5, 500)


def seen(*real_days: float, predicted: float = 50) -> OwnPace:
    """The own pace of radish after first harvests that were all predicted after 50 days."""
    return own_paces(Observation("radish", predicted, real) for real in real_days)["radish"]


# What is learned


def test_nothing_seen_tells_nothing() -> None:
    assert own_paces([]) == {}


def test_two_harvests_are_too_few_whatever_they_say() -> None:
    assert seen(65, 65) == OwnPace(1.0, 2, "")


def test_three_harvests_a_tenth_late_count_as_much_as_worked_out_by_hand() -> None:
    # Prior variance 0.0100, of a harvest 0.0144; the mean log-ratio of three is ln 1.1 = 0.09531.
    # Weight 3 / (3 + 1.44) = 0.67568; 0.67568 x 0.09531 = 0.06440; exp of it = 1.06652.
    own = seen(55, 55, 55)
    assert own.factor == pytest.approx(1.06652, abs=5e-6)
    assert own.words == "this garden's own pace, 7% slower (3 harvests)"


def test_four_harvests_that_differ_count_by_their_mean() -> None:
    # ln 1.1, ln 1.2, ln 1 and ln 0.9: 0.09531 + 0.18232 + 0 - 0.10536 = 0.17227, mean 0.04307.
    # Weight 4 / 5.44 = 0.73529; exp 0.031667 = 1.03217.
    assert seen(55, 60, 50, 45).factor == pytest.approx(1.03217, abs=5e-6)


def test_a_garden_that_is_ahead_is_told_as_faster() -> None:
    own = seen(45, 45, 45, 45)
    assert own.factor < 1
    assert own.words == "this garden's own pace, 7% faster (4 harvests)"


def test_a_garden_as_predicted_is_told_so() -> None:
    assert seen(50, 50, 50) == OwnPace(1.0, 3, "this garden's own pace, as predicted (3 harvests)")


def test_each_crop_has_a_pace_of_its_own() -> None:
    radish = [Observation("radish", 30, 33)] * 3
    beet = [Observation("beet", 60, 54)] * 5
    paces = own_paces([*radish, *beet, Observation("kale", 60, 90)])
    assert list(paces) == ["beet", "kale", "radish"]
    assert paces["radish"].factor > 1 > paces["beet"].factor
    assert (paces["beet"].seen, paces["kale"]) == (5, OwnPace(1.0, 1, ""))


def test_many_harvests_come_to_what_they_agree_on() -> None:
    chance = random.Random(3)  # noqa: S311 - weather, the same in every run
    real = [50 * 1.15 * math.exp(chance.gauss(0, 0.12)) for _ in range(400)]
    assert seen(*real).factor == pytest.approx(1.15, abs=0.02)


def test_the_more_harvests_agree_the_further_they_are_followed() -> None:
    factors = [seen(*[57.5] * count).factor for count in (2, 3, 5, 8, 20, 400)]
    assert factors == sorted(factors)
    assert factors[0] == 1
    assert factors[-1] == pytest.approx(1.15, abs=0.001)


# What cannot run away


@pytest.mark.parametrize("bad", [0, -40, 0.001, 5_000, 1e300, math.inf, math.nan])
@pytest.mark.parametrize("good", [2, 3, 10, 40])
def test_one_bad_entry_moves_little(bad: float, good: int) -> None:
    own = seen(*[50.0] * good, bad)
    # At most 0.3 of a log-ratio, shared among all and drawn toward none.
    count = good + 1
    assert abs(math.log(own.factor)) <= 0.3 / (count + 1.44) + 1e-12
    assert abs(own.factor - 1) < 0.07


@given(st.lists(DAYS, min_size=3, max_size=30))
def test_no_factor_leaves_its_bounds(real: list[float]) -> None:
    assert 0.75 <= seen(*real).factor <= 1.33


@given(st.lists(DAYS, min_size=3, max_size=30), st.integers(0, 29), DAYS)
def test_changing_one_entry_never_changes_much(real: list[float], which: int, now: float) -> None:
    changed = [*real]
    changed[which % len(real)] = now
    before, after = math.log(seen(*real).factor), math.log(seen(*changed).factor)
    assert abs(before - after) <= 0.6 / (len(real) + 1.44) + 1e-12


@given(st.lists(st.tuples(st.sampled_from("ab"), DAYS, DAYS), max_size=12), st.randoms())
def test_the_order_in_which_harvests_are_told_does_not_matter(
    told: list[tuple[str, float, float]], chance: random.Random
) -> None:
    shuffled = [*told]
    chance.shuffle(shuffled)
    assert own_paces(Observation(*one) for one in told) == own_paces(
        Observation(*one) for one in shuffled
    )


@given(st.lists(st.floats(40, 65), min_size=3, max_size=12))
def test_a_later_harvest_never_makes_a_garden_faster(real: list[float]) -> None:
    later = [real[0] * 1.05, *real[1:]]
    assert seen(*later).factor >= seen(*real).factor


@pytest.mark.parametrize("predicted", [0, -3, math.inf, math.nan])
def test_a_prediction_of_no_days_is_our_own_mistake(predicted: float) -> None:
    with pytest.raises(ValueError, match="no harvest of radish is predicted"):
        Observation("radish", predicted, 50)


# How it counts

FIRST, LAST = date(2027, 1, 1), date(2027, 12, 31)
MEANS = (
    "mean_high = [46, 50, 54, 59, 66, 71, 77, 77, 71, 60, 51, 46]\n"
    "mean_low = [37, 37, 39, 43, 48, 53, 57, 57, 53, 46, 40, 37]\n"
).replace("[", '["').replace("]", ' degF"]').replace(", ", ' degF", "')  # fmt: skip
SLOWER = OwnPace(1.1, 4, "this garden's own pace, 10% slower (4 harvests)")


@cache
def radish_pace(*, by_heat: bool) -> CropPace:
    """The pace of radish in the small plan, with monthly means or without."""
    text = garden_toml(("latitude", f"{MEANS}latitude")) if by_heat else GARDEN
    garden = read_garden(PlanFiles(PlanFile("garden.toml", text.encode())))
    assert isinstance(garden, Garden), garden
    return Paces(Climate(garden.site), FIRST, LAST).of(garden.crops["radish"])


@pytest.mark.parametrize("by_heat", [False, True])
def test_a_slower_garden_takes_so_many_times_the_days(*, by_heat: bool) -> None:
    pace = radish_pace(by_heat=by_heat)
    own = at_own_pace(pace, SLOWER)
    start = date(2027, 5, 1)
    assert own.ripe_on(start, 40) == pace.ripe_on(start, 44) > pace.ripe_on(start, 40)
    assert own.day_after(start, 20) == pace.day_after(start, 22)
    assert own.fall_extra_days(start) == pace.fall_extra_days(start)
    assert own.words == f"{pace.words}, and this garden's own pace, 10% slower (4 harvests)"


def test_past_years_go_at_the_gardens_own_pace_too() -> None:
    pace = radish_pace(by_heat=True)
    assert not isinstance(pace, Pace)
    with_past = replace(pace, past=(pace, pace))  # type: ignore[type-var] # a pace by heat
    own = at_own_pace(with_past, SLOWER)
    start = date(2027, 5, 1)
    assert [year.ripe_on(start, 40) for year in own.past] == [pace.ripe_on(start, 44)] * 2
    assert at_own_pace(pace, SLOWER).past == ()


def test_a_pace_of_which_too_little_was_seen_is_left_as_it_is() -> None:
    pace = radish_pace(by_heat=False)
    assert at_own_pace(pace, seen(65, 65)) is pace
