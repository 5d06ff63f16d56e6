"""The seed-starting list: what is raised indoors, and when it moves on."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from planner.garden import Crop, Emergence, NoHeatNeeds, Paper, usual_paper
from planner.scheduling import Sowing, SowingState
from planner.sheets.day_words import day_words
from planner.sheets.frame import Frame, frame_of
from planner.sheets.letters import shown
from planner.sheets.typesetter import typeset
from planner.sheets.work import Work
from planner.tasks import TaskKind
from planner.terms import UNITS, count_words

_GONE = {SowingState.CLEARED, SowingState.LOST}
_LONGEST_NAME = 40


@dataclass(frozen=True, slots=True)
class SeedRow:
    """One sowing raised indoors.

    `warmth` is what seed comes up at, `quickest` where it is up first; empty where not known.
    """

    start_on: str
    sowing: str
    seeds: str
    plants: str
    depth: str
    warmth: str
    quickest: str
    up: str
    up_about: str
    harden_on: str
    set_out_on: str


@dataclass(frozen=True, slots=True)
class _SeedStarting:
    frame: Frame
    rows: tuple[SeedRow, ...]


def write_seed_starting(work: Work) -> bytes:
    """What is still in trays, or to be started in them, on the day of planning."""
    return typeset(
        "seed_starting",
        _SeedStarting(
            frame=frame_of(work),
            rows=tuple(_rows(work)),
        ),
    )


def _rows(work: Work) -> Iterator[SeedRow]:
    tasks = {(one.sowing, one.kind): one for one in work.tasks}
    for sowing in sorted(work.sowings, key=lambda one: (one.sow_on, one.id)):
        set_out_on = sowing.set_out_on
        start = tasks.get((sowing.id, TaskKind.START_INDOORS))
        harden = tasks.get((sowing.id, TaskKind.HARDEN_OFF))
        if set_out_on is None or set_out_on < work.as_of or start is None or harden is None:
            continue
        if sowing.state not in _GONE:
            yield _row(work, sowing, start.depth, (harden.on, set_out_on))


def _row(work: Work, sowing: Sowing, depth: str, moves: tuple[date, date]) -> SeedRow:
    crop = sowing.crop
    emerge = crop.days_to_emerge
    return SeedRow(
        start_on=day_words(sowing.sow_on),
        sowing=shown(sowing.id, _LONGEST_NAME),
        seeds=count_words(sowing.seeds, crop.start_from.value.removesuffix("s")),
        plants=f"for {count_words(sowing.plants, 'plant')}",
        depth=depth,
        warmth=_warmth(work, crop),
        quickest=_quickest(work, crop),
        up=str(emerge),
        up_about=day_words(sowing.emerges_on),
        harden_on=day_words(moves[0]),
        set_out_on=day_words(moves[1]),
    )


def _warmth(work: Work, crop: Crop) -> str:
    if isinstance(crop.heat, NoHeatNeeds):
        return ""
    low, high = crop.heat.germinates_from.low, crop.heat.germinates_to.high
    return f"{_degrees(work, low)} to {_degrees(work, high)} {_scale(work)}"


def _quickest(work: Work, crop: Crop) -> str:
    """The coolest soil at which no warmth makes seed come up sooner."""
    if isinstance(crop.heat, NoHeatNeeds) or not isinstance(crop.heat.emergence, Emergence):
        return ""
    degc, _ = min(crop.heat.emergence.points, key=lambda point: (point[1], point[0]))
    return f"soonest at {_degrees(work, degc)}"


def _degrees(work: Work, degc: float) -> str:
    unit = UNITS[_scale(work)]
    return f"{(degc - unit.offset) / unit.factor:.0f}"


def _scale(work: Work) -> str:
    return "degF" if usual_paper(work.garden.beds[0].note.unit) is Paper.LETTER else "degC"
