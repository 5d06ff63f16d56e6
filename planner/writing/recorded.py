"""Numbers as JSON and CSV files hold them."""

_PLACES = 4


def recorded(value: float) -> float:
    """A number to four places: finer than anything measured, and equal on every machine."""
    return round(value, _PLACES)
