"""The files of a plan as they come from the shell: a name and bytes, unread."""

from dataclasses import dataclass

LARGEST_FILE_BYTES = 1_000_000


@dataclass(frozen=True, slots=True)
class PlanFile:
    """One file of a plan folder."""

    name: str
    content: bytes


@dataclass(frozen=True, slots=True)
class PlanFiles:
    """What a plan folder holds: garden.toml always, crops.toml perhaps."""

    garden: PlanFile
    crops: PlanFile | None = None
