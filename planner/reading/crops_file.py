"""crops.toml: own crops and varieties, and corrections to the almanac, figure by figure."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from planner.almanac import (
    FIGURE_KINDS,
    TABLES_OF,
    FigureKind,
    Stated,
    as_stated,
    assemble_crop,
    crop_page,
    crop_pages,
    in_engine_unit,
)
from planner.garden import Crop
from planner.reading.heat_order import check_heat
from planner.reading.near_miss import folded, nearest_word
from planner.reading.plan_files import PlanFile
from planner.reading.toml_table import TomlTable
from planner.reading.toml_text import parse_toml
from planner.terms import Dimension, Fact, Figure, Problem, QuantityRange, Source


@dataclass(frozen=True, slots=True)
class OwnCrop:
    """What crops.toml says of one crop, with the almanac's figures beneath it."""

    name: str
    label: str
    stated: Stated
    table: TomlTable


@dataclass(slots=True)
class CropShelf:
    """All crops that can be asked for: the grower's own before the almanac's."""

    own: dict[str, OwnCrop] = field(default_factory=dict)
    unread: bool = False

    def is_doubtful(self, name: str) -> bool:
        """Whether a crop cannot be judged because crops.toml has problems of its own."""
        own = self.own.get(folded(name))
        return self.unread or (own is not None and own.table.has_problems)

    def find(self, name: str) -> Crop | tuple[str, ...] | None:
        """A complete crop, the figures it lacks, or None when nobody knows it."""
        page = crop_page(name)
        own = self._own_of(name)
        if own is not None:
            return assemble_crop(own.name, own.label, own.stated)
        if page is None:
            return None
        return assemble_crop(page.name, page.label, almanac_statements(page.name))

    def portion(self, name: str) -> Figure | None:
        """What a person eats of a crop in a week, as the grower or the almanac says."""
        stated = self._statement(name, "portion")
        return stated if isinstance(stated, Figure) else None

    def fact(self, name: str, figure: str) -> Fact | None:
        """A word of the trade about a crop, as the grower or the almanac says."""
        stated = self._statement(name, figure)
        return stated if isinstance(stated, Fact) else None

    def _statement(self, name: str, figure: str) -> Figure | Fact | None:
        own, page = self._own_of(name), crop_page(name)
        if own is not None:
            return own.stated.get(figure)
        return almanac_statements(page.name).get(figure) if page else None

    def model(self, name: str) -> str:
        """The crop of the almanac whose tables hold for this one; empty when there is none."""
        own = self._own_of(name)
        if own is None:
            page = crop_page(name)
            return page.name if page else ""
        tables = own.stated.get(TABLES_OF)
        return tables.text if isinstance(tables, Fact) else ""

    def family(self, name: str) -> str:
        """The family of a crop anybody knows; empty when nobody does."""
        found = self.find(name)
        return found.family.text if isinstance(found, Crop) else ""

    def _own_of(self, name: str) -> OwnCrop | None:
        """What crops.toml says of a crop under this name, or under the almanac's name for it."""
        page = crop_page(name)
        return self.own.get(folded(name)) or (self.own.get(page.name) if page else None)

    @property
    def names(self) -> list[str]:
        """Every name that would be understood."""
        others = [name for page in crop_pages().values() for name in page.other_names]
        return [*self.own, *crop_pages(), *others]


def almanac_statements(name: str) -> dict[str, Figure | Fact]:
    """The almanac's figures for a crop, in engine units."""
    stated: dict[str, Figure | Fact] = {
        figure: as_stated(figure, row.low, row.high, row.unit, Source(row.source))
        for figure, row in crop_pages()[name].used.items()
        if figure in FIGURE_KINDS
    }
    stated[TABLES_OF] = Fact(name, Source("UCSC-A4"))
    return stated


def read_crops(file: PlanFile | None, problems: list[Problem]) -> CropShelf:
    """The shelf of crops; an absent file leaves the almanac alone on it."""
    shelf = CropShelf()
    if file is None:
        return shelf
    parsed = parse_toml(file)
    if isinstance(parsed, Problem):
        problems.append(parsed)
        shelf.unread = True
        return shelf
    top = TomlTable(parsed, (), parsed.values, "crops.toml", problems)
    crops = top.table("crop", "The list of crops")
    for name in crops.keys if crops else ():
        table = crops.table(name, f'The crop "{name}"') if crops else None
        if table is not None:
            _put_on(shelf, _read_crop(name, table), name)
    top.refuse_unknown()
    return shelf


def _put_on(shelf: CropShelf, own: OwnCrop, name: str) -> None:
    if not own.name:
        own.table.report("missing-key", "", "A crop here has no name.", "name it, or take it out.")
    elif own.name in shelf.own:
        line = shelf.own[own.name].table.place().line
        own.table.report(
            "name-taken",
            "",
            f'Line {line} already tells of this crop; "{name}" is another name for it.',
            "tell all of it in one place.",
        )
    else:
        shelf.own[own.name] = own


def _read_crop(name: str, table: TomlTable) -> OwnCrop:
    page = crop_page(name)
    like = table.text("like") if "like" in table else None
    label = table.text("label") if "label" in table else None
    beneath: dict[str, Figure | Fact] = {}
    if like is not None:
        model = crop_page(like)
        if model is None:
            near = nearest_word(like, crop_pages())
            table.report(
                "unknown-crop",
                "like",
                f'The almanac has no crop "{like}".',
                f'write "{near}".' if near else "list its crops with: planner crops.",
            )
        else:
            beneath = almanac_statements(model.name)
    elif page is not None:
        beneath = almanac_statements(page.name)
    own = _read_figures(table)
    stated = {**beneath, **own}
    check_heat(table, own, stated)
    table.refuse_unknown()
    known = page.name if page is not None and like is None else folded(name)
    return OwnCrop(known, label or (page.label if page else name.capitalize()), stated, table)


def _read_figures(table: TomlTable) -> Mapping[str, Figure | Fact]:
    stated: dict[str, Figure | Fact] = {}
    for figure, kind in FIGURE_KINDS.items():
        if figure in table:
            value = _read_figure(table, figure, kind)
            if value is not None:
                stated[figure] = value
    return stated


def _read_figure(table: TomlTable, figure: str, kind: FigureKind) -> Figure | Fact | None:
    source = table.source(figure)
    if kind.choices:
        word = table.choice(figure, kind.choices)
        return None if word is None else Fact(word, source)
    if kind.dimension is None and not kind.harvest:
        text = table.text(figure)
        return None if text is None else Fact(text, source)
    read = table.range_from_zero if kind.may_be_zero else table.range
    span = read(figure, kind.dimension, kind.example)
    if span is None or not _within(table, figure, kind, span):
        return None
    if kind.harvest and span.unit.dimension not in {Dimension.MASS, Dimension.COUNT}:
        table.report(
            "wrong-unit",
            figure,
            f'"{figure}" is a weight or a count; "{span.unit.name}" is '
            f"{span.unit.dimension.value}.",
            f'write it like "{kind.example}".',
        )
        return None
    return in_engine_unit(Figure(span.low, span.high, "", source), span.unit.name)


def _within(table: TomlTable, figure: str, kind: FigureKind, span: QuantityRange) -> bool:
    factor, offset = span.unit.factor, span.unit.offset
    if kind.least <= span.low * factor + offset and span.high * factor + offset <= kind.most:
        return True
    table.report(
        "out-of-range",
        figure,
        f'"{figure}" is more or less than any crop has.',
        f'check the number and its unit; it is written like "{kind.example}".',
    )
    return False
