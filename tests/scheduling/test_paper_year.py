"""What comes of sowing by a fixed interval, counted on paper.

Four weeks want heads of a crop ripe in 28 days that stands six: by growers' literature, which the
intervals cite, it is sown again after a week, on 5, 12, 19 and 26 April.
"""

from datetime import date, timedelta

import pytest

from planner.climate import Climate
from planner.garden import Garden
from planner.scheduling import HarvestDay, Room, Thumb, ThumbResult, rule_of_thumb
from tests.scheduling.by_hand import FIRST, bed, paper_crop, paper_garden, wanted

_SOWN, _RIPE = date(2027, 4, 5), date(2027, 5, 3)
_WEEKS = [timedelta(weeks=weeks) for weeks in range(4)]


def _garden(rows: int = 20, *, amount: str = "4 heads", wishes: str = "", **figures: str) -> Garden:
    """A strip of so many rows of two heads."""
    gives = figures.pop("gives", "1 heads")
    crop = paper_crop(**{"hold_days": "6 days", "yield": gives, **figures})
    strip = bed("Strip", f"{6 * rows} in", "12 in")
    return paper_garden(crop, wanted(last="2027-05-30", amount=amount), beds=strip, wishes=wishes)


def _comes_of(
    garden: Garden, thumb: Thumb = Thumb.FIXED_DAYS, room: Room = Room.LIMITED
) -> ThumbResult:
    return rule_of_thumb(garden, Climate(garden.site), FIRST, thumb, room)


@pytest.mark.parametrize("thumb", list(Thumb))
@pytest.mark.parametrize("room", list(Room))
def test_four_sowings_feed_four_weeks(thumb: Thumb, room: Room) -> None:
    result = _comes_of(_garden(), thumb, room)
    assert result.sowings == 4
    assert result.fill == pytest.approx(1)
    assert result.shares == pytest.approx({"paper crop": 1})
    assert result.surplus == pytest.approx(0)
    assert [one.sow_on for one in result.grown] == [_SOWN + week for week in _WEEKS]
    assert [one.harvest for one in result.grown] == [
        (HarvestDay(_RIPE + week, 4.0),) for week in _WEEKS
    ]
    assert all(one.clear_on == one.harvest[0].day for one in result.grown)
    assert [one.id for one in result.grown] == [f"paper crop {number}" for number in range(4)]


@pytest.mark.parametrize(
    ("rows", "sowings", "heads"), [(1, 1, 2), (3, 2, 6), (4, 2, 8), (7, 4, 14)]
)
def test_ground_goes_to_what_is_sown_first(rows: int, sowings: int, heads: int) -> None:
    """Nothing is cleared before the last is sown: of sixteen wanted those find ground that can."""
    result = _comes_of(_garden(rows))
    assert result.sowings == sowings
    assert sum(one.plants for one in result.grown) == heads
    assert result.fill == pytest.approx(heads / 16)
    block = result.grown[0].blocks[0]
    assert (block.from_um, block.to_um) == (0, 2 * 152_400)


@pytest.mark.parametrize(("rest", "heads"), [(0, 8), (7, 8), (8, 4)])
def test_ground_that_is_cleared_is_free_after_it_has_rested(rest: int, heads: int) -> None:
    """Ripe in 14 days, two rows: sown on 19 April, cleared on 3 May, ground free a week later.

    The second is due on the 26th and the third on 3 May; that of the 10th is ripe on the 24th.
    """
    garden = _garden(2, wishes=f"turnover_days = {rest}", days_from_sowing="14 days")
    result = _comes_of(garden)
    days = [one.sow_on for one in result.grown]
    assert days[0] == date(2027, 4, 19)
    assert sum(one.plants for one in result.grown) == heads


def test_what_nobody_wants_is_surplus() -> None:
    """Two plants of two heads each for the three that are wanted: one in three is too much."""
    result = _comes_of(_garden(amount="3 heads", gives="2 heads"))
    assert result.fill == pytest.approx(1)
    assert result.surplus == pytest.approx(1 / 3)
    assert [one.harvest[0].amount for one in result.grown] == [4.0] * 4


def test_a_store_is_eaten_as_it_is_wanted() -> None:
    """Four weeks' want is sown at once, lifted on 3 May and eaten until it is gone."""
    garden = _garden(habit="store", hold_days="7 days", store_days="60 days")
    result = _comes_of(garden)
    assert result.sowings == 1
    assert result.fill == pytest.approx(1)
    (one,) = result.grown
    assert one.harvest == (HarvestDay(_RIPE, 16.0),)
    assert one.clear_on == _RIPE


def test_kept_ground_is_not_sown() -> None:
    """Six of seven rows are kept until a day before the first is sown, or for all of spring."""
    kept = '\n[[kept]]\nwhat = "rhubarb"\nbed = "Strip"\nfrom = "6 in"\nto = "42 in"\nuntil = {}\n'
    crop = paper_crop(hold_days="6 days")
    for until, heads in (("2027-04-05", 14), ("2027-05-31", 2)):
        strip = bed("Strip", "42 in", "12 in") + kept.format(until)
        garden = paper_garden(crop, wanted(last="2027-05-30"), beds=strip)
        assert sum(one.plants for one in _comes_of(garden).grown) == heads
