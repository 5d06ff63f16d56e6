"""How many weeks a cover or an earlier beginning would open, counted on paper.

A cover lets tender plants out four weeks earlier, and a season may begin four weeks earlier: both
are ours. Common practice, no source.
"""

from datetime import date

from planner.climate import Climate
from planner.garden import Garden
from planner.scheduling import Opening, Reason, Unmet, UnmetKind, openings
from planner.terms import Week
from tests.scheduling.by_hand import FIRST, paper_crop, paper_garden, wanted

_COVER = "a cover that lets tender plants out 4 weeks earlier (cover_weeks)"
_EARLIER = "a season that begins 4 weeks earlier (from)"
_SPRING = wanted("2027-03-08", "2027-06-13")
_DAILY = '"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"'


def _unmet(first: int, last: int, kind: UnmetKind = UnmetKind.TOO_EARLY) -> tuple[Unmet, ...]:
    reason = Reason(kind, "It is so.", "nothing.")
    weeks = Week(2027, first).until(Week(2027, last))
    return tuple(Unmet("paper crop", week, 4.0, reason) for week in weeks)


def _openings(garden: Garden, unmet: tuple[Unmet, ...], as_of: date = FIRST) -> list[Opening]:
    return list(openings(garden, Climate(garden.site), as_of, unmet))


def test_four_weeks_earlier_open_four_weeks() -> None:
    """From 1 March it is ripe in week 13, from 1 February in week 9; wanted from week 10."""
    garden = paper_garden(paper_crop(hold_days="6 days"), _SPRING)
    assert _openings(garden, _unmet(10, 12)) == [Opening(_EARLIER, {"paper crop": 3})]


def test_of_the_weeks_opened_only_those_count_that_lack() -> None:
    garden = paper_garden(paper_crop(hold_days="6 days"), _SPRING)
    assert _openings(garden, _unmet(11, 11)) == [Opening(_EARLIER, {"paper crop": 1})]
    assert _openings(garden, _unmet(8, 8)) == []


def test_once_the_season_has_begun_it_begins_no_earlier() -> None:
    garden = paper_garden(paper_crop(hold_days="6 days"), _SPRING)
    assert _openings(garden, _unmet(10, 12), date(2027, 3, 2)) == []


def test_what_lacks_ground_or_comes_too_late_is_opened_by_neither() -> None:
    garden = paper_garden(paper_crop(), _SPRING)
    for kind in (UnmetKind.NO_GROUND, UnmetKind.TOO_LATE, UnmetKind.AWAY, UnmetKind.PAST):
        assert _openings(garden, _unmet(10, 12, kind)) == []
    assert _openings(garden, ()) == []


def _tender(wishes: str = "") -> Garden:
    """Sown from 12 April at one risk in two, ripe from 10 May, Monday of week 19."""
    crop = paper_crop(hardiness="tender", autumn_tolerance="none", hold_days="6 days")
    return paper_garden(
        crop,
        _SPRING,
        freezes=("04-12", "10-15"),
        garden_days=_DAILY,
        wishes=f"freeze_risk = 0.5\n{wishes}",
    )


def test_a_cover_opens_its_weeks_for_a_tender_crop() -> None:
    found = _openings(_tender(), _unmet(15, 18))
    assert found == [Opening(_COVER, {"paper crop": 4})]


def test_who_has_such_a_cover_is_told_of_none() -> None:
    assert _openings(_tender("cover_weeks = 4"), _unmet(11, 14)) == []
    (two,) = _openings(_tender("cover_weeks = 2"), _unmet(15, 16))
    assert two == Opening(_COVER, {"paper crop": 2})
