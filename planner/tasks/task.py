"""A task: one thing to do for one sowing on one day."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum


class TaskKind(StrEnum):
    """The trade's words for what is done to a sowing, in the order of its life."""

    START_INDOORS = "start indoors"
    HARDEN_OFF = "harden off"
    SOW = "sow"
    SET_OUT = "set out"
    THIN = "thin"
    PICK = "pick"
    CUT = "cut"
    CLEAR = "clear"

    @property
    def is_indoors(self) -> bool:
        """Whether it is done at the trays, not at a bed."""
        return self in {TaskKind.START_INDOORS, TaskKind.HARDEN_OFF}

    @property
    def is_harvest(self) -> bool:
        """Whether something is picked or cut."""
        return self in {TaskKind.PICK, TaskKind.CUT}


@dataclass(frozen=True, slots=True)
class Task:
    """One thing to do. `id` is the sowing, the kind and a running number, and never a date.

    `place` says where in the bed; `plants`, `seeds`, `depth` and `spacing` are given where
    they matter for the task and else empty.
    """

    id: str
    on: date
    kind: TaskKind
    sowing: str
    crop: str
    bed: str
    text: str
    place: str = ""
    plants: int | None = None
    seeds: int | None = None
    depth: str = ""
    spacing: str = ""
