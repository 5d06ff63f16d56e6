"""The crop pages: sourced, complete, and in line with published figures."""

import pytest

from planner.almanac import (
    FIGURE_KINDS,
    CropPage,
    PublishedRow,
    as_stated,
    assemble_crop,
    bibliography,
    crop_page,
    crop_pages,
)
from planner.garden import CountedFrom, Crop, DirectSown, RaisedIndoors
from planner.terms import Source
from tests.published import published_rows

_PAGES = list(crop_pages().values())
_each_crop = pytest.mark.parametrize("page", _PAGES, ids=[page.name for page in _PAGES])


def _assembled(page: CropPage) -> Crop:
    stated = {
        figure: as_stated(figure, row.low, row.high, row.unit, Source(row.source))
        for figure, row in page.used.items()
        if figure in FIGURE_KINDS
    }
    crop = assemble_crop(page.name, page.label, stated)
    assert isinstance(crop, Crop), f"lacks {crop}"
    return crop


def test_there_are_at_least_45_crops() -> None:
    assert len(_PAGES) >= 45


@_each_crop
def test_every_row_names_a_source_of_the_bibliography(page: CropPage) -> None:
    assert page.rows
    assert {row.source for row in page.rows} <= set(bibliography())


def test_every_source_says_what_it_is_and_how_it_was_seen() -> None:
    for key, entry in bibliography().items():
        assert entry.key == key
        assert entry.title, key
        assert entry.grade, key
        assert entry.seen, key


@_each_crop
def test_every_crop_can_be_planned(page: CropPage) -> None:
    crop = _assembled(page)
    assert crop.name == page.name
    assert crop.ways
    assert crop.gives.low > 0
    assert crop.ground.spacing.low > 0


@_each_crop
def test_one_row_of_each_figure_is_used(page: CropPage) -> None:
    used = [row.figure for row in page.rows if row.used]
    assert len(used) == len(set(used))


@_each_crop
def test_what_is_marked_used_is_a_figure_the_planner_knows(page: CropPage) -> None:
    assert set(page.used) <= set(FIGURE_KINDS)


def _numbers(row: PublishedRow) -> tuple[float, float]:
    return float(row.low), float(row.high or row.low)


def _is_number(figure: str) -> bool:
    kind = FIGURE_KINDS.get(figure)
    return kind is not None and (kind.dimension is not None or kind.harvest)


@_each_crop
def test_every_range_runs_from_low_to_high(page: CropPage) -> None:
    for row in page.rows:
        if _is_number(row.figure):
            low, high = _numbers(row)
            assert 0 <= low <= high, row


@_each_crop
def test_words_are_of_the_few_that_are_known(page: CropPage) -> None:
    for figure, row in page.used.items():
        kind = FIGURE_KINDS.get(figure)
        if kind is not None and kind.choices:
            assert row.low in kind.choices


@_each_crop
def test_days_from_sowing_and_from_setting_out_are_kept_apart(page: CropPage) -> None:
    """Each row of days says in words what it is counted from, and stands under that name."""
    for row in page.rows:
        if row.figure == "days_from_sowing":
            assert "setting out" not in row.basis, row
        if row.figure == "days_from_setting_out":
            assert "from sowing" not in row.basis, row
    for way in _assembled(page).ways:
        if isinstance(way, DirectSown):
            expected = page.used["days_from_sowing"]
        elif way.counted_from is CountedFrom.SETTING_OUT:
            expected = page.used["days_from_setting_out"]
        else:
            assert "days_from_setting_out" not in page.used
            expected = page.used["days_from_sowing"]
        assert (way.days.low, way.days.high) == _numbers(expected)


@_each_crop
def test_a_seedling_set_out_has_part_of_its_days_behind_it(page: CropPage) -> None:
    """Counted from setting out, days are fewer than from sowing, yet not by more than indoors."""
    ways = {type(way): way for way in _assembled(page).ways}
    direct, raised = ways.get(DirectSown), ways.get(RaisedIndoors)
    if direct is None or not isinstance(raised, RaisedIndoors):
        return
    gained = direct.days.middle - raised.days.middle
    assert 0 < gained <= raised.days_indoors.middle + 1


@_each_crop
def test_the_page_is_found_by_every_name_of_the_crop(page: CropPage) -> None:
    for name in (page.name, page.label, *page.other_names):
        assert crop_page(name) is page


# Where the planner's days lie more than this beyond the published range, the reason is below.
_TOLERANCE_DAYS = 10
_EXCEPTIONS = {
    "eggplant": "early garden sorts (University of Illinois, IL_VG)",
    "garlic": "set in fall, so the winter counts (University of Maryland, UMD_GE007)",
    "head lettuce": "butterhead set out at 4 to 6 weeks; from memory, less than printed",
    "kohlrabi": "set out at 4 to 6 weeks; from memory, less than printed",
    "sweet potato": "early sorts of the north (University of Illinois, IL_SWEETPOT)",
}
# Printed from setting out plants, while the planner counts from planting sets.
_COUNTED_OTHERWISE = {"bulb onion"}
_MATURITY = published_rows("market_maturity.csv")


@pytest.mark.parametrize("row", _MATURITY, ids=[row["crop"] for row in _MATURITY])
def test_days_to_maturity_lie_within_the_published_range(row: dict[str, str]) -> None:
    """Encyclopaedia Britannica, "Vegetable farming", table of market maturity (BRIT-VEG)."""
    figure = f"days_from_{row['counted_from'].replace(' ', '_')}"
    used = crop_pages()[row["crop"]].used
    if row["crop"] in _COUNTED_OTHERWISE:
        assert figure not in used
        return
    low, high = _numbers(used[figure])
    inside = (
        low >= int(row["days_low"]) - _TOLERANCE_DAYS
        and high <= int(row["days_high"]) + _TOLERANCE_DAYS
    )
    # An exception that is none any more is taken off the list.
    assert inside is (row["crop"] not in _EXCEPTIONS), (low, high)
