"""CSV as spreadsheet programs and scripts both read it (RFC 4180, UTF-8 without a mark).

Words that a spreadsheet would take for a formula are guarded; `unguarded` gives them back.
"""

import csv
import io
from collections.abc import Iterable, Sequence

from planner.terms import guarded


def csv_bytes(header: Sequence[str], rows: Iterable[Sequence[object]]) -> bytes:
    """A table with a header, lines ended by CR LF; numbers as they are, words guarded."""
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(header)
    for row in rows:
        writer.writerow([guarded(cell) if isinstance(cell, str) else cell for cell in row])
    return text.getvalue().encode()
