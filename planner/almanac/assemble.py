"""Assembling a crop from statements: complete, or a list of what is missing."""

from collections.abc import Mapping

from planner.almanac.emergence import emergence_tables
from planner.almanac.figure_kinds import usual_figure
from planner.almanac.table import table_rows
from planner.garden import (
    CountedFrom,
    Crop,
    Cut,
    DirectSown,
    Emergence,
    Frost,
    FrostTolerance,
    Ground,
    Habit,
    Hardiness,
    HeatNeeds,
    NeverBolts,
    NoEmergenceTable,
    NoHeatNeeds,
    Once,
    Pick,
    RaisedIndoors,
    StartFrom,
    Store,
    Sun,
    Way,
)
from planner.terms import UNITS, Fact, Figure, Source

Stated = Mapping[str, Figure | Fact]

_ALWAYS = (
    "family", "habit", "method", "start_from", "days_to_emerge", "hardiness", "autumn_tolerance",
    "spacing", "sowing_depth", "soil_depth", "sun", "yield",
)  # fmt: skip
# The crop of the almanac whose tables (emergence, sharing of ground) hold for this one.
TABLES_OF = "tables_of"
_HEAT = (
    "base_temperature", "best_temperature", "upper_temperature", "harvest_below",
    "germinates_from", "germinates_to",
)  # fmt: skip
_FOR_HABIT = {
    "once": ("hold_days",),
    "cut": ("cuts", "regrow_days"),
    "pick": ("picking_days",),
    "store": ("hold_days", "store_days"),
}


def missing_figures(stated: Stated) -> tuple[str, ...]:
    """The figures a crop still lacks before it can be planned."""
    needed = list(_ALWAYS)
    if "habit" in stated:
        needed += _FOR_HABIT[_text(stated, "habit")]
    method = _text(stated, "method") if "method" in stated else "direct"
    if method in {"indoors", "either"}:
        needed.append("weeks_indoors")
    if method in {"direct", "either"}:
        needed.append("days_from_sowing")
    missing = [name for name in needed if name not in stated]
    if method == "indoors" and not {"days_from_setting_out", "days_from_sowing"} & set(stated):
        missing.append("days_from_setting_out")
    return tuple(missing)


def assemble_crop(name: str, label: str, stated: Stated) -> Crop | tuple[str, ...]:
    """The crop, or the names of the figures it lacks."""
    missing = missing_figures(stated)
    if missing:
        return missing
    gives = _figure(stated, "yield")
    return Crop(
        name=name,
        label=label,
        family=_fact(stated, "family"),
        start_from=StartFrom(_text(stated, "start_from")),
        ways=_ways(stated),
        habit=_habit(stated),
        gives=gives,
        unit=UNITS[gives.unit],
        days_to_emerge=_figure(stated, "days_to_emerge"),
        frost=_frost(stated),
        ground=Ground(
            spacing=_figure(stated, "spacing"),
            sowing_depth=_figure(stated, "sowing_depth"),
            soil_depth=_figure(stated, "soil_depth"),
            sun=Sun[_text(stated, "sun").upper()],
            height=_figure(stated, "height") if "height" in stated else usual_figure("height"),
        ),
        heat=_heat(stated),
    )


def _heat(stated: Stated) -> HeatNeeds | NoHeatNeeds:
    missing = tuple(figure for figure in _HEAT if figure not in stated)
    if missing:
        return NoHeatNeeds(missing)
    bolts: Figure | NeverBolts = NeverBolts()
    if "bolts_above_daylength" in stated:
        bolts = _figure(stated, "bolts_above_daylength")
    base, best, upper, spoils, germinates_from, germinates_to = (
        _figure(stated, figure) for figure in _HEAT
    )
    return HeatNeeds(
        base=base,
        best=best,
        upper=upper,
        harvest_below=spoils,
        germinates_from=germinates_from,
        germinates_to=germinates_to,
        bolts_above_h=bolts,
        emergence=_emergence(stated),
    )


def _emergence(stated: Stated) -> Emergence | NoEmergenceTable:
    crop = _text(stated, TABLES_OF) if TABLES_OF in stated else ""
    table = emergence_tables().get(crop)
    return Emergence(table.points, table.source) if table else NoEmergenceTable()


def _ways(stated: Stated) -> tuple[Way, ...]:
    method = _text(stated, "method")
    ways: list[Way] = []
    if method in {"direct", "either"}:
        ways.append(DirectSown(_figure(stated, "days_from_sowing")))
    if method in {"indoors", "either"}:
        convention, days = CountedFrom.SETTING_OUT, "days_from_setting_out"
        if days not in stated:
            convention, days = CountedFrom.SOWING, "days_from_sowing"
        ways.append(
            RaisedIndoors(_figure(stated, days), convention, _figure(stated, "weeks_indoors"))
        )
    return tuple(ways)


def _habit(stated: Stated) -> Habit:
    match _text(stated, "habit"):
        case "once":
            return Once(_figure(stated, "hold_days"))
        case "cut":
            return Cut(_figure(stated, "cuts"), _figure(stated, "regrow_days"))
        case "pick":
            return Pick(_figure(stated, "picking_days"))
        case _:
            return Store(_figure(stated, "hold_days"), _figure(stated, "store_days"))


def _frost(stated: Stated) -> Frost:
    hardiness = _fact(stated, "hardiness")
    tolerance = FrostTolerance(_text(stated, "autumn_tolerance"))
    weeks = next(r for r in table_rows("hardiness.csv") if r["class"] == hardiness.text)
    days = next(r for r in table_rows("autumn.csv") if r["tolerance"] == tolerance)
    after = float(days["days_after_first_freeze"])
    return Frost(
        hardiness=Hardiness(hardiness.text),
        weeks_from_last_freeze=Figure(
            float(weeks["weeks_before_low"]),
            float(weeks["weeks_before_high"]),
            "weeks",
            Source(weeks["source"]),
        ),
        tolerance=tolerance,
        days_after_first_freeze=Figure(after, after, "days", Source(days["source"])),
    )


def _figure(stated: Stated, name: str) -> Figure:
    value = stated[name]
    if not isinstance(value, Figure):
        message = f"{name} is a figure"
        raise TypeError(message)
    return value


def _fact(stated: Stated, name: str) -> Fact:
    value = stated[name]
    if not isinstance(value, Fact):
        message = f"{name} is a word"
        raise TypeError(message)
    return value


def _text(stated: Stated, name: str) -> str:
    return _fact(stated, name).text
