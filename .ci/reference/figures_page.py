"""docs/figures.md: the figures of a crop, as crops.toml may state them."""

from planner.almanac import FIGURE_KINDS, FigureKind, crop_pages
from planner.terms import Dimension
from reference.plan_schema import example_of
from reference.tables_of_text import rows

_ENGINE_UNITS = {
    Dimension.LENGTH: "m",
    Dimension.TIME: "days",
    Dimension.TEMPERATURE: "degC",
    Dimension.DAYLIGHT: "h",
    Dimension.COUNT: "",
}


def figures_text() -> str:
    """The page."""
    parts = [
        "# Figures of a crop",
        "",
        "What `crops.toml` may say of a crop ([how](how-to/own-crops.md),",
        "[schema](schemas/crops.toml.schema.json)), and what `planner crops NAME` shows with",
        "sources. A length, weight, count, temperature or time is a number or a range with a",
        "[unit](files.md#how-values-are-written), such as `28-32 days`.",
        "",
    ]
    cells = [
        (f"`{name}`", kind.meaning, _form(kind), _bounds(kind), f"`{example_of(kind)}`")
        for name, kind in FIGURE_KINDS.items()
    ]
    parts += rows(("figure", "meaning", "written as", "no crop has", "example"), cells)
    parts += [
        "",
        f"The {len(crop_pages())} crops of the almanac, each with its figures and where they are",
        "from: [crops.md](crops.md).",
        "",
    ]
    return "\n".join(parts)


def _form(kind: FigureKind) -> str:
    if kind.choices:
        return " or ".join(f"`{word}`" for word in kind.choices)
    if kind.dimension is None and not kind.harvest:
        return "text"
    return "a weight or a count" if kind.dimension is None else kind.dimension.value


def _bounds(kind: FigureKind) -> str:
    if kind.dimension is None:
        return f"0, or more than {kind.most:g}" if kind.harvest else ""
    unit = _ENGINE_UNITS[kind.dimension]
    most = f"more than {kind.most:g} {unit}".strip()
    if kind.least:
        return f"less than {kind.least:g} {unit}, or {most}"
    return most if kind.may_be_zero else f"0, or {most}"
