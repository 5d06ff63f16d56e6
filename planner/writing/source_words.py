"""Where a figure is from, in brackets behind it."""

from planner.terms import Source


def in_brackets(*sources: Source) -> str:
    """Keys of the bibliography like "[TRADE-S06, memory]", or the line of the grower's plan."""
    return f"[{', '.join(one.words if one.place else one.key for one in sources)}]"
