"""What a week still lacks, and the reason told for it, counted on paper (rules §19).

Common practice, no source; that less than a tenth is hardly short, and half a flow not full, is
ours.
"""

from datetime import date

import pytest

from planner.garden import Garden
from planner.scheduling import HarvestDay, Sowing, Unmet, UnmetKind
from planner.scheduling.unfed.lacking import unmet_of
from planner.terms import Week
from tests.scheduling.by_hand import found_of, paper_crop, paper_garden, wanted
from tests.scheduling.sown_by_hand import sowing_of

_W18, _W19 = Week(2027, 18), Week(2027, 19)
_TWO_WEEKS = wanted("2027-05-03", "2027-05-16", "20 heads")


def _sowing(garden: Garden, *harvest: tuple[date, float]) -> Sowing:
    days = tuple(HarvestDay(day, amount) for day, amount in harvest)
    return sowing_of(garden.crops["paper crop"], harvest=days)


def _unmet(garden: Garden, *sowings: Sowing) -> list[Unmet]:
    return list(unmet_of(garden, {"paper crop": found_of(garden)}, sowings))


def test_a_week_lacks_what_is_wanted_less_what_comes() -> None:
    garden = paper_garden(paper_crop(), _TWO_WEEKS)
    sowing = _sowing(garden, (_W18.monday, 20.0), (_W19.monday, 13.0))
    (one,) = _unmet(garden, sowing)
    assert (one.crop, one.week, one.amount) == ("paper crop", _W19, 7.0)
    # What there is too much of in one week feeds no other.
    plenty = _sowing(garden, (_W18.monday, 30.0), (_W19.monday, 20.0))
    assert _unmet(garden, plenty) == []


@pytest.mark.parametrize(
    ("comes", "kind"),
    [
        (18.0, UnmetKind.NO_GROUND),
        (18.1, UnmetKind.TOO_LITTLE),
        (19.5, UnmetKind.TOO_LITTLE),
        (19.999, UnmetKind.TOO_LITTLE),
    ],
)
def test_less_than_a_tenth_is_hardly_short(comes: float, kind: UnmetKind) -> None:
    garden = paper_garden(paper_crop(), _TWO_WEEKS)
    sowing = _sowing(garden, (_W18.monday, 20.0), (_W19.monday, comes))
    (one,) = _unmet(garden, sowing)
    assert one.reason.kind is kind


def test_for_want_of_ground_the_area_is_told_that_would_feed_the_week() -> None:
    """Twelve heads at 12 in are 12 square feet, 1.11 square metres (NIST SP 811: 0.09290304)."""
    garden = paper_garden(paper_crop(spacing="12 in"), _TWO_WEEKS)
    sowing = _sowing(garden, (_W18.monday, 20.0), (_W19.monday, 8.0))
    (one,) = _unmet(garden, sowing)
    assert "it would take 1.1 square metres (12 sq ft) more" in one.reason.why
    # Half a plant more takes a whole one, thirteen square feet.
    (one,) = _unmet(garden, _sowing(garden, (_W18.monday, 20.0), (_W19.monday, 7.5)))
    assert "1.2 square metres (13 sq ft)" in one.reason.why


def test_where_harvest_flows_the_week_is_told_by_the_best_that_a_plant_brings() -> None:
    """A cut brings 8 oz a plant: for 84 oz eleven plants at 12 in."""
    figures = {"habit": "cut", "cuts": "3 cuts", "regrow_days": "7 days", "yield": "8 oz"}
    garden = paper_garden(
        paper_crop(spacing="12 in", **figures), wanted("2027-05-03", "2027-05-16", "100 oz")
    )
    sowing = _sowing(garden, (_W18.monday, 100.0), (_W19.monday, 16.0))
    (one,) = _unmet(garden, sowing)
    assert one.reason.kind is UnmetKind.NO_GROUND
    assert "(11 sq ft)" in one.reason.why


def test_of_what_is_picked_for_weeks_a_plant_brings_only_its_best_week() -> None:
    """Fourteen pounds over two weeks, 7.94 at first: for 16 lb three plants, not two."""
    figures = {"habit": "pick", "picking_days": "14 days", "yield": "14 lb", "spacing": "24 in"}
    garden = paper_garden(paper_crop(**figures), wanted("2027-05-03", "2027-05-16", "20 lb"))
    sowing = _sowing(garden, (_W18.monday, 20.0), (_W19.monday, 4.0))
    (one,) = _unmet(garden, sowing)
    assert "(12 sq ft)" in one.reason.why


_TOMATO = {"habit": "pick", "picking_days": "28 days", "yield": "28 lb"}


def test_the_first_week_of_a_flow_is_only_coming_into_harvest() -> None:
    """Planned on 1 March and ripe on Saturday 15 May: two of that week's seven days."""
    crop = paper_crop(**{**_TOMATO, "days_from_sowing": "75 days"})
    garden = paper_garden(
        crop, wanted("2027-05-10", "2027-06-06", "8 lb"), garden_days='"Mon", "Sat"'
    )
    first, *_ = _unmet(garden)
    assert first.week == _W19
    assert first.reason.kind is UnmetKind.COMING_IN
    assert first.reason.why == "Paper crop is only coming into harvest in 2027-W19."
    assert first.reason.remedy == "begin the target a week later."


def test_a_week_past_is_told_as_past_and_fed_by_nothing() -> None:
    garden = paper_garden(paper_crop(), _TWO_WEEKS)
    found = {"paper crop": found_of(garden, date(2027, 5, 10))}
    first, second = unmet_of(garden, found, ())
    assert first.reason.kind is UnmetKind.PAST
    assert (first.amount, second.amount) == (20.0, 20.0)
    assert second.reason.kind is UnmetKind.TOO_EARLY
