"""What a weather file says of its days, before any of it is believed."""

import re
from dataclasses import dataclass, field
from datetime import date

from planner.reading.weather_lines import WeatherLines
from planner.terms import UNITS, Unit

DEGC = UNITS["degC"]
MM = UNITS["mm"]
# Daily records of thermometers begin in the 18th century; a year outside is a slip of the pen.
_FIRST_YEAR, _LAST_YEAR = 1700, 2199
_BARE_DATE = re.compile(r"\d{4}-\d\d-\d\d|\d{8}", re.ASCII)


@dataclass(slots=True)
class DayColumn:
    """The lows, the highs or the rain of a file, by ordinal day, in `unit`.

    `flagged` counts values that their publisher's quality check refused; none of them is kept.
    """

    word: str
    unit: Unit
    by_day: dict[int, float] = field(default_factory=dict)
    flagged: int = 0

    def put(self, ordinal: int, value: float, lines: WeatherLines, number: int) -> None:
        """Keep a day's value; a second, different one is a problem of the line it stands on."""
        kept = self.by_day.setdefault(ordinal, value)
        if kept != value:
            lines.refuse(
                number,
                f"{date.fromordinal(ordinal)} has a {self.word} of {kept:g} {self.unit.name} on "
                f"an earlier line and of {value:g} here.",
                "keep the right one of the two.",
            )

    @property
    def by_day_degc(self) -> dict[int, float]:
        """The same in degrees C."""
        factor, offset = self.unit.factor, self.unit.offset
        return {day: value * factor + offset for day, value in self.by_day.items()}

    @property
    def by_day_mm(self) -> dict[int, float]:
        """The same in millimetres."""
        return {day: value * self.unit.factor * 1000 for day, value in self.by_day.items()}


@dataclass(slots=True)
class WeatherDays:
    """The columns of a file, and every station it names, in the order met."""

    low: DayColumn
    high: DayColumn
    rain: DayColumn
    stations: dict[str, None] = field(default_factory=dict)


def days_in(low: Unit, high: Unit, rain: Unit = MM) -> WeatherDays:
    """No days yet, in the units of the columns."""
    return WeatherDays(DayColumn("low", low), DayColumn("high", high), DayColumn("rain", rain))


def ordinal_of(text: str) -> int | None:
    """The ordinal of a day written "2027-05-01" or "20270501"; None when it is no such day."""
    if _BARE_DATE.fullmatch(text) is None:
        return None
    try:
        day = date.fromisoformat(text)
    except ValueError:
        return None
    return day.toordinal() if _FIRST_YEAR <= day.year <= _LAST_YEAR else None
