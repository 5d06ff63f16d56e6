"""Plain words of someone who has not gardened yet, read: sizes, sun, depth, days of the year."""

import re
from contextlib import suppress
from dataclasses import dataclass
from datetime import date

from planner.terms import FIRST_YEAR, LAST_YEAR, Quantity, read_month_day, read_quantity

# One walking step. A drill step is 30 inches (from memory).
STEP_FT = 2.5
_STEPS = ("step", "steps", "pace", "paces")
_ROUND = re.compile(r"\b(?:round|across|circle|diameter)\b", re.IGNORECASE)
_SIDES = re.compile(r"\s*(?:x|×|\*|\bby\b)\s*", re.IGNORECASE)  # noqa: RUF001 - the sign is meant
_LENGTH = re.compile(r"(?P<number>\d+(?:\.\d+)?|\.\d+)\s*(?P<unit>[A-Za-z]*|'|\"|′|″)\.?")  # noqa: RUF001 - growers paste these signs
_LENGTH_UNITS = {
    **dict.fromkeys(("ft", "foot", "feet", "'", "′"), "ft"),  # noqa: RUF001 - as above
    **dict.fromkeys(("in", "inch", "inches", '"', "″"), "in"),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), "m"),
    **dict.fromkeys(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), "cm"),
    **dict.fromkeys(_STEPS, "step"),
}
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_PARTS_OF_MONTH = {
    **dict.fromkeys(("early", "beginning", "start"), 5),
    **dict.fromkeys(("mid", "middle"), 15),
    **dict.fromkeys(("late", "end"), 25),
}
_WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
_SEVERAL_DAYS = {
    **dict.fromkeys(("weekend", "weekends"), _WEEKDAYS[5:]),
    **dict.fromkeys(("weekday", "weekdays"), _WEEKDAYS[:5]),
    **dict.fromkeys(("any", "all", "daily", "always", "every"), _WEEKDAYS),
}
_SUN_WORDS = {
    **dict.fromkeys(("full", "all", "lots", "much", "sunny", "most", "yes"), "full"),
    **dict.fromkeys(("part", "partial", "some", "half", "morning", "afternoon"), "part"),
    **dict.fromkeys(("shade", "shady", "little", "none", "no", "hardly"), "shade"),
}
# Hours of direct sun at midsummer from which a bed is in full sun, and in part sun: common
# practice, no source.
FULL_SUN_H, PART_SUN_H = 6, 3


@dataclass(frozen=True, slots=True)
class Size:
    """A bed's length and width as written in a plan; a round bed's width is empty."""

    length: str
    width: str

    def __str__(self) -> str:
        return f"{self.length} x {self.width}" if self.width else f"{self.length} across"


def read_size(words: str, usual_unit: str = "") -> Size | None:
    """Read "8 x 4 ft", "2.4 m by 120 cm", "4 ft round" or "10 by 4 steps".

    The last unit told stands for a side without one, `usual_unit` where none is told. None when
    it is no size.
    """
    sides = _SIDES.split(_ROUND.sub(" ", words).strip(" ,.;"))
    is_round = _ROUND.search(words) is not None
    if len(sides) != (1 if is_round else 2):
        return None
    matches = [one for side in sides if (one := _LENGTH.fullmatch(side.strip()))]
    if len(matches) != len(sides):
        return None
    units = [usual_unit, *(one["unit"] for one in matches if one["unit"])]
    lengths = [_length(one["number"], one["unit"] or units[-1]) for one in matches]
    if not all(lengths):
        return None
    length, width = (*lengths, "")[:2]
    return Size(length or "", width or "")


def has_no_unit(words: str) -> bool:
    """Whether a size is told in numbers alone."""
    return read_size(words) is None and read_size(words, "ft") is not None


def is_length_unit(words: str) -> bool:
    """Whether lengths are told in it: feet, inches, metres, cm or steps."""
    return words.lower() in _LENGTH_UNITS


def read_length(words: str) -> str | None:
    """Read "a foot", "12 inches" or "30 cm" as it stands in a plan."""
    told = re.sub(r"^(?:an?|one)\s+", "1 ", words.strip().lower())
    told = re.sub(r"\s*deep$", "", told)
    match = _LENGTH.fullmatch(told)
    return _length(match["number"], match["unit"]) if match else None


def _length(number: str, unit: str) -> str | None:
    known = _LENGTH_UNITS.get(unit.lower())
    if known == "step":
        return f"{float(number) * STEP_FT:g} ft"
    return f"{number} {known}" if known else None


def read_sun(words: str) -> str | None:
    """Read hours of sun or a plain word: full, part or shade."""
    hours = re.fullmatch(r"(\d{1,2})(?:\s*(?:-|to)\s*\d{1,2})?\s*(?:h|hours?)?(?: or more)?", words)
    if hours is not None:
        at_least = int(hours[1])
        return "full" if at_least >= FULL_SUN_H else "part" if at_least >= PART_SUN_H else "shade"
    told = words.lower().replace("-", " ").split()
    if "not" in told:  # "not much" is little, "not full" is anything
        return "shade" if {"much", "lots"} & {*told} else None
    return next((_SUN_WORDS[one] for one in told if one in _SUN_WORDS), None)


def read_month_words(words: str) -> str | None:
    """Read "mid May", "10 May", "end of April", "05-15" or "never" as a plan has it."""
    told = words.strip().lower()
    if told == "never":
        return told
    day = read_month_day(told)
    if day is not None:
        return str(day)
    parts = [one for one in re.split(r"[\s.,-]+", told) if one not in {"", "of", "the"}]
    months = [number for one in parts if (number := _month(one))]
    days = [number for one in parts if not _month(one) and (number := _day_of_month(one))]
    if len(months) != 1 or len(months) + len(days) != len(parts) or len(days) > 1:
        return None
    found = read_month_day(f"{months[0]:02d}-{days[0] if days else 15:02d}")
    return str(found) if found else None


def _month(word: str) -> int | None:
    return _MONTHS.index(word[:3]) + 1 if word[:3] in _MONTHS and word.isalpha() else None


def _day_of_month(word: str) -> int | None:
    if word in _PARTS_OF_MONTH:
        return _PARTS_OF_MONTH[word]
    match = re.fullmatch(r"(\d{1,2})(?:st|nd|rd|th)?", word)
    return int(match[1]) if match else None


def month_day_words(month_day: str) -> str:
    """A day of the year as it is spoken of: 16 Mar for "03-16"."""
    found = read_month_day(month_day)
    return f"{found.day} {_MONTHS[found.month - 1].capitalize()}" if found else month_day


def read_day_words(words: str, since: date) -> date | None:
    """Read "2027-03-15", or "mid March" as the first such day on or after another."""
    with suppress(ValueError):
        iso = date.fromisoformat(words)
        return iso if FIRST_YEAR <= iso.year <= LAST_YEAR else None
    told = read_month_day(read_month_words(words) or "")
    if told is None:
        return None
    day = told.in_year(since.year)
    return day if day >= since else told.in_year(since.year + 1)


def read_weekdays(words: str) -> tuple[str, ...] | None:
    """Read "weekends", "Sat and Wed" or "every day", in the order of the week."""
    told = re.split(r"[\s,;/&+]+", words.strip().lower())
    days: set[str] = set()
    for one in told:
        if one in {"", "and", "day", "days"}:
            continue
        found = _SEVERAL_DAYS.get(one) or tuple(
            day for day in _WEEKDAYS if one[:3] == day.lower() and one.isalpha()
        )
        if not found:
            return None
        days.update(found)
    return tuple(day for day in _WEEKDAYS if day in days) or None


def read_people(words: str) -> float | None:
    """Read a number of people: "4", "2.5" with a child, "four"."""
    match = re.fullmatch(r"\s*(\d+(?:\.\d+)?)\s*(?:people|persons?|of us)?\s*", words.lower())
    if match is not None:
        return float(match[1]) or None
    word = words.strip().lower()
    return float(_NUMBER_WORDS.index(word) + 1) if word in _NUMBER_WORDS else None


_NUMBER_WORDS = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


def read_amount(words: str) -> Quantity | None:
    """Read "25 roots", with or without "a week" behind it."""
    return read_quantity(re.sub(r"\s+(?:a|per|each|every)\s+week$", "", words.strip()))
