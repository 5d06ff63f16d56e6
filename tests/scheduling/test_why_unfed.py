"""Why no sowing at all can feed a week, and what would help.

Each week lacks for one reason that is plain on paper. Common practice, no source.
"""

from datetime import date

import pytest

from planner.garden import Garden
from planner.scheduling import Reason, UnmetKind
from planner.scheduling.unfed.diagnosis import why_unfed
from planner.terms import Week
from tests.scheduling.by_hand import FIRST, found_of, paper_crop, paper_garden, wanted

_ALL_YEAR = wanted("2027-03-01", "2027-10-31")
_FREEZES = ("04-15", "10-15")


def _why(garden: Garden, week: int, as_of: date = FIRST) -> Reason:
    found = found_of(garden, as_of)
    assert not found.serving(Week(2027, week))
    return why_unfed(found.about, Week(2027, week))


def test_a_week_is_past_when_its_sunday_is() -> None:
    garden = paper_garden(paper_crop(), _ALL_YEAR)
    past = _why(garden, 18, date(2027, 5, 10))
    assert past.kind is UnmetKind.PAST
    assert "had passed on 2027-05-10" in past.why
    assert _why(garden, 19, date(2027, 5, 10)).kind is UnmetKind.TOO_EARLY


def test_before_the_first_day_s_sowing_is_ripe_it_is_too_early() -> None:
    """From 1 March, 28 days: ripe on Monday the 29th, the first day of week 13."""
    garden = paper_garden(paper_crop(), _ALL_YEAR)
    early = _why(garden, 12)
    assert early.kind is UnmetKind.TOO_EARLY
    assert early.why == (
        "Paper crop for that week: started on the season's first day, 2027-03-01, it would be ripe "
        "about 2027-03-29."
    )
    assert early.remedy == "begin the season (from) earlier, or want it later."
    assert found_of(garden).serving(Week(2027, 13))


def test_planned_too_late_it_is_lost() -> None:
    late = _why(paper_garden(paper_crop(), _ALL_YEAR), 18, date(2027, 4, 12))
    assert late.kind is UnmetKind.TOO_EARLY
    assert "planned on 2027-04-12, it is too late to start it" in late.why
    assert "ripe about 2027-05-10" in late.why
    assert late.remedy == "take it as lost, or buy it that week."


def test_nobody_harvests_while_all_are_away() -> None:
    wishes = "away = [{ from = 2027-06-07, to = 2027-06-13 }]"
    away = _why(paper_garden(paper_crop(hold_days="3 days"), _ALL_YEAR, wishes=wishes), 23)
    assert away.kind is UnmetKind.AWAY
    assert away.why == "Nobody is there to harvest in 2027-W23."


def test_nobody_sows_while_all_are_away() -> None:
    """Week 23 is fed by what is sown in week 19; nothing stands for longer than three days."""
    wishes = "away = [{ from = 2027-05-10, to = 2027-05-16 }]"
    away = _why(paper_garden(paper_crop(hold_days="3 days"), _ALL_YEAR, wishes=wishes), 23)
    assert away.kind is UnmetKind.AWAY
    assert "the starts that would feed it fall while nobody is there" in away.why
    assert "while you are away" in away.remedy


def test_tender_crops_wait_for_the_last_freeze() -> None:
    """Week 18 would have to be sown by 11 April, before half of all springs are over."""
    tender = {"hardiness": "tender", "autumn_tolerance": "none"}
    garden = paper_garden(paper_crop(**tender), _ALL_YEAR, freezes=_FREEZES)
    early = _why(garden, 18)
    assert early.kind is UnmetKind.TOO_EARLY
    assert "it would have to go out too early" in early.why
    assert early.remedy.startswith("a cover (cover_weeks) or a higher freeze_risk lets it out")
    assert "or raise plants indoors" in early.remedy


def test_hardy_crops_wait_too_and_no_cover_helps_them() -> None:
    hardy = {"hardiness": "hardy"}
    garden = paper_garden(paper_crop(**hardy), _ALL_YEAR, freezes=_FREEZES)
    early = _why(garden, 16)
    assert early.kind is UnmetKind.TOO_EARLY
    assert "2 weeks before the average last freeze" in early.why
    assert early.remedy.startswith("want it later, or grow a quicker variety")


def test_roots_are_not_raised_indoors() -> None:
    roots = {"hardiness": "hardy", "yield": "1 roots"}
    garden = paper_garden(
        paper_crop(**roots), wanted("2027-03-01", "2027-10-31", "4 roots"), freezes=_FREEZES
    )
    assert _why(garden, 16).remedy == "want it later, or grow a quicker variety."


def test_after_the_freezes_of_fall_it_is_too_late() -> None:
    tender = {"hardiness": "tender", "autumn_tolerance": "none"}
    garden = paper_garden(paper_crop(**tender), _ALL_YEAR, freezes=_FREEZES)
    late = _why(garden, 43)
    assert late.kind is UnmetKind.TOO_LATE
    assert late.remedy == "end the target earlier, grow a quicker variety, or cover the bed."


_RAISED = {"method": "indoors", "weeks_indoors": "4 weeks", "days_from_setting_out": "28 days"}


def test_nobody_sets_out_while_all_are_away() -> None:
    """Four weeks indoors and four outdoors: week 23 is set out in week 19."""
    wishes = "away = [{ from = 2027-05-10, to = 2027-05-16 }]"
    garden = paper_garden(paper_crop(hold_days="3 days", **_RAISED), _ALL_YEAR, wishes=wishes)
    away = _why(garden, 23)
    assert away.kind is UnmetKind.AWAY
    assert "nobody is there to set it out" in away.why


def test_raised_from_the_first_day_it_is_ripe_after_its_weeks_indoors() -> None:
    """Four weeks from Monday 1 March are 29 March, and 28 days more 26 April, in week 17."""
    garden = paper_garden(paper_crop(**_RAISED), _ALL_YEAR)
    early = _why(garden, 16)
    assert early.kind is UnmetKind.TOO_EARLY
    assert "ripe about 2027-04-26" in early.why
    assert found_of(garden).serving(Week(2027, 17))


@pytest.mark.parametrize(
    ("figures", "last"),
    [
        ({"hold_days": "6 days"}, 24),
        ({"hold_days": "7 days"}, 25),
        ({"habit": "store", "hold_days": "3 days", "store_days": "14 days"}, 26),
        ({"habit": "pick", "picking_days": "14 days"}, 25),
        ({"habit": "cut", "cuts": "3 cuts", "regrow_days": "7 days"}, 26),
    ],
)
def test_what_could_still_be_eaten_is_no_reason_to_call_a_week_unfed(
    figures: dict[str, str], last: int
) -> None:
    """Nothing can be started after 17 May, ripe Monday 14 June, the first day of week 24.

    Away from the 18th on, the weeks after the last that is still fed have nobody to start for
    them.
    """
    wishes = "away = [{ from = 2027-05-18, to = 2027-06-13 }]"
    garden = paper_garden(paper_crop(**figures), _ALL_YEAR, wishes=wishes)
    assert found_of(garden).serving(Week(2027, last))
    assert _why(garden, last + 1).kind is UnmetKind.AWAY
