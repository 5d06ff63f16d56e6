"""Problems: the grower's mistakes, gathered and shown together, never raised."""

from dataclasses import dataclass

from planner.terms.problem_kinds import PROBLEM_KINDS
from planner.terms.source import Place

_LONGEST_SHOWN = 400


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that cannot stand: its kind, where it is, what is wrong, what to do."""

    kind: str
    place: Place
    wrong: str
    remedy: str

    def __post_init__(self) -> None:
        """A kind without an entry in the catalogue is our own mistake."""
        if self.kind not in PROBLEM_KINDS:
            message = f"no such kind of problem: {self.kind}"
            raise KeyError(message)

    @property
    def order(self) -> tuple[str, int, str]:
        """Problems are shown in the order of the grower's file."""
        return (self.place.file, self.place.line, self.kind)

    def __str__(self) -> str:
        lines = [f"{self.place}: {PROBLEM_KINDS[self.kind].title}"]
        if self.place.text:
            lines.append(f"  {self.place.line} | {shown(self.place.text.strip())}")
        lines.append(f"  {shown(self.wrong)}")
        lines.append(f"  What to do: {shown(self.remedy)}")
        return "\n".join(lines)


def shown(text: str) -> str:
    """Text fit for a terminal: not endless, and nothing in it that steers the screen."""
    safe = "".join(one if one.isprintable() else ascii(one)[1:-1] for one in text)
    return safe if len(safe) <= _LONGEST_SHOWN else f"{safe[:_LONGEST_SHOWN]} ..."
