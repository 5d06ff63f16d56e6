"""Cautions in words, each with who decides and where it is from."""

from collections.abc import Sequence

from planner.garden import Caution
from planner.writing.paragraph import headed
from planner.writing.source_words import in_brackets


def cautions_text(cautions: Sequence[Caution], width: int) -> str:
    """A paragraph for each caution under one head; empty where there is none."""
    if not cautions:
        return ""
    told = (f"{one.hazard.capitalize()}{caution_words(one)}" for one in cautions)
    return headed(["Take care", *told], width)


def caution_words(one: Caution) -> str:
    """What is usually done about a hazard, whom to ask and where it is from; after its name."""
    about = f" ({', '.join(one.crops)})" if one.crops else ""
    keys = in_brackets(*one.sources)
    return f"{about}: {one.text} Ask: {one.ask}. {keys}"
