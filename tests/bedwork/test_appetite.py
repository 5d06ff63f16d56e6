"""Appetite: what is published of it, whom targets feed, and targets that would feed a household."""

import tomllib
from datetime import date

import pytest

from planner.almanac import bibliography, crop_pages, kitchen_groups, published_amounts
from planner.almanac.table import table_rows
from planner.bedwork import Feeds, NobodySays, Proposal, appetites_of, proposal_of
from planner.climate import Climate
from planner.garden import AmountBasis, Garden
from planner.reading import PlanFile, read_portions
from planner.season import make_season
from planner.terms import week_of
from planner.writing import appetite_record, appetite_text, proposal_record, proposal_text
from tests.plan_text import garden_of, own_crop

_PLAN = """\
plan = 1

[site]
latitude = 46.9
last_spring_freeze = "05-10"
first_fall_freeze = "10-01"

[season]
from = 2027-03-15
to = 2027-11-30

[[bed]]
name = "Long"
length = "{length}"
width = "4 ft"
soil_depth = "{depth}"
sun = "full"

"""
_TARGETS = """\
[[target]]
crop = "radish"
each_week = "20 roots"
from = 2027-06-07
to = 2027-07-18

[[target]]
crop = "potato"
once = "40 lb"
by = 2027-10-01
"""


def _beds(length: str = "24 ft", depth: str = "18 in") -> str:
    return _PLAN.format(length=length, depth=depth)


def _garden(length: str = "24 ft", depth: str = "18 in", crops: str = "") -> Garden:
    return garden_of(_beds(length, depth) + _TARGETS, crops)


def _proposal(garden: Garden, people: float, crops: str = "") -> Proposal:
    file = PlanFile("crops.toml", crops.encode()) if crops else None
    portions = read_portions(file)
    return proposal_of(garden, Climate(garden.site), portions, people, garden.wish.first)


# What is published


def test_what_a_planting_guide_prints_is_multiplied_out_as_told() -> None:
    # TRADE-S51 (MF-315): 15-16 ft of bush beans a person, 120 lb on 100 ft; 5-10 ft of carrots at
    # 100 lb; 10-15 ft of sweet corn at 10 dozen; 50-100 ft of potatoes at 100 lb.
    expected = {
        "bush bean": (15 * 1.2, 16 * 1.2, "lb"),
        "carrot": (5.0, 10.0, "lb"),
        "sweet corn": (10 * 0.1 * 12, 15 * 0.1 * 12, "each"),
        "potato": (50.0, 100.0, "lb"),
        "radish": (3.0, 5.0, "bunches"),
    }
    for crop, amount in expected.items():
        (one,) = (a for a in published_amounts()[crop] if a.basis is AmountBasis.SEASON)
        assert (one.figure.low, one.figure.high, one.figure.unit) == pytest.approx(amount)


def test_sources_that_disagree_are_kept_side_by_side() -> None:
    # Bush beans: 15-16 ft a person in Kansas (TRADE-S51), 5 ft in Oregon (TRADE-S53).
    plots = {
        one.figure.source.key: one.figure.middle
        for one in published_amounts()["bush bean"]
        if one.basis is AmountBasis.PLOT
    }
    assert plots["TRADE-S51"] == 15.5
    assert plots["TRADE-S53"] == 5


def test_a_portion_is_the_weekly_share_of_a_household_parted_by_its_heads() -> None:
    # TRADE-S56: 2 heads of lettuce, 6 oz of salad mix, 0.75 lb of beans, 2 lb of tomatoes.
    portions = {one.crop.name: one.each_week for one in read_portions(None)}
    for crop in ("head lettuce", "leaf lettuce", "bush bean", "tomato"):
        share = next(a.figure for a in published_amounts()[crop] if a.basis is AmountBasis.SHARE)
        assert portions[crop].unit == share.unit
        assert portions[crop].low == pytest.approx(share.low / 5, rel=0.05)
        assert portions[crop].high == pytest.approx(share.high / 4, rel=0.05)


def test_every_amount_and_group_has_a_source_and_a_crop() -> None:
    for row in (*table_rows("appetite.csv"), *table_rows("kitchen_groups.csv")):
        assert row["source"] in bibliography()
        assert row["crop"] in crop_pages()
    assert set(kitchen_groups()) == set(crop_pages())


# Whom targets feed


def test_a_target_feeds_as_many_as_its_portions_go_into_it() -> None:
    garden = _garden()
    radish, potato = appetites_of(garden, read_portions(None))
    portions = {one.crop.name: one.each_week for one in read_portions(None)}
    assert isinstance(radish.feeds, Feeds)
    assert radish.each_week == 20
    assert radish.weeks == 6
    assert radish.feeds.fewest == pytest.approx(20 / portions["radish"].high)
    assert radish.feeds.most == pytest.approx(20 / portions["radish"].low)
    assert potato.weeks == 1


def test_a_crop_nobody_has_a_portion_of_is_told_so() -> None:
    crops = own_crop("ridge root", days_from_sowing="40 days", **{"yield": "1 roots"})
    targets = _TARGETS.replace('"radish"', '"ridge root"')
    garden = garden_of(_beds() + targets, crops)
    portions = read_portions(PlanFile("crops.toml", crops.encode()))
    (own, _) = appetites_of(garden, portions)
    assert isinstance(own.feeds, NobodySays)
    assert "nobody says what a person eats of it" in appetite_text([own], 80)
    assert appetite_record([own])[0]["feeds"] is None


def test_an_own_portion_rules() -> None:
    crops = '[crop.radish]\nportion = "10 roots"\n'
    portions = read_portions(PlanFile("crops.toml", crops.encode()))
    radish, _ = appetites_of(_garden(crops=crops), portions)
    assert isinstance(radish.feeds, Feeds)
    assert radish.feeds.fewest == radish.feeds.most == pytest.approx(2)


def test_words_fit_the_screen_and_name_sources() -> None:
    text = appetite_text(appetites_of(_garden(), read_portions(None)), 72)
    assert max(map(len, text.splitlines())) <= 72
    assert "TRADE-S51" in text
    assert "which feeds 4 to 7" in text


# Targets for a household


@pytest.fixture(scope="module")
def proposed() -> Proposal:
    """Targets for four people from one bed of 24 x 4 ft."""
    return _proposal(_garden(), 4)


def test_what_is_proposed_can_stand_and_be_scheduled(proposed: Proposal) -> None:
    text = proposal_text(proposed)
    told = tomllib.loads(text)["target"]
    assert [(one["crop"], one["from"], one["to"]) for one in told] == [
        (one.portion.crop.name, one.first, one.last) for one in proposed.targets
    ]
    garden = garden_of(_beds() + text + "\n")
    assert len(garden.targets) == len(proposed.targets)
    season = make_season(garden, garden.wish.first, None, effort=0)
    # The bound of the season says that these beds can feed nearly all of it.
    assert season.measures.bound > 0.85
    assert season.measures.fill > 0.7


def test_every_kind_of_food_that_fits_is_among_what_is_proposed(proposed: Proposal) -> None:
    groups = {kitchen_groups()[one.portion.crop.name] for one in proposed.targets}
    assert groups == set(kitchen_groups().values())


def test_what_is_wanted_already_comes_before_others_of_its_kind(proposed: Proposal) -> None:
    crops = {one.portion.crop.name for one in proposed.targets}
    assert {"radish", "potato"} <= crops


def test_a_week_has_no_more_than_about_ten_things(proposed: Proposal) -> None:
    # TRADE-S58: a household takes six to ten different things in a week; some of these were taken
    # for other weeks that have fewer than six.
    big = _proposal(_garden(length="150 ft"), 4)
    july = week_of(date(2027, 7, 14)).monday
    things = [one for one in big.targets if one.first <= july <= one.last]
    assert 6 <= len(things) <= 16
    assert len(big.targets) >= len(proposed.targets)


def test_less_ground_and_more_people_mean_fewer_crops() -> None:
    few = _proposal(_garden(length="8 ft"), 2)
    more = _proposal(_garden(length="8 ft"), 4)
    many = _proposal(_garden(length="8 ft"), 40)
    assert 0 < len(more.targets) < len(few.targets)
    assert all(one.ground_share <= 0.25 for one in (*few.targets, *more.targets))
    assert many.targets == ()
    assert "ask for fewer people" in proposal_text(many)


def test_a_shallow_bed_gets_no_deep_crop() -> None:
    shallow = _garden(depth="18 in")
    names = {one.portion.crop.name for one in _proposal(shallow, 1).targets}
    crops = {one.crop.name: one.crop for one in read_portions(None)}
    garden = garden_of(
        _beds(depth="6 in") + _TARGETS.replace('"potato"', '"leaf lettuce"').replace("lb", "oz")
    )
    few = {one.portion.crop.name for one in _proposal(garden, 1).targets}
    assert few
    assert all(crops[name].ground.is_deep_enough(6 * 0.0254) for name in few)
    assert not all(crops[name].ground.is_deep_enough(6 * 0.0254) for name in names)


def test_the_record_tells_the_same_targets(proposed: Proposal) -> None:
    record = proposal_record(proposed)
    assert [one["crop"] for one in record["targets"]] == [
        one.portion.crop.name for one in proposed.targets
    ]
    assert record["left_out"] == list(proposed.left_out)


def test_a_name_with_quotes_is_still_toml() -> None:
    crops = own_crop(
        'red \\"egg\\"', days_from_sowing="30 days", portion="3 roots", **{"yield": "1 roots"}
    )
    proposal = _proposal(_garden(), 2, crops)
    assert tomllib.loads(proposal_text(proposal))
