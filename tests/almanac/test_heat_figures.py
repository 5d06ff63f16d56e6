"""The heat figures of every crop: complete, sourced, and in an order that makes sense."""

from statistics import fmean

import pytest

from planner.almanac import bibliography, crop_pages
from planner.almanac.table import table_rows

_REQUIRED = {
    "base_temperature",
    "best_temperature",
    "upper_temperature",
    "harvest_below",
    "germinates_from",
    "germinates_to",
}
_LONG_DAYS = "bolts_above_daylength"
# Kept as published, to compare with; nothing is counted with it.
_GROWS_ABOVE = "grows_above"
_ROWS = list(table_rows("heat.csv"))
_each_crop = pytest.mark.parametrize("crop", sorted(crop_pages()))


def _used(crop: str) -> dict[str, tuple[float, float]]:
    return {
        row["figure"]: (float(row["low"]), float(row["high"]))
        for row in _ROWS
        if row["crop"] == crop and row["used"] == "yes"
    }


@_each_crop
def test_one_row_of_each_figure_is_used(crop: str) -> None:
    used = [row["figure"] for row in _ROWS if row["crop"] == crop and row["used"] == "yes"]
    assert sorted(set(used)) == sorted(used)
    assert set(used) - {_LONG_DAYS} == _REQUIRED


def test_every_row_is_of_a_known_crop_and_names_a_source_of_the_bibliography() -> None:
    for row in _ROWS:
        assert row["crop"] in crop_pages(), row
        assert row["source"] in bibliography(), row
        assert row["figure"] in _REQUIRED | {_LONG_DAYS, _GROWS_ABOVE}, row
        assert row["used"] in {"yes", ""}, row
        assert row["basis"], row


def test_every_row_is_a_range_in_its_unit() -> None:
    for row in _ROWS:
        low, high = float(row["low"]), float(row["high"])
        if row["figure"] == _LONG_DAYS:
            assert row["unit"] == "h", row
            assert 10 <= low <= high <= 16, row
        else:
            assert row["unit"] == "degC", row
            assert 0 <= low <= high <= 45, row


@pytest.mark.parametrize(
    "row", [row for row in _ROWS if "printed" in row["note"]], ids=lambda row: row["crop"]
)
def test_degrees_c_are_the_degrees_f_that_were_printed(row: dict[str, str]) -> None:
    words = row["note"].split("printed ", 1)[1].split(" F", 1)[0].split(" to ")
    expected = [round((float(word) - 32) * 5 / 9, 1) for word in (words[0], words[-1])]
    assert [float(row["low"]), float(row["high"])] == expected


@_each_crop
def test_growth_begins_below_its_best_and_is_cut_off_above_it(crop: str) -> None:
    used = _used(crop)
    best_low, best_high = used["best_temperature"]
    assert used["base_temperature"][1] < best_low <= best_high <= used["upper_temperature"][0]


@_each_crop
def test_a_crop_gathers_heat_wherever_it_is_said_to_grow(crop: str) -> None:
    used = _used(crop)
    best_low, best_high = used["best_temperature"]
    grows_above = [
        float(row["low"]) for row in _ROWS if (row["crop"], row["figure"]) == (crop, _GROWS_ABOVE)
    ]
    assert grows_above
    assert used["base_temperature"][0] <= min(grows_above) <= max(grows_above) <= best_low
    assert best_high < used["harvest_below"][0]


@_each_crop
def test_seed_comes_up_over_a_span_of_ten_degrees_and_more(crop: str) -> None:
    used = _used(crop)
    assert used["germinates_to"][0] - used["germinates_from"][0] >= 10


def _mean_of_class(figure: str, *classes: str) -> float:
    return fmean(
        _used(name)[figure][1]
        for name, page in crop_pages().items()
        if page.used["hardiness"].low in classes
    )


@pytest.mark.parametrize("figure", sorted(_REQUIRED))
def test_warm_crops_want_more_heat_than_hardy_ones(figure: str) -> None:
    assert _mean_of_class(figure, "warm loving") > _mean_of_class(figure, "hardy", "very hardy")


def test_a_length_of_day_from_memory_is_shown_and_not_counted_with() -> None:
    rows = [row for row in _ROWS if row["figure"] == _LONG_DAYS]
    assert {row["crop"] for row in rows if row["used"] == "yes"} == {"cilantro", "spinach"}
    assert not [row for row in rows if row["used"] == "yes" and row["source"] == "memory"]


# Words of a published row that say why a figure from memory is counted with in its place.
_SET_ASIDE = ("cooler than the upper end of its best", "the planner counts from sets")


def test_a_published_figure_goes_before_one_from_memory() -> None:
    recalled = {
        (row["crop"], row["figure"])
        for row in _ROWS
        if row["used"] == "yes" and row["source"] == "memory"
    }
    for row in _ROWS:
        if (row["crop"], row["figure"]) in recalled and row["source"] != "memory":
            assert any(words in row["note"] for words in _SET_ASIDE), row
