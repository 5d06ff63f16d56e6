"""On which day plants raised indoors are set out (rules §11); common practice, no source."""

from datetime import date

import pytest

from planner.garden import Garden, RaisedIndoors
from planner.scheduling.starts.candidate import set_out_day
from planner.scheduling.starts.workdays import Workdays
from tests.scheduling.by_hand import found_of, paper_crop, paper_garden, started, wanted

# Five weeks after this Monday, the middle of four to six, is Monday 10 May.
_SOWN = date(2027, 4, 5)


def _garden(garden_days: str, away: str) -> Garden:
    crop = paper_crop(method="indoors", weeks_indoors="4-6 weeks", days_from_setting_out="30 days")
    wishes = f"away = [{away}]" if away else ""
    return paper_garden(crop, wanted(), garden_days=garden_days, wishes=wishes)


def _set_out(garden_days: str = '"Mon"', away: str = "") -> date | None:
    garden = _garden(garden_days, away)
    (way,) = garden.crops["paper crop"].ways
    assert isinstance(way, RaisedIndoors)
    return set_out_day(Workdays(garden.wish), way, _SOWN)


def test_plants_are_set_out_in_the_middle_of_their_weeks_indoors() -> None:
    assert _set_out() == date(2027, 5, 10)


def test_else_on_the_garden_day_nearest_to_it() -> None:
    """Saturday the 8th is two days before, Friday the 14th four days after."""
    assert _set_out('"Sat"') == date(2027, 5, 8)
    assert _set_out('"Fri"') == date(2027, 5, 7)
    assert _set_out('"Thu"') == date(2027, 5, 13)


def test_of_two_as_near_on_the_earlier() -> None:
    """Away on the 10th, the 3rd and the 17th are a week off."""
    assert _set_out(away="{ from = 2027-05-10, to = 2027-05-10 }") == date(2027, 5, 3)


def test_never_outside_its_weeks_indoors() -> None:
    """Four weeks are up on 3 May and six on 17 May, both of them included."""
    third, tenth, last = (
        f"{{ from = 2027-05-{day}, to = 2027-05-{day} }}" for day in ("03", "10", "17")
    )
    assert _set_out(away=f"{tenth}, {last}") == date(2027, 5, 3)
    assert _set_out(away=f"{third}, {tenth}") == date(2027, 5, 17)
    assert _set_out(away=f"{third}, {tenth}, {last}") is None


@pytest.mark.parametrize(("last_away", "set_out_on"), [("25", date(2027, 5, 3)), ("28", None)])
def test_somebody_is_there_a_week_or_two_before_to_begin_hardening(
    last_away: str, set_out_on: date | None
) -> None:
    """Set out on 3 May at the latest: hardening begins from 19 April, two weeks before."""
    before = f"{{ from = 2027-04-19, to = 2027-04-{last_away} }}"
    after = "{ from = 2027-05-04, to = 2027-05-20 }"
    assert _set_out(away=f"{before}, {after}") == set_out_on


def test_its_days_to_maturity_are_counted_from_that_day() -> None:
    """Set out on 3 May for want of the 10th it is ripe 30 days later, on 2 June."""
    found = found_of(_garden('"Mon"', "{ from = 2027-05-10, to = 2027-05-10 }"))
    course = started(found, _SOWN).course
    assert course.set_out_on == course.enters_on == date(2027, 5, 3)
    assert course.ripe.likely == date(2027, 6, 2)


def test_what_nobody_could_set_out_is_not_started() -> None:
    found = found_of(_garden('"Mon"', "{ from = 2027-05-03, to = 2027-05-17 }"))
    starts = {one.course.start_on for one in found.candidates}
    assert date(2027, 3, 29) in starts
    assert _SOWN not in starts
