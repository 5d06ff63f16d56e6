"""Which weeks a sowing feeds, and with how much, counted on paper (rules §13, §16).

All dates are counted by hand from a calendar of 2027; common practice, no source, unless it says
otherwise.
"""

from datetime import date, timedelta

import pytest

from planner.terms import Week, week_of
from tests.scheduling.by_hand import found_of, paper_crop, paper_garden, started, wanted

_DAILY = '"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"'
# Twenty-eight days after this Monday is Monday, 3 May 2027, the first day of week 18.
_SOWN = date(2027, 4, 5)
_W18, _W19, _W20, _W21, _W22 = (Week(2027, number) for number in range(18, 23))


def _away(first: str, last: str) -> str:
    return f"away = [{{ from = {first}, to = {last} }}]"


@pytest.mark.parametrize(("hold", "weeks"), [(6, [_W18]), (7, [_W18, _W19]), (13, [_W18, _W19])])
def test_a_head_feeds_every_week_up_to_the_last_day_it_stands(hold: int, weeks: list[Week]) -> None:
    """Ripe on a Monday: six days later is its Sunday, seven the next Monday."""
    garden = paper_garden(paper_crop(hold_days=f"{hold} days"), wanted())
    one = started(found_of(garden), _SOWN)
    assert one.course.ripe.likely == _W18.monday
    assert one.days == {week: week.monday for week in weeks}
    assert one.flow == {}


def test_a_week_is_served_on_its_first_garden_day() -> None:
    """Ripe Monday 3 May, garden days Wednesday and Saturday: Wednesday 5 May and 12 May."""
    garden = paper_garden(
        paper_crop(days_from_sowing="26 days", hold_days="12 days"),
        wanted(),
        garden_days='"Wed", "Sat"',
    )
    one = started(found_of(garden), date(2027, 4, 7))
    assert one.days == {_W18: date(2027, 5, 5), _W19: date(2027, 5, 12)}


def test_in_a_week_whose_garden_day_is_too_late_it_is_picked_on_another() -> None:
    """Ripe Monday 3 May and good until Tuesday 11 May; the Saturday of that week is the 15th."""
    crop = paper_crop(days_from_sowing="30 days", hold_days="8 days")
    garden = paper_garden(crop, wanted(), garden_days='"Sat"')
    one = started(found_of(garden), date(2027, 4, 3))
    assert one.days == {_W18: date(2027, 5, 8), _W19: date(2027, 5, 10)}


def test_but_only_when_somebody_is_there() -> None:
    crop = paper_crop(days_from_sowing="30 days", hold_days="8 days")
    garden = paper_garden(
        crop, wanted(), garden_days='"Sat"', wishes=_away("2027-05-10", "2027-05-10")
    )
    assert started(found_of(garden), date(2027, 4, 3)).days[_W19] == date(2027, 5, 11)
    garden = paper_garden(
        crop, wanted(), garden_days='"Sat"', wishes=_away("2027-05-10", "2027-05-11")
    )
    assert started(found_of(garden), date(2027, 4, 3)).days == {_W18: date(2027, 5, 8)}


@pytest.mark.parametrize(("keeps", "last"), [(27, _W21), (28, _W22), (34, _W22)])
def test_what_is_stored_is_lifted_at_once_and_feeds_weeks_while_it_keeps(
    keeps: int, last: Week
) -> None:
    """Lifted Monday 3 May: 28 days later is Monday 31 May, the first day of week 22."""
    crop = paper_crop(habit="store", hold_days="20 days", store_days=f"{keeps} days")
    one = started(found_of(paper_garden(crop, wanted())), _SOWN)
    assert one.days == dict.fromkeys(_W18.until(last), _W18.monday)


def test_a_store_is_not_counted_beyond_the_last_day_wanted() -> None:
    crop = paper_crop(habit="store", hold_days="20 days", store_days="60 days")
    one = started(found_of(paper_garden(crop, wanted(last="2027-05-23"))), _SOWN)
    assert max(one.days) == _W20


def test_leaves_cut_before_they_have_fully_regrown_give_less() -> None:
    """Regrown in 16 days, cut each second Monday: after 14 days 14/16 of 8 oz is 7 oz.

    Four fifths of regrowing is the least: 13 days, so the Monday after it is the fourteenth.
    """
    crop = paper_crop(habit="cut", cuts="3 cuts", regrow_days="16 days", **{"yield": "8 oz"})
    one = started(found_of(paper_garden(crop, wanted(amount="8 oz"))), _SOWN)
    assert one.days == {week: week.monday for week in (_W18, _W20, _W22)}
    assert list(one.flow.values()) == pytest.approx([8, 7, 7])


def test_leaves_cut_after_they_have_regrown_give_no_more_for_it() -> None:
    """Regrown in 9 days, cut after 14."""
    crop = paper_crop(habit="cut", cuts="3 cuts", regrow_days="9 days", **{"yield": "8 oz"})
    one = started(found_of(paper_garden(crop, wanted(amount="8 oz"))), _SOWN)
    assert list(one.flow) == [_W18, _W20, _W22]
    assert list(one.flow.values()) == pytest.approx([8, 8, 8])


def test_two_cuts_in_one_week_both_count_for_it() -> None:
    """Regrown in 3 days, cut on Monday and Thursday: two cuts in week 18, one in week 19."""
    crop = paper_crop(habit="cut", cuts="3 cuts", regrow_days="3 days", **{"yield": "8 oz"})
    garden = paper_garden(crop, wanted(amount="8 oz"), garden_days='"Mon", "Thu"')
    one = started(found_of(garden), _SOWN)
    assert one.days == {_W18: _W18.monday, _W19: _W19.monday}
    assert list(one.flow.values()) == pytest.approx([16, 8])


def test_leaves_are_cut_up_to_the_last_day_wanted() -> None:
    crop = paper_crop(habit="cut", cuts="3 cuts", regrow_days="14 days", **{"yield": "8 oz"})
    for last in ("2027-05-23", "2027-05-30"):
        garden = paper_garden(crop, wanted(last=last, amount="8 oz"))
        assert max(started(found_of(garden), _SOWN).days) == _W20


# Fourteen pods over fourteen days, one a day on average; the first day a quarter more, the last
# as much less (the share is from memory), in even steps: seven days about the fourth have
# 7 x (1 + 0.25 x 3.5 / 6.5).
_FIRST_WEEK = 7 * (1 + 0.25 * 3.5 / 6.5)
_BEAN = {"habit": "pick", "picking_days": "14 days", "yield": "14 lb"}


def test_pods_come_most_at_first_and_all_of_them_in_the_end() -> None:
    garden = paper_garden(paper_crop(**_BEAN), wanted(amount="8 lb"), garden_days=_DAILY)
    one = started(found_of(garden), _SOWN)
    assert one.days == {_W18: _W18.monday, _W19: _W19.monday}
    assert one.flow == pytest.approx({_W18: _FIRST_WEEK, _W19: 14 - _FIRST_WEEK})


def test_pods_are_counted_up_to_the_last_day_wanted() -> None:
    """Wanted until the second Sunday: a bean ripe a week later gives its first week alone."""
    garden = paper_garden(
        paper_crop(**_BEAN), wanted(last="2027-05-16", amount="8 lb"), garden_days=_DAILY
    )
    one = started(found_of(garden), _SOWN + timedelta(days=7))
    assert one.flow == pytest.approx({_W19: _FIRST_WEEK})


def test_pods_that_ripen_while_nobody_is_there_are_lost() -> None:
    away = _away("2027-05-03", "2027-05-09")
    garden = paper_garden(paper_crop(**_BEAN), wanted(amount="8 lb"), wishes=away)
    assert started(found_of(garden), _SOWN).flow == pytest.approx({_W19: 14 - _FIRST_WEEK})


def test_pods_of_a_week_without_its_garden_day_are_picked_on_another() -> None:
    """Monday is the garden day, and the only day away: Tuesday will do."""
    away = _away("2027-05-10", "2027-05-10")
    garden = paper_garden(paper_crop(**_BEAN), wanted(amount="8 lb"), wishes=away)
    one = started(found_of(garden), _SOWN)
    assert one.days == {_W18: date(2027, 5, 3), _W19: date(2027, 5, 11)}


def test_starts_reach_from_the_day_of_planning_to_what_is_ripe_on_the_last_day_wanted() -> None:
    """The last Monday wanted is 30 August; 28 days before is 2 August."""
    garden = paper_garden(paper_crop(), wanted(last="2027-09-05"))
    found = found_of(garden, date(2027, 4, 12))
    starts = [one.course.start_on for one in found.candidates]
    assert starts == [date(2027, 4, 12) + timedelta(weeks=weeks) for weeks in range(17)]
    assert starts[-1] == date(2027, 8, 2)


def test_nothing_is_started_before_the_season_though_planned_before_it() -> None:
    found = found_of(paper_garden(paper_crop(), wanted()), date(2027, 1, 4))
    assert found.candidates[0].course.start_on == date(2027, 3, 1)


def test_the_candidates_of_a_week_are_those_with_a_day_in_it() -> None:
    found = found_of(paper_garden(paper_crop(hold_days="7 days"), wanted()))
    starts = [one.course.start_on for one in found.serving(_W19)]
    assert starts == [_SOWN, _SOWN + timedelta(days=7)]
    assert week_of(date(2027, 5, 10)) == _W19
