"""Tables with a caption, heads of columns and heads of rows."""

from collections.abc import Iterable

from planner.page.element import Html, el

Row = tuple[str, ...]


def table(caption: str, columns: Row, rows: Iterable[Row], numbers_from: int = 99) -> Html:
    """A table whose first cells name their rows; columns from `numbers_from` on hold numbers.

    It may be wider than a phone; then it is moved sideways by itself, also from the keyboard.
    """
    heads = (
        el("th", name, scope="col", class_=_kind(n, numbers_from)) for n, name in _numbered(columns)
    )
    return el(
        "div",
        el(
            "table",
            el("caption", caption),
            el("thead", el("tr", *heads)),
            el("tbody", *(_row(row, numbers_from) for row in rows)),
        ),
        class_="wide",
        role="region",
        aria_label=caption,
        tabindex=0,
    )


def _row(row: Row, numbers_from: int) -> Html:
    first, *others = row
    cells = (el("td", cell, class_=_kind(n, numbers_from)) for n, cell in enumerate(others, 1))
    return el("tr", el("th", first, scope="row"), *cells)


def _numbered(row: Row) -> Iterable[tuple[int, str]]:
    return enumerate(row)


def _kind(column: int, numbers_from: int) -> str | None:
    return "number" if column >= numbers_from else None
