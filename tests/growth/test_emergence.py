"""Seed comes up when the published table says it does, and not where it says it does not."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.almanac import bibliography, crop_pages
from planner.almanac.emergence import emergence_tables
from planner.almanac.table import table_rows
from planner.growth.emergence import (
    LONGEST_WAIT_IN_COLD_DAYS,
    LONGEST_WAIT_IN_HEAT_DAYS,
    NoEmergence,
    WhyNotUp,
    emergence_day,
    emergence_rate,
)
from tests.published import published_rows

_TABLES = emergence_tables()
_BEAN = _TABLES["bush bean"].points
_DEGC = {"50": 10.0, "59": 15.0, "68": 20.0, "77": 25.0, "95": 35.0}
_PRINTED = [
    (row["crop"], degf, row[f"at_{degf}_degf"])
    for row in published_rows("emergence_days.csv")
    for degf in _DEGC
    if row[f"at_{degf}_degf"]
]


@pytest.mark.parametrize(("crop", "degf", "days"), _PRINTED)
def test_seed_in_steady_soil_takes_the_days_of_the_table(crop: str, degf: str, days: str) -> None:
    """Harrington and Minges 1954 (UCSC-A4), within a day: another print differs by one."""
    up = emergence_day(_TABLES[crop].points, [_DEGC[degf]] * 200, 10)
    if days == "none":
        assert isinstance(up, NoEmergence)
        return
    assert isinstance(up, int)
    assert abs(up - 10 - int(days)) <= 1


@pytest.mark.parametrize("crop", ["leaf lettuce", "romaine", "head lettuce", "spinach"])
def test_salads_do_not_come_up_in_soil_of_95_degf(crop: str) -> None:
    """UCSC-A4: neither lettuce nor spinach germinated at 95 F."""
    table = _TABLES[crop]
    assert 35.0 in table.too_hot_degc
    assert emergence_day(table.points, [35.0] * 90, 0) == NoEmergence(WhyNotUp.TOO_HOT)


def test_warm_crops_do_not_come_up_in_soil_of_50_degf() -> None:
    """UCSC-A4: beans, cucumbers and peppers did not germinate at 50 F."""
    for crop in ("bush bean", "cucumber", "sweet pepper"):
        assert 10.0 in _TABLES[crop].too_cold_degc
        up = emergence_day(_TABLES[crop].points, [10.0] * 90, 0)
        assert up == NoEmergence(WhyNotUp.TOO_COLD)


def _days_up(soil_degc_by_day: list[float]) -> int:
    up = emergence_day(_BEAN, soil_degc_by_day, 0)
    assert isinstance(up, int)
    return up


def test_beans_in_oregon_take_12_to_17_days_in_late_april_and_5_to_6_in_early_july() -> None:
    """Corvallis, field sowings of snap bean (OSU-BEAN69).

    The soil is made up, as none was printed: 15 degrees C on 25 April and warmer by 0.1 each
    day; 30 degrees C on 1 July and warmer by 0.1 each day.
    """
    april = [15.0 + 0.1 * day for day in range(60)]
    july = [30.0 + 0.1 * day for day in range(60)]
    assert 12 <= _days_up(april) <= 17
    assert 5 <= _days_up(july) <= 6
    assert _days_up([15.0] * 60) == 16
    assert _days_up([30.0] * 60) == 6


def test_a_cold_spell_holds_seed_back_and_does_not_undo_what_is_done() -> None:
    steady = _days_up([20.0] * 60)
    assert _days_up([20.0] * 4 + [8.0] * 10 + [20.0] * 60) == steady + 10


def test_seed_waits_in_the_heat_for_three_weeks_at_most() -> None:
    points = _TABLES["spinach"].points
    steady = emergence_day(points, [10.0] * 60, 0)
    assert isinstance(steady, int)
    wait = LONGEST_WAIT_IN_HEAT_DAYS
    held = [10.0] + [33.0] * wait + [10.0] * 60
    assert emergence_day(points, held, 0) == steady + wait
    lost = [10.0] + [33.0] * (wait + 1) + [10.0] * 60
    assert emergence_day(points, lost, 0) == NoEmergence(WhyNotUp.TOO_HOT)


def test_seed_waits_in_the_cold_for_two_months_at_most() -> None:
    wait = LONGEST_WAIT_IN_COLD_DAYS
    assert _days_up([5.0] * (wait + 1) + [20.0] * 60) == _days_up([20.0] * 60) + wait
    late = [5.0] * (wait + 2) + [20.0] * 60
    assert emergence_day(_BEAN, late, 0) == NoEmergence(WhyNotUp.TOO_COLD)


def test_seed_that_is_on_its_way_when_the_temperatures_end_is_not_up() -> None:
    assert emergence_day(_BEAN, [20.0] * 5, 0) == NoEmergence(WhyNotUp.DAYS_RUN_OUT)


def test_rates_run_straight_between_the_temperatures_of_the_table() -> None:
    assert emergence_rate(_BEAN, 15.0) == pytest.approx(1 / 16)
    assert emergence_rate(_BEAN, 17.5) == pytest.approx((1 / 16 + 1 / 11) / 2)
    assert emergence_rate(_BEAN, 35.0) == pytest.approx(1 / 6)
    assert emergence_rate(_BEAN, 14.9) == 0.0
    assert emergence_rate(_BEAN, 35.1) == 0.0


def test_a_point_of_infinitely_many_days_is_where_nothing_comes_up() -> None:
    points = ((10.0, math.inf), *_BEAN)
    assert emergence_rate(points, 10.0) == 0.0
    assert emergence_rate(points, 12.5) == pytest.approx(1 / 32)


@pytest.mark.parametrize("crop", sorted(_TABLES))
@given(start=st.integers(0, 40), low=st.floats(0, 25), swing=st.floats(0, 10))
def test_seed_is_never_up_before_the_quickest_day_of_its_table(
    crop: str, start: int, low: float, swing: float
) -> None:
    soil = [low + swing * (1 + math.sin(day / 9)) / 2 for day in range(300)]
    points = _TABLES[crop].points
    up = emergence_day(points, soil, start)
    if isinstance(up, int):
        assert up - start >= min(days for _, days in points)


@pytest.mark.parametrize("crop", sorted(_TABLES))
def test_every_table_is_of_a_known_crop_and_runs_from_cold_to_warm(crop: str) -> None:
    table = _TABLES[crop]
    assert crop in crop_pages()
    assert table.source.key in bibliography()
    temperatures = [degc for degc, _ in table.points]
    assert len(temperatures) >= 3
    assert temperatures == sorted(set(temperatures))
    assert all(days >= 1 for _, days in table.points)
    assert set(table.too_cold_degc + table.too_hot_degc).isdisjoint(temperatures)


def test_degrees_c_and_f_of_the_table_are_the_same_temperature() -> None:
    for row in table_rows("emergence.csv"):
        assert float(row["soil_degf"]) == float(row["soil_degc"]) * 9 / 5 + 32, row


def test_crops_not_grown_from_seed_have_no_table() -> None:
    for name, page in crop_pages().items():
        if page.used["start_from"].low != "seed":
            assert name not in _TABLES
