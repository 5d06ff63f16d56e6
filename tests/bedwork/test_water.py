"""Water: FAO-56 and published drip arithmetic, and what a plan gets told."""

import math
import re
from dataclasses import replace
from datetime import date

import pint
import pytest

from planner.almanac import bibliography, crop_pages, crop_waters
from planner.bedwork import Known, Runs, Water, away_work_of, water_of
from planner.bedwork.bed_thirst import Stand, thirst_on
from planner.bedwork.crop_coefficient import coefficient_at, crop_coefficient
from planner.bedwork.drip import depth_mm, minutes_for, watering_days
from planner.climate import Climate
from planner.climate.evapotranspiration import hargreaves_mm
from planner.climate.radiation import extraterrestrial_radiation_mm
from planner.garden import CropWater, Drip, Garden, NoDrip
from planner.reading import PlanFile, PlanFiles, read_garden
from planner.scheduling import Sowing
from planner.season import Season, make_season
from planner.terms import Problem, Source, read_flow, week_of
from planner.writing import away_text, water_lines, water_record, water_text
from tests.plan_text import garden_of, problem_kinds_of, read_plan, season_of

_UNITS: pint.UnitRegistry[float] = pint.UnitRegistry()
_GAL = 3.785411784
_SQ_FT = 0.09290304

# Reference evapotranspiration


@pytest.mark.parametrize(
    ("low", "high", "radiation_mm", "expected", "places"),
    [
        # FAO-56 example 20: Lyon, 45 deg 43' N, July; as NCAR's command language gives it.
        (14.8, 26.6, extraterrestrial_radiation_mm(45.72, 196), 5.033028, 0.005),
        # The same, as printed.
        (14.8, 26.6, 40.6 * 0.408, 5.0, 0.05),
        # A test value of the open library PyETo, with its mean of 35 degC and a swing of 6 for 10.
        (32.0, 38.0, 38.93715 * 0.408, 6.1 * math.sqrt(6 / 10), 0.05),
        # A published slip, Ra taken as MJ without its 0.408, gives 7.175; right is 2.93.
        (19.0, 25.0, 32 * 0.408, 2.9275, 0.001),
    ],
)
def test_evapotranspiration_is_that_of_hargreaves(
    low: float, high: float, radiation_mm: float, expected: float, places: float
) -> None:
    assert hargreaves_mm(low, high, radiation_mm) == pytest.approx(expected, abs=places)


def test_nothing_evaporates_backward_in_hard_cold() -> None:
    assert hargreaves_mm(-40, -30, 3.0) == 0


# Crop coefficients


def _water(
    initial: float, mid: float, end: float, stages: tuple[float, float, float, float]
) -> CropWater:
    return CropWater(initial, mid, end, stages, Source("FAO56"), "")


_DRY_BEAN = _water(0.15, 1.19, 0.35, (25, 25, 30, 20))


@pytest.mark.parametrize(("day", "expected"), [(20, 0.15), (40, 0.77), (70, 1.19), (95, 0.56)])
def test_coefficients_of_dry_beans_are_those_of_fao_56_example_28(
    day: float, expected: float
) -> None:
    # From memory: chapter 6, example 28, equation 66; stages as in table 11 (Idaho, June).
    assert crop_coefficient(_DRY_BEAN, day) == pytest.approx(expected, abs=0.005)


@pytest.mark.parametrize(
    ("day", "expected"), [(10, 0.70), (35, 0.85), (50, 1.0), (65, 1.0), (70, 0.975), (75, 0.95)]
)
def test_lettuce_follows_tables_11_and_12(day: float, expected: float) -> None:
    # Worked by hand from the tables: April, 20/30/15/10 days, 0.70, 1.00, 0.95.
    lettuce = crop_waters()["leaf lettuce"]
    assert list(lettuce.stages) == [20, 30, 15, 10]
    assert crop_coefficient(lettuce, day) == pytest.approx(expected)


def test_radish_is_half_way_up_on_its_tenth_day() -> None:
    # Worked by hand from tables 11 and 12: 5/10/15/5 days, 0.70, 0.90, 0.85.
    assert crop_coefficient(crop_waters()["radish"], 10) == pytest.approx(0.80)


def test_a_sowing_of_another_length_goes_through_the_same_stages() -> None:
    lettuce = crop_waters()["leaf lettuce"]
    assert coefficient_at(lettuce, 0.5) == pytest.approx(crop_coefficient(lettuce, 75 / 2))
    assert coefficient_at(lettuce, 2.0) == pytest.approx(0.95)


def _stand(from_um: int, to_um: int, coefficient: float) -> Stand:
    water = _water(coefficient, coefficient, coefficient, (1, 1, 1, 1))
    return Stand(from_um, to_um, date(2027, 6, 1), date(2027, 7, 1), water)


def test_blocks_in_a_bed_are_weighed_by_their_ground() -> None:
    stands = [_stand(0, 300, 1.0), _stand(300, 400, 0.6)]
    thirst = thirst_on(date(2027, 6, 10), stands, 800)
    assert thirst.coefficient == pytest.approx((300 * 1.0 + 100 * 0.6) / 400)
    assert thirst.planted == pytest.approx(0.5)
    assert thirst_on(date(2027, 7, 1), stands, 800).planted == 0


def test_where_two_share_ground_the_thirstier_counts() -> None:
    stands = [_stand(0, 400, 0.7), _stand(100, 200, 1.1)]
    thirst = thirst_on(date(2027, 6, 10), stands, 400)
    assert thirst.coefficient == pytest.approx((300 * 0.7 + 100 * 1.1) / 400)
    assert thirst.planted == 1


# Drip arithmetic


def test_an_inch_on_a_square_foot_is_0_623_gallons() -> None:
    # TRADE-S15: gallons = square feet x inches x 0.623. Pint knows the units.
    in_pint = (_UNITS.Quantity(1, "foot**2") * _UNITS.Quantity(1, "inch")).to("US_liquid_gallon")
    assert float(in_pint.magnitude) == pytest.approx(0.623, abs=0.0005)
    assert pytest.approx(float(in_pint.magnitude), rel=1e-6) == 25.4 * _SQ_FT / _GAL


def test_a_bed_of_32_emitters_takes_83_minutes_for_an_inch() -> None:
    # TRADE-S15, worked for 4 x 8 ft: 16 gal/h; 1 in at 0.90 is 22.2 gal, 83 min.
    volume_l = 25.4 * 32 * _SQ_FT / 0.9
    assert volume_l / _GAL == pytest.approx(22.2, abs=0.05)
    assert minutes_for(volume_l, 16 * _GAL) == pytest.approx(83, abs=0.5)


def test_the_depth_a_drip_line_gives_is_the_published_one() -> None:
    # TRADE-S20: 231.1 x gph / (12 in x 12 in); 0.53 gph at 12 x 12 in gives 0.85 in an hour.
    garden = _garden(bed='length = "1 ft"\nwidth = "1 ft"\nflow = "0.53 gal/h"')
    inches = depth_mm(garden.beds[0], 60, 1.0) / 25.4
    assert inches == pytest.approx(0.85, abs=0.005)
    assert inches == pytest.approx(231.1 * 0.53 / 144, rel=1e-3)


@pytest.mark.parametrize(
    ("written", "gal_per_h"),
    [
        # Common practice, no source: a jug and a watch.
        ("3 gal in 15 min", 12),
        ("3 gallons in 15 minutes", 12),
        ("1 gal in 30 s", 120),
        ("0.5 gal/h", 0.5),
        ("0.5 gph", 0.5),
        ("1 gpm", 60),
        ("2 gal a minute", 120),
        ("6 gal per hour", 6),
        (f"{_GAL} L/h", 1),
    ],
)
def test_flows_are_read_as_growers_write_them(written: str, gal_per_h: float) -> None:
    flow = read_flow(written)
    assert flow is not None
    assert flow.l_per_h == pytest.approx(gal_per_h * _GAL)
    assert flow.measured == (" in " in written)


@pytest.mark.parametrize(
    "written", ["12", "12 gal", "3 ft/h", "3 gal in 0 min", "3 gal/day", "-1 gal/h", "gal/h", ""]
)
def test_what_is_no_flow_is_not_read(written: str) -> None:
    assert read_flow(written) is None


def test_three_runs_a_week_are_monday_wednesday_friday() -> None:
    days = watering_days(3, date(2027, 7, 12), date(2027, 7, 25))
    assert [day.strftime("%a") for day in days] == ["Mon", "Wed", "Fri"] * 2
    assert len(watering_days(7, date(2027, 7, 12), date(2027, 7, 18))) == 7
    assert watering_days(3, date(2027, 7, 13), date(2027, 7, 13)) == ()


# A plan

_PLAN = """\
plan = 1

[site]
latitude = 45.72
last_spring_freeze = "03-28"
first_fall_freeze = "11-09"
{site}

[season]
from = 2027-02-01
to = 2027-12-31
away = [{{ from = 2027-07-12, to = 2027-07-20 }}]

[water]
{water}

[[bed]]
name = "North 1"
soil_depth = "15 in"
sun = "full"
{bed}

[[bed]]
name = "North 2"
length = "8 ft"
width = "4 ft"
soil_depth = "15 in"
sun = "full"
{other}

[[target]]
crop = "bush bean"
each_week = "4 lb"
from = 2027-06-15
to = 2027-09-15
"""
_SIZE = 'length = "8 ft"\nwidth = "4 ft"\n'
_WARM = ", ".join(['"26.6 degC"'] * 12)
_COOL = ", ".join(['"14.8 degC"'] * 12)
_MEANS = f"mean_high = [{_WARM}]\nmean_low = [{_COOL}]"
_RECORD = 'weather = "weather.csv"\nweather_unit = "degC"'
_INCHES = (2, 2, 2, 3, 4, 6, 7, 6, 4, 3, 2, 2)
_OWN = "evaporation = [" + ", ".join(f'"{one} in"' for one in _INCHES) + "]"


def _plan(**lines: str) -> str:
    usual = {"site": "", "water": "", "bed": _SIZE, "other": ""}
    return _PLAN.format(**{**usual, **lines})


def _garden(**lines: str) -> Garden:
    return garden_of(_plan(**lines))


def _season(**lines: str) -> Season:
    garden = _garden(**lines)
    return make_season(garden, garden.wish.first, None, effort=0)


def _watered(**lines: str) -> tuple[Water, tuple[Sowing, ...]]:
    season = _season(**lines)
    return water_of(season.garden, Climate(season.garden.site), season.sowings), season.sowings


@pytest.fixture(scope="module")
def told() -> tuple[Water, tuple[Sowing, ...]]:
    """The watering of a plan that has temperatures, drip lines and a timer."""
    drip = 'drip = { emitters = 32, each = "0.5 gal/h" }\ntimer = "west"'
    other = 'flow = "3 gal in 15 min"\ntimer = "west"'
    season = season_of(_plan(site=_MEANS, bed=_SIZE + drip, other=other))
    return water_of(season.garden, Climate(season.garden.site), season.sowings), season.sowings


def test_a_week_takes_coefficient_times_evaporation(told: tuple[Water, tuple[Sowing, ...]]) -> None:
    water, _ = told
    assert water.evaporation.known is Known.TEMPERATURES
    week = next(one for one in water.weeks if one.week == week_of(date(2027, 7, 15)))
    # Seven days about 15 July of example 20's 5.03 mm.
    assert week.evaporation_mm == pytest.approx(7 * 5.033, abs=0.1)
    for one in week.beds:
        assert one.depth_mm == pytest.approx(one.coefficient * week.evaporation_mm, rel=0.02)
        assert isinstance(one.runs, Runs)
        assert isinstance(one.bed.drip, Drip)
        given = one.runs.times * one.runs.minutes / 60 * one.bed.drip.flow.l_per_h
        assert given == pytest.approx(one.volume_l)


def test_beds_on_one_timer_run_as_long_as_the_thirstiest_needs(
    told: tuple[Water, tuple[Sowing, ...]],
) -> None:
    water, _ = told
    shared = [(week, run) for week in water.weeks for run in week.shared]
    assert shared
    for week, run in shared:
        minutes = [one.runs.minutes for one in week.beds if isinstance(one.runs, Runs)]
        assert run.runs.minutes == max(minutes)
        assert all(one.given_mm >= one.wanted_mm - 1e-9 for one in run.gives)
        assert min(one.given_mm - one.wanted_mm for one in run.gives) == pytest.approx(0)


def test_what_is_measured_rules_over_what_is_stamped() -> None:
    drip = 'drip = { emitters = 24, each = "0.5 gal/h" }\nflow = "3 gal in 15 min"'
    bed = _garden(bed=_SIZE + drip).beds[0]
    assert isinstance(bed.drip, Drip)
    assert bed.drip.flow.measured
    assert bed.drip.flow.l_per_h == pytest.approx(12 * _GAL)


def test_own_monthly_figures_rule_over_temperatures_and_rain_is_taken_off() -> None:
    rain = 'rain = ["1 in", "1 in", "1 in", "1 in", "1 in", "1 in", "0.5 in", "1 in", "1 in", '
    rain += '"1 in", "1 in", "1 in"]\nrain_used = 0.5'
    water, _ = _watered(site=_MEANS, water=f"{_OWN}\n{rain}")
    assert water.evaporation.known is Known.OWN
    week = next(one for one in water.weeks if one.week == week_of(date(2027, 7, 15)))
    assert week.evaporation_mm == pytest.approx(7 * 25.4 * 7 / 31)
    assert week.rain_mm == pytest.approx(7 * 25.4 * 0.5 / 31)
    (bed, *_) = week.beds
    wanted = bed.coefficient * week.evaporation_mm - 0.5 * week.rain_mm
    assert bed.depth_mm == pytest.approx(wanted, rel=0.02)
    assert isinstance(bed.runs, NoDrip)
    # By hand only what is planted is watered.
    ground = bed.bed.area_m2 * bed.planted
    efficiency = water.garden.water.efficiency.middle
    assert bed.volume_l == pytest.approx(bed.depth_mm * ground / efficiency)


def test_rain_of_the_record_counts_where_the_plan_states_none() -> None:
    start = date(2020, 1, 1).toordinal()
    days = [date.fromordinal(start + number) for number in range(731)]
    record = "\n".join(["date,low,high,rain", *(f"{day},14.8,26.6,1.0" for day in days)])
    files = PlanFiles(
        PlanFile("garden.toml", _plan(site=_RECORD).encode()),
        None,
        lambda name: PlanFile(name, record.encode()),
    )
    garden = read_garden(files)
    assert isinstance(garden, Garden)
    season = make_season(garden, garden.wish.first, None, effort=0)
    water = water_of(garden, Climate(garden.site), season.sowings)
    assert {round(one.rain_mm, 6) for one in water.weeks} == {7.0}
    assert "weather.csv" in water_text(water, 80)
    own = 'rain = ["0 in", ' + ", ".join(['"1 in"'] * 11) + "]"
    stated = replace(garden, water=_garden(water=own).water)
    assert water_of(stated, Climate(garden.site), season.sowings).weeks[0].rain_mm != 7.0


def test_without_temperatures_the_plain_rule_is_told_as_such() -> None:
    water, _ = _watered(bed=_SIZE + 'flow = "16 gal/h"')
    assert water.evaporation.known is Known.RULE
    full = [one for week in water.weeks for one in week.beds if one.bed.name == "North 1"]
    assert max(one.depth_mm for one in full) == pytest.approx(25.4)
    text = water_text(water, 80)
    assert "Evaporation: not known" in text
    assert "TRADE-S16" in text
    # Nothing is told of weeks before the last freeze and after the first.
    assert min(water.evaporation.by_day) == date(2027, 3, 29)
    assert max(water.evaporation.by_day) == date(2027, 11, 8)


def test_long_runs_are_parted() -> None:
    line = 'flow = "2 gal/h"'
    water, _ = _watered(site=_MEANS, water="longest_run_minutes = 30", bed=_SIZE + line)
    runs = [one.runs for week in water.weeks for one in week.beds if isinstance(one.runs, Runs)]
    assert max(one.parts for one in runs) > 1
    assert all(one.minutes / one.parts <= 30 + 1e-6 for one in runs)


def test_water_wishes_move_no_sowing() -> None:
    plain, told = _season(), _season(bed=_SIZE + 'flow = "16 gal/h"', water=_OWN)
    assert plain.basis == told.basis
    assert plain.sowings == told.sowings


# In words


def test_the_sheet_for_a_time_away_names_beds_days_and_what_to_pick(
    told: tuple[Water, tuple[Sowing, ...]],
) -> None:
    water, sowings = told
    times = away_work_of(water, sowings, date(2027, 2, 1))
    (one,) = times
    assert [day.isoformat() for day in one.days] == [
        "2027-07-12", "2027-07-14", "2027-07-16", "2027-07-19",
    ]  # fmt: skip
    text = away_text(times, water.garden.beds[0].note.unit, 80)
    assert "12 July 2027 to 20 July 2027" in text
    assert all(bed.water.bed.name in text for bed in one.beds)
    assert all(sowing.id in text for sowing in one.picks)
    assert one.picks
    assert max(map(len, text.splitlines())) <= 80
    assert away_work_of(water, sowings, date(2027, 8, 1)) == ()


def test_each_week_has_lines_for_its_sheet(told: tuple[Water, tuple[Sowing, ...]]) -> None:
    water, _ = told
    lines = water_lines(water)
    week = lines[week_of(date(2027, 7, 15))]
    assert any(line.startswith("Water 3 times this week") and "North 1" in line for line in week)
    assert all(len(line) < 200 for lines in lines.values() for line in lines)


def test_a_bed_named_by_a_number_is_told_apart_from_its_minutes(
    told: tuple[Water, tuple[Sowing, ...]],
) -> None:
    """ "North 1 39 min" could be 39 or 139: amounts stand in brackets behind the bed's name."""
    water, _ = told
    for lines in water_lines(water).values():
        for line in lines:
            assert not re.search(r"\d (\d+ x )?[\d.]+ (min|gal)", line), line


def test_the_record_and_the_words_tell_the_same_week(
    told: tuple[Water, tuple[Sowing, ...]],
) -> None:
    water, _ = told
    peak = water.thirstiest
    assert peak is not None
    assert str(peak.week) in water_text(water, 80)
    record = water_record(water)
    assert [one["week"] for one in record["weeks"]] == [str(one.week) for one in water.weeks]


# What cannot stand


@pytest.mark.parametrize(
    ("lines", "kind"),
    [
        ({"bed": _SIZE + 'flow = "12 gal"'}, "bad-quantity"),
        ({"bed": _SIZE + 'flow = "99999 gal/h"'}, "out-of-range"),
        ({"bed": _SIZE + "flow = 12"}, "wrong-type"),
        ({"bed": _SIZE + "drip = { emitters = 24 }"}, "missing-key"),
        ({"bed": _SIZE + 'drip = { emitters = 24.5, each = "1 gal/h" }'}, "wrong-type"),
        ({"bed": _SIZE + 'drip = { emitters = 0, each = "1 gal/h" }'}, "out-of-range"),
        ({"bed": _SIZE + 'drip = { emitter = 2, emitters = 2, each = "1 gph" }'}, "unknown-key"),
        ({"bed": _SIZE + 'drip = "24 emitters"'}, "wrong-type"),
        ({"bed": _SIZE + "timer = 3"}, "wrong-type"),
        ({"water": "efficiency = 1.5"}, "out-of-range"),
        ({"water": "runs_each_week = 9"}, "out-of-range"),
        ({"water": "runs_each_week = 2.5"}, "wrong-type"),
        ({"water": "longest_run_minutes = 0"}, "out-of-range"),
        ({"water": 'rain = ["1 in"]'}, "bad-quantity"),
        ({"water": "rain = [" + ", ".join(['"99 ft"'] * 12) + "]"}, "out-of-range"),
        ({"water": "evaporation = [" + ", ".join(['"1 lb"'] * 12) + "]"}, "bad-quantity"),
        ({"water": "rain_usd = 0.5"}, "unknown-key"),
    ],
)
def test_what_cannot_be_of_water_is_one_problem(lines: dict[str, str], kind: str) -> None:
    assert problem_kinds_of(_plan(**lines)) == [kind]


def test_a_wrong_flow_is_told_with_its_line_and_an_example() -> None:
    read = read_plan(_plan(bed=_SIZE + 'flow = "12 gal"'))
    assert not isinstance(read, Garden)
    (problem,) = read
    assert isinstance(problem, Problem)
    assert problem.place.text.strip() == 'flow = "12 gal"'
    assert "3 gal in 15 min" in problem.remedy


def test_every_crop_of_the_almanac_has_figures_for_water() -> None:
    waters = crop_waters()
    assert set(crop_pages()) | {"any other"} == set(waters)
    assert {one.source.key for one in waters.values()} <= set(bibliography())
    assert all(0 < one.initial <= 1.2 and 0 < one.end <= 1.2 for one in waters.values())
