"""CSV as spreadsheet programs and scripts both read it (RFC 4180, UTF-8)."""

import csv
import io
from collections.abc import Iterable, Sequence


def csv_bytes(header: Sequence[str], rows: Iterable[Sequence[object]]) -> bytes:
    """A table with a header, lines ended by CR LF."""
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(header)
    writer.writerows(rows)
    return text.getvalue().encode()
