"""Tables with a caption, heads of columns and heads of rows."""

from collections.abc import Container, Iterable

from planner.page.element import Html, el

Row = tuple[str, ...]


def table(
    caption: str, columns: Row, rows: Iterable[Row], numbers: Container[int] = frozenset()
) -> Html:
    """A table whose first cells name their rows; `numbers` tells which columns are set as such.

    Columns are counted from 0. It may be wider than a phone; then it is moved sideways by itself,
    also from the keyboard.
    """
    heads = (
        el("th", name, scope="col", class_=_kind(n, numbers)) for n, name in enumerate(columns)
    )
    return el(
        "div",
        el(
            "table",
            el("caption", caption),
            el("thead", el("tr", *heads)),
            el("tbody", *(_row(row, numbers) for row in rows)),
        ),
        class_="wide",
        role="region",
        aria_label=caption,
        tabindex=0,
    )


def _row(row: Row, numbers: Container[int]) -> Html:
    first, *others = row
    cells = (el("td", cell, class_=_kind(n, numbers)) for n, cell in enumerate(others, 1))
    return el("tr", el("th", first, scope="row"), *cells)


def _kind(column: int, numbers: Container[int]) -> str | None:
    return "number" if column in numbers else None
