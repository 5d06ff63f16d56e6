"""The one bibliography: every source key of the project, resolved."""

from dataclasses import dataclass
from functools import cache

from planner.almanac.table import table_rows


@dataclass(frozen=True, slots=True)
class BibliographyEntry:
    """A source; `grade` says how it was seen (publisher's own page, copy, quotation, memory)."""

    key: str
    title: str
    publisher: str
    year: str
    grade: str
    seen: str


@cache
def bibliography() -> dict[str, BibliographyEntry]:
    """All entries by key."""
    return {row["key"]: BibliographyEntry(**row) for row in table_rows("bibliography.csv")}
