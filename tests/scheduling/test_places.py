"""Where a block stands (rules §33), in beds whose ground is counted on paper. Ours, no source."""

from datetime import date

import pytest

from planner.garden import Garden
from planner.scheduling.arranging.filling import CropMarket
from planner.scheduling.arranging.places import CropPlaces, Fit
from planner.scheduling.arranging.working_plan import Piece, WorkingPlan
from planner.scheduling.choice import markets_of
from planner.scheduling.question import Question
from tests.scheduling.by_hand import bed, found_of, paper_crop, paper_garden, wanted

_INCH_UM = 25_400
_SOWN, _RIPE = date(2027, 4, 5), date(2027, 5, 3)


def _asked(garden: Garden) -> tuple[WorkingPlan, CropPlaces]:
    """An empty plan, and where the crop may stand; ground is worth the same on every day."""
    question = Question(garden, {"paper crop": found_of(garden)})
    plan = WorkingPlan(question.offers, question.beds, question.worth)
    free = 0 * question.ground.free_m
    (market,) = markets_of(question, free)
    assert isinstance(market, CropMarket)
    return plan, market.places


def _garden(beds: str, kept: str = "", **figures: str) -> Garden:
    crop = paper_crop(**{"hold_days": "6 days", "spacing": "6 in", **figures})
    return paper_garden(crop, wanted(), beds=beds + kept)


def _kept(first_in: int, last_in: int, until: str = "2027-10-31", family: str = "") -> str:
    told = f'family = "{family}"\n' if family else ""
    return f"""
[[kept]]
what = "rhubarb"
bed = "Strip"
from = "{first_in} in"
to = "{last_in} in"
until = {until}
{told}"""


def _offer(places: CropPlaces, sown: date = _SOWN) -> int:
    offers = places.offers
    (one,) = (
        number
        for number in range(len(offers))
        if offers.candidates[int(offers.starts[number])].course.start_on == sown
    )
    return one


def _inches(fit: Fit | None) -> list[tuple[int, float, float, int]]:
    """Each piece: its bed, from where to where in inches, and its plants."""
    assert fit is not None
    return [
        (one.bed, one.from_um / _INCH_UM, one.to_um / _INCH_UM, one.plants) for one in fit.pieces
    ]


_STRIP = bed("Strip", "60 in", "12 in")


def test_two_plants_side_by_side_take_rows_of_six_inches() -> None:
    _, places = _asked(_garden(_STRIP))
    (fit,) = places.beds
    assert fit.in_row == 2
    assert fit.row_um == pytest.approx(6 * _INCH_UM)
    assert [fit.stretch_um(plants) for plants in (1, 2, 3, 4)] == [
        rows * 6 * _INCH_UM for rows in (1, 1, 2, 2)
    ]
    # A row that is not whole holds nobody.
    assert [fit.plants_in(inches * _INCH_UM) for inches in (5, 6, 11, 12, 60)] == [0, 2, 2, 4, 20]
    assert places.most_in_a_bed == 20


def test_a_block_stands_in_one_stretch_from_an_end_on() -> None:
    plan, places = _asked(_garden(_STRIP))
    assert _inches(places.find(plan, _offer(places), 5)) == [(0, 0, 18, 5)]
    assert _inches(places.find(plan, _offer(places), 20)) == [(0, 0, 60, 20)]


def test_where_it_is_too_large_as_many_as_fit_stand() -> None:
    plan, places = _asked(_garden(_STRIP, _kept(0, 30)))
    fit = places.find(plan, _offer(places), 16)
    assert fit is not None
    assert fit.plants == 10
    assert _inches(fit) == [(0, 30, 60, 10)]


def test_in_several_stretches_where_that_is_allowed_the_largest_first() -> None:
    """Twelve inches free below what is kept and eighteen above: four plants and six."""
    plan, places = _asked(_garden(_STRIP, _kept(12, 42)))
    offer = _offer(places)
    assert _inches(places.find(plan, offer, 8)) == [(0, 42, 60, 6)]
    both = [(0, 42, 60, 6), (0, 0, 6, 2)]
    assert _inches(places.find(plan, offer, 8, most_pieces=2)) == both
    assert _inches(places.find(plan, offer, 30, most_pieces=2)) == [(0, 42, 60, 6), (0, 0, 12, 4)]


def test_more_than_any_bed_holds_has_as_many_stretches_as_beds_that_takes() -> None:
    """Twenty-two plants, twenty to a bed: two beds, though one stretch was asked for."""
    plan, places = _asked(_garden(_STRIP + bed("Other", "60 in", "12 in")))
    assert _inches(places.find(plan, _offer(places), 22)) == [(0, 0, 60, 20), (1, 0, 6, 2)]


def test_only_beds_that_are_named_are_looked_at() -> None:
    plan, places = _asked(_garden(_STRIP + bed("Other", "60 in", "12 in")))
    fit = places.find(plan, _offer(places), 4, only=frozenset({1}))
    assert _inches(fit) == [(1, 0, 12, 4)]
    assert places.find(plan, _offer(places), 4, only=frozenset()) is None


def test_a_gap_that_is_filled_goes_before_one_that_leaves_a_strip() -> None:
    """Twelve inches below what is kept are just enough; above there would be six left over."""
    plan, places = _asked(_garden(_STRIP, _kept(12, 42)))
    assert _inches(places.find(plan, _offer(places), 4)) == [(0, 0, 12, 4)]
    plan, places = _asked(_garden(_STRIP, _kept(18, 48)))
    assert _inches(places.find(plan, _offer(places), 4)) == [(0, 48, 60, 4)]


def test_a_gap_that_leaves_a_bed_goes_before_one_that_leaves_a_strip() -> None:
    """Three inches left over hold no row; of three feet two remain, at the end that is free."""
    plan, places = _asked(_garden(_STRIP, _kept(15, 24)))
    assert _inches(places.find(plan, _offer(places), 4)) == [(0, 48, 60, 4)]


def test_it_stands_beside_the_neighbour_that_leaves_at_about_the_same_time() -> None:
    """Below leaves on the day it is ripe, above months later; or the other way round."""
    below, above = _kept(0, 12, "2027-05-03"), _kept(48, 60)
    plan, places = _asked(_garden(_STRIP, below + above))
    assert _inches(places.find(plan, _offer(places), 4)) == [(0, 12, 24, 4)]
    below, above = _kept(0, 12), _kept(48, 60, "2027-05-03")
    plan, places = _asked(_garden(_STRIP, below + above))
    assert _inches(places.find(plan, _offer(places), 4)) == [(0, 36, 48, 4)]


def test_ground_is_taken_only_where_it_is_free_for_the_whole_time() -> None:
    plan, places = _asked(_garden(_STRIP))
    offer = _offer(places)
    plan.place(0, offer, (Piece(0, 0, 42 * _INCH_UM, 14),))
    # Sown on the day the others are cleared it may have their ground.
    later = _offer(places, _RIPE)
    assert _inches(places.find(plan, later, 20)) == [(0, 0, 60, 20)]
    week_before = _offer(places, date(2027, 4, 26))
    assert _inches(places.find(plan, week_before, 20)) == [(0, 42, 60, 6)]


def test_sun_and_depth_that_it_does_not_need_are_left_to_others() -> None:
    sunny, shady = bed("Strip", "60 in", "12 in"), bed("Shady", "60 in", "12 in", sun="part")
    plan, places = _asked(_garden(sunny + shady, sun="part"))
    assert _inches(places.find(plan, _offer(places), 4)) == [(1, 0, 12, 4)]
    deep, shallow = bed("Strip", "60 in", "12 in"), bed("Shallow", "60 in", "12 in", depth="8 in")
    plan, places = _asked(_garden(deep + shallow))
    assert _inches(places.find(plan, _offer(places), 4)) == [(1, 0, 12, 4)]


def test_ground_on_which_its_family_stood_is_left_to_others() -> None:
    """Cabbages stood in the first bed until the first of April; in the second nothing did."""
    beds = _STRIP + bed("Other", "60 in", "12 in")
    plan, places = _asked(_garden(beds, _kept(0, 60, "2027-04-01", "Brassicaceae")))
    assert _inches(places.find(plan, _offer(places), 4)) == [(1, 0, 12, 4)]
    plan, places = _asked(_garden(beds, _kept(0, 60, "2027-04-01", "Fabaceae")))
    assert _inches(places.find(plan, _offer(places), 4)) == [(0, 0, 12, 4)]


@pytest.mark.parametrize(("sunny_end", "from_in"), [("marked", 48), ("far", 0)])
def test_what_grows_tall_stands_away_from_the_sunny_end(sunny_end: str, from_in: int) -> None:
    """Two gaps of twelve inches, one at either end of the bed."""
    strip = _STRIP + f'sunny_end = "{sunny_end}"\n'
    plan, places = _asked(_garden(strip, _kept(12, 48), height="6 ft"))
    assert _inches(places.find(plan, _offer(places), 4)) == [(0, from_in, from_in + 12, 4)]


def test_in_a_round_bed_each_plant_has_its_own_area() -> None:
    """A bed 38.3 in across has 1152 square inches, 32 plants of 36 square inches."""
    tub = """
[[bed]]
name = "Tub"
diameter = "38.3 in"
soil_depth = "12 in"
sun = "full"
"""
    _, places = _asked(_garden(tub))
    (fit,) = places.beds
    assert fit.in_row == 1
    assert fit.plants_in(fit.line_um) == 32
