"""The record of a season: plain values that JSON can hold, and back.

The shape is the contract of season.json; docs/season.schema.json describes it.
"""

from datetime import date
from uuid import UUID

from planner.garden import Crop, Garden
from planner.growth import Ripening
from planner.scheduling import HARVEST_PLACES, Block, HarvestDay, Method, Sowing, SowingState, Unmet
from planner.season.measures import Measures
from planner.season.record_check import FORMAT, Record, season_unreadable, what_is_wrong
from planner.season.season import EarlierSeason, Season
from planner.tasks import Task
from planner.terms import FIRST_YEAR, LAST_YEAR, UNITS, Place, Problem, Unit, Week, week_of

# Shares and sums are for reading. Harvest days are counted with again, so that a week met in
# full is still met in full after any number of runs.
_PLACES = 4
# Days of a season lie about the years that can be planned: sown before, or standing on after it.
_FIRST_YEAR, _LAST_YEAR = FIRST_YEAR - 10, LAST_YEAR + 10
_WHOLE = "harvest or block of a sowing"


def record_of(season: Season) -> Record:
    """A season as plain values, in the order of the contract."""
    return {
        "format": FORMAT,
        "plan_id": str(season.plan_id),
        "as_of": season.as_of.isoformat(),
        "garden": season.garden.site.name,
        "basis": season.basis,
        "names_given": dict(sorted(season.names_given.items())),
        "sowings": [_sowing_record(one) for one in season.sowings],
        "tasks": [_task_record(one) for one in season.tasks],
        "unmet": [_unmet_record(one) for one in season.unmet],
        "measures": _measures_record(season.measures),
    }


def _sowing_record(one: Sowing) -> Record:
    weeks: dict[Week, float] = {}
    for taken in one.harvest:
        week = week_of(taken.day)
        weeks[week] = weeks.get(week, 0.0) + round(taken.amount, HARVEST_PLACES)
    return {
        "id": one.id,
        "crop": one.crop.name,
        "method": one.method.value,
        "sow_on": one.sow_on.isoformat(),
        "emerges_on": one.emerges_on.isoformat(),
        "set_out_on": one.set_out_on.isoformat() if one.set_out_on else None,
        "first_pick_on": {
            "early": one.ripe.early.isoformat(),
            "likely": one.ripe.likely.isoformat(),
            "late": one.ripe.late.isoformat(),
        },
        "dates_counted": one.counted,
        "last_pick_on": _last_pick(one).isoformat(),
        "clear_on": one.clear_on.isoformat(),
        "plants": one.plants,
        "seeds": one.seeds,
        "unit": one.crop.unit.name,
        "blocks": [
            {
                "bed": block.bed,
                "from_m": block.from_um / 1e6,
                "to_m": block.to_um / 1e6,
                "enter_on": block.enter_on.isoformat(),
                "leave_on": block.leave_on.isoformat(),
                "under": block.under or None,
            }
            for block in one.blocks
        ],
        "harvest": [
            {"week": str(week), "amount": _round(amount)} for week, amount in weeks.items()
        ],
        "harvest_days": [
            {"on": taken.day.isoformat(), "amount": round(taken.amount, HARVEST_PLACES)}
            for taken in one.harvest
        ],
        "state": one.state.value,
        "why": list(one.why),
    }


def _last_pick(one: Sowing) -> date:
    """The last day of harvest; of what was lost before any, the day it was."""
    return max((taken.day for taken in one.harvest), default=one.clear_on)


def _task_record(one: Task) -> Record:
    return {
        "id": one.id,
        "on": one.on.isoformat(),
        "kind": one.kind.value,
        "sowing": one.sowing,
        "bed": one.bed,
        "place": one.place,
        "text": one.text,
    }


def _unmet_record(one: Unmet) -> Record:
    return {
        "crop": one.crop,
        "week": str(one.week),
        "amount": _round(one.amount),
        "kind": one.reason.kind.value,
        "why": one.reason.why,
        "remedy": one.reason.remedy,
    }


def _measures_record(measures: Measures) -> Record:
    return {
        "fill": _round(measures.fill),
        "weeks_met": _round(measures.weeks_met),
        "surplus": _round(measures.surplus),
        "bound": _round(measures.bound),
        "gap": _round(measures.gap),
    }


def _round(value: float) -> float:
    return round(value, _PLACES)


def read_record(record: Record, garden: Garden, as_of: date, file: str) -> EarlierSeason | Problem:
    """What a new season made on `as_of` keeps of a record, or why it cannot be kept.

    A sowing whose crop, unit or bed is gone from the plan cannot be kept. It is in the way only
    while it is in the ground or in trays; else it is let go, and no other gets its name.
    """
    wrong = what_is_wrong(record)
    if wrong:
        return season_unreadable(file, f"{wrong[0].upper()}{wrong[1:]}.")
    try:
        plan_id = UUID(record["plan_id"])
        names = _names_given(record)
        sowings = []
        for one in record["sowings"]:
            sowing = _sowing(one, garden)
            if sowing is not None:
                sowings.append(sowing)
            elif _grows_on(as_of, one):
                return _no_longer_fits(file, one["id"])
    except KeyError as error:
        return season_unreadable(file, f"It has no readable {error}.")
    except (TypeError, ValueError, AttributeError, OverflowError, IndexError):
        return season_unreadable(file, "Something in it is not what it should be.")
    return EarlierSeason(plan_id, tuple(sowings), names, str(record.get("basis", "")))


def _names_given(record: Record) -> dict[str, int]:
    """The highest number given to each crop, those of sowings that are let go among them."""
    names = {str(crop): int(number) for crop, number in record["names_given"].items()}
    for sowing in record["sowings"]:
        crop, _, number = sowing["id"].rpartition(" ")
        names[crop] = max(names.get(crop, 0), int(number))
    return names


def _grows_on(as_of: date, one: Record) -> bool:
    """Whether a sowing was begun before a day and is not yet cleared then."""
    sow_on, clear_on = _day(one["sow_on"]), _day(one["clear_on"])
    return sow_on < as_of <= clear_on


def _no_longer_fits(file: str, name: str) -> Problem:
    return Problem(
        "season-no-longer-fits",
        Place(file),
        f"{name} has begun, but its crop, its unit or its bed is no longer in the plan.",
        "leave crop and bed in garden.toml until it is cleared.",
    )


def _sowing(one: Record, garden: Garden) -> Sowing | None:
    state = SowingState(one["state"])
    if not one["blocks"] or not (one["harvest_days"] or state is not SowingState.PLANNED):
        raise KeyError(_WHOLE)
    crop = garden.crops.get(one["crop"])
    blocks = tuple(_block(block) for block in one["blocks"])
    factor = _factor(UNITS[one["unit"]], crop) if crop else None
    if crop is None or factor is None or not all(_stands(block, garden) for block in blocks):
        return None
    early, likely, late = (_day(one["first_pick_on"][case]) for case in ("early", "likely", "late"))
    set_out_on = one["set_out_on"]
    return Sowing(
        id=str(one["id"]),
        crop=crop,
        method=Method(one["method"]),
        sow_on=_day(one["sow_on"]),
        emerges_on=_day(one["emerges_on"]),
        set_out_on=_day(set_out_on) if set_out_on else None,
        ripe=Ripening(early, likely, late),
        counted=str(one["dates_counted"]),
        plants=int(one["plants"]),
        seeds=int(one["seeds"]),
        blocks=blocks,
        harvest=tuple(
            HarvestDay(_day(taken["on"]), float(taken["amount"]) * factor)
            for taken in one["harvest_days"]
        ),
        clear_on=_day(one["clear_on"]),
        state=state,
        why=tuple(str(sentence) for sentence in one["why"]),
    )


def _day(written: str) -> date:
    """A day of a year that a season can have; others are damage, and beyond what can be counted."""
    day = date.fromisoformat(written)
    if not _FIRST_YEAR <= day.year <= _LAST_YEAR:
        raise ValueError(written)
    return day


def _factor(unit: Unit, crop: Crop) -> float | None:
    """What turns amounts kept in `unit` into the crop's unit of today."""
    if unit.dimension is not crop.unit.dimension:
        return None
    return unit.factor / crop.unit.factor


def _block(one: Record) -> Block:
    return Block(
        bed=str(one["bed"]),
        from_um=round(one["from_m"] * 1e6),
        to_um=round(one["to_m"] * 1e6),
        enter_on=_day(one["enter_on"]),
        leave_on=_day(one["leave_on"]),
        under=str(one["under"] or ""),
    )


def _stands(block: Block, garden: Garden) -> bool:
    return any(bed.name == block.bed and block.to_um <= bed.line_um for bed in garden.beds)
