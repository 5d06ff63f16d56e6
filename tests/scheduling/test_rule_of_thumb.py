"""What comes of sowing at a fixed interval, as growers' literature tells it.

Where no source is named, the statement follows from what the rule of thumb is.
"""

import math
from datetime import date, timedelta
from itertools import pairwise

import pytest

from planner.climate import Climate
from planner.garden import Garden, Once, Pick
from planner.scheduling.starts.candidate import Candidate
from planner.scheduling.starts.crop_starts import crop_candidates
from planner.scheduling.thumb.intervals import interval_of
from planner.scheduling.thumb.paper_plan import Lost, PaperSowing, paper_plan
from planner.scheduling.thumb.rule_of_thumb import (
    Room,
    Thumb,
    ThumbResult,
    rule_of_thumb,
)
from tests.plan_text import garden_of

_FIRST = date(2027, 3, 1)


def _site(mean_degc: float, swing_degc: float, freezes: tuple[str, str]) -> str:
    """A site whose average days follow a sine, warmest in mid July, 11 degC from low to high."""
    months = [
        mean_degc + swing_degc * math.cos((month - 7) * math.pi / 6) for month in range(1, 13)
    ]
    lines = ["plan = 1", "[site]", "latitude = 25.0"]
    lines += [f'last_spring_freeze = "{freezes[0]}"', f'first_fall_freeze = "{freezes[1]}"']
    for key, apart in (("mean_high", 5.5), ("mean_low", -5.5)):
        lines.append(f"{key} = {[f'{month + apart:.2f} degC' for month in months]}")
    lines += ["[season]", f"from = {_FIRST}", "to = 2027-11-30", 'garden_days = ["Wed", "Sat"]']
    return "\n".join([*lines, ""])


_CONSTANT = _site(18, 0, ("never", "never"))
# Mean 11 degC and 12 degC either way, as in the check values of the spring and fall slopes.
_TEMPERATE = _site(11, 12, ("04-20", "10-20"))


def _bed(length: str = "40 ft", width: str = "4 ft") -> str:
    lines = ['name = "Bed"', f'length = "{length}"', f'width = "{width}"']
    return "\n".join(["[[bed]]", *lines, 'soil_depth = "18 in"', 'sun = "full"', ""])


def _want(crop: str, amount: str, first: str, last: str) -> str:
    lines = [f'crop = "{crop}"', f'each_week = "{amount}"', f"from = {first}", f"to = {last}"]
    return "\n".join(["[[target]]", *lines, ""])


def _paper(text: str, thumb: Thumb) -> list[PaperSowing]:
    """The paper plan of a garden's one crop."""
    garden = garden_of(text)
    (found,) = crop_candidates(garden, Climate(garden.site), _FIRST)
    return paper_plan(found, garden.wants()[found.about.crop.name], thumb)


def _gaps(days: list[date]) -> list[int]:
    return [(late - early).days for early, late in pairwise(days)]


def _grown(sowings: list[PaperSowing]) -> list[Candidate]:
    return [one.fate for one in sowings if isinstance(one.fate, Candidate)]


def _outcome(text: str, thumb: Thumb, room: Room = Room.UNLIMITED) -> ThumbResult:
    garden = garden_of(text)
    return rule_of_thumb(garden, Climate(garden.site), _FIRST, thumb, room)


_BEETS = _want("beet", "10 roots", "2027-06-14", "2027-11-07")


@pytest.mark.parametrize("thumb", list(Thumb))
def test_at_constant_temperatures_equal_intervals_give_equal_harvest_gaps(thumb: Thumb) -> None:
    grown = _grown(_paper(_CONSTANT + _bed() + _BEETS, thumb))
    assert len(grown) >= 10
    assert set(_gaps([one.course.start_on for one in grown][:-1])) == {14}
    assert set(_gaps([one.course.ripe.likely for one in grown][:-1])) == {14}


def test_at_constant_temperatures_the_rule_feeds_every_week_without_surplus() -> None:
    outcome = _outcome(_CONSTANT + _bed() + _BEETS, Thumb.KNOWS_SEASON)
    assert outcome.fill == pytest.approx(1.0)
    assert outcome.surplus < 0.1


@pytest.mark.parametrize(
    ("start_on", "days"), [(date(2027, 4, 7), range(4, 8)), (date(2027, 4, 28), range(6, 10))]
)
def test_peas_sown_two_weeks_apart_in_spring_ripen_about_one_week_apart(
    start_on: date, days: range
) -> None:
    """Bachmann, NCAT/ATTRA 2008, after Ogden 1992; by the heat sum half as far, end of April."""
    text = _TEMPERATE + _bed() + _want("shell pea", "1 lb", "2027-04-01", "2027-10-31")
    garden = garden_of(text)
    (found,) = crop_candidates(garden, Climate(garden.site), _FIRST)
    ripe = {one.course.start_on: one.course.ripe.likely for one in found.candidates}
    assert (ripe[start_on + timedelta(days=14)] - ripe[start_on]).days in days


def test_before_fall_a_fixed_interval_pulls_harvests_apart() -> None:
    """The same source: a few days at sowing become two weeks and more at harvest."""
    ripe = [
        one.course.ripe.likely
        for one in _grown(_paper(_TEMPERATE + _bed() + _BEETS, Thumb.KNOWS_SEASON))
    ]
    gaps = _gaps(ripe)
    assert gaps[0] < 14 < max(gaps)
    assert gaps.index(max(gaps)) > len(gaps) // 2


def test_equal_gaps_in_spring_and_fall_give_gluts_and_empty_weeks() -> None:
    wanted = _want("radish", "12 roots", "2027-04-26", "2027-11-07")
    constant = _outcome(_CONSTANT + _bed() + wanted, Thumb.FIXED_DAYS)
    temperate = _outcome(_TEMPERATE + _bed() + wanted, Thumb.FIXED_DAYS)
    assert constant.fill > 0.95
    assert temperate.fill < constant.fill - 0.1
    assert temperate.surplus > constant.surplus


@pytest.mark.parametrize(
    "wanted",
    [
        _want("bush bean", "2 lb", "2027-06-14", "2027-10-03"),
        _want("carrot", "20 roots", "2027-07-05", "2027-11-07"),
    ],
)
def test_who_knows_the_season_has_more_than_who_reads_the_packet(wanted: str) -> None:
    text = _TEMPERATE + _bed() + wanted
    knows, reads = (_outcome(text, thumb) for thumb in (Thumb.KNOWS_SEASON, Thumb.FIXED_DAYS))
    assert knows.fill > reads.fill


_EARLY_BEANS = _want("bush bean", "1 lb", "2027-05-10", "2027-07-31")


def test_beans_sown_by_the_packet_before_the_last_freeze_are_lost() -> None:
    sowings = _paper(_TEMPERATE + _bed() + _EARLY_BEANS, Thumb.FIXED_DAYS)
    lost = [one for one in sowings if isinstance(one.fate, Lost)]
    # Packet: 51 to 58 days, so two months before the tenth of May.
    assert sowings[0].enters_on < date(2027, 3, 24)
    assert sowings[0] in lost
    assert len(lost) < len(sowings)


def test_who_knows_the_season_sows_nothing_that_frost_would_kill() -> None:
    sowings = _paper(_TEMPERATE + _bed() + _EARLY_BEANS, Thumb.KNOWS_SEASON)
    assert sowings
    assert len(_grown(sowings)) == len(sowings)
    assert min(one.enters_on for one in sowings) > date(2027, 4, 20)


@pytest.mark.parametrize("thumb", list(Thumb))
def test_paper_plans_fall_on_garden_days(thumb: Thumb) -> None:
    text = _TEMPERATE + _bed() + _want("head lettuce", "4 heads", "2027-06-01", "2027-10-31")
    grown = _grown(_paper(text, thumb))
    assert {one.course.start_on.weekday() for one in grown} <= {2, 5}


@pytest.mark.parametrize("thumb", list(Thumb))
def test_every_sowing_of_a_stretch_is_of_the_same_size_in_whole_plants(thumb: Thumb) -> None:
    # A root each, two weeks to a sowing: 2 x 7.3 roots are 15 plants.
    text = _TEMPERATE + _bed() + _want("beet", "7.3 roots", "2027-06-14", "2027-10-31")
    assert {one.plants for one in _paper(text, thumb)} == {15}


@pytest.mark.parametrize("thumb", list(Thumb))
def test_what_is_wanted_twice_a_year_is_sown_twice_over(thumb: Thumb) -> None:
    head = _TEMPERATE + _bed()
    early = _want("radish", "12 roots", "2027-05-10", "2027-06-06")
    late = _want("radish", "12 roots", "2027-09-13", "2027-10-10")
    apart = [{one.enters_on for one in _paper(head + one, thumb)} for one in (early, late)]
    assert apart[0]
    assert apart[1]
    assert {one.enters_on for one in _paper(head + early + late, thumb)} == apart[0] | apart[1]


def test_of_what_is_cut_again_each_cut_feeds_its_week() -> None:
    # Plants for two pounds at a cut, whatever the interval.
    lettuce = _want("leaf lettuce", "2 lb", "2027-05-24", "2027-07-31")
    gives = garden_of(_TEMPERATE + _bed() + lettuce).crops["leaf lettuce"].gives.middle
    sizes = {one.plants for one in _paper(_TEMPERATE + _bed() + lettuce, Thumb.KNOWS_SEASON)}
    assert sizes == {math.ceil(2 / gives)}


def test_of_what_is_picked_for_weeks_there_are_plants_for_all_of_them() -> None:
    # What a plant gives in all, spread over its days of picking.
    text = _TEMPERATE + _bed() + _want("bush bean", "2 lb", "2027-07-05", "2027-09-12")
    bean = garden_of(text).crops["bush bean"]
    assert isinstance(bean.habit, Pick)
    each_week = bean.gives.middle / (bean.habit.picking_days.middle / 7)
    assert {one.plants for one in _paper(text, Thumb.KNOWS_SEASON)} == {math.ceil(2 / each_week)}


def test_who_knows_the_season_begins_with_what_is_just_ripe_for_the_first_week() -> None:
    """Wanted from Monday 14 June on, picked on Wednesdays and Saturdays."""
    text = _CONSTANT + _bed() + _BEETS
    first = _grown(_paper(text, Thumb.KNOWS_SEASON))[0].course
    garden = garden_of(text)
    (found,) = crop_candidates(garden, Climate(garden.site), _FIRST)
    following = min(
        one.course.ripe.likely for one in found.candidates if one.course.start_on > first.start_on
    )
    assert first.ripe.likely <= date(2027, 6, 16) < following


def test_what_is_picked_for_long_is_sown_but_once_or_twice() -> None:
    text = _TEMPERATE + _bed() + _want("tomato", "8 lb", "2027-07-26", "2027-09-12")
    assert len(_paper(text, Thumb.KNOWS_SEASON)) <= 2


@pytest.mark.parametrize(
    ("crop", "unit", "days"),
    [
        ("radish", "roots", range(7, 11)),
        ("bush bean", "lb", range(14, 22)),
        ("sweet corn", "each", [14]),
        ("cucumber", "each", [21]),
        ("summer squash", "lb", [21]),
        ("carrot", "roots", [28]),
        ("melon", "each", [28]),
        ("beet", "roots", [14]),
    ],
)
def test_intervals_are_those_of_growers_literature(
    crop: str, unit: str, days: range | list[int]
) -> None:
    garden = garden_of(_TEMPERATE + _bed() + _want(crop, f"1 {unit}", "2027-06-14", "2027-07-31"))
    assert interval_of(garden.crops[crop]).days in days


def test_a_crop_that_stands_for_a_week_is_sown_again_after_a_week() -> None:
    garden = garden_of(
        _TEMPERATE + _bed() + _want("head lettuce", "1 heads", "2027-06-14", "2027-07-31")
    )
    lettuce = garden.crops["head lettuce"]
    assert isinstance(lettuce.habit, Once)
    assert interval_of(lettuce).days == int(lettuce.habit.hold_days.middle) == 7


def _two_crops(*crops: str) -> Garden:
    """A bed of 12 square feet, in which each crop alone would like more than there is."""
    wants = [_want(crop, "40 roots", "2027-06-14", "2027-10-31") for crop in crops]
    return garden_of(_CONSTANT + _bed("4 ft", "3 ft") + "".join(wants))


def test_where_ground_is_short_the_crop_written_first_is_served_first() -> None:
    for first, second in (("beet", "turnip"), ("turnip", "beet")):
        garden = _two_crops(first, second)
        climate = Climate(garden.site)
        limited = rule_of_thumb(garden, climate, _FIRST, Thumb.KNOWS_SEASON, Room.LIMITED)
        alone = rule_of_thumb(garden, climate, _FIRST, Thumb.KNOWS_SEASON, Room.UNLIMITED)
        assert limited.fill < alone.fill
        assert sum(limited.shares.values()) / 2 == pytest.approx(limited.fill)


def test_endless_ground_never_feeds_less_than_the_beds() -> None:
    wants = [
        _want("radish", "30 roots", "2027-05-10", "2027-10-31"),
        _want("leaf lettuce", "2 lb", "2027-05-24", "2027-10-31"),
        _want("bush bean", "2 lb", "2027-07-05", "2027-09-30"),
        _want("bulb onion", "10 each", "2027-08-02", "2027-11-07"),
    ]
    text = _TEMPERATE + _bed("8 ft", "4 ft") + "".join(wants)
    for thumb in Thumb:
        beds, endless = (_outcome(text, thumb, room) for room in (Room.LIMITED, Room.UNLIMITED))
        assert all(beds.shares[crop] <= endless.shares[crop] for crop in beds.shares)
        assert beds.fill < endless.fill
        assert beds.sowings <= endless.sowings


def test_a_bed_without_end_is_as_good_as_endless_ground() -> None:
    text = _TEMPERATE + _bed("80 ft") + _BEETS
    beds, endless = (
        _outcome(text, Thumb.KNOWS_SEASON, room) for room in (Room.LIMITED, Room.UNLIMITED)
    )
    assert beds == endless


def test_ground_that_is_kept_is_not_sown() -> None:
    kept = '[[kept]]\nbed = "Bed"\nwhat = "rhubarb"\nfrom = "0 ft"\nto = "3.75 ft"\n\n'
    text = _CONSTANT + _bed("4 ft", "3 ft") + "{}" + _BEETS
    open_bed, kept_bed = (
        _outcome(text.format(part), Thumb.KNOWS_SEASON, Room.LIMITED) for part in ("", kept)
    )
    assert kept_bed.fill < open_bed.fill
