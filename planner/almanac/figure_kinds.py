"""What each figure of a crop is: a length, a time, a count, or one of a few words."""

from dataclasses import dataclass

from planner.almanac.table import table_rows
from planner.garden import EatenPart, Feeding, FrostTolerance, Hardiness, StartFrom, Sun
from planner.terms import UNITS, Dimension, Fact, Figure, Source


@dataclass(frozen=True, slots=True)
class FigureKind:
    """How a figure is written. `choices` for words, `dimension` for quantities.

    A kind with neither is free text. `harvest` figures are counted in harvest units. No crop
    has less than `least` or more than `most`, in metres, days or pieces; none has 0 unless it
    `may_be_zero`, as the depth of seed that is strewn on the surface.
    """

    meaning: str
    example: str
    dimension: Dimension | None = None
    choices: tuple[str, ...] = ()
    harvest: bool = False
    most: float = 1000.0
    least: float = 0.0
    may_be_zero: bool = False


def _time(meaning: str, example: str) -> FigureKind:
    return FigureKind(meaning, example, Dimension.TIME, most=730)


def _length(meaning: str, example: str) -> FigureKind:
    return FigureKind(meaning, example, Dimension.LENGTH, most=5)


def _temperature(meaning: str, example: str) -> FigureKind:
    return FigureKind(meaning, example, Dimension.TEMPERATURE, most=60, least=-30)


def _choice(meaning: str, *choices: str) -> FigureKind:
    return FigureKind(meaning, choices[0], choices=choices)


FIGURE_KINDS: dict[str, FigureKind] = {
    "family": FigureKind("botanical family", "Brassicaceae"),
    "habit": _choice("how it is harvested", "once", "cut", "pick", "store"),
    "method": _choice("how it is started", "direct", "indoors", "either"),
    "start_from": _choice("what is planted", *(start.value for start in StartFrom)),
    "days_from_sowing": _time("days to maturity counted from sowing", "28-32 days"),
    "days_from_setting_out": _time("days to maturity counted from setting out", "60 days"),
    "weeks_indoors": _time("time from sowing indoors to setting out", "5-7 weeks"),
    "days_to_emerge": _time("days from sowing to the first green", "5 days"),
    "hardiness": _choice("frost the young plant stands", *Hardiness),
    "autumn_tolerance": _choice("frost the grown crop stands", *FrostTolerance),
    "spacing": FigureKind("distance between plants", "3 in", Dimension.LENGTH, most=5, least=0.01),
    "sowing_depth": FigureKind(
        "depth of sowing", "0.5 in", Dimension.LENGTH, most=5, may_be_zero=True
    ),
    "soil_depth": _length("depth of soil, least to comfortable", "6-10 in"),
    "height": FigureKind(
        "how tall it grows, on its trellis if it has one",
        "2-3 ft",
        Dimension.LENGTH,
        most=5,
        least=0.02,
    ),
    "sun": _choice("light it needs", *(sun.word for sun in reversed(Sun))),
    "yield": FigureKind("what one plant gives, or gives at each cut", "1 root", harvest=True),
    "hold_days": _time("days it stands at usable size", "5-9 days"),
    "cuts": FigureKind("number of cuts", "3-5 cuts", Dimension.COUNT, most=100),
    "regrow_days": _time("days between cuts", "10-14 days"),
    "picking_days": _time("days over which it is picked", "14-21 days"),
    "store_days": _time("days it keeps in a store", "90-180 days"),
    "base_temperature": _temperature("temperature at which growth begins", "40 degF"),
    "best_temperature": _temperature("mean temperature its days are meant for", "60-65 degF"),
    "upper_temperature": _temperature("temperature above which nothing is gained", "82 degF"),
    "harvest_below": _temperature("mean temperature above which it spoils", "75 degF"),
    "germinates_from": _temperature("coldest soil its seed comes up in", "40 degF"),
    "germinates_to": _temperature("warmest soil its seed comes up in", "95 degF"),
    "bolts_above_daylength": FigureKind(
        "length of day at which it bolts", "12-15 h", Dimension.DAYLIGHT, most=24
    ),
    "feeding": _choice("how hungry it is", *(one for one in Feeding if one is not Feeding.UNKNOWN)),
    "side_dressing": FigureKind("when it is fed again", "when fruit first forms"),
    "eaten_part": _choice(
        "where what is eaten grows", *(one for one in EatenPart if one is not EatenPart.UNKNOWN)
    ),
    "portion": FigureKind("what a person eats in a week", "4 roots", harvest=True),
}

_ABBREVIATIONS = {"d": "days", "n": "cuts"}


def as_stated(figure: str, low: str, high: str, unit: str, source: Source) -> Figure | Fact:
    """A row of a data file as a figure in engine units (millimetres, days), or as a fact."""
    kind = FIGURE_KINDS[figure]
    if kind.dimension is None and not kind.harvest:
        return Fact(low, source)
    number = Figure(float(low), float(high or low), unit, source)
    return in_engine_unit(number, UNITS[_ABBREVIATIONS.get(unit, unit)].name)


def usual_figure(figure: str) -> Figure:
    """What is counted with for a crop of which nobody states this figure."""
    row = next(row for row in table_rows("usual.csv") if row["figure"] == figure)
    stated = as_stated(figure, row["low"], row["high"], row["unit"], Source(row["source"]))
    if not isinstance(stated, Figure):
        message = f"{figure} is a word and has nothing usual"
        raise TypeError(message)
    return stated


def in_engine_unit(figure: Figure, unit: str) -> Figure:
    """Lengths in millimetres, times in days, temperatures in degrees C; harvests as they are."""
    written = UNITS[unit]
    if written.dimension is Dimension.LENGTH:
        return figure.times(written.factor * 1000, "mm")
    if written.dimension is Dimension.TIME:
        return figure.times(written.factor, "days")
    if written.dimension is Dimension.TEMPERATURE:
        low, high = (value * written.factor + written.offset for value in (figure.low, figure.high))
        return Figure(low, high, "degC", figure.source)
    return figure.times(1, unit)
