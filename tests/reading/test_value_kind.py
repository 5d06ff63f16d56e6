"""A value written as another kind is told once, with what to write in its place."""

import tomllib
from datetime import date

import pytest

from planner.reading.value_kind import quoted, rewritten
from tests.plan_text import read_plan
from tests.plans import garden_toml

_LATITUDE, _DEPTH, _END = "latitude = 47.6", 'soil_depth = "12 in"', "to = 2027-12-31"


@pytest.mark.parametrize(
    ("was", "now", "remedy"),
    [
        (_LATITUDE, 'latitude = "47.6"', "write it like: latitude = 47.6"),
        (_LATITUDE, "latitude = true", "write a number from -66 to 70."),
        (_END, 'to = "2027-12-31"', "write it like: to = 2027-12-31"),
        (_END, "to = 2027-12-31T10:00:00", "write it like: to = 2027-12-31"),
        (_END, f'{_END}\nshare_ground = "no"', "write it like: share_ground = false"),
        (_END, f"{_END}\nshare_ground = 1", "write it like: share_ground = false"),
        (_END, f'{_END}\nturnover_days = "2"', "write it like: turnover_days = 2"),
        (_END, f'{_END}\nfreeze_risk = "low"', "write a number from 0.01 to 0.9."),
        (_END, f'{_END}\ngarden_days = "Sat"', 'write it like: garden_days = ["Wed", "Sat"]'),
        (
            _END,
            f"{_END}\naway = {{ from = 2027-07-01, to = 2027-07-05 }}",
            "write it like: away = [{ from = 2027-07-10, to = 2027-07-20 }]",
        ),
        ('name = "Gate bed"', "name = 12", 'write it like: name = "12"'),
        (_DEPTH, "soil_depth = 12", 'write it like: soil_depth = "12 in"'),
        (_DEPTH, f"{_DEPTH}\nflow = 3", 'write it like: flow = "12 gal/h"'),
        (
            _DEPTH,
            f"{_DEPTH}\ndrip = 3",
            'write it like: drip = { emitters = 24, each = "0.5 gal/h" }',
        ),
        ('"full"', "2", 'write it like: sun = "full"'),
        ("[site]", "soil = 2\n[site]", "write the line [soil] above what belongs to it."),
        ("[site]", "manure = 3\n[site]", "write the line [[manure]] above what belongs to it."),
        ('freeze = "11-09"', "freeze = 1109", 'write it like: first_fall_freeze = "03-28"'),
        (
            "[site]",
            "[water]\nevaporation = 4\n[site]",
            'write twelve like "3.1 in" or "80 mm", with commas between, in square brackets.',
        ),
    ],
)
def test_what_is_of_another_kind_is_told_once_with_what_to_write(
    was: str, now: str, remedy: str
) -> None:
    read = read_plan(garden_toml((was, now)))
    assert isinstance(read, tuple)
    assert [(one.kind, one.remedy) for one in read] == [("wrong-type", remedy)]


@pytest.mark.parametrize("key", ["mean_high", "mean_low"])
def test_an_empty_list_of_months_is_not_passed_over(key: str) -> None:
    read = read_plan(garden_toml((_LATITUDE, f"{key} = []\n{_LATITUDE}")))
    assert isinstance(read, tuple)
    assert ("bad-quantity", 5) in [(one.kind, one.place.line) for one in read]


@pytest.mark.parametrize("day", ["Wed, Sat", "Wed-Sat", "W"])
def test_two_days_in_one_pair_of_quotes_are_not_taken_for_the_first(day: str) -> None:
    read = read_plan(garden_toml((_END, f'{_END}\ngarden_days = ["{day}"]')))
    assert isinstance(read, tuple)
    assert [one.kind for one in read] == ["not-a-choice"]


@pytest.mark.parametrize("value", ["47.6", "-1e3", ".5", "2027-05-01", "3", " 7 ", "yes", "FALSE"])
def test_a_rewritten_value_is_toml_of_its_kind(value: str) -> None:
    written = [(kind, rewritten(value, kind)) for kind in (float, int, bool, date)]
    told = [(kind, text) for kind, text in written if text is not None]
    assert told
    for kind, text in told:
        read = tomllib.loads(f"x = {text}")["x"]
        assert type(read) in ({float, int} if kind is float else {kind})


@pytest.mark.parametrize("value", [3, 4.5, True, [1], {}])
def test_what_is_shown_in_quotes_is_a_text(value: object) -> None:
    assert isinstance(tomllib.loads(f"x = {quoted(value)}")["x"], str)
