"""What a sowing says of its dates: every number in it is counted on paper."""

from dataclasses import replace
from datetime import date

import pytest

from planner.garden import SharedGround, SharingPattern
from planner.growth import Ripening
from planner.scheduling import HarvestDay
from planner.scheduling.story import Chosen, Made, why_sowing
from planner.terms import Source
from tests.scheduling.by_hand import found_of, paper_crop, paper_garden, started, wanted

_SOWN, _RIPE, _NEXT = date(2027, 4, 5), date(2027, 5, 3), date(2027, 5, 10)


def _made(harvest: dict[date, float], plants: int = 6, unit: str = "heads", **figures: str) -> Made:
    """A sowing of Monday 5 April, and what it gives on which day."""
    garden = paper_garden(paper_crop(**figures), wanted(amount=f"4 {unit}"))
    course = started(found_of(garden), _SOWN).course
    days = tuple(HarvestDay(day, amount) for day, amount in harvest.items())
    return Made(course, plants, days, max(harvest), Chosen.BEST, max(harvest))


def _line(made: Made, words: str) -> str:
    (one,) = [one for one in why_sowing(made) if words in one]
    return one


def test_a_sowing_in_place_tells_its_day_and_when_it_shows() -> None:
    made = _made({_RIPE: 6.0})
    start, shows, *_ = why_sowing(made)
    assert start == (
        "Sown in place on 2027-04-05, the latest such start that has it ready for its week (§12)."
    )
    assert shows.startswith("The first green shows about 2027-04-10: 5 days (your plan, ")
    assert shows.endswith("; thinning follows a week later.")
    start, *_ = why_sowing(replace(made, chosen=Chosen.FOR_GROUND))
    assert start.endswith("a start that serves its week and for which ground is free (§12).")


def test_what_is_planted_is_not_sown_and_not_thinned() -> None:
    made = _made({_RIPE: 6.0}, start_from="sets")
    start, shows, *_ = why_sowing(made)
    assert start.startswith("Planted in place on 2027-04-05")
    assert shows.startswith("The first green shows about 2027-04-10: 5 days (your plan, ")
    assert shows.endswith(").")
    assert "28 days from planting" in _line(made, "Likely ripe")


def test_it_tells_when_it_is_ripe_and_by_what_that_was_counted() -> None:
    made = _made({_RIPE: 6.0}, days_from_sowing="26-30 days")
    ripe = _line(made, "Likely ripe")
    assert ripe.startswith(
        "Likely ripe on 2027-05-03 (between 2027-05-01 and 2027-05-05): 26 to 30 days from sowing "
        "(your plan, "
    )
    assert ripe.endswith("counted by the calendar (§3).")
    assert "past years" not in ripe


def test_it_tells_in_how_many_past_years_it_would_have_come_too_late() -> None:
    made = _made({_RIPE: 6.0})
    ripe = Ripening(_RIPE, _RIPE, _NEXT, years=30, years_too_late=2)
    late = replace(made, course=replace(made.course, ripe=ripe))
    assert _line(late, "Likely ripe").endswith(
        " In 2 of 30 past years it would not have been ripe in time."
    )
    by_heat = replace(made, course=replace(made.course, counted="by heat of an average year"))
    assert _line(by_heat, "Likely ripe").endswith("(§3, §21).")


def test_days_added_in_fall_are_told_from_half_a_day_on() -> None:
    made = _made({_RIPE: 6.0})
    slow = replace(made, course=replace(made.course, fall_extra_days=12.6))
    assert _line(slow, "in fall") == "It ripens in fall, so 13 days are added (VCE-FALL, §9)."
    for days, told in ((0.5, 1), (0.4, 0)):
        one = replace(made, course=replace(made.course, fall_extra_days=days))
        assert sum("in fall" in line for line in why_sowing(one)) == told


def test_raised_indoors_it_tells_its_weeks_and_hardening_off() -> None:
    made = _made(
        {date(2027, 5, 31): 6.0},
        method="indoors",
        weeks_indoors="3-5 weeks",
        days_from_setting_out="28 days",
    )
    start = why_sowing(made)[0]
    assert start.startswith("Sown indoors on 2027-04-05, ")
    assert "to stand 3 to 5 weeks (your plan, " in start
    assert "before setting out on 2027-05-03; hardening off takes the last week" in start
    assert "28 days from setting out" in _line(made, "Likely ripe on 2027-05-31")


@pytest.mark.parametrize(
    ("figures", "unit", "how"),
    [
        ({"hold_days": "7 days"}, "heads", "It stands at usable size for 7 days"),
        (
            {"habit": "cut", "cuts": "2-3 cuts", "regrow_days": "14 days"},
            "heads",
            "It is cut 2 to 3 times, 14 days",
        ),
        ({"habit": "pick", "picking_days": "14 days"}, "heads", "It is picked over 14 days"),
        (
            {"habit": "store", "hold_days": "7 days", "store_days": "90 days"},
            "heads",
            "It is lifted at once and keeps for 90 days",
        ),
    ],
)
def test_it_tells_how_and_when_it_is_harvested(
    figures: dict[str, str], unit: str, how: str
) -> None:
    made = _made({_RIPE: 4.0, _NEXT: 2.0}, 6, unit, **figures)
    harvest = _line(made, how)
    assert "it is harvested from 2027-05-03 to 2027-05-10 and cleared on 2027-05-10" in harvest
    once = _made({_RIPE: 6.0}, 6, unit, **figures)
    assert "it is harvested on 2027-05-03 and cleared" in _line(once, how)


def test_ground_kept_for_late_years_is_told_where_there_are_years() -> None:
    made = replace(_made({_RIPE: 6.0}), kept_until=_NEXT)
    assert "Its ground is kept" not in _line(made, "cleared on")
    ripe = replace(made.course.ripe, years=30)
    made = replace(made, course=replace(made.course, ripe=ripe))
    assert _line(made, "cleared on").endswith(
        " Its ground is kept until 2027-05-10, for years that bring it later (§39)."
    )
    assert "is kept" not in _line(replace(made, kept_until=_RIPE), "cleared on")


@pytest.mark.parametrize(
    ("plants", "amount", "words"),
    [
        (6, 6.0, "6 plants give 6 heads for 2027-W18, at 1 head a plant"),
        (1, 1.0, "1 plant gives 1 head for 2027-W18, at 1 head a plant"),
    ],
)
def test_it_tells_what_its_plants_give(plants: int, amount: float, words: str) -> None:
    size = _line(_made({_RIPE: amount}, plants), "a plant")
    assert size.startswith(f"{words} (your plan, ")
    assert "only part" not in size


def test_it_tells_for_which_weeks() -> None:
    made = _made({_RIPE: 4.0, _NEXT: 2.0})
    assert "6 heads for 2027-W18 to 2027-W19" in _line(made, "plants give")


def test_it_tells_when_much_of_its_harvest_falls_out_of_the_time_it_is_wanted() -> None:
    """Nine of ten heads are nearly all; eight are not."""
    assert "only part" not in _line(_made({_RIPE: 9.0}, 10), "plants give")
    assert "; only part of its harvest falls" in _line(_made({_RIPE: 8.0}, 10), "plants give")
    cut = {"habit": "cut", "cuts": "2 cuts", "regrow_days": "14 days"}
    size = _line(_made({_RIPE: 8.0}, 10, **cut), "plants give")
    assert "only part" not in size
    assert "a plant and cut (" in size


def test_a_guest_tells_its_host_and_what_it_gives_there() -> None:
    made = _made({_RIPE: 6.0})
    assert not any("shares ground" in line for line in why_sowing(made))
    pair = SharedGround(
        "broccoli", "paper crop", SharingPattern.RELAY, 0.5, 1.0, 0.9, 21, Source("memory")
    )
    assert _line(replace(made, pair=pair), "shares ground") == (
        "It shares ground: it grows under broccoli in its last weeks, and follows it (from memory, "
        "change it if you know better); its plants are counted at 90% of a full harvest (§30)."
    )
