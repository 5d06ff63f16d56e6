"""Pictures in the dark: what each colour becomes where a page is light on dark.

Hatches, edges and bars stay as they are; only their inks and grounds change, so families are told
apart in grey as by day. Paper stays black on white.
"""

from planner.pictures.family_marks import TOL_LIGHT, mixed, pale_of
from planner.pictures.svg import FAINT_INK, INK, PAPER

DARK_INK = "#f2f2f0"
DARK_FAINT_INK = "#b9bdc6"
DARK_PAPER = "#14171c"
_PAPER_IN_PALE = 0.8
_PAPER_IN_FULL = 0.6


def colours_in_the_dark() -> dict[str, str]:
    """Every colour of every picture, #rrggbb as it is written there, with its dark one."""
    return {
        INK: DARK_INK,
        FAINT_INK: DARK_FAINT_INK,
        PAPER: DARK_PAPER,
        **{pale_of(one): mixed(one, DARK_PAPER, _PAPER_IN_PALE) for one in TOL_LIGHT.values()},
        **{one: mixed(one, DARK_PAPER, _PAPER_IN_FULL) for one in TOL_LIGHT.values()},
    }
