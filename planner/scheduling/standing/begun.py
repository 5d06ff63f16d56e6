"""Begun sowings: which of an earlier season stand, and which may still move (rules §35)."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date, timedelta
from itertools import product

from planner.garden import Garden
from planner.journal import Event, History, Journal
from planner.scheduling.sowing import Block, Method, Sowing, SowingState
from planner.scheduling.standing.as_it_stands import as_it_stands
from planner.scheduling.starts import CropCandidates

# Plants ready to be set out stand so much longer in their trays for ground that is not yet free;
# common practice, no source.
_WAITS = timedelta(days=10)


@dataclass(frozen=True, slots=True)
class Begun:
    """The sowings of an earlier season: those standing as they are, those still to move.

    `missed` holds those that were to be begun and were not, and those lost in their trays; they
    are let go with their names.
    """

    standing: tuple[Sowing, ...]
    movable: tuple[Sowing, ...]
    missed: tuple[Sowing, ...]


def begun_of(
    garden: Garden,
    found: Mapping[str, CropCandidates],
    as_of: date,
    earlier: tuple[Sowing, ...],
    journal: Journal,
) -> Begun:
    """What stands on a day, by the plan and by what the journal tells up to that day.

    A sowing of which nothing is told was begun on the day it was planned. Whoever is to be host
    to one that stands in its trays is bound to be, and stands with it. Those that were gone
    before the season's first day, the ground rested, are let go.
    """
    histories = journal.as_of(as_of).histories
    missed = [one for one in earlier if _is_missed(one, histories.get(one.id))]
    rest = timedelta(days=garden.wish.turnover_days)
    standing, movable = [], []
    for one in earlier:
        history = histories.get(one.id, History())
        if one in missed:
            continue
        if not _is_begun(one, history, as_of):
            movable.append(replace(one, state=SowingState.PLANNED))
            continue
        stands = as_it_stands(replace(one, state=SowingState.BEGUN), history, garden, found, as_of)
        if not stands.blocks:
            missed.append(one)
        elif stands.clear_on >= as_of or stands.clear_on + rest >= garden.wish.first:
            standing.append(stands)
    hosts = {block.under for one in standing for block in one.blocks}
    standing += [one for one in movable if one.id in hosts]
    movable = [one for one in movable if one.id not in hosts]
    waiting = _Waiting(garden, found, as_of, histories)
    return Begun(_making_way(waiting.let_wait(standing), rest), tuple(movable), tuple(missed))


def _is_begun(sowing: Sowing, history: History, as_of: date) -> bool:
    told = (Event.SOWN, Event.EMERGED, Event.SET_OUT, Event.PICKED)
    return sowing.sow_on < as_of or any(history.day_of(event) for event in told)


def _is_missed(sowing: Sowing, history: History | None) -> bool:
    """Whether a sowing was never begun; what was raised and not set out stands in its trays."""
    if history is None or history.day_of(Event.MISSED) is None:
        return False
    raised = sowing.method is Method.INDOORS and (
        history.day_of(Event.SOWN) or history.day_of(Event.EMERGED)
    )
    return not raised and history.day_of(Event.SET_OUT) is None


@dataclass(frozen=True, slots=True)
class _Waiting:
    """Plants in trays wait a few days for ground that is not yet free."""

    garden: Garden
    found: Mapping[str, CropCandidates]
    as_of: date
    histories: Mapping[str, History]

    def let_wait(self, standing: list[Sowing]) -> list[Sowing]:
        """What stands, with setting out put off where that is a matter of days."""
        let = [*standing]
        for place, one in sorted(enumerate(standing), key=lambda placed: placed[1].enters_on):
            free_on = self._free_on(one, let)
            if one.enters_on < free_on <= one.enters_on + _WAITS:
                history = self.histories.get(one.id, History())
                let[place] = as_it_stands(
                    one, history, self.garden, self.found, self.as_of, free_on
                )
        return let

    def _free_on(self, one: Sowing, standing: list[Sowing]) -> date:
        """The day what stands in its way has gone from all its ground; of what is out, none."""
        history = self.histories.get(one.id, History())
        in_trays = one.set_out_on is not None and history.day_of(Event.SET_OUT) is None
        if not in_trays or one.enters_on < self.as_of:
            return date.min
        rest = timedelta(days=self.garden.wish.turnover_days)
        leaving = [
            before.leave_on + rest
            for other in standing
            for before, _ in _in_the_way(other, one, rest)
        ]
        return max(leaving, default=date.min)


def _making_way(standing: list[Sowing], rest: timedelta) -> tuple[Sowing, ...]:
    """What stands longer than was planned makes way for what is to enter its ground."""
    made = []
    for one in standing:
        enters = [
            after.enter_on for other in standing for _, after in _in_the_way(one, other, rest)
        ]
        made.append(_cleared_by(one, min(enters) - rest) if enters else one)
    return tuple(made)


def _in_the_way(one: Sowing, other: Sowing, rest: timedelta) -> Iterator[tuple[Block, Block]]:
    """The blocks of one sowing that still hold ground which another's enter after them."""
    if one.id == other.id:
        return
    for before, after in product(one.blocks, other.blocks):
        if (
            before.bed == after.bed
            and before.from_um < after.to_um
            and after.from_um < before.to_um
            and before.enter_on < after.enter_on < before.leave_on + rest
            and after.under != one.id
            and before.under != other.id
        ):
            yield before, after


def _cleared_by(sowing: Sowing, day: date) -> Sowing:
    """The sowing cleared on a day at the latest, and no earlier than the day after it entered."""
    clear_on = max(min(sowing.clear_on, day), sowing.enters_on + timedelta(days=1))
    harvest = tuple(taken for taken in sowing.harvest if taken.day <= clear_on)
    blocks = tuple(replace(block, leave_on=clear_on) for block in sowing.blocks)
    return replace(sowing, clear_on=clear_on, harvest=harvest, blocks=blocks)
