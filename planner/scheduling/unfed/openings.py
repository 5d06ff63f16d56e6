"""Openings: how many unmet weeks a cover or an earlier beginning would let some sowing feed."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date, timedelta

from planner.climate import Climate
from planner.garden import Garden, SeasonWish
from planner.scheduling.starts import crop_candidates
from planner.scheduling.unmet import Unmet, UnmetKind
from planner.terms import Week

_COVER_WEEKS = 4.0
_EARLIER = timedelta(weeks=4)
_EARLY = {UnmetKind.TOO_EARLY, UnmetKind.FROST, UnmetKind.BETWEEN}


@dataclass(frozen=True, slots=True)
class Opening:
    """What could be changed, in words, and the weeks it opens for each crop."""

    change: str
    weeks: dict[str, int]


def openings(
    garden: Garden, climate: Climate, as_of: date, unmet: tuple[Unmet, ...]
) -> tuple[Opening, ...]:
    """What a cover, or beginning earlier, would open of the weeks that nothing can feed yet."""
    shut: dict[str, set[Week]] = {}
    for one in unmet:
        if one.reason.kind in _EARLY:
            shut.setdefault(one.crop, set()).add(one.week)
    if not shut:
        return ()
    found = []
    for change, wish, day in _changes(garden.wish, as_of):
        weeks = dict(_opened(garden, climate, (wish, day), shut))
        if weeks:
            found.append(Opening(change, weeks))
    return tuple(found)


def _changes(wish: SeasonWish, as_of: date) -> Iterator[tuple[str, SeasonWish, date]]:
    if wish.cover_weeks < _COVER_WEEKS:
        covered = replace(wish, cover_weeks=_COVER_WEEKS)
        words = f"a cover that lets tender plants out {_COVER_WEEKS:g} weeks earlier"
        yield words + " (cover_weeks)", covered, as_of
    if as_of <= wish.first:
        earlier = replace(wish, first=wish.first - _EARLIER)
        yield "a season that begins 4 weeks earlier (from)", earlier, as_of - _EARLIER


def _opened(
    garden: Garden,
    climate: Climate,
    change: tuple[SeasonWish, date],
    shut: dict[str, set[Week]],
) -> Iterator[tuple[str, int]]:
    wish, day = change
    targets = tuple(one for one in garden.targets if one.crop.name in shut)
    other = replace(garden, wish=wish, targets=targets)
    for found in crop_candidates(other, climate, day):
        name = found.about.crop.name
        fed = {week for one in found.candidates for week in one.days}
        if shut[name] & fed:
            yield name, len(shut[name] & fed)
