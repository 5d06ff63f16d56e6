"""How much of an earlier season may change."""

from enum import StrEnum


class Changing(StrEnum):
    """How much of what is not yet begun may change.

    NOTHING: nothing has happened but time, so all stays. LITTLE: each change must be worth it.
    FREELY: the season is made anew around what stands.
    """

    NOTHING = "nothing"
    LITTLE = "little"
    FREELY = "freely"
