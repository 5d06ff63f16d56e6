"""What a start gives in past years, counted on paper (rules §38, §40)."""

from dataclasses import replace
from datetime import date, timedelta
from functools import cache

import pytest

from planner.climate import Climate
from planner.growth import Limits, Observation, OutdoorTime
from planner.journal import Entry, Event, Journal
from planner.scheduling import (
    Candidate,
    CropYears,
    YearOfCrop,
    crop_candidates,
    evenly,
    open_days_only,
)
from planner.scheduling.standing.seen_harvests import seen_harvests
from planner.scheduling.starts.years import in_years
from planner.terms import UNITS, Place, Quantity, Week
from tests.scheduling.by_hand import FIRST, found_of, paper_crop, paper_garden, started, wanted
from tests.scheduling.sown_by_hand import sowing_of
from tests.trial.records import Degc, constant, plan_of, recorded_garden

_SOWN, _RIPE = date(2027, 4, 5), date(2027, 5, 3)
_W18, _W19, _W20 = (Week(2027, number) for number in (18, 19, 20))


@pytest.mark.parametrize(
    ("many", "total", "places"),
    [
        (5, 30, [3, 9, 15, 21, 27]),
        (5, 5, [0, 1, 2, 3, 4]),
        (5, 3, [0, 1, 2]),
        (1, 3, [1]),
        (2, 4, [1, 3]),
        (5, 0, []),
    ],
)
def test_years_taken_evenly_are_the_middles_of_equal_parts(
    many: int, total: int, places: list[int]
) -> None:
    assert evenly(many, total) == places


def _years(cover_weeks: int, figures: dict[str, str]) -> CropYears:
    """A crop that goes out from 15 April without a cover, until 15 October."""
    garden = paper_garden(paper_crop(**figures), wanted(), wishes=f"cover_weeks = {cover_weeks}")
    about = found_of(garden).about
    opens, ends = date(2027, 4, 15), date(2027, 10, 15)
    return CropYears(about, (OutdoorTime(opens, ends, ends, "", ""),), ())


_TENDER = {"hardiness": "tender", "autumn_tolerance": "none"}


@pytest.mark.parametrize(
    ("cover_weeks", "enters", "until"),
    [
        # Safe until it would go out without a cover, but no longer than the cover is left on.
        (4, date(2027, 4, 1), date(2027, 4, 15)),
        (1, date(2027, 4, 1), date(2027, 4, 8)),
        (4, date(2027, 4, 20), date(2027, 4, 20)),
        (4, date(2027, 10, 15), date(2027, 10, 15)),
        (4, date(2027, 10, 20), date(2027, 10, 20)),
    ],
)
def test_a_cover_keeps_frost_off_until_the_crop_would_go_out_without_one(
    cover_weeks: int, enters: date, until: date
) -> None:
    assert _years(cover_weeks, _TENDER).covered_until(enters) == until


def test_what_frost_does_not_kill_needs_no_cover() -> None:
    assert _years(4, {"hardiness": "hardy"}).covered_until(date(2027, 4, 1)) == date(2027, 4, 1)


def test_a_night_may_kill_what_shows_and_is_not_covered() -> None:
    """Up on 10 April, uncovered on the 15th; or up on the 20th, and the night after it counts."""
    years = _years(4, _TENDER)
    assert years.stands_from(date(2027, 4, 1), date(2027, 4, 10)) == date(2027, 4, 15)
    assert years.stands_from(date(2027, 4, 1), date(2027, 4, 20)) == date(2027, 4, 21)


_BEAN = {"habit": "pick", "picking_days": "14 days", "yield": "14 lb"}
_DAILY = '"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"'


def _bean() -> Candidate:
    garden = paper_garden(paper_crop(**_BEAN), wanted(amount="8 lb"), garden_days=_DAILY)
    return started(found_of(garden), _SOWN)


@cache
def _past_year() -> YearOfCrop:
    plan = plan_of(("radish", "1 roots", "2027-05-03", "2027-05-30"))
    garden = recorded_garden(plan, constant(15))
    return crop_candidates(garden, Climate(garden.site), FIRST)[0].years.years[0]


def _year_with_heat(first: date, last: date) -> YearOfCrop:
    """A year in which some days are too hot."""
    hot = tuple("hot" for _ in range((last - first).days + 1))
    return replace(_past_year(), closed=Limits(first, harvest=hot))


@pytest.mark.parametrize(
    ("first", "last", "shares"),
    [
        # Ripe from Monday 3 May: two of seven days, all of the week, none of it.
        ((5, 5), (5, 6), (5 / 7, 1)),
        ((4, 1), (5, 9), (0, 1)),
        ((5, 9), (5, 10), (6 / 7, 6 / 7)),
        ((4, 1), (5, 2), (1, 1)),
    ],
)
def test_days_too_hot_take_their_share_of_a_week_s_pods(
    first: tuple[int, int], last: tuple[int, int], shares: tuple[float, float]
) -> None:
    bean = _bean()
    year = _year_with_heat(date(2027, *first), date(2027, *last))
    had = open_days_only(bean, year, date.max)
    assert had.flow == pytest.approx(
        {week: bean.flow[week] * one for week, one in zip((_W18, _W19), shares, strict=True) if one}
    )
    assert had.days == {week: bean.days[week] for week in had.flow}


def test_of_the_week_in_which_it_ends_only_its_days_count() -> None:
    """Cleared on Wednesday 12 May: one of three days was too hot."""
    bean = _bean()
    year = _year_with_heat(date(2027, 5, 12), date(2027, 5, 20))
    had = open_days_only(bean, year, date(2027, 5, 12))
    assert had.flow[_W19] == pytest.approx(bean.flow[_W19] * 2 / 3)


def _cold(day: tuple[int, int], year: int) -> Degc:
    """Twenty degrees on every day but one of one year, whose night freezes hard."""
    return lambda one: -5.0 if one == date(year, *day) else 20.0


def test_a_deadly_night_ends_the_start_in_that_year_and_in_no_other() -> None:
    """Of thirty years from 1991 on five stand for all: the fourth of them is 1994."""
    plan = plan_of(("bush bean", "2 lb", "2027-07-05", "2027-09-26"))
    garden = recorded_garden(plan, _cold((8, 11), 1994))
    (found,) = crop_candidates(garden, Climate(garden.site), garden.wish.first)
    assert len(found.years.years) == 5
    usual = next(one for one in found.candidates if one.course.ripe.likely > date(2027, 8, 1))
    cold, *others = in_years(usual, found.years)
    assert cold.days
    assert all(day <= date(2027, 8, 11) for day in cold.days.values())
    for other in others:
        assert max(other.days.values()) > date(2027, 8, 11)
        before = {week: day for week, day in other.days.items() if day <= date(2027, 8, 11)}
        assert cold.days == before


def test_what_is_raised_indoors_is_set_out_on_its_day_in_every_year() -> None:
    """Where every year is the same as the average one, so is what a start gives."""
    garden = recorded_garden(
        plan_of(("tomato", "2 lb", "2027-07-05", "2027-09-26")), constant(20.0)
    )
    (found,) = crop_candidates(garden, Climate(garden.site), garden.wish.first)
    usual = next(one for one in found.candidates if one.course.set_out_on is not None)
    for there in in_years(usual, found.years):
        assert there.course.set_out_on == usual.course.set_out_on
        assert there.course.ripe.likely == usual.course.ripe.likely


# --- first harvests seen (§37)


def _seen(*entries: tuple[Event, date], sow_on: date = _SOWN) -> list[Observation]:
    garden = paper_garden(paper_crop(), wanted())
    found = {"paper crop": found_of(garden)}
    sowing = sowing_of(garden.crops["paper crop"], "paper crop 1", sow_on)
    heads = Quantity(1.0, UNITS["heads"])
    told = tuple(
        Entry(
            day,
            event,
            "paper crop 1",
            heads if event is Event.PICKED else None,
            "",
            Place("journal.csv", 2),
        )
        for event, day in entries
    )
    return list(seen_harvests(found, (sowing,), Journal(told)))


def test_a_first_picking_is_set_beside_the_days_predicted() -> None:
    """Sown on 5 April and predicted for 3 May, 28 days; picked on 7 May, 32 days."""
    picked = (Event.PICKED, _RIPE + timedelta(days=4))
    again = (Event.PICKED, _RIPE + timedelta(days=9))
    assert _seen(picked, again) == [Observation("paper crop", 28, 32)]


def test_days_are_counted_from_the_real_sowing_and_to_a_garden_day() -> None:
    """Sown on Wednesday 7 April, ripe Wednesday 5 May, first picked by plan on Monday the 10th.

    In that week it would be picked on a day that is no garden day: Wednesday itself.
    """
    entries = ((Event.SOWN, _SOWN + timedelta(days=2)), (Event.PICKED, date(2027, 5, 10)))
    assert _seen(*entries) == [Observation("paper crop", 28, 33)]


def test_what_was_not_picked_or_begun_before_the_season_tells_nothing() -> None:
    assert _seen((Event.SOWN, _SOWN)) == []
    assert _seen() == []
    assert _seen((Event.PICKED, _RIPE), sow_on=date(2027, 2, 22)) == []
