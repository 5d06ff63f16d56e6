"""Shares in whole per cent, never rounded up to all of something or down to nothing of it."""

# What rounding may leave of all.
_ROUNDING = 1e-6


def share_words(share: float) -> str:
    """A share as a sentence has it, like "96%", "99%" of nearly all or "less than 1%"."""
    per_cent = whole_per_cent(share)
    return "less than 1%" if per_cent == 0 and share > 0 else f"{per_cent}%"


def whole_per_cent(share: float) -> int:
    """A share as a column has it: 100 is all of it."""
    per_cent = round(share * 100)
    return min(per_cent, 99) if share < 1 - _ROUNDING else per_cent
