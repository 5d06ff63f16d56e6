"""Weather files of every shape become a daily record, or problems a grower can act on.

What the shapes are is told by the readme of GHCN-Daily version 3 (part III), the description of
its copy by year, and the documentation of the export of daily summaries, all of the US National
Centers for Environmental Information.
"""

import gzip
import math
from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import date, timedelta
from itertools import groupby
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.garden import DailyWeather, MonthlyDepth, NotTold
from planner.reading import PlanFile, read_weather
from planner.reading.rain_means import rain_by_month
from planner.terms import Problem, Source
from tests.benchmarks.weather_load import SHAPES, Shape, load

_FIRST = date(2019, 1, 1)
_DAYS = 450  # to 25 March 2020, over a 29 February
_STATION = "USC00381770"


def _read(text: str | bytes, unit: str | None = None) -> DailyWeather | tuple[Problem, ...]:
    content = text if isinstance(text, bytes) else text.encode()
    return read_weather(PlanFile("weather.csv", content), unit)


def _record(text: str | bytes, unit: str | None = None) -> DailyWeather:
    """A record's temperatures; of rain tell tests of their own."""
    return replace(_with_rain(text, unit), rain=NotTold())


def _with_rain(text: str | bytes, unit: str | None = None) -> DailyWeather:
    read = _read(text, unit)
    assert isinstance(read, DailyWeather), "\n".join(map(str, read))
    return read


def _problems(text: str | bytes, unit: str | None = None) -> tuple[Problem, ...]:
    read = _read(text, unit)
    assert isinstance(read, tuple)
    return read


def _problem(text: str | bytes, unit: str | None = None) -> Problem:
    (problem,) = _problems(text, unit)
    return problem


def _days(count: int = _DAYS) -> list[date]:
    return [_FIRST + timedelta(days=number) for number in range(count)]


def _changed(lines: Iterator[str], change: Mapping[int, str] | None) -> str:
    """The lines as a text; `change` puts another text in the place of a line."""
    numbered = enumerate(lines, 1)
    return "".join(f"{(change or {}).get(number, line)}\n" for number, line in numbered)


def _table(
    head: str = "date,low,high",
    cells: str = "4.5,15.0",
    change: Mapping[int, str] | None = None,
    days: int = _DAYS,
) -> str:
    """A line a day; line 2 is 1 January 2019."""
    return _changed(iter([head, *(f"{day},{cells}" for day in _days(days))]), change)


def _month(days: list[date], element: str, values: Mapping[date, str], usual: str) -> str:
    first = days[0]
    written = "".join(values.get(day, usual) for day in days)
    return f"{_STATION}{first:%Y%m}{element}{written}{'-9999   ' * (31 - len(days))}"


def _fixed(lows: Mapping[date, str] | None = None, change: Mapping[int, str] | None = None) -> str:
    """TMAX, TMIN and PRCP of each month: lines 1, 2, 3 are January 2019. Eight columns a day."""

    def lines() -> Iterator[str]:
        for _, some in groupby(_days(), key=lambda day: (day.year, day.month)):
            days = list(some)
            yield _month(days, "TMAX", {}, "  150  X")
            yield _month(days, "TMIN", lows or {}, "   45  X")
            yield _month(days, "PRCP", {}, "    0T X")

    return _changed(lines(), change)


def _comma(change: Mapping[int, str] | None = None) -> str:
    """TMAX and TMIN of each day: lines 1 and 2 are 1 January 2019."""

    def lines() -> Iterator[str]:
        for day in _days():
            yield f"{_STATION},{day:%Y%m%d},TMAX,150,,,X,0700"
            yield f"{_STATION},{day:%Y%m%d},TMIN,45,,,X,"

    return _changed(lines(), change)


_EXPORT_HEAD = '"STATION","NAME","DATE","PRCP","TMAX","TMAX_ATTRIBUTES","TMIN","TMIN_ATTRIBUTES"'


def _export_line(day: str, low: str = "40", attributes: str = ",,W,2400") -> str:
    station = f'"{_STATION}","CLEMSON UNIV, SC US"'
    return f'{station},"{day}","0.00","59",",,W","{low}","{attributes}"'


def _export(change: Mapping[int, str] | None = None) -> str:
    """Whole degrees F in quotes; line 2 is 1 January 2019."""
    lines = [_EXPORT_HEAD, *(_export_line(str(day)) for day in _days())]
    return _changed(iter(lines), change)


# --- what a record is


@pytest.mark.parametrize(
    ("text", "unit", "low", "high"),
    [
        (_fixed(), None, 4.5, 15.0),
        (_comma(), None, 4.5, 15.0),
        (_export(), "degF", (40 - 32) / 1.8, 15.0),
        (_table(), "degC", 4.5, 15.0),
        (_table("date,low_degf,high_degf", "40,59"), None, (40 - 32) / 1.8, 15.0),
    ],
    ids=["fixed columns", "comma file", "export", "own table", "own table with units"],
)
def test_each_shape_gives_every_day_in_degrees_c(
    text: str, unit: str | None, low: float, high: float
) -> None:
    record = _record(text, unit)
    assert (record.first, record.last) == (_FIRST, date(2020, 3, 25))
    assert len(record.low_degc) == len(record.high_degc) == _DAYS
    assert record.low_degc == pytest.approx([low] * _DAYS)
    assert record.high_degc == pytest.approx([high] * _DAYS)
    assert record.left_out == ()
    assert record.missing_days == 0
    assert list(record.years) == [2019, 2020]


def test_a_record_says_which_file_of_the_plan_it_comes_from() -> None:
    source = _record(_table(), "degC").source
    assert source.key == "plan"
    assert str(source) == "your plan, weather.csv"


def test_a_day_outside_the_record_is_missing() -> None:
    record = _record(_table(), "degC")
    assert record.low(date(2019, 7, 4)) == 4.5
    assert record.high(date(2019, 7, 4)) == 15.0
    assert math.isnan(record.low(date(2018, 12, 31)))
    assert math.isnan(record.high(date(2020, 3, 26)))


def test_a_record_without_days_is_our_own_mistake() -> None:
    with pytest.raises(ValueError, match="no record"):
        DailyWeather(_FIRST, (), (), Source("plan"))


# --- every shape alike


def test_a_mark_of_byte_order_and_line_ends_of_any_system_change_nothing() -> None:
    plain = _record(_table(), "degC")
    for text in (_table().replace("\n", "\r\n"), _table().replace("\n", "\r")):
        assert _record(b"\xef\xbb\xbf" + text.encode(), "degC") == plain
    assert _record(b"\xef\xbb\xbf" + _fixed().replace("\n", "\r\n").encode()) == plain


def test_lines_may_stand_in_any_order_with_blank_ones_between() -> None:
    head, *lines = _table().splitlines()
    backwards = "\n\n".join([head, *reversed(lines), ",,"])
    assert _record(backwards, "degC") == _record(_table(), "degC")


def test_a_day_without_a_line_is_missing_not_skipped() -> None:
    record = _record(_table(change={12: ""}), "degC")
    assert len(record.low_degc) == _DAYS
    assert math.isnan(record.low(date(2019, 1, 11)))
    assert math.isnan(record.high(date(2019, 1, 11)))
    assert record.low(date(2019, 1, 12)) == 4.5
    assert record.missing_days == 1


def test_a_day_told_twice_alike_counts_once() -> None:
    twice = _table() + "2019-01-01,4.50,15\n2019-01-02,,15\n"
    assert _record(twice, "degC") == _record(_table(), "degC")


def test_a_day_told_twice_differently_is_refused() -> None:
    problem = _problem(_table() + "2019-01-01,-4.5,15\n", "degC")
    assert problem.kind == "weather-line"
    assert problem.place.line == _DAYS + 2
    assert "2019-01-01 has a low of 4.5 degC on an earlier line and of -4.5 here" in problem.wrong


def test_a_few_impossible_values_are_left_out_and_told() -> None:
    change = {
        2: "2019-01-01,20,15",
        3: "2019-01-02,21,15",
        4: "2019-01-03,-70,15",
        5: "2019-01-04,4.5,61",
    }
    record = _record(_table(change=change), "degC")
    assert record.left_out == (
        "2 temperatures lie beyond 60 degC of heat or cold.",
        "2 days have a low above their high.",
    )
    assert math.isnan(record.low(date(2019, 1, 4 - 1)))
    assert record.high(date(2019, 1, 3)) == 15.0
    # The first two days have nothing that can be believed, so the record begins after them.
    assert record.first == date(2019, 1, 3)


def test_one_impossible_value_is_told_in_the_singular() -> None:
    change = {40: "2019-02-08,20,15", 41: "2019-02-09,-70,15"}
    assert _record(_table(change=change), "degC").left_out == (
        "1 temperature lies beyond 60 degC of heat or cold.",
        "1 day has a low above its high.",
    )


def test_impossible_values_on_more_than_one_day_in_a_hundred_are_refused() -> None:
    some = {line: f"{day},20,15" for line, day in enumerate(_days(4), 2)}
    assert _record(_table(change=some), "degC").left_out == ("4 days have a low above their high.",)
    more = {line: f"{day},20,15" for line, day in enumerate(_days(5), 2)}
    problem = _problem(_table(change=more), "degC")
    assert problem.kind == "weather-unit"
    assert problem.wrong.startswith("On 5 of 450 days the low lies above the high")
    assert problem.remedy.startswith("wrong unit or columns swapped?")


def test_a_low_equal_to_its_high_is_possible() -> None:
    record = _record(_table("date,low_degf,high_degc", "59,15"), None)
    assert record.left_out == ()
    assert record.missing_days == 0


def test_lines_that_cannot_be_read_are_shown_up_to_twenty_and_the_rest_counted() -> None:
    broken = {line: f"some day,{line},15" for line in range(2, 39)}
    problems = _problems(_table(change=broken), "degC")
    assert [one.place.line for one in problems] == list(range(2, 23))
    assert {one.kind for one in problems} == {"weather-line"}
    assert problems[0].place.text == "some day,2,15"
    assert problems[-1].wrong == "From here on 17 more lines cannot be used."


def test_twenty_broken_lines_need_no_count() -> None:
    broken = dict.fromkeys(range(2, 22), "2019-01-01;4.5;15")
    assert len(_problems(_table(change=broken), "degC")) == 20
    broken[22] = "so"
    assert _problems(_table(change=broken), "degC")[-1].wrong.startswith("From here on 1 more line")


@pytest.mark.parametrize("text", ["", "\n \n\r\n", "\ufeff"])
def test_an_empty_file_is_refused(text: str) -> None:
    problem = _problem(text)
    assert (problem.kind, problem.wrong) == ("weather-shape", "It is empty.")


@pytest.mark.parametrize(
    "text",
    [
        "Dear grower,\nhere is the weather.\n",
        "date;low;high\n2019-01-01;4.5;15\n",
        "date,low\n2019-01-01,4.5\n",
        "day,low,high\n2019-01-01,4.5,15\n",
        "date,low,tmin,high\n2019-01-01,4.5,4.5,15\n",
        "2019-01-01,4.5,15\n",
        '"date,low,high\n2019-01-01,4.5,15\n',
    ],
)
def test_a_file_of_no_known_shape_is_refused_with_its_first_line(text: str) -> None:
    problem = _problem(f"\n{text}", "degC")
    assert problem.kind == "weather-shape"
    assert problem.place.line == 2
    assert problem.place.text == text.splitlines()[0]
    assert "date,low,high" in problem.remedy


def test_a_packed_file_is_to_be_unpacked() -> None:
    problem = _problem(gzip.compress(_comma().encode()))
    assert (problem.kind, problem.wrong) == ("weather-shape", "It is a packed file.")


def test_a_file_that_is_no_text_is_refused() -> None:
    problem = _problem(_table().encode("utf-16"), "degC")
    assert problem.kind == "file-unreadable"
    latin = _problem(b"date,low,high,note\n2019-01-01,4,15,caf\xe9\n", "degC")
    assert (latin.kind, latin.place.line) == ("file-unreadable", 2)


def test_a_file_beyond_every_record_is_not_read(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("planner.reading.weather_lines.LARGEST_WEATHER_BYTES", 1000)
    assert _problem(_table(), "degC").kind == "file-too-large"


@pytest.mark.parametrize(("days", "enough"), [(365, True), (364, False), (0, False)])
def test_a_record_has_at_least_a_full_year_of_days(days: int, enough: bool) -> None:  # noqa: FBT001 - a column of the table above
    read = _read(_table(days=days), "degC")
    if enough:
        assert isinstance(read, DailyWeather)
        return
    assert isinstance(read, tuple)
    assert [one.kind for one in read] == ["weather-too-little"]
    assert read[0].wrong.startswith(f"It has {days} days with both a low and a high")


def test_days_without_both_values_do_not_make_a_year() -> None:
    """A high alone, as in a record of one thermometer, is no usable day."""
    assert _problem(_table(cells=",15"), "degC").kind == "weather-too-little"
    dropped = _table(change={2: "2019-01-01,20,15"}, days=365)
    assert _problem(dropped, "degC").wrong.startswith("It has 364 days")


def test_a_unit_no_thermometer_has_is_refused() -> None:
    problem = _problem(_table(), "K")
    assert problem.kind == "weather-unit"
    assert '"K"' in problem.wrong


_SHAPES = {
    "fixed columns": (_fixed(), None),
    "comma file": (_comma(), None),
    "export": (_export(), "degF"),
    "own table": (_table(), "degC"),
}


@given(data=st.data())
@settings(max_examples=100, deadline=None)
def test_whatever_is_done_to_a_file_it_is_a_record_or_told_in_problems(data: st.DataObject) -> None:
    text, unit = _SHAPES[data.draw(st.sampled_from(sorted(_SHAPES)))]
    lines = text.splitlines()
    for _ in range(data.draw(st.integers(1, 4))):
        line = data.draw(st.integers(0, len(lines) - 1))
        at = data.draw(st.integers(0, len(lines[line])))
        put = data.draw(st.text(max_size=12) | st.sampled_from(['"', ",", "-9999", "99", "\0"]))
        lines[line] = lines[line][:at] + put + lines[line][at + data.draw(st.integers(0, 40)) :]
    read = _read("\n".join(lines).encode("utf-8", "surrogatepass"), unit)
    if isinstance(read, DailyWeather):
        assert all(math.isnan(low) or -60 <= low <= 60 for low in read.low_degc)
    else:
        assert read
        assert all(one.wrong and one.remedy for one in read)


# --- GHCN-Daily in fixed columns


def test_fixed_columns_are_tenths_of_a_degree_and_reach_to_the_29th_of_february() -> None:
    record = _record(_fixed({date(2020, 2, 29): "  -22  X", date(2020, 3, 1): " -105B X"}))
    assert record.low(date(2020, 2, 29)) == -2.2
    assert record.low(date(2020, 3, 1)) == -10.5
    assert record.low(date(2020, 2, 28)) == 4.5


def test_in_fixed_columns_minus_9999_is_missing() -> None:
    record = _record(_fixed({date(2019, 5, 31): "-9999   "}))
    assert math.isnan(record.low(date(2019, 5, 31)))
    assert record.high(date(2019, 5, 31)) == 15.0
    assert record.left_out == ()


@pytest.mark.parametrize("flag", "DGIKLMNORSTWXZ")
def test_a_value_with_any_quality_flag_is_left_out(flag: str) -> None:
    record = _record(
        _fixed({date(2019, 6, 1): f"   45 {flag}X", date(2019, 6, 2): f" -578 {flag}X"})
    )
    assert math.isnan(record.low(date(2019, 6, 1)))
    assert record.left_out == ("2 lows failed a quality check of the weather service.",)


def test_flags_of_measurement_and_source_are_no_quality_flags() -> None:
    record = _record(_fixed({date(2019, 6, 1): "   45P 7", date(2019, 6, 2): "-9999 GX"}))
    assert record.low(date(2019, 6, 1)) == 4.5
    assert record.left_out == ()


def test_blanks_lost_at_the_end_of_fixed_lines_change_nothing() -> None:
    bare = "\n".join(line.removesuffix("X").rstrip() for line in _fixed().splitlines())
    assert _record(bare) == _record(_fixed())


@pytest.mark.parametrize(
    ("line", "words"),
    [
        (_fixed().splitlines()[1][:100], 'Its value of day 11 is ""'),
        (_fixed().splitlines()[1].replace("   45", "  4.5", 1), 'Its value of day 1 is "4.5"'),
        (f"{_STATION}201913TMIN", "It does not begin with station, year, month, element."),
        (f"{_STATION}001901TMIN", "It does not begin with station, year, month, element."),
        ("USC00381770 2019 01 TMIN", "It does not begin with station, year, month, element."),
    ],
    ids=["cut off", "a point", "month 13", "year 19", "blanks put in"],
)
def test_a_broken_fixed_line_is_told_with_its_number(line: str, words: str) -> None:
    problem = _problem(_fixed(change={2: line}))
    assert (problem.kind, problem.place.line) == ("weather-line", 2)
    assert problem.place.text == line.strip()
    assert problem.wrong.startswith(words)


def test_a_month_has_no_days_beyond_its_end() -> None:
    february = _fixed().splitlines()[4]
    assert february[11:21] == "201902TMIN"
    problem = _problem(_fixed(change={5: february.replace("-9999", "   45", 1)}))
    assert problem.wrong == "The month has no day 29, yet it has a value."


def test_fixed_columns_in_degf_contradict_themselves() -> None:
    assert _record(_fixed(), "degC") == _record(_fixed())
    for text in (_fixed(), _comma()):
        problem = _problem(text, "degF")
        assert (problem.kind, problem.remedy) == ("weather-unit", "take weather_unit out.")


# --- GHCN-Daily as a comma file


def test_a_day_without_a_row_in_the_comma_file_is_missing() -> None:
    record = _record(_comma({2: "", 5: "", 6: ""}))
    assert math.isnan(record.low(date(2019, 1, 1)))
    assert record.high(date(2019, 1, 1)) == 15.0
    assert math.isnan(record.high(date(2019, 1, 3)))
    assert record.missing_days == 2


def test_the_comma_file_has_quality_flags_and_other_elements_too() -> None:
    change = {
        2: f"{_STATION},20190101,TMIN,45,,I,X,0700",
        3: f"{_STATION},20190102,TMAX,400,,G,X",
        4: f"{_STATION},20190102,TMIN,-22,H,,X,0700\n{_STATION},20190102,PRCP,999,T,D,X,",
    }
    record = _record(_comma(change))
    assert record.left_out == ("1 low and 1 high failed a quality check of the weather service.",)
    assert record.low(date(2019, 1, 2)) == -2.2


def test_a_first_line_with_the_names_of_the_comma_file_is_understood() -> None:
    names = "ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\n"
    assert _record(names + _comma()) == _record(_comma())


@pytest.mark.parametrize(
    "line",
    [
        f"{_STATION},20190101,TMIN,4.5,,,X,",
        f"{_STATION},20190101,TMIN,,,,X,",
        f"{_STATION},20190229,TMIN,45,,,X,",
        f"{_STATION},20190101,TMIN",
        f"{_STATION},20190101,TMIN,4,5,,,X,,",
    ],
)
def test_a_broken_line_of_the_comma_file_is_told_with_its_number(line: str) -> None:
    problem = _problem(_comma({2: line}))
    assert (problem.kind, problem.place.line, problem.place.text) == ("weather-line", 2, line)


def test_several_stations_in_one_file_are_named() -> None:
    two = _comma() + _comma().replace(_STATION, "USC00252741").replace(",45,", ",-45,")
    problem = _problem(two)
    assert problem.kind == "weather-shape"
    assert problem.wrong == "It holds 2 stations: USC00381770, USC00252741."
    fixed = _fixed() + _fixed().replace(_STATION, "USC00252741")
    assert _problem(fixed).wrong == problem.wrong
    export = _export() + _export_line("2019-01-01").replace(_STATION, "USC00252741")
    assert _problem(export, "degF").wrong == problem.wrong


def test_of_many_stations_five_are_named() -> None:
    lines = "".join(f"USC0000000{n},20190101,TMAX,150,,,X,\n" for n in range(9))
    assert _problem(lines).wrong.endswith("USC00000003, USC00000004 and 4 more.")


# --- the export of daily summaries


def test_an_export_does_not_say_its_unit_so_the_grower_has_to() -> None:
    problem = _problem(_export())
    assert problem.kind == "weather-unit"
    assert problem.place.line == 1
    assert problem.remedy == 'state weather_unit = "degF" or weather_unit = "degC".'


def test_without_a_unit_the_lines_are_looked_at_all_the_same() -> None:
    kinds = [one.kind for one in _problems(_export({9: "so"}))]
    assert kinds == ["weather-unit", "weather-line"]


def test_an_export_has_dates_of_either_form() -> None:
    bare = {line: _export_line(f"{day:%Y%m%d}") for line, day in enumerate(_days(), 2)}
    assert _record(_export(bare), "degF") == _record(_export(), "degF")


@pytest.mark.parametrize("written", ["", " ", "9999", "-9999", "99999", "999.9", "-9999.0"])
def test_in_an_export_blanks_and_nines_are_missing(written: str) -> None:
    record = _record(_export({2: _export_line("2019-01-01", low=written)}), "degF")
    assert math.isnan(record.low(_FIRST))
    assert record.high(_FIRST) == pytest.approx(15)
    assert record.left_out == ()


def test_ninety_nine_degrees_f_is_a_temperature() -> None:
    change = {2: _export_line("2019-01-01").replace('"59"', '"99"')}
    assert _record(_export(change), "degF").high(_FIRST) == pytest.approx(37.222, abs=0.001)


@pytest.mark.parametrize(
    ("attributes", "kept"),
    [(",,W,2400", True), (",,7", True), ("H,,S", True), ("", True), (",I,W", False)],
)
def test_the_second_attribute_is_the_quality_flag(attributes: str, kept: bool) -> None:  # noqa: FBT001 - a column of the table above
    record = _record(_export({2: _export_line("2019-01-01", attributes=attributes)}), "degF")
    assert math.isnan(record.low(_FIRST)) is not kept
    told = "1 low failed a quality check of the weather service."
    assert record.left_out == (() if kept else (told,))


def test_an_older_export_without_attributes_is_understood() -> None:
    head = "STATION,STATION_NAME,DATE,TMIN,TMAX"
    lines = [f"GHCND:{_STATION},CLEMSON SC US,{day:%Y%m%d},40,59" for day in _days()]
    assert _record("\n".join([head, *lines]), "degF") == _record(_export(), "degF")


def test_a_quotation_mark_that_is_not_closed_swallows_no_lines() -> None:
    problem = _problem(_export({5: _export_line("2019-01-04").replace(' US"', " US")}), "degF")
    assert (problem.kind, problem.place.line) == ("weather-line", 5)


def test_degrees_f_taken_for_degrees_c_are_refused() -> None:
    """A summer of 86 degF would be one of 86 degC."""
    text = _export().replace('"59"', '"86"')
    assert _problem(text, "degC").kind == "weather-unit"


def test_degrees_c_taken_for_degrees_f_are_refused() -> None:
    """A summer of 30 degC would be one of 30 degF, below freezing."""
    text = _table("DATE,TMIN,TMAX", "14,30")
    assert _record(text, "degC").high(_FIRST) == 30
    problem = _problem(text, "degF")
    assert problem.kind == "weather-unit"
    assert "warmest day has -1.1 degC" in problem.wrong


def test_tenths_of_a_degree_taken_for_degrees_are_refused() -> None:
    problem = _problem(_table("DATE,TMIN,TMAX", "45,150"), "degC")
    assert problem.kind == "weather-unit"
    assert "tenths of a degree" in problem.remedy


# --- a grower's own table


def test_an_own_table_needs_a_unit_in_its_names_or_in_the_plan() -> None:
    assert _problem(_table()).kind == "weather-unit"
    assert _record(_table("date,low_degc,high_degc")) == _record(_table(), "degC")
    assert _record(_table("Date, Low , High_degC"), "degC") == _record(_table(), "degC")
    assert _problem(_table("date,low,high_degc")).kind == "weather-unit"


def test_a_unit_in_the_plan_and_another_in_the_names_is_refused() -> None:
    problem = _problem(_table("date,low_degc,high_degc"), "degF")
    assert problem.kind == "weather-unit"
    assert problem.wrong == 'Its columns say another unit than weather_unit = "degF".'


def test_swapped_columns_are_refused() -> None:
    problem = _problem(_table("date,high,low"), "degC")
    assert problem.kind == "weather-unit"
    assert "columns swapped?" in problem.remedy


def test_columns_may_stand_in_any_order_with_others_among_them() -> None:
    lines = [f'15,"warm, dry",{day},4.5' for day in _days()]
    assert _record("\n".join(["high,note,date,low", *lines]), "degC") == _record(_table(), "degC")


def test_a_spreadsheet_may_leave_empty_cells_behind() -> None:
    padded = _table(change={2: "2019-01-01,4.5,15.0,,", 3: "2019-01-02,4.5,15.0, "})
    assert _record(padded, "degC") == _record(_table(), "degC")


@pytest.mark.parametrize("written", ["", "NA", "nan", "M", "-9999"])
def test_an_own_table_may_say_missing_in_a_few_ways(written: str) -> None:
    record = _record(_table(change={2: f"2019-01-01,{written},15"}), "degC")
    assert math.isnan(record.low(_FIRST))


@pytest.mark.parametrize(
    "line",
    [
        "1/15/2019,4.5,15",
        "2019-W03-2,4.5,15",
        "2019-02-29,4.5,15",
        "0201-01-15,4.5,15",
        "2019-01-15,4.5",
        "2019-01-15,4,5,15",
        "2019-01-15,4.5 C,15",
        "2019-01-15,1_0,15",
        "2019-01-15,inf,15",
        "2019-01-15,1e1,15",
        ",4.5,15",
    ],
)
def test_a_line_that_can_be_misread_is_not_read(line: str) -> None:
    problem = _problem(_table(change={16: line}), "degC")
    assert (problem.kind, problem.place.line, problem.place.text) == ("weather-line", 16, line)


# --- long records


@pytest.mark.parametrize("shape", SHAPES, ids=lambda shape: shape.name)
def test_the_benchmark_of_reading_runs_for_every_shape(shape: Shape, tmp_path: Path) -> None:
    measured = load(shape, years=2, folder=tmp_path, repeat=1)
    assert measured.days == 731
    assert measured.megabytes > 0
    assert measured.cpu_s >= 0


# Rain


def _rain(text: str, unit: str | None = None) -> MonthlyDepth:
    rain = _with_rain(text, unit).rain
    assert isinstance(rain, MonthlyDepth)
    return rain


def _wet_table(head: str, rain: str, days: int = _DAYS) -> str:
    return _table(head, f"40,59,{rain}", days=days)


@pytest.mark.parametrize(
    ("head", "rain", "unit", "january_mm"),
    [
        # The export of daily summaries: inches beside degF, millimetres beside degC.
        ("DATE,TMIN,TMAX,PRCP", "0.10", "degF", 31 * 2.54),
        ("DATE,TMIN,TMAX,PRCP", "2.5", "degC", 31 * 2.5),
        ("date,low_degf,high_degf,rain_mm", "2.5", None, 31 * 2.5),
        ("date,low,high,rain_in", "0.1", "degC", 31 * 2.54),
    ],
)
def test_an_average_month_brings_its_days_of_mean_rain(
    head: str, rain: str, unit: str | None, january_mm: float
) -> None:
    told = _rain(_wet_table(head, rain), unit)
    assert told.mm[0] == pytest.approx(january_mm)
    assert told.mm[3] == pytest.approx(january_mm * 30 / 31)
    assert len(told.mm) == 12


def test_rain_of_ghcn_daily_is_in_tenths_of_millimetres() -> None:
    # Readme of GHCN-Daily: PRCP is precipitation in tenths of mm.
    days = [f"{_STATION},{day:%Y%m%d},PRCP,25,,,S," for day in _days()]
    heat = [
        f"{_STATION},{day:%Y%m%d},{element},{value},,,S,"
        for day in _days()
        for element, value in (("TMIN", 45), ("TMAX", 150))
    ]
    assert _rain("\n".join([*heat, *days])).mm[0] == pytest.approx(31 * 2.5)


def test_days_without_rain_told_count_neither_as_wet_nor_as_dry() -> None:
    change = {number: f"{day},40,59," for number, day in enumerate(_days(), 2) if day.day > 28}
    text = _table("date,low,high,rain", "40,59,0.2", change=change)
    assert _rain(text, "degF").mm[0] == pytest.approx(31 * 0.2 * 25.4)


@pytest.mark.parametrize("rain", ["", "-1", "99"])
def test_rain_that_cannot_be_is_not_told(rain: str) -> None:
    text = _wet_table("date,low,high,rain_in", rain)
    assert isinstance(_with_rain(text, "degF").rain, NotTold)


def test_a_record_without_rain_tells_none() -> None:
    assert isinstance(_with_rain(_table(), "degC").rain, NotTold)


def test_the_latest_thirty_years_of_rain_count() -> None:
    by_day = {date(year, 1, 1).toordinal() + n: 1.0 for year in (1960, 2020) for n in range(365)}
    for n in range(365):
        by_day[date(1960, 1, 1).toordinal() + n] = 50.0
    rain = rain_by_month(by_day, Source("plan"))
    assert isinstance(rain, MonthlyDepth)
    assert rain.mm[6] == pytest.approx(31)
