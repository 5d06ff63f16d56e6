"""The lines of a weather file, and those of them that cannot be read."""

from collections.abc import Iterator
from dataclasses import dataclass, field

from planner.reading.plan_files import PlanFile
from planner.reading.text_file import line_place, text_of
from planner.terms import Place, Problem, count_words

LARGEST_WEATHER_BYTES = 50_000_000
MOST_LINES_SHOWN = 20
_PACKED = (b"\x1f\x8b", b"PK\x03\x04", b"BZh", b"\xfd7zXZ")


@dataclass(slots=True)
class WeatherLines:
    """The text of a file line by line, and the problems found in it so far."""

    file: str
    text: list[str]
    problems: list[Problem] = field(default_factory=list)
    _refused: list[int] = field(default_factory=list)

    def numbered(self, after: int = 0) -> Iterator[tuple[int, str]]:
        """Every line below line `after` that is not blank, with its number counted from 1."""
        for number, line in enumerate(self.text[after:], after + 1):
            if line and not line.isspace():
                yield number, line

    def place(self, number: int) -> Place:
        """Where a line stands, with its text."""
        return line_place(self.file, number, self.text[number - 1])

    def refuse(self, number: int, wrong: str, remedy: str) -> None:
        """Add a problem of one line; a line is told once, and no more than twenty in all."""
        if self._refused and self._refused[-1] == number:
            return
        self._refused.append(number)
        if len(self._refused) <= MOST_LINES_SHOWN:
            self.problems.append(Problem("weather-line", self.place(number), wrong, remedy))

    @property
    def all_problems(self) -> tuple[Problem, ...]:
        """Every problem; what goes beyond twenty lines is counted in one more."""
        more = self._refused[MOST_LINES_SHOWN:]
        if not more:
            return tuple(self.problems)
        told = Problem(
            "weather-line",
            Place(self.file, more[0]),
            f"From here on {count_words(len(more), 'more line')} cannot be used.",
            "mend the lines above first; most often the others have the same trouble.",
        )
        return (*self.problems, told)


def lines_of(file: PlanFile) -> WeatherLines | Problem:
    """The file's lines, or what keeps it from being read as text.

    A mark of byte order at the start and either kind of line end are understood.
    """
    content = file.content
    if len(content) > LARGEST_WEATHER_BYTES:
        return Problem(
            "file-too-large",
            Place(file.name),
            "It holds more than 50 MB; a century of one station is less than 20 MB.",
            "take the file of one station only.",
        )
    if content.startswith(_PACKED):
        return Problem(
            "weather-shape", Place(file.name), "It is a packed file.", "unpack it (gz, zip) first."
        )
    text = text_of(file)
    if isinstance(text, Problem):
        return text
    return WeatherLines(file.name, text.replace("\r\n", "\n").replace("\r", "\n").split("\n"))
