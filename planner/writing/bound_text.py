"""How near the season comes to the best there could be, and what would help most, in sentences."""

import math
from collections.abc import Iterator, Mapping
from statistics import fmean

from planner.scheduling import MoreGround, Opening
from planner.season import Season
from planner.terms import count_words
from planner.writing.paragraph import paragraphs
from planner.writing.share_words import share_words

_MOST_CROPS = 3
_MOST_REPEATS = 3
_AS_GOOD = 0.0005


def bound_text(season: Season, by_thumb: float, width: int) -> str:
    """The bound, the rule of thumb beside it, and by numbers what would help.

    `by_thumb` is the share a fixed sowing interval would meet on the same ground.
    """
    return paragraphs([_bound(season), _thumb(by_thumb), *help_sentences(season)], width)


def promise_text(season: Season, width: int) -> str:
    """What the season promises: what past years bring, where there are any to try it in."""
    shares = season.measures
    counts = f"{len(season.sowings)} sowings, {len(season.tasks)} tasks"
    weeks = f"{share_words(shares.weeks_met)} of weeks in full"
    likely = f"{share_words(shares.fill)} of all that is wanted, {weeks}"
    tried = [f"{one} By the likely dates alone it would be {likely}." for one in _tried(season)]
    return paragraphs([f"{counts}.", *tried] if tried else [f"{counts}; {likely}."], width)


def bound_sentences(season: Season) -> tuple[str, ...]:
    """What may be counted on, and the bound."""
    return (*_tried(season), _bound(season))


def help_sentences(season: Season) -> tuple[str, ...]:
    """What would help, and families that come back."""
    return (*_help(season), *_repeats(season))


def _tried(season: Season) -> Iterator[str]:
    """What may be counted on: the mean of past years, not what the likely dates would give."""
    fills = season.tried_fills
    if fills:
        yield (
            f"Count on {_share(fmean(fills))} of what you want: so much it gives in an average of "
            f"{count_words(len(fills), 'past year')}, {_share(min(fills))} in the worst and "
            f"{_share(max(fills))} in the best."
        )


def _bound(season: Season) -> str:
    measures = season.measures
    words = f"No plan for these beds can meet more than {_share(measures.bound)} of what you want"
    if measures.gap < _AS_GOOD:
        return f"{words}, and this one meets as much."
    return f"{words}; by its likely dates this one meets {_share(measures.fill)}."


def _thumb(by_thumb: float) -> str:
    return f"Sown at fixed intervals the same beds would give {_share(by_thumb)} (rule of thumb)."


def _share(value: float) -> str:
    """A share in per cent, never rounded up to all of it."""
    per_cent = int(value * 1000 + 1e-6) / 10
    return f"{per_cent:g}%"


def _help(season: Season) -> Iterator[str]:
    if season.more_ground:
        yield _more_ground(season, season.more_ground[0])
    for opening in season.openings:
        yield _opening(opening)


def _more_ground(season: Season, more: MoreGround) -> str:
    weights = season.garden.weights()
    shares = {
        crop: gain / math.fsum(weights[crop].values())
        for crop, gain in more.by_crop.items()
        if gain > 0
    }
    most = sorted(shares, key=lambda crop: (-shares[crop], crop))[:_MOST_CROPS]
    crops = ", ".join(f"{crop} {_share(shares[crop])}" for crop in most if shares[crop] >= 0.001)
    return (
        f"One more bed like {more.like} would bring at most {_share(more.gain)} of everything "
        f"(of what is wanted of each: {crops})."
    )


def _opening(opening: Opening) -> str:
    weeks = ", ".join(
        f"{count_words(many, 'week')} of {crop}" for crop, many in _largest(opening.weeks)
    )
    return f"With {opening.change} there would be something in weeks that now get nothing: {weeks}."


def _largest(weeks: Mapping[str, int]) -> list[tuple[str, int]]:
    return sorted(weeks.items(), key=lambda one: (-one[1], one[0]))[:_MOST_CROPS]


def _repeats(season: Season) -> Iterator[str]:
    repeats = season.repeats
    if not repeats:
        return
    told = [f"{one.sowing} after {one.after} in {one.bed}" for one in repeats[:_MOST_REPEATS]]
    more = len(repeats) - len(told)
    if more:
        told.append(f"and {count_words(more, 'more sowing')}")
    yield (
        "The same family comes back to the same ground within a year, because no other ground was "
        f"free and as good: {', '.join(told)}. Look out for its pests and diseases there."
    )
