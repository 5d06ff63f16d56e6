"""Answers to the questions of a new plan, and the garden.toml they make."""

import json
import re
from dataclasses import dataclass, field
from datetime import date, timedelta

_BED = re.compile(
    r"\s*(?P<name>[^:]+?)\s*:\s*(?P<first>[\d.]+\s*[A-Za-z]+)"
    r"(?:\s*x\s*(?P<second>[\d.]+\s*[A-Za-z]+)|\s+(?P<round>round|across))"
    r"\s*,\s*(?P<depth>[\d.]+\s*[A-Za-z]+)(?:\s+deep)?\s*(?:,\s*(?P<sun>[A-Za-z]+))?\s*"
)
_WANT = re.compile(r"\s*(?P<crop>[^:]+?)\s*:\s*(?P<amount>[\d.]+\s*[A-Za-z]+)(?:\s+a week)?\s*")


@dataclass(slots=True)
class StartAnswers:
    """What is known so far; beds and wants are pieces of TOML."""

    name: str | None = None
    latitude: float | None = None
    station: str | None = None
    last_spring_freeze: str | None = None
    first_fall_freeze: str | None = None
    first: str | None = None
    last: str | None = None
    garden_days: str | None = None
    beds: list[str] = field(default_factory=list)
    wants: list[str] = field(default_factory=list)

    @property
    def knows_freezes(self) -> bool:
        """Whether freeze dates are answered one way or the other."""
        return bool(self.station or (self.last_spring_freeze and self.first_fall_freeze))


def quoted(text: str) -> str:
    """Text as a TOML string."""
    return json.dumps(text, ensure_ascii=False)


def bed_toml(line: str) -> str | None:
    """A bed written on one line, as TOML; None when it cannot be understood."""
    match = _BED.fullmatch(line)
    if match is None:
        return None
    if match["round"]:
        size = f"diameter = {quoted(match['first'])}"
    else:
        size = f"length = {quoted(match['first'])}\nwidth = {quoted(match['second'])}"
    sun = (match["sun"] or "full").lower()
    return (
        f"[[bed]]\nname = {quoted(match['name'])}\n{size}\n"
        f"soil_depth = {quoted(match['depth'])}\nsun = {quoted(sun)}\n"
    )


def target_toml(line: str) -> str | None:
    """A wish written on one line, as TOML; None when it cannot be understood."""
    match = _WANT.fullmatch(line)
    if match is None:
        return None
    return (
        f"[[target]]\ncrop = {quoted(match['crop'].lower())}\n"
        f"each_week = {quoted(match['amount'])}\n"
    )


def usual_season(day: date, latitude: float) -> tuple[date, date]:
    """The rest of this growing year, or the whole of the next when fall has begun.

    A growing year goes from midwinter to midwinter: 1 January to 31 December, and 1 July to
    30 June in the south.
    """
    end = midwinter_after(day, latitude)
    fall_begins = date(end.year, 9, 1) if latitude >= 0 else date(end.year, 3, 1)
    if day < fall_begins:
        return day, end
    first = end + timedelta(days=1)
    return first, midwinter_after(first, latitude)


def midwinter_after(day: date, latitude: float) -> date:
    """The last day of the growing year that holds `day`."""
    if latitude >= 0:
        return date(day.year, 12, 31)
    return date(day.year + (day.month >= 7), 6, 30)


def garden_toml(answers: StartAnswers, day: date) -> str:
    """The whole file, with a word on each part; `day` is the day on which it is written."""
    usual = usual_season(day, answers.latitude or 0.0)
    lines = ["plan = 1", "", "[site]"]
    lines.append(f"name = {quoted(answers.name or 'My garden')}")
    if answers.latitude is not None:
        lines.append(f"latitude = {answers.latitude}    # south negative")
    if answers.station:
        lines.append(f"station = {quoted(answers.station.strip().upper())}")
    if answers.last_spring_freeze:
        spring = quoted(answers.last_spring_freeze)
        lines.append(f"last_spring_freeze = {spring}    # half of all years freeze after this day")
    if answers.first_fall_freeze:
        fall = quoted(answers.first_fall_freeze)
        lines.append(f"first_fall_freeze = {fall}    # half of all years freeze before this day")
    lines += [
        "",
        "[season]",
        f"from = {answers.first or usual[0]}",
        f"to = {answers.last or usual[1]}",
        "freeze_risk = 0.1    # tender plants go out when at most this share of years freezes",
    ]
    if answers.garden_days:
        days = [day.strip() for day in answers.garden_days.split(",") if day.strip()]
        lines.append(f"garden_days = {json.dumps(days)}")
    return "\n".join([*lines, "", *answers.beds, *answers.wants])
