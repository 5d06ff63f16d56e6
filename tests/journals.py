"""A plan with a season of a few sowings, as a journal speaks of them."""

import json
from pathlib import Path
from typing import Any

from planner.reading import NamedSowings, named_sowings
from tests.plans import write_plan

HEADER = "date,event,sowing,amount,note\n"

RECORD: dict[str, Any] = {
    "format": 1,
    "plan_id": "b4015957-49c6-57d1-b8c2-311663d5acf3",
    "as_of": "2027-01-15",
    "garden": "Quince Yard",
    "names_given": {"leaf lettuce": 2, "radish": 3},
    "sowings": [
        {
            "id": "leaf lettuce 1",
            "crop": "leaf lettuce",
            "method": "indoors",
            "sow_on": "2027-03-10",
            "set_out_on": "2027-04-07",
            "unit": "oz",
            "why": [],
        },
        {
            "id": "radish 1",
            "crop": "radish",
            "method": "direct",
            "sow_on": "2027-04-14",
            "set_out_on": None,
            "unit": "roots",
            "why": [],
        },
        {
            "id": "radish 3",
            "crop": "radish",
            "method": "direct",
            "sow_on": "2027-06-12",
            "set_out_on": None,
            "unit": "roots",
            "why": [],
        },
    ],
    "tasks": [],
}


def known_sowings() -> NamedSowings:
    """The names of that season; radish 2 and leaf lettuce 2 were let go."""
    return named_sowings(RECORD)


def write_season(folder: Path, journal: str | bytes | None = None) -> Path:
    """A plan folder with that season, and a journal where one is given."""
    plan = write_plan(folder)
    (plan / "season").mkdir()
    (plan / "season" / "season.json").write_text(json.dumps(RECORD), encoding="utf-8")
    if journal is not None:
        content = journal if isinstance(journal, bytes) else journal.encode()
        (plan / "journal.csv").write_bytes(content)
    return plan
