"""A day's heat agrees with published degree-day tables, and with the laws of any heat."""

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.growth.heat import (
    double_sine,
    double_triangle,
    floored_mean,
    heat_sums,
    simple_mean,
    single_sine,
    single_triangle,
)
from tests.published import published_rows

Heat = Callable[..., float]
_SINGLE_FORMS: list[Heat] = [single_triangle, single_sine, simple_mean, floored_mean]
_each_form = pytest.mark.parametrize(
    "heat", _SINGLE_FORMS, ids=["triangle", "sine", "mean", "floored"]
)
_degc = st.floats(-60, 60)
_ROUNDING = 1e-9

_ZALOM = published_rows("degree_days_zalom.csv")
_each_row = pytest.mark.parametrize(
    "row", _ZALOM, ids=[f"{row['low_degf']}-{row['high_degf']} F" for row in _ZALOM]
)


@_each_row
def test_single_forms_agree_with_the_table_of_degree_days(row: dict[str, str]) -> None:
    """Zalom and others 1983, table 7 (ZALOM83/DEGDAY), printed to 0.01."""
    day = [float(row[name]) for name in ("low_degf", "high_degf", "base_degf", "upper_degf")]
    assert single_triangle(*day) == pytest.approx(float(row["single_triangle"]), abs=0.01)
    assert single_sine(*day) == pytest.approx(float(row["single_sine"]), abs=0.01)


@_each_row
def test_double_forms_agree_with_the_table_of_degree_days(row: dict[str, str]) -> None:
    """The same table; its one wrong figure, 24.88 for 27.12, stands beside the right one."""
    names = ("low_degf", "high_degf", "next_low_degf", "base_degf", "upper_degf")
    day = [float(row[name]) for name in names]
    assert double_triangle(*day) == pytest.approx(float(row["double_triangle"]), abs=0.01)
    assert double_sine(*day) == pytest.approx(float(row["double_sine"]), abs=0.01)


def test_one_figure_of_the_table_is_a_misprint() -> None:
    wrong = [row for row in _ZALOM if row["double_triangle"] != row["double_triangle_as_printed"]]
    assert [row["double_triangle_as_printed"] for row in wrong] == ["24.88"]
    # Worked by hand: (100 + 60)/2 - 55 - 10^2/80 = 23.75 and (100 + 75)/2 - 55 - 10^2/50 = 30.5.
    assert double_triangle(60, 100, 75, 55, 90) == (23.75 + 30.5) / 2


@pytest.mark.parametrize(
    "row",
    published_rows("degree_days_mcmaster_wilhelm.csv"),
    ids=lambda row: f"{row['low_degc']} to {row['high_degc']} C",
)
def test_the_two_means_agree_with_their_table(row: dict[str, str]) -> None:
    """McMaster and Wilhelm 1997, table 1 (MCMASTER97/DEGDAY), exactly."""
    day = [float(row[name]) for name in ("low_degc", "high_degc", "base_degc")]
    assert simple_mean(*day) == float(row["simple_mean"])
    assert floored_mean(*day) == float(row["floored_mean"])


def test_a_day_of_40_to_70_degf_above_50() -> None:
    """Worked out a second time and apart from the planner."""
    assert single_sine(40, 70, 50) == pytest.approx(7.5424, abs=5e-5)
    assert single_triangle(40, 70, 50) == pytest.approx(6.6667, abs=5e-5)
    assert simple_mean(40, 70, 50) == 5.0


@pytest.mark.parametrize(("high", "low", "heat"), [(90, 65, 25.5), (72, 46, 11), (63, 42, 6.5)])
def test_corn_degree_days_floor_and_cap_each_temperature(
    high: float, low: float, heat: float
) -> None:
    """Corn arithmetic of a Wisconsin extension column of 2018: cap 86 F, floor 50 F."""
    assert floored_mean(low, high, 50, 86) == heat


def test_a_citrus_day_of_64_degf_above_53() -> None:
    """University of California, a simple way to calculate degree-days (UCIPM-CIT)."""
    assert simple_mean(56, 72, 53) == 11


@pytest.mark.parametrize(("low", "high"), [(3.0, 19.0), (-4.0, 31.0), (11.0, 12.0), (15.0, 45.0)])
def test_the_formulas_are_the_mean_over_the_hours_of_the_day(low: float, high: float) -> None:
    """Summed over 100,000 moments of a day that swings as a sine, or runs straight."""
    moments = [(n + 0.5) / 100_000 for n in range(100_000)]
    middle, swing = (low + high) / 2, (high - low) / 2
    for heat, course in (
        (single_sine, [middle + swing * math.sin(2 * math.pi * moment) for moment in moments]),
        (single_triangle, [low + (high - low) * abs(2 * moment - 1) for moment in moments]),
    ):
        summed = math.fsum(min(max(degc, 10.0), 28.0) - 10.0 for degc in course) / len(course)
        assert heat(low, high, 10.0, 28.0) == pytest.approx(summed, abs=1e-6)


@_each_form
@given(low=_degc, high=_degc, warmer=st.floats(0, 30), base=_degc, span=st.floats(0, 40))
def test_a_warmer_night_or_day_never_gives_less_heat(
    heat: Heat, low: float, high: float, warmer: float, base: float, span: float
) -> None:
    least = heat(low, high, base, base + span)
    assert heat(low + warmer, high, base, base + span) >= least - _ROUNDING
    assert heat(low, high + warmer, base, base + span) >= least - _ROUNDING


@_each_form
@given(low=_degc, swing=st.floats(0, 30), colder=st.floats(0, 30))
def test_a_day_below_the_base_gives_no_heat(
    heat: Heat, low: float, swing: float, colder: float
) -> None:
    assert heat(low, low + swing, low + swing + colder) == 0.0


@_each_form
@given(base=_degc, above=st.floats(0, 30), swing=st.floats(0, 30), spare=st.floats(0, 30))
def test_between_the_thresholds_every_form_is_the_mean_less_the_base(
    heat: Heat, base: float, above: float, swing: float, spare: float
) -> None:
    low, high = base + above, base + above + swing
    assert heat(low, high, base, high + spare) == pytest.approx((low + high) / 2 - base)


@_each_form
@given(low=_degc, high=_degc, base=_degc, span=st.floats(0, 40))
def test_no_day_gives_more_than_the_upper_temperature_allows(
    heat: Heat, low: float, high: float, base: float, span: float
) -> None:
    assert -_ROUNDING <= heat(low, high, base, base + span) <= span + _ROUNDING
    assert heat(low, high, base, base + span) <= heat(low, high, base) + _ROUNDING


@given(low=_degc, high=_degc, next_low=_degc, base=_degc, span=st.floats(0, 40))
def test_double_forms_are_single_ones_when_the_next_night_is_alike(
    low: float, high: float, next_low: float, base: float, span: float
) -> None:
    day = (base, base + span)
    assert double_sine(low, high, low, *day) == single_sine(low, high, *day)
    assert double_triangle(low, high, low, *day) == single_triangle(low, high, *day)
    halves = (single_sine(low, high, *day), single_sine(next_low, high, *day))
    assert min(halves) <= double_sine(low, high, next_low, *day) <= max(halves)


@given(days=st.lists(st.tuples(_degc, st.floats(0, 30)), max_size=40))
def test_heat_sums_add_up_the_single_sine(days: list[tuple[float, float]]) -> None:
    lows = [low for low, _ in days]
    highs = [low + swing for low, swing in days]
    sums = heat_sums(lows, highs, 4.4, 28.0)
    assert sums[0] == 0.0
    assert len(sums) == len(days) + 1
    for day, (low, high) in enumerate(zip(lows, highs, strict=True)):
        gained = sums[day + 1] - sums[day]
        assert gained == pytest.approx(single_sine(low, high, 4.4, 28.0), abs=1e-9)
        assert gained >= 0


def test_a_missing_temperature_is_not_summed_over() -> None:
    with pytest.raises(ValueError, match="missing"):
        heat_sums([5.0, math.nan], [15.0, 16.0], 4.4, 28.0)
    with pytest.raises(ValueError, match="missing"):
        heat_sums([5.0, 40.0], [15.0, math.nan], 4.4, 28.0)


def test_every_low_has_its_high_and_the_upper_lies_above_the_base() -> None:
    with pytest.raises(ValueError, match="shorter"):
        heat_sums([5.0, 6.0], [15.0], 4.4, 28.0)
    with pytest.raises(ValueError, match="below the base"):
        heat_sums([5.0], [15.0], 10.0, 4.0)
