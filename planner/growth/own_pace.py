"""The garden's own pace: how much faster or slower a crop ripens here than was predicted.

From the first harvests predicted and those that really came, a factor on a crop's days to
maturity (§37). A few harvests move it a little, many move it as far as they agree, and one bad
entry moves it no further than a harvest that was out by a third.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass

# Spread, as a log-ratio, of gardens around what is published for a crop. From memory.
PRIOR_SPREAD = 0.10
# Spread of one harvest around what its garden's pace would have it, weather and all. From memory.
HARVEST_SPREAD = 0.12
# A harvest out by more than this log-ratio (a third too late, a quarter too early) counts as if
# it were out by this much. Ours.
MOST_LOG_RATIO = 0.3
# No garden's factor goes beyond these. Ours.
LEAST_FACTOR, MOST_FACTOR = 0.75, 1.33
# Fewer harvests of a crop tell nothing yet. Ours.
LEAST_SEEN = 3


@dataclass(frozen=True, slots=True)
class Observation:
    """The first harvest of a sowing: days to it as predicted, and as it really came.

    The prediction is that without the garden's own pace, or the pace would count itself again.
    """

    crop: str
    predicted_days: float
    real_days: float

    def __post_init__(self) -> None:
        """A prediction of no days is our own mistake; days that really went by are told."""
        if not (math.isfinite(self.predicted_days) and self.predicted_days > 0):
            message = f"no harvest of {self.crop} is predicted after {self.predicted_days} days"
            raise ValueError(message)

    @property
    def log_ratio(self) -> float:
        """How much longer it took, as a log-ratio kept within what one harvest may say."""
        if not self.real_days > 0:
            return -MOST_LOG_RATIO
        ratio = math.log(self.real_days / self.predicted_days)
        return max(-MOST_LOG_RATIO, min(MOST_LOG_RATIO, ratio))


@dataclass(frozen=True, slots=True)
class OwnPace:
    """A crop's factor on days to maturity in this garden, from so many harvests seen.

    `words` say how it counts; empty where it does not.
    """

    factor: float
    seen: int
    words: str


def own_paces(observations: Iterable[Observation]) -> dict[str, OwnPace]:
    """The garden's own pace for each crop seen, crops by name; the order told does not matter."""
    ratios: dict[str, list[float]] = {}
    for one in observations:
        ratios.setdefault(one.crop, []).append(one.log_ratio)
    return {crop: _own_pace(ratios[crop]) for crop in sorted(ratios)}


def _own_pace(ratios: list[float]) -> OwnPace:
    seen = len(ratios)
    if seen < LEAST_SEEN:
        return OwnPace(1.0, seen, "")
    mean = math.fsum(ratios) / seen  # exact, so the same in whatever order they are told
    weight = seen / (seen + (HARVEST_SPREAD / PRIOR_SPREAD) ** 2)
    factor = max(LEAST_FACTOR, min(MOST_FACTOR, math.exp(weight * mean)))
    return OwnPace(factor, seen, _words(factor, seen))


def _words(factor: float, seen: int) -> str:
    percent = round(abs(factor - 1) * 100)
    way = "as predicted" if not percent else f"{percent}% {'slower' if factor > 1 else 'faster'}"
    return f"this garden's own pace, {way} ({seen} harvests)"
