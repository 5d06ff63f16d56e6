"""FOLDER/.published: what a calendar on a server took last, a line for each event and time.

Lines are only added, each as soon as the server has taken an event, so a run that is cut off
forgets nothing. The last line of an event counts. No password stands here.
"""

import json
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

PUBLISHED = ".published"


@dataclass(slots=True)
class PublishedRecord:
    """The imprints of what was sent to one address, by UID; an OSError says the disk would not."""

    path: Path
    at: str
    imprints: dict[str, str] = field(default_factory=dict)
    is_cut_short: bool = False

    def sent(self, uid: str, imprint: str) -> None:
        """The server took an event, or has it in these words already."""
        if self.imprints.get(uid) != imprint:
            self.imprints[uid] = imprint
            self._add({"uid": uid, "imprint": imprint})

    def removed(self, uid: str) -> None:
        """The event is no longer there because the program took it out."""
        if self.imprints.pop(uid, None) is not None:
            self._add({"uid": uid})

    def begin_anew(self) -> None:
        """The calendar was emptied: nothing was sent to it yet."""
        self.imprints.clear()
        self._add({})

    def _add(self, line: dict[str, str]) -> None:
        # What a run that died began to write must not take this line with it.
        before = "\n" if self.is_cut_short else ""
        with self.path.open("a", encoding="utf-8") as file:
            file.write(f"{before}{json.dumps({'at': self.at, **line})}\n")
        self.is_cut_short = False


def published_record(folder: Path, at: str) -> PublishedRecord:
    """What was sent to an address before; a line that cannot be read counts for nothing."""
    record = PublishedRecord(folder / PUBLISHED, at)
    if record.path.exists():
        text = record.path.read_text(encoding="utf-8", errors="replace")
        record.is_cut_short = not text.endswith("\n") and text != ""
        for line in text.split("\n"):
            _take(record, line)
    return record


def _take(record: PublishedRecord, text: str) -> None:
    line = _understood(text)
    if line.get("at") != record.at:
        return
    if "uid" not in line:
        record.imprints.clear()
    elif "imprint" in line:
        record.imprints[str(line["uid"])] = str(line["imprint"])
    else:
        record.imprints.pop(str(line["uid"]), None)


def _understood(text: str) -> dict[str, Any]:
    try:
        line = json.loads(text)
    except (ValueError, RecursionError):
        return {}
    return line if isinstance(line, dict) else {}
