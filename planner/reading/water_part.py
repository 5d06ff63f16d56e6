"""Water in the text: drip lines of beds, rain, evaporation, and how often is watered (§48)."""

from collections.abc import Sequence

from planner.almanac import ANY_OTHER, crop_waters, usual_figures
from planner.garden import CropWater, Drip, MonthlyDepth, NoDrip, NotTold, Target, WaterWish
from planner.reading.crops_file import CropShelf
from planner.reading.months import read_twelve
from planner.reading.own_figures import own_or_usual, own_or_usual_count
from planner.reading.toml_table import TomlTable
from planner.terms import UNITS, Dimension, Flow, read_flow

_DRIP_EXAMPLE = '{ emitters = 24, each = "0.5 gal/h" }'
_FLOW_EXAMPLES = '"12 gal/h", or as measured "3 gal in 15 min"'
_LEAST_L_PER_H, _MOST_L_PER_H = 0.1, 20_000.0
_MOST_EMITTERS = 10_000
_MOST_MM_A_MONTH = 1500.0
_SHARES = (0.05, 1.0)


def read_drip(table: TomlTable) -> Drip | NoDrip | None:
    """What a bed's drip line gives; what was measured rules over what is stamped on emitters."""
    stamped = _read_emitters(table) if "drip" in table else NoDrip()
    if "flow" not in table:
        return stamped
    flow = _read_flow(table, "flow")
    return None if flow is None or stamped is None else Drip(flow, table.source("flow"))


def _read_emitters(table: TomlTable) -> Drip | None:
    drip = table.table("drip", "A drip line", _DRIP_EXAMPLE)
    if drip is None:
        return None
    known = [drip.need("emitters", "emitters = 24"), drip.need("each", 'each = "0.5 gal/h"')]
    emitters = drip.whole_number("emitters", 1, _MOST_EMITTERS)
    each = _read_flow(drip, "each") if all(known) else None
    drip.refuse_unknown()
    if emitters is None or each is None:
        return None
    in_all = Flow(emitters * each.l_per_h, each.measured)
    return Drip(in_all, table.source("drip"))


def _read_flow(table: TomlTable, key: str) -> Flow | None:
    written = table.text(key, '"12 gal/h"')
    if written is None:
        return None
    flow = read_flow(written)
    if flow is None:
        wrong = f'"{written}" is not so much water in a time.'
        table.report("bad-quantity", key, wrong, f"write it like {_FLOW_EXAMPLES}.")
        return None
    if not _LEAST_L_PER_H <= flow.l_per_h <= _MOST_L_PER_H:
        wrong = f'"{written}" is less or more than a garden line gives.'
        table.report("out-of-range", key, wrong, "check the number and its units.")
        return None
    return flow


def read_timer(table: TomlTable) -> str | None:
    """The name of the timer a bed shares with others; empty where it shares none."""
    return table.text("timer") if "timer" in table else ""


def read_water(plan: TomlTable, shelf: CropShelf, targets: Sequence[Target]) -> WaterWish:
    """What watering is counted with: the plan's own figures over the usual ones."""
    table = plan.table("water", "The water part") if "water" in plan else None
    usual = usual_figures("water")
    factor = UNITS["in"].factor * 1000
    wish = WaterWish(
        efficiency=own_or_usual(table, "efficiency", _SHARES, usual["efficiency"]),
        rain=_read_months(table, "rain"),
        rain_used=own_or_usual(table, "rain_used", _SHARES, usual["rain_used"]),
        evaporation=_read_months(table, "evaporation"),
        rule_mm=usual["rule"].times(factor, "mm"),
        runs_each_week=own_or_usual_count(table, "runs_each_week", (1, 7), usual["runs_each_week"]),
        longest_run_minutes=own_or_usual(
            table, "longest_run_minutes", (1.0, 1440.0), usual["longest_run"]
        ),
        crops=_crops(shelf, targets),
        other=crop_waters()[ANY_OTHER],
    )
    if table is not None:
        table.refuse_unknown()
    return wish


def _crops(shelf: CropShelf, targets: Sequence[Target]) -> dict[str, CropWater]:
    """The figures of each crop wanted; a crop of one's own has those of the crop it is like."""
    known = crop_waters()
    names = {target.crop.name: shelf.model(target.crop.name) for target in targets}
    return {name: known[model] for name, model in names.items() if model in known}


def _read_months(table: TomlTable | None, key: str) -> MonthlyDepth | NotTold:
    if table is None or key not in table:
        return NotTold()
    of_what = "depths of water, each month's in all"
    metres = read_twelve(table, key, Dimension.LENGTH, of_what, '"3.1 in" or "80 mm"')
    if metres is None:
        return NotTold()
    depths_mm = tuple(depth * 1000 for depth in metres)
    if not all(0 <= one <= _MOST_MM_A_MONTH for one in depths_mm):
        wrong = "A month has between 0 and 1500 mm (59 in) of it."
        table.report("out-of-range", key, wrong, "check the twelve numbers and their unit.")
        return NotTold()
    return MonthlyDepth(depths_mm, table.source(key))
