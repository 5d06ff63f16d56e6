"""sowing-sheet.csv and harvest.csv, as a spreadsheet or pandas reads them."""

import csv
import io
from collections import defaultdict
from datetime import date
from typing import Any

import pandas as pd  # type: ignore[import-untyped] # pandas ships no types
import pytest

from tests.season_runs import SAMPLE_PLANS, PlanFolder, copy_of, plan_folder

_TASK_COLUMNS = [
    "date", "week", "task", "crop", "sowing", "bed", "place", "plants", "seeds", "depth",
    "spacing", "note", "done",
]  # fmt: skip
_HARVEST_COLUMNS = ["week", "crop", "wanted", "expected", "low", "high", "unit", "unmet_reason"]
_AMOUNTS = ["wanted", "expected", "low", "high"]
_PLANS = {"a small plan": None, **{plan.name: plan for plan in SAMPLE_PLANS}}
_SHEETS = {"sowing-sheet.csv": _TASK_COLUMNS, "harvest.csv": _HARVEST_COLUMNS}


@pytest.fixture(scope="module", params=_PLANS)
def season(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> PlanFolder:
    path = tmp_path_factory.mktemp("sheets") / "plan"
    plan = _PLANS[request.param]
    folder = copy_of(plan, path) if plan else plan_folder(path)
    folder.schedule(date(2027, 3, 1))
    return folder


def _table(season: PlanFolder, name: str) -> Any:
    """The sheet as pandas reads it without being told anything, but that empty is empty."""
    return pd.read_csv(io.BytesIO(season.files()[name]), keep_default_na=True)


@pytest.mark.parametrize("name", _SHEETS)
def test_a_sheet_is_utf_8_without_a_mark_and_has_these_columns(
    season: PlanFolder, name: str
) -> None:
    content = season.files()[name]
    assert not content.startswith(b"\xef\xbb\xbf")
    text = content.decode("utf-8")
    assert text.endswith("\r\n")
    assert list(_table(season, name).columns) == _SHEETS[name]
    rows = list(csv.reader(io.StringIO(text, newline=""), strict=True))
    assert {len(row) for row in rows} == {len(_SHEETS[name])}


def test_every_task_has_one_row_in_order_of_the_day(season: PlanFolder) -> None:
    sheet = _table(season, "sowing-sheet.csv")
    tasks = season.record()["tasks"]
    rows = sheet[["date", "task", "sowing", "bed", "place", "note"]].itertuples(index=False)
    for row, one in zip(rows, tasks, strict=True):
        *about, note = row
        assert about == [one[key] for key in ("on", "kind", "sowing", "bed", "place")]
        # What lies too soon after raw manure is not told to be picked (tests/page/test_week_told).
        assert note == one["text"] or (
            note.startswith("Do not harvest ") and one["kind"] in {"pick", "cut"}
        )
    assert sheet["date"].is_monotonic_increasing


def test_days_are_dates_and_lie_in_their_week(season: PlanFolder) -> None:
    sheet = _table(season, "sowing-sheet.csv")
    days = pd.to_datetime(sheet["date"], format="%Y-%m-%d", errors="raise")
    iso = days.dt.isocalendar()
    weeks = [f"{year}-W{week:02d}" for year, week in zip(iso["year"], iso["week"], strict=True)]
    assert weeks == list(sheet["week"])


def test_plants_and_seeds_are_numbers_and_those_of_the_sowing(season: PlanFolder) -> None:
    sheet = _table(season, "sowing-sheet.csv")
    sowings = {one["id"]: one for one in season.record()["sowings"]}
    assert pd.api.types.is_numeric_dtype(sheet["plants"])
    assert pd.api.types.is_numeric_dtype(sheet["seeds"])
    assert list(sheet["plants"]) == [sowings[name]["plants"] for name in sheet["sowing"]]
    begun = sheet[sheet["task"].isin(["sow", "start indoors"])]
    assert list(begun["seeds"]) == [sowings[name]["seeds"] for name in begun["sowing"]]
    assert sheet[~sheet["task"].isin(["sow", "start indoors"])]["seeds"].isna().all()
    assert list(sheet["crop"]) == [sowings[name]["crop"] for name in sheet["sowing"]]


def test_what_is_sown_has_a_depth_and_what_is_spaced_a_distance(season: PlanFolder) -> None:
    sheet = _table(season, "sowing-sheet.csv")
    sown = sheet["task"].isin(["sow", "start indoors"])
    spaced = sheet["task"].isin(["sow", "set out", "thin"])
    assert (sheet["depth"].notna() == sown).all()
    assert (sheet["spacing"].notna() == spaced).all()


def test_nothing_is_ticked_off_as_yet(season: PlanFolder) -> None:
    assert _table(season, "sowing-sheet.csv")["done"].isna().all()


def test_amounts_are_numbers_in_one_unit_a_crop(season: PlanFolder) -> None:
    sheet = _table(season, "harvest.csv")
    for column in _AMOUNTS:
        assert pd.api.types.is_numeric_dtype(sheet[column])
        assert (sheet[column] >= 0).all()
    assert (sheet.groupby("crop")["unit"].nunique() == 1).all()
    units = {one["crop"]: one["unit"] for one in season.record()["sowings"]}
    assert {crop: units.get(crop, unit) for crop, unit in _pairs(sheet)} == dict(_pairs(sheet))


def _pairs(sheet: Any) -> list[tuple[str, str]]:
    return list(zip(sheet["crop"], sheet["unit"], strict=True))


def test_each_week_and_crop_has_one_row_in_order_of_the_week(season: PlanFolder) -> None:
    sheet = _table(season, "harvest.csv")
    assert not sheet.duplicated(["week", "crop"]).any()
    assert sheet["week"].is_monotonic_increasing
    assert sheet["week"].str.fullmatch(r"\d{4}-W\d{2}").all()


def test_a_week_has_a_reason_exactly_when_season_json_says_it_is_unmet(
    season: PlanFolder,
) -> None:
    sheet = _table(season, "harvest.csv")
    reasons = sheet[sheet["unmet_reason"].notna()]
    said = dict(
        zip(
            zip(reasons["week"], reasons["crop"], strict=True),
            reasons["unmet_reason"],
            strict=True,
        )
    )
    unmet = season.record()["unmet"]
    assert said == {(one["week"], one["crop"]): f"{one['kind']}: {one['why']}" for one in unmet}


def test_expected_adds_up_to_the_harvest_of_season_json(season: PlanFolder) -> None:
    sheet = _table(season, "harvest.csv")
    harvests: dict[str, float] = defaultdict(float)
    for sowing in season.record()["sowings"]:
        harvests[sowing["crop"]] += sum(one["amount"] for one in sowing["harvest_days"])
    expected = sheet.groupby("crop")["expected"].sum()
    for crop, amount in harvests.items():
        assert expected[crop] == pytest.approx(amount, abs=0.5)
