"""Appetite in words: whom the targets feed, what is published, and targets for a household."""

import json
import textwrap
from collections.abc import Iterator, Sequence
from dataclasses import replace

from planner.bedwork import CropAppetite, Feeds, Proposal, ProposedTarget
from planner.garden import AmountBasis, PublishedAmount
from planner.terms import amount_words
from planner.writing.paragraph import paragraph, paragraphs


def appetite_text(appetites: Sequence[CropAppetite], width: int) -> str:
    """Each wanted crop beside what a person eats, then what is published of it."""
    parts = [
        paragraph(
            "What people eat differs, and so do published amounts, by a factor of three. Take them "
            "as a first guess and write what your table wants.",
            width,
        ),
        paragraphs(map(_wanted, appetites), width),
    ]
    published = [line for one in appetites for line in _published(one)]
    if published:
        parts.append("\n".join(["Published:", *(paragraph(line, width) for line in published)]))
    return "\n\n".join(parts)


def _wanted(one: CropAppetite) -> str:
    amount = amount_words(one.each_week, one.crop.unit)
    wanted = f"{one.crop.name}: {amount} a week for {one.weeks} weeks"
    if one.weeks == 1:
        wanted = f"{one.crop.name}: {amount} in all"
    if not isinstance(one.feeds, Feeds):
        return f"{wanted}; nobody says what a person eats of it."
    portion = one.feeds.portion.each_week
    each = f"{portion} a week ({portion.source})"
    if one.weeks == 1:
        weeks = _range(one.feeds.fewest, one.feeds.most)
        return f"{wanted}, {weeks} weekly portions. A person eats {each}."
    return (
        f"{wanted}, which feeds {_range(one.feeds.fewest, one.feeds.most)}. A person eats {each}."
    )


def _range(low: float, high: float) -> str:
    first, last = _count(low), _count(high)
    return first if first == last else f"{first} to {last}"


def _count(number: float) -> str:
    return f"{number:.0f}" if number >= 2 else f"{number:.1f}".removesuffix(".0")


_WORDS = {
    AmountBasis.SEASON: "a person and season",
    AmountBasis.SHARE: "in the weekly share of a household of 4 to 5",
    AmountBasis.PLOT: "planted for a person",
}


def _published(one: CropAppetite) -> Iterator[str]:
    if one.published:
        told = "; ".join(_amount(amount) for amount in one.published)
        yield f"{one.crop.name}: {told}."


def _amount(one: PublishedAmount) -> str:
    source = one.figure.source.key
    if source == "derived":
        return f"{one.figure} {_WORDS[one.basis]} ({one.note})"
    note = f", {one.note}" if one.note else ""
    return f"{one.figure} {_WORDS[one.basis]}{note} ({source})"


def proposal_text(proposal: Proposal) -> str:
    """Targets for a household as TOML that can stand in garden.toml."""
    people = f"{proposal.people:g}"
    lines = [
        f"# Targets for {people}: crops that fit these beds and this season, every kind in turn,",
        "# as long as seven tenths of the ground would hold them, and ten things in a week.",
        "# Take out what nobody likes; in place of for_people you may write each_week.",
    ]
    if not proposal.targets:
        lines.append("# Nothing would feed so many from this ground: ask for fewer people.")
    parts = ["\n".join(lines), *(_target(one, proposal.people) for one in proposal.targets)]
    if proposal.left_out:
        left = ", ".join(proposal.left_out)
        parts.append(
            textwrap.fill(
                f"They would be ripe here too: {left}.",
                98,
                initial_indent="# ",
                subsequent_indent="# ",
            )
        )
    return "\n\n".join(parts)


def _target(one: ProposedTarget, people: float) -> str:
    eaten = one.portion.each_week
    amount = replace(eaten, low=eaten.middle * people, high=eaten.middle * people)
    source = "from memory" if eaten.source.key == "memory" else eaten.source.words
    return (
        f"[[target]]\ncrop = {json.dumps(one.portion.crop.name, ensure_ascii=False)}\n"
        f"for_people = {people:g}    # {amount} a week; a person {eaten} ({source})\n"
        f"from = {one.first}\nto = {one.last}"
    )
