"""The typesetter: a template and plain data become a PDF.

It is the one way in to the typesetter's library. What the grower wrote is data to it and never
markup: a template reads it as JSON, so no name can become an instruction.
"""

import json
from collections.abc import Mapping
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

if TYPE_CHECKING:
    from _typeshed import DataclassInstance

_HERE = Path(__file__).parent
# The day of the PDF format's own first standard, ISO 32000-1. Any fixed day makes equal bytes.
_ALWAYS_MADE_ON = 1_214_870_400
_STANDARD: Final = "ua-1"  # PDF/UA-1, ISO 14289-1: tagged, for those who have a sheet read out


def typeset(template: str, sheet: "DataclassInstance") -> bytes:
    """A PDF of what is on a sheet, by the template of that name beside this module."""
    import typst  # noqa: PLC0415 - only who prints needs it

    faces = typst.Fonts(include_system_fonts=False, font_paths=[_HERE / "fonts"])
    compiler = typst.Compiler(
        _HERE / f"{template}.typ",
        root=_HERE,
        font_paths=faces,
        ignore_system_fonts=True,
        sys_inputs={"sheet": _json(asdict(sheet))},
    )
    made = compiler.compile(format="pdf", timestamp=_ALWAYS_MADE_ON, pdf_standards=_STANDARD)
    if not isinstance(made, bytes):
        message = "the typesetter gave no single file"
        raise TypeError(message)
    return made


def _json(values: Mapping[str, Any]) -> str:
    return json.dumps(values, ensure_ascii=False)
