"""Heat: the degree-days of one day, from its low and its high.

A day's heat is how far its temperature stands above a base, on average over the day, with all
that rises above an upper temperature cut off level (the horizontal cut-off):

    heat = above(base) - above(upper),   above(t) = mean over the day of max(0, T - t)

Between low L and high H (M halfway, s = sqrt((H - t) (t - L))) the course of the day is taken as

    a triangle   above(t) = (H - t)^2 / (2 (H - L))
    a sine       above(t) = ((M - t) (pi/2 - atan2(t - M, s)) + s) / pi

Wholly above t both are M - t, wholly below it 0. The single forms use the day's own low for both
halves, the double forms fall to the next day's low in the second half. Any one unit of
temperature serves, and heat comes out in that unit times days. Low and high may change places
(a night warmer than its day). Missing temperatures (nan) are the caller's to fill.

Sources: ZALOM83/DEGDAY (single and double triangle and sine, horizontal cut-off),
MCMASTER97/DEGDAY (the two means).
"""

import math
from collections.abc import Sequence

NO_UPPER = math.inf


def single_triangle(low: float, high: float, base: float, upper: float = NO_UPPER) -> float:
    """Heat of a day that rises straight from its low to its high and falls back to it."""
    return _triangle_above(low, high, base) - _triangle_above(low, high, upper)


def double_triangle(
    low: float, high: float, next_low: float, base: float, upper: float = NO_UPPER
) -> float:
    """Heat of a day that rises straight to its high and falls to the next day's low."""
    rising = single_triangle(low, high, base, upper)
    return (rising + single_triangle(next_low, high, base, upper)) / 2


def single_sine(low: float, high: float, base: float, upper: float = NO_UPPER) -> float:
    """Heat of a day that swings as a sine between its low and its high."""
    return _sine_above(low, high, base) - _sine_above(low, high, upper)


def double_sine(
    low: float, high: float, next_low: float, base: float, upper: float = NO_UPPER
) -> float:
    """Heat of a day that swings as a sine up to its high and down to the next day's low."""
    rising = single_sine(low, high, base, upper)
    return (rising + single_sine(next_low, high, base, upper)) / 2


def simple_mean(low: float, high: float, base: float, upper: float = NO_UPPER) -> float:
    """Heat by the day's mean: mean (at most `upper`) less base, never below 0 (method 1)."""
    return max(0.0, min((low + high) / 2, upper) - base)


def floored_mean(low: float, high: float, base: float, upper: float = NO_UPPER) -> float:
    """Heat by a mean of low and high, each first brought between base and upper (method 2)."""
    low_within = min(max(low, base), upper)
    high_within = min(max(high, base), upper)
    return (low_within + high_within) / 2 - base


def heat_sums(
    low_degc: Sequence[float], high_degc: Sequence[float], base: float, upper: float = NO_UPPER
) -> list[float]:
    """Heat gathered before each day, by the single sine: one number more than there are days.

    The first is 0. From day i up to, not including, day j a crop has gathered
    `sums[j] - sums[i]` degree-days. Gaps (nan) are the caller's to fill.

    Raises:
        ValueError: a low or high is missing, their numbers differ, or upper is below base.
    """
    if not all(map(math.isfinite, (*low_degc, *high_degc))):
        message = "fill the missing lows and highs before summing heat"
        raise ValueError(message)
    if upper < base:
        message = f"the upper temperature {upper:g} lies below the base {base:g}"
        raise ValueError(message)
    total = 0.0
    sums = [total]
    for low, high in zip(low_degc, high_degc, strict=True):
        if low >= base and high <= upper:
            total += (low + high) / 2 - base  # wholly between the two: the mean is exact
        elif high > base:
            total += single_sine(low, high, base, upper)
        sums.append(total)
    return sums


def _triangle_above(low: float, high: float, threshold: float) -> float:
    if low <= threshold and high <= threshold:
        return 0.0
    if low >= threshold and high >= threshold:
        return (low + high) / 2 - threshold
    return (max(low, high) - threshold) ** 2 / (2 * abs(high - low))


def _sine_above(low: float, high: float, threshold: float) -> float:
    if low <= threshold and high <= threshold:
        return 0.0
    below_mean = (low + high) / 2 - threshold
    if low >= threshold and high >= threshold:
        return below_mean
    reach = math.sqrt((high - threshold) * (threshold - low))
    return (below_mean * (math.pi / 2 - math.atan2(-below_mean, reach)) + reach) / math.pi
