"""Figures: a number or a word of the trade together with its unit and source."""

from dataclasses import dataclass, replace

from planner.terms.source import Source
from planner.terms.unit import ONE_OF


@dataclass(frozen=True, slots=True)
class Figure:
    """A published range: `low` to `high` in `unit`, from `source`."""

    low: float
    high: float
    unit: str
    source: Source

    @property
    def middle(self) -> float:
        """The planning value: halfway between low and high."""
        return (self.low + self.high) / 2

    def times(self, factor: float, unit: str) -> "Figure":
        """The same figure in another unit."""
        return replace(self, low=self.low * factor, high=self.high * factor, unit=unit)

    def __str__(self) -> str:
        low, high = _three_figures(self.low), _three_figures(self.high)
        span = low if low == high else f"{low} to {high}"
        unit = ONE_OF.get(self.unit, self.unit) if span == "1" else self.unit
        return f"{span} {unit}".rstrip()


def _three_figures(number: float) -> str:
    """A number to three significant figures; published figures are no finer."""
    return f"{float(f'{number:.3g}'):g}"


@dataclass(frozen=True, slots=True)
class Fact:
    """A word of the trade (a family, a class of hardiness) from `source`."""

    text: str
    source: Source

    def __str__(self) -> str:
        return self.text
