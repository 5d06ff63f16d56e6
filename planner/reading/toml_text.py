"""TOML text with the line of every statement.

Values come from the standard library's parser; lines come from a syntax tree of the same
text, because the standard parser does not keep them.
"""

import re
import tomllib
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

import tree_sitter
import tree_sitter_toml

from planner.reading.plan_files import LARGEST_FILE_BYTES, PlanFile
from planner.reading.text_file import text_of
from planner.reading.toml_slip import plainer
from planner.terms import Place, Problem

Path = tuple[str | int, ...]

_AT_LINE = re.compile(r"\s*\(at line (\d+), column \d+\)")


@dataclass(frozen=True, slots=True)
class TomlText:
    """A parsed file: its values and the line (from 1) of each path into them."""

    file: str
    values: dict[str, Any]
    lines: dict[Path, int] = field(default_factory=dict)
    text: tuple[str, ...] = ()

    def place(self, path: Path) -> Place:
        """Where a path is stated; the nearest thing around it when it is not."""
        while path and path not in self.lines:
            path = path[:-1]
        line = self.lines.get(path, 0)
        return Place(self.file, line, self.text[line - 1] if line else "")


def parse_toml(file: PlanFile) -> TomlText | Problem:
    """The file's values and lines, or what keeps it from being read."""
    if len(file.content) > LARGEST_FILE_BYTES:
        return Problem(
            "file-too-large",
            Place(file.name),
            "It holds more than 1 MB; a plan is a few hundred lines.",
            "check that this is the file you meant.",
        )
    text = text_of(file)
    if isinstance(text, Problem):
        return text
    lines = tuple(line.removesuffix("\r") for line in text.split("\n"))
    try:
        values = tomllib.loads(text)
    except RecursionError:
        return _syntax_problem(file.name, "Brackets are nested too deep", lines)
    except ValueError as error:
        return _syntax_problem(file.name, str(error), lines)
    return TomlText(file.name, values, dict(_lines_of(text)), lines)


def _syntax_problem(file: str, words: str, lines: tuple[str, ...]) -> Problem:
    match = _AT_LINE.search(words)
    line = min(int(match[1]), len(lines)) if match else len(lines)
    return Problem(
        "toml-syntax",
        Place(file, line, lines[line - 1] if lines else ""),
        f"{plainer(_AT_LINE.sub('', words))}.",
        "look for a missing quote, bracket or equals sign on this line or the one before.",
    )


def _lines_of(text: str) -> Iterator[tuple[Path, int]]:
    parser = tree_sitter.Parser(tree_sitter.Language(tree_sitter_toml.language()))
    root = parser.parse(text.encode()).root_node
    counts: dict[Path, int] = defaultdict(int)
    for node in root.named_children:
        if node.type == "pair":
            yield from _pair(node, ())
        elif node.type in {"table", "table_array_element"}:
            yield from _table(node, counts)


def _table(node: tree_sitter.Node, counts: dict[Path, int]) -> Iterator[tuple[Path, int]]:
    key, *rest = node.named_children
    path: Path = ()
    *parents, last = _key_words(key)
    for word in parents:
        path = (*path, word)
        if counts.get(path):
            path = (*path, counts[path] - 1)
        yield path, node.start_point[0] + 1
    path = (*path, last)
    yield path, node.start_point[0] + 1
    if node.type == "table_array_element":
        counts[path] += 1
        path = (*path, counts[path] - 1)
        yield path, node.start_point[0] + 1
    for child in rest:
        if child.type == "pair":
            yield from _pair(child, path)


def _pair(node: tree_sitter.Node, above: Path) -> Iterator[tuple[Path, int]]:
    key, *values = (child for child in node.named_children if child.type != "comment")
    path = above
    for word in _key_words(key):
        path = (*path, word)
        yield path, node.start_point[0] + 1
    for value in values:
        yield from _value(value, path)


def _value(node: tree_sitter.Node, path: Path) -> Iterator[tuple[Path, int]]:
    if node.type == "inline_table":
        for child in node.named_children:
            if child.type == "pair":
                yield from _pair(child, path)
    elif node.type == "array":
        items = (child for child in node.named_children if child.type != "comment")
        for index, item in enumerate(items):
            yield (*path, index), item.start_point[0] + 1
            yield from _value(item, (*path, index))


def _key_words(node: tree_sitter.Node) -> list[str]:
    words: list[str] = []
    waiting = [node]
    while waiting:
        one = waiting.pop()
        if one.type == "dotted_key":
            waiting.extend(reversed(one.named_children))
            continue
        raw = (one.text or b"").decode()
        words.append(next(iter(tomllib.loads(f"{raw} = 0"))) if one.type == "quoted_key" else raw)
    return words
