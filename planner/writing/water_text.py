"""Watering in words: how it is known, the thirstiest week, and the minutes of each month."""

from collections import defaultdict
from collections.abc import Iterator
from statistics import fmean

from planner.bedwork import BedWater, Known, Runs, SharedRun, Water, WeekWater
from planner.garden import Bed, Drip, MonthlyDepth, NoDrip
from planner.terms import MONTHS, Unit, day_words
from planner.writing.paragraph import paragraph, paragraphs
from planner.writing.water_words import (
    depth_words,
    finger_words,
    flow_words,
    run_words,
    volume_unit,
    water_words,
)

_NOTHING = "."
_ENOUGH_MORE = 1.25


def water_text(water: Water, width: int) -> str:
    """What watering rests on, the thirstiest week, minutes by month, and what to look at."""
    peak = water.thirstiest
    parts = [paragraphs(water_grounds(water), width)]
    if peak is None:
        parts.append("Nothing is to be watered in the weeks that are known.")
    else:
        parts += ["\n".join(_peak(water, peak)), "\n".join(_months(water))]
        parts += [paragraph(_shared(one), width) for one in peak.shared]
    parts.append(paragraphs(water_advice(water), width))
    return "\n\n".join(part for part in parts if part)


def water_grounds(water: Water) -> Iterator[str]:
    """What is known of evaporation and rain, and how much of a drip line's water roots get."""
    wish, unit = water.garden.water, water.garden.unit
    source = water.evaporation.source
    match water.evaporation.known:
        case Known.OWN:
            yield f"Evaporation: monthly figures ({source}), times each crop's coefficient (FAO56)."
        case Known.TEMPERATURES:
            yield (
                f"Evaporation: worked out from temperatures ({source}) by Hargreaves, times each "
                "crop's coefficient (FAO56). Wind and dry air are not in it: in a windy or "
                "desert place it is too little."
            )
        case Known.RULE:
            depth = depth_words(wish.rule_mm.middle, unit)
            yield (
                f"Evaporation: not known, because the plan has no temperatures. Counted with the "
                f"plain rule of {depth} a week for whatever grows ({source}), between the average "
                "last and first freeze; of other weeks nothing is told. The same source's quarter "
                "of an inch a day, in a typical summer, is nearly twice that. To know more, add "
                "mean_high and mean_low or weather to [site], or evaporation to [water]."
            )
    if isinstance(water.rain, MonthlyDepth):
        used = f"{wish.rain_used.middle:.0%} of it ({wish.rain_used.source})"
        yield f"Rain: an average month's ({water.rain.source}); roots get {used}."
    else:
        yield "Rain: none is counted with; neither plan nor record has it (rain in [water])."
    yield (
        f"Of the water a drip line gives, roots get {wish.efficiency.middle:.0%} "
        f"({wish.efficiency.source})."
    )


def _peak(water: Water, peak: WeekWater) -> Iterator[str]:
    unit, week = water.garden.unit, peak.week
    rain = (
        f", {depth_words(peak.rain_mm, unit)} rain" if isinstance(water.rain, MonthlyDepth) else ""
    )
    yield (
        f"The thirstiest week, {week} ({day_words(week.monday)} to {day_words(week.sunday)}): "
        f"{depth_words(peak.evaporation_mm, unit)} evaporate{rain}."
    )
    names = max(len("bed"), *(len(one.bed.name) for one in peak.beds))
    yield f"{'bed':<{names}}  {'planted':>7}  {'wants':>6}  {'from the tap':>12}  runs"
    for one in peak.beds:
        yield (
            f"{one.bed.name:<{names}}  {one.planted:>7.0%}  {depth_words(one.depth_mm, unit):>6}  "
            f"{water_words(one.volume_l, unit):>12}  {_runs(one, unit)}"
        )


def _runs(one: BedWater, unit: Unit) -> str:
    if isinstance(one.runs, NoDrip) or isinstance(one.bed.drip, NoDrip):
        return "by hand; no drip line is told"
    flow = one.bed.drip.flow
    how = "measured" if flow.measured else "as stamped"
    runs = run_words(one.runs.minutes, one.runs.parts) if one.runs.minutes else "none"
    return f"{one.runs.times} of {runs} at {flow_words(flow.l_per_h, unit)} ({how})"


def _months(water: Water) -> Iterator[str]:
    """A row for each bed: minutes of each run, or what it takes by hand in a week."""
    unit = water.garden.unit
    months = sorted({_month(week) for week in water.weeks if any(b.volume_l for b in week.beds)})
    names = max(len(bed.name) for bed in water.garden.beds)
    head = "".join(f"{MONTHS[month - 1][:3]:>6}" for _, month in months)
    by_bed = _by_bed(water)
    times = int(water.garden.water.runs_each_week.middle)
    titles = {
        True: f"Minutes of each run, {times} runs a week, on average over each month:",
        False: f"By hand, {volume_unit(unit)} a week:",
    }
    for drips, title in titles.items():
        beds = [bed for bed in water.garden.beds if isinstance(bed.drip, Drip) is drips]
        rows = [bed for bed in beds if bed.name in by_bed]
        if not rows:
            continue
        yield title
        yield f"{'':<{names}}{head}"
        for bed in rows:
            cells = (_cell(by_bed[bed.name].get(month, []), unit) for month in months)
            yield f"{bed.name:<{names}}{''.join(f'{cell:>6}' for cell in cells)}".rstrip()


def _month(week: WeekWater) -> tuple[int, int]:
    """The month of a week's Thursday."""
    thursday = week.week.thursday
    return thursday.year, thursday.month


def _by_bed(water: Water) -> dict[str, dict[tuple[int, int], list[BedWater]]]:
    found: dict[str, dict[tuple[int, int], list[BedWater]]] = defaultdict(lambda: defaultdict(list))
    for week in water.weeks:
        for one in week.beds:
            found[one.bed.name][_month(week)].append(one)
    return found


def _cell(beds: list[BedWater], unit: Unit) -> str:
    """The mean over a month's weeks; a point where nothing is wanted."""
    if not any(one.volume_l for one in beds):
        return _NOTHING
    if isinstance(beds[0].runs, Runs):
        minutes = fmean(one.runs.minutes for one in beds if isinstance(one.runs, Runs))
        return str(max(1, round(minutes)))
    volume = water_words(fmean(one.volume_l for one in beds), unit)
    return volume.split()[0]


def _shared(one: SharedRun) -> str:
    runs = run_words(one.runs.minutes, one.runs.parts)
    too_much = [
        f"{given.bed} {_times(given.given_mm, given.wanted_mm)}"
        for given in one.gives
        if given.given_mm >= _ENOUGH_MORE * given.wanted_mm
    ]
    words = (
        f"Timer {one.timer} in that week: one program for its beds, {one.runs.times} runs of "
        f"{runs}, as the thirstiest of them wants."
    )
    if not too_much:
        return f"{words} It suits them all within a quarter."
    return (
        f"{words} That is more than wanted on {', '.join(too_much)}: fewer or slower emitters "
        "there, or a valve of its own."
    )


def _times(given_mm: float, wanted_mm: float) -> str:
    return f"({given_mm / wanted_mm:.1f} times)" if wanted_mm > 0 else "(which wants none)"


def water_advice(water: Water) -> Iterator[str]:
    """What to look at before water is given, and how to know a line's flow better."""
    deep = finger_words(water.garden.unit)
    yield (
        f"These are averages. Before a run feel the soil {deep} down: dry there means water "
        "(TRADE-S16). After a soaking rain leave a run out; in a hot dry wind add one."
    )
    stamped = [bed.name for bed in water.garden.beds if _is_stamped(bed)]
    if stamped:
        yield (
            "Emitters rarely give what they say: a sample gave 0.48 for 0.50 (TRADE-S15). "
            f"Catch a minute's water and write, below {stamped[0]}, flow = "
            '"3 gal in 15 min": what is measured then counts.'
        )


def _is_stamped(bed: Bed) -> bool:
    return isinstance(bed.drip, Drip) and not bed.drip.flow.measured
