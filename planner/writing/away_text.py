"""A sheet for whoever waters while the grower is away."""

import textwrap
from collections.abc import Iterator, Sequence

from planner.bedwork import AwayBed, AwayWork
from planner.garden import NoDrip
from planner.scheduling import Sowing
from planner.terms import Unit, date_words
from planner.writing.place_words import beds_words
from planner.writing.water_words import finger_words, run_words, water_words

_LEAVE_ALONE = (
    "Do not feed, spray, prune, pull or move anything; what looks like a weed may be a seedling.",
    "Do not turn a timer to another program, and leave no hose under pressure overnight.",
    "Do not water in the midday heat, nor when it has rained enough to puddle.",
    "Do not work in the heat of the day, drink often, and stop when dizzy.",
)


def away_text(times: Sequence[AwayWork], unit: Unit, width: int) -> str:
    """A sheet for each time away, fit to be printed and left at the gate."""
    if not times:
        return "No time away lies ahead (away in [season])."
    return "\n\n\n".join("\n".join(_sheet(one, unit, width)) for one in times)


def _sheet(one: AwayWork, unit: Unit, width: int) -> Iterator[str]:
    yield f"WHILE WE ARE AWAY, {away_days_words(one)}"
    yield ""
    yield from textwrap.wrap(watering_words(one, unit), width)
    names = max((len(bed.water.bed.name) for bed in one.beds), default=0)
    for bed in one.beds:
        yield f"  [ ] {bed.water.bed.name:<{names}}  {each_time_words(bed, unit)}"
    for head, items in away_lists(one, unit):
        yield from ("", head)
        yield from (_item(line, width) for line in items)


def away_days_words(one: AwayWork) -> str:
    """The days away, such as "12 July 2027 to 20 July 2027"."""
    return f"{date_words(one.away.first)} to {date_words(one.away.last)}"


def watering_words(one: AwayWork, unit: Unit) -> str:
    """On which days to water; how to find out where the plan cannot tell."""
    if not one.beds:
        return (
            "Watering: nothing can be told from the plan for these days. Feel the soil "
            f"{finger_words(unit)} down every other day, and water where it is dry."
        )
    days = ", ".join(f"{day:%a} {day.day} {day:%b}" for day in one.days)
    return f"Water early in the morning on: {days}. Leave it out after a soaking rain."


def away_lists(one: AwayWork, unit: Unit) -> Iterator[tuple[str, list[str]]]:
    """Heads with their lines: what to look at, what to pick, what to leave alone."""
    looks = list(_looks(one, unit))
    if looks:
        yield "Look at each time:", looks
    if one.picks or one.stands:
        yield "Pick, and eat it:", list(_picks(one))
    if one.waits:
        yield "Do not pick or eat, raw manure has not lain there long enough:", [_named(one.waits)]
    yield "Please:", list(_LEAVE_ALONE)


def each_time_words(bed: AwayBed, unit: Unit) -> str:
    """What a bed gets each time: minutes of its line, or a volume by hand."""
    if isinstance(bed.runs, NoDrip):
        return f"{water_words(bed.each_l, unit)} by hand"
    words = run_words(bed.runs.minutes, bed.runs.parts)
    rest = ", with an hour between" if bed.runs.parts > 1 else ""
    on_timer = f" (timer {bed.water.bed.timer})" if bed.water.bed.timer else ""
    return f"{words}{rest}{on_timer}"


def _looks(one: AwayWork, unit: Unit) -> Iterator[str]:
    deep = finger_words(unit)
    yield f"Is the soil damp {deep} down? If it is dry and plants hang, water once more."
    if not all(isinstance(bed.runs, NoDrip) for bed in one.beds):
        yield "Does every drip line drip, and does none spout?"
    if one.seedbeds:
        yield f"Seed that is not up yet, keep its ground damp on top: {_named(one.seedbeds)}."
    if one.trays:
        yield f"Trays indoors, damp and never standing in water: {_crops(one.trays)}."


def _picks(one: AwayWork) -> Iterator[str]:
    for sowing in one.picks:
        yield f"{_named([sowing])}: what is ready; picking keeps more coming."
    if one.stands:
        yield f"Ready, and can be taken or left: {_named(one.stands)}."
    yield "Wash your hands, and rinse what you pick under running water."


def _named(sowings: Sequence[Sowing]) -> str:
    return ", ".join(f"{one.id} ({beds_words(one)})" for one in sowings)


def _crops(sowings: Sequence[Sowing]) -> str:
    return ", ".join(dict.fromkeys(one.crop.name for one in sowings))


def _item(text: str, width: int) -> str:
    return textwrap.fill(text, width, initial_indent="  - ", subsequent_indent="    ")
