"""Soil temperature at sowing depth, estimated from the air.

Soil an inch or two down follows the air some days behind. The estimate is the mean of a daily
temperature of the air over the day and the six before it. It is common practice and from memory,
not a measurement. Which temperature of the air to give is the caller's to say: with daily means it
errs on the cold side in spring and summer, since bare soil in full sun runs several degrees C
warmer (beans in an Oregon field came up in 12 to 17 days in late April and 5 to 6 in early July,
OSU-BEAN69, which by the table UCSC-A4 asks for soil near 15 and 30 degrees C); with daily highs it
comes near. A soil thermometer beats it.

Source: memory (trailing mean of about 7 to 10 days).
"""

import math
from collections.abc import Sequence
from itertools import accumulate

TRAILING_DAYS = 7


def soil_degc_by_day(air_degc_by_day: Sequence[float]) -> tuple[float, ...]:
    """Soil temperature of each day of a run of daily air temperatures, degrees C.

    The first six days have fewer days behind them and take the mean of those: give the run a
    week's lead where its first days matter.

    Raises:
        ValueError: a temperature is missing (nan); the caller fills gaps.
    """
    sums = list(accumulate(air_degc_by_day, initial=0.0))
    if not math.isfinite(sums[-1]):
        message = "fill the missing air temperatures before estimating the soil's"
        raise ValueError(message)
    return tuple(
        (sums[day + 1] - sums[first]) / (day + 1 - first)
        for day, first in ((day, max(0, day + 1 - TRAILING_DAYS)) for day in range(len(sums) - 1))
    )
