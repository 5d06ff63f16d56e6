"""How much processor time the calendars take, beside joining the same strings by hand.

By hand: python -m tests.benchmarks.calendar_load [--repeat 15]

A season of some 500 events is written: for the first time, and again where nothing has changed.
By hand means the same words, days and ids put between the names of properties and joined,
without escaping, folding, order, numbers of changes, or a second file.
"""

import argparse
import time
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, timedelta
from statistics import median
from uuid import UUID, uuid5

from planner.cli.folder import garden_in
from planner.cli.shell import need
from planner.season import Season, make_season
from planner.writing import write_calendars
from planner.writing.calendar import Unstamped, unstamped_events
from tests.benchmarks.run import SAMPLES

_PLAN = SAMPLES / "ferry_street"
_DAY = date(2027, 1, 15)


@dataclass(frozen=True, slots=True)
class Row:
    """One way of writing: median processor seconds, and their ratio to joining by hand."""

    name: str
    cpu_s: float
    ratio: float


def season_to_write() -> Season:
    """The sample plan with most beds, as a draft."""
    return make_season(need(garden_in(_PLAN)), _DAY, None, 0)


def joined_by_hand(season: Season) -> bytes:
    """A calendar of the season as a short script would write it."""
    plan = UUID(str(season.plan_id))
    events = "".join(_event(plan, entry) for entry in unstamped_events(season))
    return f"BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:x\r\n{events}END:VCALENDAR\r\n".encode()


def _event(plan: UUID, entry: Unstamped) -> str:
    return (
        f"BEGIN:VEVENT\r\nUID:{uuid5(plan, entry.id)}\r\nDTSTAMP:20270115T000000Z\r\n"
        f"SEQUENCE:0\r\nLAST-MODIFIED:20270115T000000Z\r\nSUMMARY:{entry.summary}\r\n"
        f"DTSTART;VALUE=DATE:{entry.first:%Y%m%d}\r\n"
        f"DTEND;VALUE=DATE:{entry.last + timedelta(days=1):%Y%m%d}\r\n"
        f"CATEGORIES:{entry.kind}\r\nDESCRIPTION:{entry.text}\r\nLOCATION:{entry.bed}\r\n"
        "STATUS:CONFIRMED\r\nTRANSP:TRANSPARENT\r\nBEGIN:VALARM\r\nACTION:DISPLAY\r\n"
        f"DESCRIPTION:{entry.summary}\r\nTRIGGER:-PT6H\r\nEND:VALARM\r\nEND:VEVENT\r\n"
    )


def rows(season: Season, repeat: int) -> list[Row]:
    """Each way of writing in turn, `repeat` times."""
    earlier = write_calendars(season, None).update
    ways: dict[str, Callable[[], object]] = {
        "joined by hand": lambda: joined_by_hand(season),
        "write_calendars, first": lambda: write_calendars(season, None),
        "write_calendars, again": lambda: write_calendars(season, earlier),
    }
    seconds: dict[str, list[float]] = {name: [] for name in ways}
    for _ in range(repeat):
        for name, write in ways.items():
            seconds[name].append(_cpu_s(write))
    by_hand = max(median(seconds["joined by hand"]), 1e-9)
    return [Row(name, median(some), median(some) / by_hand) for name, some in seconds.items()]


def _cpu_s(write: Callable[[], object]) -> float:
    started = time.process_time()
    write()
    return time.process_time() - started


def main() -> None:
    """Measure every way and print the table."""
    parser = argparse.ArgumentParser(description="Processor time of writing calendars.")
    parser.add_argument("--repeat", type=int, default=15, help="writings of each kind (15)")
    repeat: int = parser.parse_args().repeat
    season = season_to_write()
    print(
        f"{sum(1 for _ in unstamped_events(season))} events\n{'':<24} {'CPU ms':>8}  {'ratio':>6}"
    )
    for row in rows(season, repeat):
        print(f"{row.name:<24} {row.cpu_s * 1000:8.2f}  {row.ratio:6.2f}")


if __name__ == "__main__":
    main()
