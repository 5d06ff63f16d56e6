"""From sowings to tasks."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import cached_property

from planner.garden import Bed, Cut, Garden, StartFrom, Store
from planner.growth import HARDENING_DAYS
from planner.scheduling import Block, Sowing, SowingState, Workdays
from planner.tasks.task import Task, TaskKind
from planner.terms import Unit, amount_words, count_words, length_words

# Seedlings are thinned about a week after they show. Common practice, no source.
_THIN_AFTER_DAYS = 7


def tasks_of(garden: Garden, sowings: tuple[Sowing, ...]) -> tuple[Task, ...]:
    """Every task of every sowing, in order of day, kind and name."""
    desk = _Desk(garden, sowings)
    tasks = [task for sowing in sowings for task in desk.tasks(sowing)]
    order = {kind: number for number, kind in enumerate(TaskKind)}
    return tuple(sorted(tasks, key=lambda one: (one.on, order[one.kind], one.sowing, one.id)))


@dataclass(frozen=True)
class _Desk:
    """Everything a task's sentence may need."""

    garden: Garden
    sowings: tuple[Sowing, ...]

    @cached_property
    def workdays(self) -> Workdays:
        """Garden days from the first sowing on, so that one begun before the season keeps its."""
        wish = self.garden.wish
        begun = [sowing.sow_on for sowing in self.sowings]
        return Workdays(replace(wish, first=min([wish.first, *begun])))

    @property
    def unit(self) -> Unit:
        """The grower's unit of length: that of the first bed."""
        return self.garden.beds[0].note.unit

    def bed(self, name: str) -> Bed:
        return next(bed for bed in self.garden.beds if bed.name == name)

    def tasks(self, sowing: Sowing) -> Iterator[Task]:
        """All tasks of a sowing; of one cleared or lost early, those up to that day."""
        ended = sowing.state in {SowingState.CLEARED, SowingState.LOST}
        return (one for one in self._all(sowing) if not ended or one.on <= sowing.clear_on)

    def _all(self, sowing: Sowing) -> Iterator[Task]:
        if sowing.set_out_on is not None:
            yield self._start_indoors(sowing)
            yield self._harden_off(sowing, sowing.set_out_on)
            yield self._set_out(sowing, sowing.set_out_on)
        else:
            yield self._sow(sowing)
            yield from self._thin(sowing)
        yield from self._harvests(sowing)
        yield self._clear(sowing)

    def _task(self, sowing: Sowing, kind: TaskKind, on: date, text: str, number: int = 1) -> Task:
        return Task(
            id=f"{sowing.id}/{kind}/{number}",
            on=on,
            kind=kind,
            sowing=sowing.id,
            crop=sowing.crop.name,
            bed=" + ".join(dict.fromkeys(block.bed for block in sowing.blocks)),
            text=text,
            place="; ".join(self._place(block, len(sowing.blocks)) for block in sowing.blocks),
            plants=sowing.plants,
        )

    def _place(self, block: Block, blocks: int) -> str:
        bed = self.bed(block.bed)
        unit = bed.note.unit
        span = f"{length_words(block.from_um, unit)} to {length_words(block.to_um, unit)}"
        way = "clockwise along the rim from the mark" if bed.is_round else "from the marked end"
        named = f"{bed.name}: " if blocks > 1 else ""
        under = f", under {block.under}" if block.under else ""
        return f"{named}{span} {way}{under}"

    def _what_is_sown(self, sowing: Sowing) -> str:
        thing = sowing.crop.start_from.value.removesuffix("s")
        return f"{count_words(sowing.seeds, thing)} of {sowing.crop.name}"

    def _depth(self, sowing: Sowing) -> str:
        depth_um = sowing.crop.ground.sowing_depth.middle * 1000
        return "on the surface" if depth_um == 0 else length_words(depth_um, self.unit)

    def _spacing(self, sowing: Sowing) -> str:
        return length_words(sowing.crop.ground.spacing_um, self.unit)

    def _start_indoors(self, sowing: Sowing) -> Task:
        depth = self._depth(sowing)
        text = (
            f"Start {self._what_is_sown(sowing)} in trays, {depth}{_deep(depth)}, "
            f"for {_plants(sowing)}.{_ready(sowing)}"
        )
        task = self._task(sowing, TaskKind.START_INDOORS, sowing.sow_on, text)
        return _with(task, seeds=sowing.seeds, depth=depth)

    def _harden_off(self, sowing: Sowing, set_out_on: date) -> Task:
        on = self._harden_day(sowing.sow_on, set_out_on)
        text = (
            f"Begin to harden off {_plants(sowing)} of {sowing.crop.name}: outside by day, "
            "in at night, a little longer each day. Not in wind or below 45 degF (7 degC)."
        )
        return self._task(sowing, TaskKind.HARDEN_OFF, on, text)

    def _harden_day(self, sow_on: date, set_out_on: date) -> date:
        """The garden day nearest to a week before setting out, the earlier of equals.

        Where the last two weeks indoors have none, a day on which somebody is there.
        """
        begin = set_out_on - timedelta(days=HARDENING_DAYS)
        earliest = set_out_on - timedelta(days=2 * HARDENING_DAYS)
        first = max(sow_on + timedelta(days=1), earliest)
        days = self.workdays.usable(first, set_out_on - timedelta(days=1))
        return min(days, key=lambda day: (abs((day - begin).days), day), default=begin)

    def _set_out(self, sowing: Sowing, on: date) -> Task:
        spacing = self._spacing(sowing)
        text = f"Set out {_plants(sowing)} of {sowing.crop.name}, {spacing} apart."
        if sowing.crop.frost.hardiness.killed_by_frost:
            cover = self.garden.wish.cover_weeks
            text += " Cover them." if cover else ""
            text += " Freeze dates are odds: look at the forecast first."
        text += _shares(sowing)
        return _with(self._task(sowing, TaskKind.SET_OUT, on, text), spacing=spacing)

    def _sow(self, sowing: Sowing) -> Task:
        depth, spacing = self._depth(sowing), self._spacing(sowing)
        what = self._what_is_sown(sowing)
        if sowing.crop.start_from is StartFrom.SEED:
            text = f"Sow {what}, {depth}{_deep(depth)}, for {_plants(sowing)} {spacing} apart."
        else:
            text = f"Plant {what}, {depth}{_deep(depth)}, {spacing} apart."
        text += _shares(sowing) + _ready(sowing)
        task = self._task(sowing, TaskKind.SOW, sowing.sow_on, text)
        return _with(task, seeds=sowing.seeds, depth=depth, spacing=spacing)

    def _thin(self, sowing: Sowing) -> Iterator[Task]:
        if sowing.seeds <= sowing.plants:
            return
        on = self.workdays.on_or_after(sowing.emerges_on + timedelta(days=_THIN_AFTER_DAYS))
        if on is None or on >= sowing.ripe.early:
            return
        spacing = self._spacing(sowing)
        text = f"Thin {sowing.crop.name} to {_plants(sowing)}, {spacing} apart."
        yield _with(self._task(sowing, TaskKind.THIN, on, text), spacing=spacing)

    def _harvests(self, sowing: Sowing) -> Iterator[Task]:
        habit = sowing.crop.habit
        kind = TaskKind.CUT if isinstance(habit, Cut) else TaskKind.PICK
        verb = "Cut" if kind is TaskKind.CUT else "Pick"
        if isinstance(habit, Store):
            verb = "Lift and cure"
        for number, taken in enumerate(sowing.harvest, 1):
            amount = amount_words(taken.amount, sowing.crop.unit)
            text = f"{verb} {sowing.crop.name}: about {amount}."
            yield self._task(sowing, kind, taken.day, text, number)

    def _clear(self, sowing: Sowing) -> Task:
        followers = sorted(
            other.id
            for other in self.sowings
            if any(_follows(after, before) for before in sowing.blocks for after in other.blocks)
        )
        standing = self._hosts_standing(sowing)
        if standing:
            text = f"Cut {sowing.crop.name} off at the soil line; {_listed(standing)} stands on."
            return self._task(sowing, TaskKind.CLEAR, sowing.clear_on, text)
        text = f"Clear {sowing.crop.name} and freshen the ground with compost."
        staying = self._guests_staying(sowing)
        if staying:
            stay = "stays" if len(staying) == 1 else "stay"
            text += f" {_listed(staying)} {stay} there: work round them."
        if followers:
            text += f" {_listed(followers)} {_follow(followers)} the same day."
        return self._task(sowing, TaskKind.CLEAR, sowing.clear_on, text)

    def _hosts_standing(self, guest: Sowing) -> list[str]:
        """The hosts of a guest that still stand when it is cleared."""
        hosts = {block.under for block in guest.blocks}
        return [one.id for one in self.sowings if one.id in hosts and one.clear_on > guest.clear_on]

    def _guests_staying(self, host: Sowing) -> list[str]:
        """The guests of a host that stand on when it is cleared."""
        return [
            one.id
            for one in self.sowings
            if one.clear_on > host.clear_on and any(block.under == host.id for block in one.blocks)
        ]


def _shares(sowing: Sowing) -> str:
    """Where a guest goes among its host's plants."""
    hosts = sorted({block.under for block in sowing.blocks if block.under})
    return f" Between the plants of {_listed(hosts)}." if hosts else ""


def _plants(sowing: Sowing) -> str:
    return count_words(sowing.plants, "plant")


def _listed(names: list[str]) -> str:
    """Names as a sentence lists them."""
    *others, last = names
    return f"{', '.join(others)} and {last}" if others else last


def _follow(names: list[str]) -> str:
    return "follows" if len(names) == 1 else "follow"


def _ready(sowing: Sowing) -> str:
    """When it should be ready and how that was counted; its source is told by `why`."""
    ripe = sowing.ripe.likely
    counted = "by heat" if sowing.counted.startswith("by heat") else sowing.counted
    return f" Ready about {ripe.day} {ripe:%B}, {counted}."


def _deep(depth: str) -> str:
    return "" if depth.startswith("on") else " deep"


def _follows(after: Block, before: Block) -> bool:
    return (
        after.bed == before.bed
        and after.enter_on == before.leave_on
        and after.from_um < before.to_um
        and before.from_um < after.to_um
    )


def _with(task: Task, seeds: int | None = None, depth: str = "", spacing: str = "") -> Task:
    return replace(task, seeds=seeds, depth=depth, spacing=spacing)
