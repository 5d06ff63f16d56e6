"""Gardens of every kind, made up by chance: their seasons break no rule."""

import math
import os
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Any

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from planner.garden import Garden
from planner.reading import PlanFile, PlanFiles, read_garden
from planner.scheduling.bound import bound_of
from planner.scheduling.choice import question_for
from planner.season import EarlierSeason, Season, make_season, read_record, record_of
from planner.writing import (
    write_calendars,
    write_harvest_sheet,
    write_season_json,
    write_sowing_sheet,
)
from tests.reference.schemas import plan_faults
from tests.verifier import BedFacts, almanac, broken_rules_of

_USUAL_GARDENS = 500


def _gardens(share: float = 1.0) -> settings:
    """Settings for a share of the generated gardens there are to be."""
    gardens = int(os.environ.get("GENERATED_GARDENS", _USUAL_GARDENS))
    return settings(
        max_examples=max(1, round(gardens * share)),
        deadline=None,
        derandomize=True,
        suppress_health_check=[HealthCheck.too_slow],
    )


_ALL, SOME, FEW, _BOUNDS = _gardens(), _gardens(0.12), _gardens(0.05), _gardens(0.08)
QUICK = 0
# What a week may want of a crop: every habit of harvest, start and hardiness is among them.
_WEEKLY = {
    "radish": ("5 roots", "25 roots", "120 roots"),
    "head lettuce": ("1 head", "4 heads", "12 heads"),
    "leaf lettuce": ("6 oz", "2 lb", "500 g"),
    "spinach": ("8 oz", "1 kg"),
    "carrot": ("6 roots", "24 roots", "90 each"),
    "kale": ("10 oz", "3 lb"),
    "basil": ("2 oz", "0.5 lb"),
    "bush bean": ("0.5 lb", "2 lb"),
    "tomato": ("2 lb", "6 lb", "4 kg"),
    "summer squash": ("1 lb", "4 lb"),
    "cucumber": ("2 each", "9 each"),
    "broccoli": ("1 head", "3 heads"),
    "bulb onion": ("4 each", "15 each"),
    "potato": ("1 lb", "3 kg"),
    "garlic": ("1 head", "3 heads"),
    "leek": ("2 each", "10 each"),
    "cabbage": ("1 head", "4 heads"),
    "sweet corn": ("3 each", "12 each"),
}
# Pairs of which the first may be the host of the second: between, beneath and following it.
_PAIRS = (
    ("cabbage", "radish"),
    ("tomato", "spinach"),
    ("cucumber", "leaf lettuce"),
    ("bulb onion", "radish"),
    ("tomato", "basil"),
    ("sweet corn", "leaf lettuce"),
    ("bush bean", "kale"),
    ("cucumber", "carrot"),
)
_WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
_LIGHT = ("shade", "part", "full")
_METRES = {"ft": 0.3048, "m": 1.0}
_STANDING = ("rhubarb", "garlic", "radish", "young hedge")
_SHARE = st.sampled_from((0.0, 0.3, 0.6, 0.9))


@dataclass(frozen=True)
class Written:
    """A garden as text, the day it is seen on, and a later day."""

    text: str
    as_of: date
    later: date


@st.composite
def _bed(draw: st.DrawFn) -> tuple[str, BedFacts]:
    """The lines of a bed, without its name, and its facts."""
    unit = draw(st.sampled_from(("ft", "m")))
    sizes = st.sampled_from((4, 8, 3, 2, 6, 12) if unit == "ft" else (1, 3, 2, 5))
    length, width = draw(sizes), draw(sizes)
    inches = draw(st.sampled_from((18, 12, 15, 10, 8, 6, 24)))
    sun = draw(st.sampled_from(("full", "full", "part", "shade")))
    is_round = draw(st.integers(0, 3)) == 3
    size = f'diameter = "{length} {unit}"' if is_round else f'length = "{length} {unit}"'
    lines = [size, f'soil_depth = "{inches} in"', f'sun = "{sun}"']
    if not is_round:
        lines.append(f'width = "{width} {unit}"')
        end = draw(st.sampled_from(("", "marked", "far")))
        lines += [f'sunny_end = "{end}"'] if end else []
    metres = _METRES[unit]
    facts = BedFacts(
        line_m=(3.14159 * length if is_round else max(length, width)) * metres,
        width_m=(length / 4 if is_round else min(length, width)) * metres,
        is_round=is_round,
        soil_m=inches * 0.0254,
        light=_LIGHT.index(sun),
    )
    return "\n".join(lines), facts


@st.composite
def _site(draw: st.DrawFn) -> tuple[str, date]:
    """The lines of a site, and a day of its spring."""
    latitude = draw(st.sampled_from((45.5, 35.1, 25.0, 8.5, 52.0, 60.2)))
    south = draw(st.booleans())
    lines = ["[site]", 'name = "A garden of chance"']
    lines.append(f"latitude = {-latitude if south else latitude}")
    if draw(st.booleans()):
        lines += _temperatures(draw(st.sampled_from((15, 10, 24))), south=south)
    # Days of a northern year; half a year later in the south.
    half_a_year = timedelta(days=184 if south else 0)
    spring = date(2026, 1, 15) + timedelta(days=draw(st.integers(0, 150))) + half_a_year
    fall = date(2026, 8, 20) + timedelta(days=draw(st.integers(0, 120))) + half_a_year
    if draw(st.integers(0, 5)) == 5:
        lines += ['last_spring_freeze = "never"', 'first_fall_freeze = "never"']
        return "\n".join(lines), spring
    lines.append(f'last_spring_freeze = "{spring:%m-%d}"')
    if draw(st.booleans()):
        one_in_ten = spring + timedelta(days=draw(st.integers(3, 25)))
        lines.append(f'last_spring_freeze_one_in_ten = "{one_in_ten:%m-%d}"')
    lines.append(f'first_fall_freeze = "{fall:%m-%d}"')
    if draw(st.booleans()):
        one_in_ten = fall - timedelta(days=draw(st.integers(3, 25)))
        lines.append(f'first_fall_freeze_one_in_ten = "{one_in_ten:%m-%d}"')
    return "\n".join(lines), spring


def _temperatures(mean_degc: int, *, south: bool) -> list[str]:
    """Twelve mean highs and lows around a mean of the year, warmest in July or January."""
    warmest = 1 if south else 7
    means = [mean_degc + 9 * math.cos((month - warmest) * math.pi / 6) for month in range(1, 13)]
    both = (("mean_high", 5), ("mean_low", -5))
    return [f"{key} = {[f'{mean + add:.1f} degC' for mean in means]}" for key, add in both]


@st.composite
def _kept(draw: st.DrawFn, name: str, bed: BedFacts, first: date, last: date) -> str:
    """What already stands in a bed, in all or part of it, for good or for some of the season."""
    lines = ["[[kept]]", f'bed = "{name}"', f'what = "{draw(st.sampled_from(_STANDING))}"']
    if draw(st.integers(0, 3)):
        begin = draw(st.sampled_from((0.0, 0.25, 0.5)))
        end = begin + draw(st.sampled_from((0.3, 0.15, 0.49)))
        lines += [
            f'{key} = "{bed.line_m * at:.3f} m"' for key, at in (("from", begin), ("to", end))
        ]
    since, until = draw(st.tuples(_SHARE, _SHARE))
    if since < until:
        if since:
            lines.append(f"since = {first + (last - first) * since}")
        lines.append(f"until = {first + (last - first) * until}")
    if draw(st.booleans()):
        lines.append('family = "Solanaceae"')
    return "\n".join(lines)


@st.composite
def _target(draw: st.DrawFn, crop: str, first: date, last: date) -> str:
    lines = ["[[target]]", f'crop = "{crop}"']
    begin = first + (last - first) * draw(st.sampled_from((0.4, 0.25, 0.5, 0.1)))
    end = begin + (last - begin) * draw(st.sampled_from((0.6, 1.0, 0.4, 0.0)))
    priority = draw(st.sampled_from(("", "", "2", "0.5", "10", "0.1")))
    lines += [f"priority = {priority}"] if priority else []
    way = draw(st.sampled_from((2, 3, 4, 1, 0)))
    amount = draw(st.sampled_from(_WEEKLY[crop]))
    if way == 0:
        return "\n".join([*lines, f'once = "{amount}"', f"by = {end}"])
    if way == 1:
        lines.append(f"for_people = {draw(st.integers(1, 12))}")
    else:
        lines.append(f'each_week = "{amount}"')
    return "\n".join([*lines, f"from = {begin}", f"to = {end}"])


@st.composite
def gardens(draw: st.DrawFn) -> Written:
    """One to six beds, one to six targets, any climate, a season of a month to 13 months.

    One in four has but one bed, and a pair of crops that may share it.
    """
    is_crowded = draw(st.integers(0, 3)) == 3
    site, spring = draw(_site())
    # Most seasons begin about spring, some at any time of the year.
    days_apart = st.integers(-80, 40) if draw(st.integers(0, 3)) else st.integers(-80, 285)
    first = spring + timedelta(days=365 + draw(days_apart))
    last = first + timedelta(days=draw(st.sampled_from((240, 300, 365, 400, 60))))
    days = draw(st.lists(st.sampled_from(_WEEKDAYS), min_size=1, max_size=4, unique=True))
    season = ["[season]", f"from = {first}", f"to = {last}"]
    season.append(f"garden_days = [{', '.join(map(repr, days))}]")
    season.append(f"freeze_risk = {draw(st.sampled_from((0.1, 0.02, 0.3, 0.5)))}")
    season.append(f"turnover_days = {draw(st.sampled_from((0, 0, 3, 14)))}")
    away = []
    for _ in range(draw(st.integers(0, 2))):
        leave = first + timedelta(days=draw(st.integers(0, (last - first).days)))
        back = leave + timedelta(days=draw(st.integers(0, 30)))
        away.append(f"{{ from = {leave}, to = {back} }}")
    season.append(f"away = [{', '.join(away)}]")
    shares = draw(st.sampled_from(("", "true", "false")))
    season += [f"share_ground = {shares}"] if shares else []
    beds = [draw(_bed()) for _ in range(draw(st.sampled_from((3, 2, 4, 1, 6))))]
    beds = [_GOOD_BED] if is_crowded else beds
    fitting = [crop for crop in _WEEKLY if any(almanac()[crop].fits(bed) for _, bed in beds)]
    if not fitting:
        beds.append(_GOOD_BED)
        fitting = list(_WEEKLY)
    pairs = [pair for pair in _PAIRS if set(pair) <= set(fitting)]
    together: tuple[str, ...] = ()
    if pairs and (is_crowded or draw(st.booleans())):
        together = draw(st.sampled_from(pairs))
    others = [crop for crop in draw(st.permutations(fitting)) if crop not in together]
    crops = [*together, *others][: draw(st.sampled_from((4, 5, 6, 2, 1)))]
    targets = [draw(_target(crop, first, last)) for crop in crops]
    named = [f'[[bed]]\nname = "Bed {n}"\n{lines}' for n, (lines, _) in enumerate(beds, 1)]
    kept = [
        draw(_kept(f"Bed {n}", facts, first, last))
        for n, (_, facts) in enumerate(beds, 1)
        if draw(st.integers(0, 4)) == 4
    ]
    parts = ["plan = 1", site, "\n".join(season), *named, *kept, *targets]
    as_of = first + timedelta(days=draw(st.sampled_from((-20, 0, 45))))
    later = as_of + timedelta(days=draw(st.sampled_from((60, 1, 15, 120))))
    return Written("\n\n".join(parts) + "\n", as_of, later)


_GOOD_BED = (
    'length = "8 ft"\nwidth = "4 ft"\nsoil_depth = "18 in"\nsun = "full"',
    BedFacts(2.4384, 1.2192, False, 0.4572, 2),  # noqa: FBT003 - a field of a frozen value
)


def garden_from(written: Written) -> Garden:
    read = read_garden(PlanFiles(PlanFile("garden.toml", written.text.encode())))
    assert isinstance(read, Garden), "\n".join(map(str, read)) + written.text
    assert plan_faults(written.text) == []
    return read


def _broken(written: Written, season: Season) -> list[str]:
    harvest = write_harvest_sheet(season).decode()
    return broken_rules_of(written.text, "", record_of(season), harvest)


def _files(season: Season, earlier: bytes | None = None) -> dict[str, bytes]:
    calendars = write_calendars(season, earlier)
    return {
        "season.json": write_season_json(season),
        "harvest.csv": write_harvest_sheet(season),
        "sowing-sheet.csv": write_sowing_sheet(season),
        "calendar.ics": calendars.live,
        "calendar-update.ics": calendars.update,
    }


def earlier_of(season: Season, as_of: date) -> EarlierSeason:
    read = read_record(record_of(season), season.garden, as_of, "season.json")
    assert isinstance(read, EarlierSeason), str(read)
    return read


@_ALL
@given(gardens())
def test_a_season_breaks_no_rule(written: Written) -> None:
    season = make_season(garden_from(written), written.as_of, None, QUICK)
    assert _broken(written, season) == [], written.text


@SOME
@given(gardens())
def test_equal_input_gives_equal_bytes(written: Written) -> None:
    first = _files(make_season(garden_from(written), written.as_of, None, QUICK))
    again = _files(make_season(garden_from(written), written.as_of, None, QUICK))
    assert first == again


@SOME
@given(gardens())
def test_a_season_made_again_stays_as_it_is(written: Written) -> None:
    garden = garden_from(written)
    season = make_season(garden, written.as_of, None, QUICK)
    before = _files(season)
    again = make_season(garden, written.as_of, earlier_of(season, written.as_of), QUICK)
    assert _files(again, before["calendar-update.ics"]) == before


@SOME
@given(gardens())
def test_a_later_season_keeps_what_has_begun_and_breaks_no_rule(written: Written) -> None:
    garden = garden_from(written)
    before = make_season(garden, written.as_of, None, QUICK)
    after = make_season(garden, written.later, earlier_of(before, written.later), QUICK)
    assert _broken(written, after) == [], written.text
    kept = {one["id"]: one for one in record_of(after)["sowings"]}
    for sowing in record_of(before)["sowings"]:
        if sowing["sow_on"] < written.later.isoformat():
            assert _fixed(kept[sowing["id"]]) == _fixed(sowing)


def _fixed(sowing: dict[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in sowing.items() if key != "state"}


# The bound.


def _one_more_bed(garden: Garden) -> Garden:
    return replace(garden, beds=(*garden.beds, replace(garden.beds[0], name="One more")))


def _beds_a_foot_longer(garden: Garden) -> Garden:
    beds = (
        bed if bed.is_round else replace(bed, line_um=bed.line_um + _FOOT_UM) for bed in garden.beds
    )
    return replace(garden, beds=tuple(beds))


def _nothing_kept(garden: Garden) -> Garden:
    return replace(garden, kept=())


def _a_season_begun_earlier(garden: Garden) -> Garden:
    wish = garden.wish
    return replace(garden, wish=replace(wish, first=wish.first - _WEEKS))


def _a_season_ended_later(garden: Garden) -> Garden:
    wish = garden.wish
    return replace(garden, wish=replace(wish, last=wish.last + _WEEKS))


def _no_rest_between(garden: Garden) -> Garden:
    return replace(garden, wish=replace(garden.wish, turnover_days=0))


_FOOT_UM, _WEEKS = 304_800, timedelta(days=21)
# Not among them: more garden days. Leaves are then cut sooner, and a sooner cut is a smaller one.
_EASIER: tuple[Callable[[Garden], Garden], ...] = (
    _one_more_bed,
    _beds_a_foot_longer,
    _nothing_kept,
    _a_season_begun_earlier,
    _a_season_ended_later,
    _no_rest_between,
)


def _bound(garden: Garden, as_of: date) -> float:
    return bound_of(question_for(garden, as_of)).share


@_BOUNDS
@given(gardens())
def test_more_ground_and_more_time_never_lower_the_bound(written: Written) -> None:
    garden = garden_from(written)
    as_of = garden.wish.first - 2 * _WEEKS
    bound = _bound(garden, as_of)
    for easier in _EASIER:
        assert _bound(easier(garden), as_of) >= bound - 1e-6, easier.__name__


@_BOUNDS
@given(gardens())
def test_sharing_ground_never_lowers_the_bound(written: Written) -> None:
    garden = garden_from(written)
    alone = replace(garden, shared=())
    assert _bound(garden, written.as_of) >= _bound(alone, written.as_of) - 1e-6


@SOME
@given(gardens())
def test_no_season_passes_the_bound(written: Written) -> None:
    garden = garden_from(written)
    season = make_season(garden, written.as_of, None, QUICK)
    assert season.measures.fill <= _bound(garden, written.as_of) + 1e-6
