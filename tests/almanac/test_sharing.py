"""Pairs that share ground, canopies and heights: sourced, and in line with what is published."""

import pytest

from planner.almanac import (
    as_stated,
    bibliography,
    canopies,
    crop_pages,
    sharing_pairs,
)
from planner.almanac.table import table_rows
from planner.garden import SharingPattern
from planner.terms import Figure, Source
from tests.published import published_rows

_PAIRS = sharing_pairs()
_TABLES = ("canopy.csv", "sharing.csv", "sharing_patterns.csv", "usual.csv")
_CANOPIES = published_rows("canopy_stages.csv")
_FAMILIES = published_rows("families.csv")


@pytest.mark.parametrize("table", _TABLES)
def test_every_row_names_a_source_of_the_bibliography(table: str) -> None:
    rows = list(table_rows(table))
    assert rows
    assert {row["source"] for row in rows} <= set(bibliography())


def test_host_and_guest_are_two_crops_of_the_almanac() -> None:
    for pair in _PAIRS:
        assert {pair.host, pair.guest} <= set(crop_pages()), pair
        assert pair.host != pair.guest, pair


def test_no_pair_is_told_twice_for_one_pattern() -> None:
    told = [(pair.host, pair.guest, pair.pattern) for pair in _PAIRS]
    assert len(set(told)) == len(told)


def test_every_crop_has_a_canopy() -> None:
    assert list(canopies()) == list(crop_pages())


def test_a_guest_never_counts_as_a_full_crop() -> None:
    """What is intercropping?, eXtension (TRADE-S30): some vegetables yield less when crowded."""
    for pair in _PAIRS:
        assert 0 < pair.yield_share < 1
        assert 0 < pair.ground_share <= 1
        assert (pair.relay_days > 0) is (pair.pattern is SharingPattern.RELAY)


@pytest.mark.parametrize("row", _CANOPIES, ids=[row["crop"] for row in _CANOPIES])
def test_a_canopy_closes_at_the_published_part_of_the_season(row: dict[str, str]) -> None:
    """Basic Irrigation Scheduling, crop coefficients, UC Davis (TRADE-S10): stage C."""
    canopy = canopies()[row["crop"]]
    assert canopy.closes_at == pytest.approx(float(row["percent_of_season"]) / 100)
    assert canopy.source.key == "TRADE-S10"


def test_a_canopy_nobody_published_is_marked_as_from_memory_with_its_model() -> None:
    published = {row["crop"] for row in _CANOPIES}
    for crop, canopy in canopies().items():
        assert (canopy.source.key == "memory") is (crop not in published)
        if crop not in published:
            assert "TRADE-S10 prints for" in canopy.note


@pytest.mark.parametrize(
    ("host", "guests", "pattern", "key"),
    [
        ("carrot", {"radish"}, SharingPattern.BETWEEN, "TRADE-S30"),
        ("tomato", {"leaf lettuce", "romaine"}, SharingPattern.BETWEEN, "TRADE-S30"),
        ("tomato", {"spinach", "basil"}, SharingPattern.BETWEEN, "TRADE-S31"),
        ("sweet pepper", {"leaf lettuce", "spinach", "basil"}, SharingPattern.BETWEEN, "TRADE-S31"),
        ("snap pea", {"spinach"}, SharingPattern.BENEATH, "TRADE-S32"),
        (
            "pole bean",
            {"leaf lettuce", "spinach", "parsley", "carrot", "swiss chard"},
            SharingPattern.BENEATH,
            "TRADE-S32",
        ),
    ],
)
def test_pairs_of_extension_services_are_there_with_their_source(
    host: str, guests: set[str], pattern: SharingPattern, key: str
) -> None:
    """TRADE-S30 eXtension, TRADE-S31 University of Minnesota, TRADE-S32 West Virginia."""
    told = {
        one.guest
        for one in _PAIRS
        if (one.host, one.pattern, one.source.key) == (host, pattern, key)
    }
    assert guests <= told


def _used(crop: str, figure: str) -> Figure:
    row = crop_pages()[crop].used[figure]
    stated = as_stated(figure, row.low, row.high, row.unit, Source(row.source))
    assert isinstance(stated, Figure)
    return stated


@pytest.mark.parametrize("crop", sorted(crop_pages()))
def test_every_crop_has_a_height_of_a_vegetable(crop: str) -> None:
    height = _used(crop, "height")
    assert 100 <= height.low <= height.high <= 3000


def test_trellised_crops_are_the_tallest() -> None:
    tallest = sorted(crop_pages(), key=lambda crop: -_used(crop, "height").middle)[:6]
    assert set(tallest) == {"pole bean", "cucumber", "okra", "snap pea", "sweet corn", "tomato"}


def test_a_guest_beneath_is_lower_than_its_host() -> None:
    for pair in _PAIRS:
        if pair.pattern is SharingPattern.BENEATH:
            assert _used(pair.guest, "height").high <= _used(pair.host, "height").low, pair


# Named among the crops that use the shade of a trellis by TRADE-S32, though the almanac's own
# figure from memory asks full sun for it.
_ASKS_FULL_SUN = {"carrot"}


def test_a_guest_under_another_crop_bears_part_sun() -> None:
    guests = {pair.guest for pair in _PAIRS if pair.pattern is not SharingPattern.BETWEEN}
    assert {
        guest for guest in guests if crop_pages()[guest].used["sun"].low == "full"
    } == _ASKS_FULL_SUN


_DAYS = ("days_from_sowing", "days_from_setting_out")


def _days_until_ripe(crop: str) -> list[float]:
    used = crop_pages()[crop].used
    return [_used(crop, name).middle for name in _DAYS if name in used]


def _days_in_the_ground(crop: str) -> float:
    picked = _used(crop, "picking_days").high if "picking_days" in crop_pages()[crop].used else 0
    return max(_days_until_ripe(crop)) + picked


def test_a_guest_between_is_ripe_before_its_host_is_gone() -> None:
    for pair in _PAIRS:
        if pair.pattern is SharingPattern.BETWEEN:
            assert min(_days_until_ripe(pair.guest)) < _days_in_the_ground(pair.host), pair


# The table says Allium, a genus of this family.
_FAMILY_OF_GENUS = {"Allium": "Amaryllidaceae"}


@pytest.mark.parametrize("row", _FAMILIES, ids=[row["crop"] for row in _FAMILIES])
def test_a_crop_is_of_its_published_family(row: dict[str, str]) -> None:
    """The family table of the bibliography's TRADE-S40, row by row."""
    expected = _FAMILY_OF_GENUS.get(row["family"], row["family"])
    assert crop_pages()[row["crop"]].used["family"].low == expected
