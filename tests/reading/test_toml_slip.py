"""A slip in TOML is told in the grower's words, whatever Python's parser says of it."""

import pytest

from tests.plan_text import read_plan
from tests.plans import garden_toml


@pytest.mark.parametrize(
    ("was", "now", "wrong"),
    [
        ('"Gate bed"', '"Gate bed', "A quote that opens on this line is never closed."),
        ('"8 ft"', "8 ft", "The line goes on after its value;"),
        ('"full"', "full", "What stands here is no text in quotes, no number, no date"),
        ("sun =", "sun", "There is no equals sign after the first word."),
        ("[season]", "[season", "The brackets around a heading are not closed."),
        ("[[target]]", "[[target]", "The brackets around a heading are not closed."),
        ("plan = 1", "plan = 1\nplan = 1", "A word is stated twice."),
        ("[[bed]]", "[site]\n[[bed]]", "The heading [site] stands twice."),
        ("[[bed]]", "[season.from]\n[[bed]]", "A word is stated twice."),
        ("2027-12-31", "2027-02-30", "The calendar has no such day."),
        ("[[bed]]", 'garden_days = ["Wed"\n[[bed]]', "A square bracket is opened"),
        ("[[bed]]", "away = [{ from = 2027-03-01\n[[bed]]", "A curly bracket is opened"),
        ("Gate bed", "Gate\\bed\\x", "A backslash in quotes is written twice."),
        ("plan = 1", "plan = 1\n- lettuce", "There is no equals sign after the first word."),
        ("plan = 1", "plan = 1\n! lettuce", "The line begins with a sign"),
        ("Quince", "Quince\x07", "A sign stands here that no text may hold."),
    ],
)  # fmt: skip
def test_a_slip_is_told_in_plain_words(was: str, now: str, wrong: str) -> None:
    read = read_plan(garden_toml((was, now)))
    assert isinstance(read, tuple)
    assert [one.kind for one in read] == ["toml-syntax"]
    assert read[0].wrong.startswith(wrong), read[0].wrong
