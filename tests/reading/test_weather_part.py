"""A record named in a plan tells both freezes of a year, or the grower hears what it lacks."""

from collections.abc import Callable
from datetime import date

import pytest

from planner.climate import NoUsableYear, freeze_record_of
from planner.garden import DailyWeather, Garden
from planner.reading import PlanFile, PlanFiles, read_garden
from planner.terms import Problem, days_between
from tests.plan_text import bed, plan_head, target

_NAMED = 'weather = "weather.csv"'
_BY_HAND = 'last_spring_freeze = "04-15"\nfirst_fall_freeze = "10-20"'


def _table(
    is_there: Callable[[date], bool],
    first: date = date(2011, 1, 1),
    last: date = date(2020, 12, 31),
    coldest_degc: float = -5.0,
) -> str:
    """A day of 1 January and of 1 July has a low of `coldest_degc`, every other one of 8."""
    lines = [
        f"{day},{coldest_degc if (day.month, day.day) in {(1, 1), (7, 1)} else 8},18"
        for day in days_between(first, last)
        if is_there(day)
    ]
    return "\n".join(["date,low_degc,high_degc", *lines])


def _read(table: str, more: str = _NAMED, latitude: float = 45.0) -> Garden | tuple[Problem, ...]:
    file = PlanFile("weather.csv", table.encode())
    head = plan_head(f"latitude = {latitude}\n{more}\n")
    plan = head + bed() + target("radish", "20 roots")
    garden = PlanFile("garden.toml", plan.encode())
    return read_garden(PlanFiles(garden, None, lambda _: file))


def _problem(table: str, more: str = _NAMED, latitude: float = 45.0) -> Problem:
    read = _read(table, more, latitude)
    assert isinstance(read, tuple)
    (problem,) = read
    return problem


def _always(_: date) -> bool:
    return True


def _gaps(*months: int) -> Callable[[date], bool]:
    """Twelve days are missing from each of these months in every year."""
    return lambda day: day.month not in months or day.day > 12


def test_gaps_in_every_spring_and_fall_are_too_much_to_read_freezes_off() -> None:
    problem = _problem(_table(_gaps(6, 9)))
    assert problem.kind == "weather-too-little"
    assert problem.place.line == 5
    assert "the last freeze of spring (1 January to 31 July)" in problem.wrong
    assert "the first freeze of fall (1 August to 31 December)" in problem.wrong
    assert "by hand" in problem.remedy


@pytest.mark.parametrize(
    ("latitude", "month", "side"),
    [
        (45.0, 6, "the last freeze of spring (1 January to 31 July)"),
        (45.0, 9, "the first freeze of fall (1 August to 31 December)"),
        (-45.0, 12, "the last freeze of spring (1 July to 31 January)"),
        (-45.0, 3, "the first freeze of fall (1 February to 30 June)"),
    ],
)
def test_the_side_that_no_year_tells_is_named(latitude: float, month: int, side: str) -> None:
    wrong = _problem(_table(_gaps(month)), latitude=latitude).wrong
    assert wrong.startswith(f"No year of the record tells {side}: ")


@pytest.mark.parametrize("other", [_BY_HAND, 'station = "USW00012839"'], ids=["hand", "station"])
def test_where_freezes_are_stated_otherwise_the_record_need_not_tell_them(other: str) -> None:
    assert isinstance(_read(_table(_gaps(6, 9)), f"{_NAMED}\n{other}"), Garden)


@pytest.mark.parametrize("latitude", [45.0, -45.0])
def test_whatever_reading_lets_through_has_odds_on_both_sides(latitude: float) -> None:
    """One good spring and fall among bad years, and mild ones that go on to the first freeze."""
    spans = [
        (date(2011, 1, 1), date(2012, 12, 31)),
        (date(2011, 7, 1), date(2012, 7, 10)),
        (date(2011, 7, 1), date(2012, 6, 30)),
        (date(2011, 1, 1), date(2012, 2, 10)),
        (date(2011, 1, 1), date(2011, 12, 31)),
    ]
    told = 0
    for coldest_degc in (-5.0, 8.0):
        for first, last in spans:
            read = _read(_table(_always, first, last, coldest_degc), latitude=latitude)
            if isinstance(read, Garden):
                assert isinstance(read.site.weather, DailyWeather)
                told += 1
                record = freeze_record_of(read.site.weather, latitude)
                for day_at in (record.spring_day_at_risk, record.fall_day_at_risk):
                    assert not isinstance(day_at(0.5), NoUsableYear)
            else:
                assert [one.kind for one in read] == ["weather-too-little"]
    assert 0 < told < 2 * len(spans)


def test_a_bad_latitude_is_told_once() -> None:
    assert _problem(_table(_always), latitude=99).kind == "out-of-range"


@pytest.mark.parametrize("more", ["", f"\n{_BY_HAND}"])
def test_a_record_of_the_growing_season_only_has_no_average_year(more: str) -> None:
    problem = _problem(_table(lambda day: 4 <= day.month <= 10), _NAMED + more)
    assert problem.kind == "weather-too-little"
    assert problem.wrong.startswith("From 1 November to 31 March no year has a low")


@pytest.mark.parametrize("lacking_days", [14, 15])
def test_fifteen_days_of_the_calendar_without_a_high_are_too_many(lacking_days: int) -> None:
    lines = [
        f"{day},8,{'' if day.month == 5 and day.day <= lacking_days else 18}"
        for day in days_between(date(2011, 1, 1), date(2013, 12, 31))
    ]
    read = _read("\n".join(["date,low_degc,high_degc", *lines]))
    if lacking_days < 15:
        assert isinstance(read, Garden)
        assert isinstance(read.site.weather, DailyWeather)
        return
    assert isinstance(read, tuple)
    assert read[0].wrong.startswith("From 1 May to 15 May no year has a high")


def test_a_unit_without_a_file_is_told() -> None:
    problem = _problem("", f'weather_unit = "degF"\n{_BY_HAND}')
    assert problem.kind == "unknown-key"
    assert problem.place.line == 5
    assert 'weather = "weather.csv"' in problem.remedy
