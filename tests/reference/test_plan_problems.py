"""Of the kinds of problem a plan can have, those of shape are seen by the schemas too."""

import tomllib
from pathlib import Path

import pytest

from tests.reference.plan_probes import EVERY_KEY, problems_of
from tests.reference.schemas import plan_faults

_FOLDERS = Path(__file__).resolve().parent.parent / "problems"

# Seen by the schemas, as the plan in tests/problems provokes them.
_SEEN = {
    "bad-month-day",
    "bad-quantity",
    "empty-season",
    "freeze-dates-missing",
    "freeze-dates-twice",
    "missing-key",
    "not-a-choice",
    "out-of-range",
    "plan-version",
    "unknown-key",
    "wrong-type",
    "zone-is-no-date",
}
# Not seen, and why: what a schema cannot know of the text before it.
_UNSEEN = {
    "crop-incomplete": "which figures a crop lacks hangs on what it is like",
    "date-order": "two days are not held against each other",
    "kept-twice": "two pieces of ground are not held against each other",
    "name-taken": "two beds are not held against each other",
    "no-bed-fits": "beds are not held against crops",
    "target-outside-season": "days are not held against the season",
    "targets-overlap": "two targets are not held against each other",
    "unknown-bed": "names of beds are not known",
    "unknown-crop": "names of crops are not known",
    "unknown-station": "stations are not known",
    "wrong-unit": "in which of its units a crop is counted is not known",
}


def _plan(kind: str) -> tuple[str, str]:
    plan = _FOLDERS / kind / "plan"
    crops = plan / "crops.toml"
    own = crops.read_text("utf-8") if crops.exists() else ""
    return (plan / "garden.toml").read_text("utf-8"), own


def _of_plans() -> list[str]:
    """The kinds whose plan the reader itself finds wrong: it is TOML, and no other file is."""
    found = []
    for folder in sorted(_FOLDERS.iterdir()):
        if (folder / "plan" / "garden.toml").exists():
            garden, crops = _plan(folder.name)
            kinds = {one.kind for one in problems_of(garden, crops)}
            if folder.name in kinds - {"toml-syntax", "file-missing"}:
                found.append(folder.name)
    return found


def test_every_kind_of_problem_in_a_plan_is_said_to_be_seen_or_not() -> None:
    assert sorted({*_SEEN, *_UNSEEN}) == _of_plans()


@pytest.mark.parametrize("kind", sorted(_SEEN))
def test_a_problem_of_shape_is_seen_by_the_schemas(kind: str) -> None:
    assert plan_faults(*_plan(kind))


@pytest.mark.parametrize("kind", sorted(_UNSEEN))
def test_a_problem_that_is_not_of_shape_is_left_to_the_reader(kind: str) -> None:
    assert plan_faults(*_plan(kind)) == []


@pytest.mark.parametrize(
    ("was", "now"),
    [
        ("by = 2027-10-15", 'by = "2027-10-15"'),
        ('length = "8 ft"', 'length = "8000 ft"'),
        ("tray_cells = 72", "tray_cells = 72.0"),
        ('rain = ["1.5 in"', 'rain = ["1500 in"'),
    ],
)
def test_these_too_are_left_to_the_reader(was: str, now: str) -> None:
    """Days in quotes, sizes of quantities, and whole numbers told with a point."""
    plan = EVERY_KEY.replace(was, now)
    assert plan != EVERY_KEY
    tomllib.loads(plan)
    assert problems_of(plan)
    assert plan_faults(plan) == []


@pytest.mark.parametrize(
    ("was", "now"), [('sun = "full"', 'sun = "Full"'), ('paper = "letter"', 'paper = " Letter"')]
)
def test_the_schemas_want_words_in_the_case_they_are_told_in(was: str, now: str) -> None:
    plan = EVERY_KEY.replace(was, now, 1)
    assert problems_of(plan) == ()
    assert plan_faults(plan)
