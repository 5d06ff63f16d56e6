"""The tasks of each sowing, from its start to its clearing, with their sentences."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import cached_property

from planner.garden import Cut, Garden, StartFrom, Store
from planner.growth import HARDENING_DAYS
from planner.scheduling import Block, Sowing, SowingState, Workdays
from planner.tasks.task import Task, TaskKind
from planner.terms import amount_words, count_words, day_words, length_words, listed_words

# Seedlings are thinned about a week after they show. Common practice, no source.
_THIN_AFTER_DAYS = 7
_ON_TOP = "on the surface"


def tasks_of(garden: Garden, sowings: tuple[Sowing, ...]) -> tuple[Task, ...]:
    """Every task of every sowing, in order of day, kind and name."""
    season = _Season(garden, sowings)
    tasks = [task for sowing in sowings for task in season.tasks(sowing)]
    order = {kind: number for number, kind in enumerate(TaskKind)}
    return tuple(sorted(tasks, key=lambda one: (one.on, order[one.kind], one.sowing, one.id)))


@dataclass(frozen=True)
class _Season:
    """A garden and all its sowings: what follows a sowing, and what shares its ground."""

    garden: Garden
    sowings: tuple[Sowing, ...]

    @cached_property
    def workdays(self) -> Workdays:
        """Garden days from the first sowing on, so that one begun before the season keeps its."""
        wish = self.garden.wish
        begun = [sowing.sow_on for sowing in self.sowings]
        return Workdays(replace(wish, first=min([wish.first, *begun])))

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
        bed = self.garden.bed(block.bed)
        span = bed.stretch_words(block.from_um, block.to_um)
        named = f"{bed.name}: " if blocks > 1 else ""
        under = f", under {block.under}" if block.under else ""
        return f"{named}{span} {bed.mark_words}{under}"

    def _depth(self, sowing: Sowing) -> str:
        depth_um = sowing.crop.ground.sowing_depth.middle * 1000
        return _ON_TOP if depth_um == 0 else length_words(depth_um, self.garden.unit)

    def _spacing(self, sowing: Sowing) -> str:
        return length_words(sowing.crop.ground.spacing_um, self.garden.unit)

    def _start_indoors(self, sowing: Sowing) -> Task:
        depth = self._depth(sowing)
        text = (
            f"Start {_what_is_sown(sowing)} in trays, {_deep(depth)}, "
            f"for {_plants(sowing)}.{_ready(sowing)}"
        )
        task = self._task(sowing, TaskKind.START_INDOORS, sowing.sow_on, text)
        return replace(task, seeds=sowing.seeds, depth=depth)

    def _harden_off(self, sowing: Sowing, set_out_on: date) -> Task:
        on = self._harden_day(sowing.sow_on, set_out_on)
        text = (
            f"Begin to harden off {_plants(sowing)} of {sowing.crop.name}: outside by day, "
            "in at night, a little longer each day. Not in wind or below 45 degF (7 degC)."
        )
        return self._task(sowing, TaskKind.HARDEN_OFF, on, text)

    def _harden_day(self, sow_on: date, set_out_on: date) -> date:
        """The garden day nearest to a week before setting out, the earlier of equals.

        Where the last two weeks indoors have none, a day on which somebody is there; it is never
        before the sowing.
        """
        begin = set_out_on - timedelta(days=HARDENING_DAYS)
        earliest = set_out_on - timedelta(days=2 * HARDENING_DAYS)
        first = max(sow_on + timedelta(days=1), earliest)
        days = self.workdays.usable(first, set_out_on - timedelta(days=1))
        return min(days, key=lambda day: (abs((day - begin).days), day), default=max(begin, sow_on))

    def _set_out(self, sowing: Sowing, on: date) -> Task:
        spacing = self._spacing(sowing)
        text = f"Set out {_plants(sowing)} of {sowing.crop.name}, {spacing} apart."
        if sowing.crop.frost.hardiness.killed_by_frost:
            cover = self.garden.wish.cover_weeks
            text += " Cover them." if cover else ""
            text += " Freeze dates are odds: look at the forecast first."
        text += _shares(sowing)
        return replace(self._task(sowing, TaskKind.SET_OUT, on, text), spacing=spacing)

    def _sow(self, sowing: Sowing) -> Task:
        depth, spacing = self._depth(sowing), self._spacing(sowing)
        what = _what_is_sown(sowing)
        if sowing.crop.start_from is StartFrom.SEED:
            text = f"Sow {what}, {_deep(depth)}, for {_plants(sowing)} {spacing} apart."
        else:
            text = f"Plant {what}, {_deep(depth)}, {spacing} apart."
        text += _shares(sowing) + _ready(sowing)
        task = self._task(sowing, TaskKind.SOW, sowing.sow_on, text)
        return replace(task, seeds=sowing.seeds, depth=depth, spacing=spacing)

    def _thin(self, sowing: Sowing) -> Iterator[Task]:
        if sowing.seeds <= sowing.plants:
            return
        on = self.workdays.on_or_after(sowing.emerges_on + timedelta(days=_THIN_AFTER_DAYS))
        if on is None or on >= sowing.ripe.early:
            return
        spacing = self._spacing(sowing)
        text = f"Thin {sowing.crop.name} to {_plants(sowing)}, {spacing} apart."
        yield replace(self._task(sowing, TaskKind.THIN, on, text), spacing=spacing)

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
        crop = sowing.crop.name
        standing = self._hosts_standing(sowing)
        if standing:
            text = f"Cut {crop} off at the soil line; {_they(standing, 'stand')} on."
            return self._task(sowing, TaskKind.CLEAR, sowing.clear_on, text)
        text = f"Clear {crop}; for compost see bed work."
        staying = self._guests_staying(sowing)
        if staying:
            text += f" {_they(staying, 'stay')} there: work round them."
        if followers:
            text += f" {_they(followers, 'follow')} the same day."
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
    return f" Between the plants of {listed_words(hosts)}." if hosts else ""


def _plants(sowing: Sowing) -> str:
    return count_words(sowing.plants, "plant")


def _they(names: list[str], do: str) -> str:
    """Names and what they do: "radish 1 follows", "radish 1 and beet 2 follow"."""
    return f"{listed_words(names)} {do if len(names) > 1 else f'{do}s'}"


def _ready(sowing: Sowing) -> str:
    """When it should be ready and how that was counted; its source is told by `why`."""
    ripe = sowing.ripe.likely
    counted = "by heat" if sowing.counted.startswith("by heat") else sowing.counted
    return f" Ready about {day_words(ripe)}, {counted}."


def _what_is_sown(sowing: Sowing) -> str:
    thing = sowing.crop.start_from.value.removesuffix("s")
    return f"{count_words(sowing.seeds, thing)} of {sowing.crop.name}"


def _deep(depth: str) -> str:
    return depth if depth == _ON_TOP else f"{depth} deep"


def _follows(after: Block, before: Block) -> bool:
    return (
        after.bed == before.bed
        and after.enter_on == before.leave_on
        and after.from_um < before.to_um
        and before.from_um < after.to_um
    )
