"""A tape: lengths along a bed as px, marked off in the grower's own unit."""

from collections.abc import Iterator
from dataclasses import dataclass

from planner.pictures.lettering import SMALL
from planner.pictures.svg import INK, line, text_line
from planner.terms import UNITS, Unit

_STEPS = {"ft": (0.5, 1, 2, 5, 10, 20, 50, 100), "m": (0.1, 0.25, 0.5, 1, 2, 5, 10, 20, 50)}
_IMPERIAL = {"ft", "in"}
_APART_PX = 20.0


@dataclass(frozen=True, slots=True)
class Tape:
    """Lengths drawn at `metre_px`, told in feet or metres."""

    unit: Unit
    metre_px: float

    def px(self, length_um: float) -> float:
        """A length in px."""
        return length_um / 1e6 * self.metre_px

    def length_um(self, px: float) -> float:
        """What so many px stand for."""
        return px / self.metre_px * 1e6

    @property
    def step(self) -> float:
        """How much of its unit lies between two marks."""
        steps = _STEPS[self.unit.name]
        fitting = (one for one in steps if one * self.unit_px >= _APART_PX)
        return next(fitting, steps[-1])

    @property
    def unit_px(self) -> float:
        """One foot or metre, px."""
        return self.unit.factor * self.metre_px

    def marks(self, length_um: float) -> Iterator[tuple[float, str]]:
        """Where along a length each mark stands, px, and what it says."""
        count = int(self.px(length_um) / (self.step * self.unit_px) + 1e-6)
        for place in range(count + 1):
            yield place * self.step * self.unit_px, f"{place * self.step:g}"


def tape(unit: Unit, metre_px: float) -> Tape:
    """A tape in feet for who writes feet or inches, else in metres."""
    return Tape(UNITS["ft" if unit.name in _IMPERIAL else "m"], metre_px)


def tape_down(tape: Tape, length_um: float, x: float, top: float) -> Iterator[str]:
    """The marks of a tape beside what is drawn to the right of `x`, from `top` down."""
    for along, told in tape.marks(length_um):
        yield line(x - 4, top + along, x, top + along)
        unit = f" {tape.unit.name}" if along == 0 else ""
        yield text_line(x - 7, top + along + 3.5, f"{told}{unit}", SMALL, text_anchor="end")


def scale_bar(tape: Tape, x: float, y: float) -> str:
    """A bar of a few feet or metres, so that lengths can be taken off the drawing."""
    units = next(many for many in (1, 2, 5, 10, 20, 50) if many * tape.unit_px >= 40)
    end = x + units * tape.unit_px
    return "".join(
        (
            line(x, y, end, y, stroke=INK, stroke_width=2, class_="scale"),
            line(x, y - 4, x, y + 4),
            line(end, y - 4, end, y + 4),
            text_line(end + 8, y + 4, f"{units} {tape.unit.name}", SMALL),
        )
    )
