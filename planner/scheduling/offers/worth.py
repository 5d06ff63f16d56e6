"""Worth: what the chooser weighs, in thousandths of everything that is wanted (rules §31).

Unmet wants weigh most, then surplus, then the number of sowings, then ground held.
"""

from dataclasses import dataclass

# One thousand stands for everything that is wanted.
EVERYTHING = 1000.0
# A harvest nobody wants costs this share of what it would be worth if it were wanted.
_SURPLUS = 0.02
# What plants could bring in weeks that do not want it counts so much of a surplus: it may stay on
# them, or they go earlier.
UNPICKED = 0.4
# A sowing costs as much as this share of an average wanted week going without.
_SOWING = 0.015
# Raising plants indoors is more work than sowing in place.
_INDOORS = 1.2
# Tending a guest among its host's plants is more work than tending ground of its own.
GUEST = 2.0
# A week in the store before it is first wanted makes a harvest so much worse.
_WAITING = 0.05
# One more stretch of a sowing costs as much as so many sowings: stretches are hard to find again.
SPLIT = 1.5
# A sowing added to an earlier season or dropped from it costs as much as so many sowings, one that
# only stands elsewhere or larger or smaller half of it.
_CHANGE = 8.0
ELSEWHERE = 0.5
# Holding all ground all season long.
_ALL_GROUND = 1.0


@dataclass(frozen=True, slots=True)
class Worth:
    """What a sowing costs, a metre of ground for a day, and a harvest nobody wants.

    `surplus` is a share of what the harvest would be worth if it were wanted. `change` is what a
    sowing of an earlier season costs that is dropped, and one that it did not have (rules §36).
    """

    sowing: float
    metre_day: float
    surplus: float
    change: float = 0.0


ONLY_WANTS = Worth(0.0, 0.0, 0.0)


def work_of(*, direct: bool, weeks_waiting: float) -> float:
    """How much work a sowing is, against one sown in place and harvested as it is wanted."""
    return (1.0 if direct else _INDOORS) * (1 + _WAITING * weeks_waiting)


def worth_of(wanted_weeks: int, line_m: float, days: int, *, changes_count: bool) -> Worth:
    """The weights for so many wanted weeks of all crops, and so much of beds for so many days."""
    sowing = _SOWING * EVERYTHING / max(1, wanted_weeks)
    change = _CHANGE * sowing if changes_count else 0.0
    return Worth(sowing, _ALL_GROUND / max(line_m * days, 1.0), _SURPLUS, change)
