"""Figures: a number or a word of the trade together with its unit and source."""

from dataclasses import dataclass, replace

from planner.terms.source import Source


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
        span = f"{self.low:g}" if self.low == self.high else f"{self.low:g} to {self.high:g}"
        return f"{span} {self.unit}".rstrip()


@dataclass(frozen=True, slots=True)
class Fact:
    """A word of the trade (a family, a class of hardiness) from `source`."""

    text: str
    source: Source

    def __str__(self) -> str:
        return self.text
