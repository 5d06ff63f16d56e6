"""Seedbeds: what is sown in place and not up yet, to be kept moist by hand (§50)."""

from datetime import date

from planner.scheduling import Method, Sowing


def is_seedbed(sowing: Sowing, first: date, last: date) -> bool:
    """Whether a sowing is in its place but not up yet on some day from the first to the last."""
    in_place = sowing.method is Method.DIRECT
    return in_place and sowing.sow_on <= last and first < sowing.emerges_on
