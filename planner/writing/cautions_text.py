"""Cautions in words, each with who decides and where it is from."""

import textwrap
from collections.abc import Sequence

from planner.garden import Caution
from planner.writing.source_words import in_brackets


def cautions_text(cautions: Sequence[Caution], width: int) -> str:
    """A paragraph for each caution under one head; empty where there is none."""
    if not cautions:
        return ""
    return "\n".join(
        [
            "Take care",
            *(
                textwrap.fill(_words(one), width, initial_indent="  ", subsequent_indent="    ")
                for one in cautions
            ),
        ]
    )


def _words(one: Caution) -> str:
    about = f" ({', '.join(one.crops)})" if one.crops else ""
    keys = in_brackets(*one.sources)
    return f"{one.hazard.capitalize()}{about}: {one.text} Ask: {one.ask}. {keys}"
