"""A sowing's name is given once: crop and running number (rules §17).

Which sowing of a new season is one of the season before is ours to say: of the same crop and
method, started on the same day, or else at most three weeks apart.
"""

from datetime import date, timedelta

from planner.garden import Crop
from planner.scheduling import Block, Sowing, name_sowings
from tests.scheduling.by_hand import paper_crop, paper_garden, wanted
from tests.scheduling.sown_by_hand import sowing_of

_CROP = paper_garden(paper_crop(), wanted()).crops["paper crop"]
_DAY = date(2027, 5, 3)


def _on(days: int, name: str = "", crop: Crop = _CROP, **told: object) -> Sowing:
    """A sowing begun so many days after the third of May."""
    return sowing_of(crop, name, _DAY + timedelta(days=days), **told)  # type: ignore[arg-type]


def _names(
    sowings: tuple[Sowing, ...], earlier: tuple[Sowing, ...] = (), **given: int
) -> list[tuple[int, str]]:
    """The days on which they are begun, with the names they got."""
    counted = {"paper crop": given["given"]} if given else {}
    named, _ = name_sowings(sowings, earlier, counted)
    return [((one.sow_on - _DAY).days, one.id) for one in named]


def test_sowings_are_numbered_in_the_order_of_their_days() -> None:
    assert _names((_on(7), _on(0), _on(14))) == [
        (0, "paper crop 1"),
        (7, "paper crop 2"),
        (14, "paper crop 3"),
    ]


def test_a_number_once_given_is_given_to_no_other() -> None:
    named, numbers = name_sowings((_on(0),), (), {"paper crop": 7})
    assert [one.id for one in named] == ["paper crop 8"]
    assert numbers == {"paper crop": 8}
    # Nor where only the sowings of before tell of it.
    named, numbers = name_sowings((_on(100),), (_on(0, "paper crop 4"),), {"paper crop": 2})
    assert [one.id for one in named] == ["paper crop 5"]
    assert numbers == {"paper crop": 5}


def test_what_stands_keeps_its_name() -> None:
    named = _names((_on(0, "paper crop 3"), _on(7)))
    assert named == [(0, "paper crop 3"), (7, "paper crop 4")]


def test_the_same_sowing_of_the_season_before_keeps_its_name() -> None:
    earlier = (_on(0, "paper crop 1"), _on(7, "paper crop 2"))
    assert _names((_on(7), _on(14)), earlier) == [(7, "paper crop 2"), (14, "paper crop 1")]
    assert _names((_on(7),), earlier) == [(7, "paper crop 2")]


def test_three_weeks_apart_it_is_the_same_one_and_a_day_more_another() -> None:
    earlier = (_on(0, "paper crop 1"),)
    assert _names((_on(21),), earlier) == [(21, "paper crop 1")]
    assert _names((_on(22),), earlier) == [(22, "paper crop 2")]
    assert _names((_on(-21),), earlier) == [(-21, "paper crop 1")]
    assert _names((_on(-22),), earlier) == [(-22, "paper crop 2")]


def test_of_several_it_is_the_nearest() -> None:
    earlier = (_on(0, "paper crop 1"), _on(10, "paper crop 2"), _on(28, "paper crop 3"))
    assert _names((_on(14),), earlier) == [(14, "paper crop 2")]
    assert _names((_on(4),), earlier) == [(4, "paper crop 1")]


def test_of_two_begun_on_one_day_it_is_the_one_cleared_on_the_same_day() -> None:
    first, second, third = (_DAY + timedelta(days=days) for days in (28, 35, 49))
    earlier = (
        _on(0, "paper crop 1", clear_on=first),
        _on(0, "paper crop 2", clear_on=second),
    )
    named, _ = name_sowings((_on(0, clear_on=second), _on(0, clear_on=first)), earlier, {})
    assert {one.id: one.clear_on for one in named} == {
        "paper crop 1": first,
        "paper crop 2": second,
    }
    named, _ = name_sowings((_on(0, clear_on=third),), earlier, {})
    assert [one.id for one in named] == ["paper crop 2"]


def test_an_exact_match_goes_before_a_near_one() -> None:
    """The sowing of the 7th is that of the 7th, whichever comes first in the year."""
    earlier = (_on(7, "paper crop 1"),)
    assert _names((_on(0), _on(7)), earlier) == [(0, "paper crop 2"), (7, "paper crop 1")]


def test_what_is_raised_indoors_is_no_sowing_in_place() -> None:
    raised = _on(0, "paper crop 1", set_out_on=_DAY + timedelta(days=28))
    assert _names((_on(0),), (raised,)) == [(0, "paper crop 2")]


def test_a_name_in_use_is_not_free_for_another() -> None:
    stands = _on(0, "paper crop 1")
    assert _names((stands, _on(7)), (stands,)) == [(0, "paper crop 1"), (7, "paper crop 2")]


def test_a_crop_s_own_name_may_end_in_a_number() -> None:
    crop = paper_garden(
        paper_crop().replace("paper crop", "type 2"),
        ("type 2", "1 heads", "2027-05-03", "2027-06-30"),
    ).crops["type 2"]
    assert _names((_on(0, "type 2 9", crop), _on(7, crop=crop))) == [
        (0, "type 2 9"),
        (7, "type 2 10"),
    ]


def test_a_guest_knows_its_host_by_its_name() -> None:
    """Until then by its mark; a host named before is left as it is."""
    days = (_DAY, _DAY + timedelta(days=28))
    under = tuple(
        Block("Bed", place, place + 1, *days, under=host)
        for place, host in enumerate(("#5", "", "other 2"))
    )
    host, guest = _on(0, mark="#5"), _on(7, mark="#6", blocks=under)
    named, _ = name_sowings((guest, host), (), {})
    assert [one.id for one in named] == ["paper crop 1", "paper crop 2"]
    assert [block.under for block in named[1].blocks] == ["paper crop 1", "", "other 2"]
    assert [one.mark for one in named] == ["", ""]
