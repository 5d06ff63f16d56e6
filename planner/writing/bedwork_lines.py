"""Bed work for the week's sheet and the page: a few short lines for each week."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from planner.bedwork import Turnover, fillings_of, manure_checks, turnovers_of, water_of
from planner.climate import Climate
from planner.garden import Garden
from planner.scheduling import Sowing
from planner.terms import Week, date_words, listed_words, volume_words, week_of
from planner.writing.place_words import short_stretch_words, stretch_words
from planner.writing.turnover_text import dressing_words
from planner.writing.water_lines import water_lines

# A new bed is filled this long before anything enters it, so that it can settle a little.
_FILL_BEFORE = timedelta(days=7)


@dataclass(frozen=True, slots=True)
class WeekBedwork:
    """A week's bed work in lines: what must not be picked yet, and work to tick off."""

    not_yet: tuple[str, ...] = ()
    work: tuple[str, ...] = ()


def bedwork_by_week(garden: Garden, sowings: Sequence[Sowing]) -> Mapping[Week, WeekBedwork]:
    """The bed work of every week that has any: soil, compost and water; in order of weeks."""
    soil, not_yet = bedwork_lines(garden, sowings), not_yet_lines(garden, sowings)
    water = water_lines(water_of(garden, Climate(garden.site), sowings))
    return {
        week: WeekBedwork(not_yet.get(week, ()), (*soil.get(week, ()), *water.get(week, ())))
        for week in sorted({*soil, *not_yet, *water})
    }


def bedwork_lines(garden: Garden, sowings: Sequence[Sowing]) -> Mapping[Week, tuple[str, ...]]:
    """What soil work falls into each week: filling and compost."""
    return _by_week((*_fill(garden, sowings), *_dress(garden, sowings)))


def not_yet_lines(garden: Garden, sowings: Sequence[Sowing]) -> Mapping[Week, tuple[str, ...]]:
    """What each week has ripe on ground where raw manure has not lain long enough (§46)."""
    return _by_week(_wait(garden, sowings))


def _by_week(told: Iterable[tuple[date, str]]) -> Mapping[Week, tuple[str, ...]]:
    lines: dict[Week, list[str]] = defaultdict(list)
    for day, line in told:
        lines[week_of(day)].append(line)
    return {week: tuple(lines[week]) for week in sorted(lines)}


def _fill(garden: Garden, sowings: Sequence[Sowing]) -> Iterator[tuple[date, str]]:
    for one in fillings_of(garden, sowings):
        if one.first_in is not None:
            volume = volume_words(one.volume_l, one.bed.note.unit)
            filled = f"Fill {one.bed.name} with {volume} by {date_words(one.first_in)}"
            yield one.first_in - _FILL_BEFORE, f"{filled}; with what, see planner bedwork."


def _dress(garden: Garden, sowings: Sequence[Sowing]) -> Iterator[tuple[date, str]]:
    """A line for each bed, week and depth; stretches that touch are told as one."""
    alike: dict[tuple[Week, str, float], list[Turnover]] = defaultdict(list)
    for one in turnovers_of(garden, sowings):
        if one.volume_l > 0 or one.held_back:
            alike[week_of(one.on), one.bed.name, one.depth_mm].append(one)
    for (week, _, depth_mm), found in alike.items():
        place = _place(found)
        if depth_mm > 0:
            yield week.monday, f"Top-dress {place}: {dressing_words(found)}."
        else:
            yield week.monday, f"No more compost this year on {place}."


def _place(found: Sequence[Turnover]) -> str:
    bed = found[0].bed
    joined: list[tuple[int, int]] = []
    for from_um, to_um in sorted((one.from_um, one.to_um) for one in found):
        if joined and from_um <= joined[-1][1]:
            joined[-1] = (joined[-1][0], max(joined[-1][1], to_um))
        else:
            joined.append((from_um, to_um))
    *others, last = joined
    words = [short_stretch_words(bed, *one) for one in others]
    return f"{bed.name}, {listed_words([*words, stretch_words(bed, *last)])}"


def _wait(garden: Garden, sowings: Sequence[Sowing]) -> Iterator[tuple[date, str]]:
    """A line for each week and day from which picking is right; sowings alike are told as one."""
    harvests = {one.id: [taken.day for taken in one.harvest] for one in sowings}
    for check in manure_checks(garden, sowings):
        alike: dict[tuple[Week, date], list[str]] = defaultdict(list)
        for one in check.too_early:
            early = (day for day in harvests[one.sowing] if check.manure.on <= day < one.from_on)
            for week in sorted({week_of(day) for day in early}):
                alike[week, one.from_on].append(one.sowing)
        for (week, from_on), named in alike.items():
            until = f"before {date_words(from_on)}: raw manure on {check.manure.bed}"
            yield week.monday, f"Do not pick {', '.join(named)} {until}."
