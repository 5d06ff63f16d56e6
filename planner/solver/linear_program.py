"""Linear programs: the least cost under rows, with a price for every row.

HiGHS solves them by its simplex method, one thread, so that equal programs give equal answers.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate

import highspy
import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]
_DUAL_SIMPLEX, _PRIMAL_SIMPLEX = 1, 4
_SOLVED = highspy.HighsModelStatus.kOptimal


@dataclass(frozen=True, slots=True)
class Column:
    """A thing of which some amount, 0 or more, may be taken: its cost and its part in rows."""

    cost: float
    rows: Ints
    parts: Floats


@dataclass(frozen=True, slots=True)
class Solution:
    """The least cost, the amount of each column, and what one more unit of a row would cost."""

    cost: float
    amounts: Floats
    prices: Floats


class _QuietHighs(highspy.Highs):
    """HiGHS that says nothing: its first words come while it is being made."""

    def __init__(self) -> None:
        super().__init__()  # type: ignore[no-untyped-call] # the library ships it untyped

    def enableCallbacks(self) -> None:  # noqa: N802 - the library's name
        """Called while it is made; no callback is wanted, and no word on the screen."""
        self.silent()


class LinearProgram:
    """A linear program that grows by columns and is solved again and again."""

    def __init__(self) -> None:
        self._highs = _QuietHighs()
        self._set("threads", 1)
        self._set("random_seed", 1)
        self._set("simplex_strategy", _PRIMAL_SIMPLEX)
        self.columns = 0

    def add_rows(self, lower: Floats, upper: Floats) -> None:
        """Add rows between bounds; infinite where there is none."""
        _check(
            self._highs.addRows(
                len(lower), lower, upper, 0, np.zeros(len(lower), np.int32), _NO_ROWS, _NO_PARTS
            )
        )

    def add(self, columns: Sequence[Column]) -> None:
        """Add columns, of each of which any amount may be taken."""
        if not columns:
            return
        lengths = [len(one.rows) for one in columns]
        starts = np.array([0, *accumulate(lengths[:-1])], np.int32)
        many = len(columns)
        _check(
            self._highs.addCols(
                many,
                np.array([one.cost for one in columns]),
                np.zeros(many),
                np.full(many, np.inf),
                sum(lengths),
                starts,
                np.concatenate([one.rows for one in columns]).astype(np.int32),
                np.concatenate([one.parts for one in columns]),
            )
        )
        self.columns += many

    def set_costs(self, first: int, costs: Floats) -> None:
        """Give columns from `first` on other costs."""
        numbers = np.arange(first, first + len(costs), dtype=np.int32)
        _check(self._highs.changeColsCost(len(costs), numbers, costs))

    def set_row(self, row: int, lower: float, upper: float) -> None:
        """Give a row other bounds. From here on what is known need not fit any more."""
        _check(self._highs.changeRowBounds(row, lower, upper))
        self._set("simplex_strategy", _DUAL_SIMPLEX)

    def solve(self) -> Solution:
        """The least cost there is.

        Raises:
            RuntimeError: when the solver finds none; these programs always have one.
        """
        _check(self._highs.run())
        status = self._highs.getModelStatus()
        if status != _SOLVED:
            message = f"a linear program ended as {status}"
            raise RuntimeError(message)
        self._set("simplex_strategy", _PRIMAL_SIMPLEX)
        found = self._highs.getSolution()
        cost = float(self._highs.getInfo().objective_function_value)
        return Solution(cost, np.array(found.col_value), np.array(found.row_dual))

    def _set(self, option: str, value: int) -> None:
        _check(self._highs.setOptionValue(option, value))


def _check(status: highspy.HighsStatus) -> None:
    """Refuse to go on where the library did not take what it was given."""
    if status != highspy.HighsStatus.kOk:
        message = f"the solver's library answered {status}"
        raise RuntimeError(message)


_NO_ROWS = np.array([], np.int32)
_NO_PARTS = np.array([], np.float64)
