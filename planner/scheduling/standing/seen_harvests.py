"""Seen harvests: first harvests as predicted and as they came, for the garden's own pace (§37)."""

from collections.abc import Iterator, Mapping
from datetime import date

from planner.growth import Observation, begun_course
from planner.journal import Event, History, Journal
from planner.scheduling.sowing import Sowing
from planner.scheduling.starts import CropCandidates, CropTimes, candidate_of


def seen_harvests(
    found: Mapping[str, CropCandidates], earlier: tuple[Sowing, ...], journal: Journal
) -> Iterator[Observation]:
    """One observation for every sowing of the season whose first picking is told.

    The prediction is by the real dates of sowing and setting out, without the garden's own pace,
    and falls on a garden day as the picking does.
    """
    histories = journal.histories
    for one in earlier:
        history = histories.get(one.id)
        about = found[one.crop.name].about if one.crop.name in found else None
        if history is None or about is None or one.enters_on < about.workdays.wish.first:
            continue
        if history.first_pick_on is not None:
            yield from _seen(one, history, about, history.first_pick_on)


def _seen(
    one: Sowing, history: History, about: CropTimes, first_pick: date
) -> Iterator[Observation]:
    sow_on = history.day_of(Event.SOWN) or one.sow_on
    set_out_on = history.day_of(Event.SET_OUT) or one.set_out_on
    course = begun_course(one.crop, one.way, sow_on, set_out_on, about.conditions)
    predicted = min(candidate_of(about, course).days.values(), default=course.ripe.likely)
    days = (predicted - course.enters_on).days
    if days > 0:
        yield Observation(one.crop.name, days, (first_pick - course.enters_on).days)
