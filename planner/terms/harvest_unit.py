"""Units of harvest that measure the same: weights, and single pieces under several names."""

from planner.terms.unit import Dimension, Unit

_SINGLE_PIECES = {"each", "roots", "heads"}


def conversion(written: Unit, counted: Unit) -> float | None:
    """Factor from one unit of harvest to another; None when they do not measure the same."""
    if written == counted:
        return 1.0
    if written.dimension is counted.dimension is Dimension.MASS:
        return written.factor / counted.factor
    if {written.name, counted.name} <= _SINGLE_PIECES:
        return 1.0
    return None
