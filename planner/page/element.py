"""Elements of a page: markup that can only be made of elements and escaped text."""

import html
from collections.abc import Iterable

_WITHOUT_END = {"input", "link", "meta", "br"}

Value = str | int | None


class Html(str):
    """Text that is markup already; any other text is escaped when it goes into an element."""

    __slots__ = ()


def el(name: str, /, *children: str, **attributes: Value) -> Html:
    """An element with its children; an attribute that is None is left out.

    `class_` and `for_` stand for the attributes of those names, and other underscores for hyphens.
    """
    head = name + "".join(
        f' {key.removesuffix("_").replace("_", "-")}="{html.escape(str(value))}"'
        for key, value in attributes.items()
        if value is not None
    )
    if name in _WITHOUT_END:
        return Html(f"<{head}>")
    return Html(f"<{head}>{joined(children)}</{name}>")


def joined(parts: Iterable[str]) -> Html:
    """Parts one after the other, text escaped."""
    return Html("".join(one if isinstance(one, Html) else html.escape(one) for one in parts))


def fragment(words: str) -> str:
    """A name within the page, from words that are no more alike than the words are."""
    return "".join(
        one if one.isascii() and one.isalnum() else "-" if one == " " else f"_{ord(one):x}_"
        for one in words
    )
