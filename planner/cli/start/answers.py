"""Answers to the questions of a new plan, and the garden.toml they make."""

import json
from dataclasses import dataclass, field
from datetime import date, timedelta

from planner.cli.start.words import Size


@dataclass(frozen=True, slots=True)
class NewBed:
    """A bed as it goes into the plan."""

    name: str
    size: Size
    depth: str
    sun: str

    def __str__(self) -> str:
        return f"{self.name}: {self.size}, {self.depth} deep, {self.sun}"

    @property
    def toml(self) -> str:
        """The bed as a part of the plan."""
        if self.size.width:
            size = f"length = {quoted(self.size.length)}\nwidth = {quoted(self.size.width)}"
        else:
            size = f"diameter = {quoted(self.size.length)}"
        return (
            f"[[bed]]\nname = {quoted(self.name)}\n{size}\n"
            f"soil_depth = {quoted(self.depth)}\nsun = {quoted(self.sun)}\n"
        )


@dataclass(frozen=True, slots=True)
class NewWant:
    """A crop that is wanted: an amount each week, or what people eat of it.

    `span`: the days from and to which it is wanted; the whole season where none are known.
    """

    crop: str
    amount: str = ""
    people: float = 0.0
    span: tuple[date, date] | None = None

    def __str__(self) -> str:
        how_much = f"{self.amount} a week" if self.amount else f"for {self.people:g}"
        return f"{self.crop}: {how_much}"

    @property
    def toml(self) -> str:
        """The wish as a part of the plan."""
        if self.amount:
            how_much = f"each_week = {quoted(self.amount)}"
        else:
            how_much = f"for_people = {self.people:g}    # what so many eat of it in a week"
        lines = ["[[target]]", f"crop = {quoted(self.crop)}", how_much]
        if self.span is not None:
            first, last = self.span
            lines += [f"from = {first}    # first and last week it can be picked", f"to = {last}"]
        return "\n".join([*lines, ""])


@dataclass(slots=True)
class StartAnswers:
    """What is known so far."""

    name: str | None = None
    latitude: float | None = None
    station: str | None = None
    last_spring_freeze: str | None = None
    first_fall_freeze: str | None = None
    first: str | None = None
    last: str | None = None
    garden_days: tuple[str, ...] | None = None
    beds: list[NewBed] = field(default_factory=list)
    wants: list[NewWant] = field(default_factory=list)

    @property
    def knows_freezes(self) -> bool:
        """Whether freeze dates are answered one way or the other."""
        return bool(self.station or (self.last_spring_freeze and self.first_fall_freeze))


def quoted(text: str) -> str:
    """Text as a TOML string."""
    # TOML has no DEL in its strings; JSON does not escape it.
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


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


def season_days(answers: StartAnswers, day: date) -> tuple[str, str]:
    """The first and last day of the season, as told or as usual when seen on `day`."""
    usual = usual_season(day, answers.latitude or 0.0)
    return answers.first or str(usual[0]), answers.last or str(usual[1])


def garden_toml(answers: StartAnswers, day: date) -> str:
    """The whole file, with a word on each part; `day` is the day on which it is written."""
    first, last = season_days(answers, day)
    lines = ["plan = 1", "", "[site]"]
    lines.append(f"name = {quoted(answers.name or 'My garden')}")
    if answers.latitude is not None:
        lines.append(f"latitude = {answers.latitude}    # south negative")
    if answers.station:
        lines.append(f"station = {quoted(answers.station)}")
    if answers.last_spring_freeze:
        spring = quoted(answers.last_spring_freeze)
        lines.append(f"last_spring_freeze = {spring}    # half of all years freeze after this day")
    if answers.first_fall_freeze:
        fall = quoted(answers.first_fall_freeze)
        lines.append(f"first_fall_freeze = {fall}    # half of all years freeze before this day")
    lines += [
        "",
        "[season]",
        f"from = {first}",
        f"to = {last}",
        "freeze_risk = 0.1    # tender plants go out when at most this share of years freezes",
    ]
    if answers.garden_days:
        lines.append(f"garden_days = {json.dumps(answers.garden_days)}")
    beds, wants = [one.toml for one in answers.beds], [one.toml for one in answers.wants]
    return "\n".join([*lines, "", *beds, *wants])
