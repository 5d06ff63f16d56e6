"""Crop pages: all published rows of a crop, those used for planning marked."""

from collections import defaultdict
from dataclasses import dataclass
from functools import cache

from planner.almanac.table import table_rows


@dataclass(frozen=True, slots=True)
class PublishedRow:
    """One published figure of a crop as it stands in the almanac."""

    figure: str
    low: str
    high: str
    unit: str
    basis: str
    source: str
    note: str
    used: bool


@dataclass(frozen=True, slots=True)
class CropPage:
    """A crop's name, its other names, and everything published about it."""

    name: str
    label: str
    other_names: tuple[str, ...]
    rows: tuple[PublishedRow, ...]

    @property
    def used(self) -> dict[str, PublishedRow]:
        """The rows the planner counts with, by figure."""
        return {row.figure: row for row in self.rows if row.used}


@cache
def crop_pages() -> dict[str, CropPage]:
    """Every crop page by the crop's name."""
    published = _published_rows()
    pages = {}
    for row in table_rows("crop_names.csv"):
        others = tuple(name for name in row["other_names"].split(";") if name)
        rows = tuple(published[row["crop"]])
        pages[row["crop"]] = CropPage(row["crop"], row["label"], others, rows)
    return pages


def _published_rows() -> dict[str, list[PublishedRow]]:
    """The rows of both tables of figures, by crop."""
    rows = defaultdict(list)
    for table in ("crops.csv", "heat.csv"):
        for row in table_rows(table):
            crop, used = row.pop("crop"), row.pop("used")
            rows[crop].append(PublishedRow(**row, used=used == "yes"))
    return rows


@cache
def _names() -> dict[str, str]:
    """Crop names and other names, folded, to the crop's name."""
    names = {}
    for page in crop_pages().values():
        for name in (page.name, page.label, *page.other_names):
            names[_folded(name)] = page.name
    return names


def _folded(name: str) -> str:
    return " ".join(name.replace("_", " ").replace("-", " ").casefold().split())


def crop_page(name: str) -> CropPage | None:
    """The page of a crop under any of its names, singular or plural."""
    folded = _folded(name)
    for spelling in (folded, folded.removesuffix("s"), folded.removesuffix("es"), folded + "s"):
        if spelling in _names():
            return crop_pages()[_names()[spelling]]
    return None
