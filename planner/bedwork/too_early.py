"""Harvests before raw manure has lain long enough (§46)."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from planner.bedwork.manure import manure_checks
from planner.garden import Garden
from planner.scheduling import Sowing
from planner.terms import date_words


@dataclass(frozen=True, slots=True)
class TooEarly:
    """From when on a harvest may be, and the bed the manure lies in."""

    from_on: date
    bed: str

    def words(self, what: str) -> str:
        """What the grower is told."""
        until = date_words(self.from_on)
        return f"Do not harvest {what} before {until}: raw manure on {self.bed}."


TooEarlyHarvests = Mapping[tuple[str, date], TooEarly]


def too_early_harvests(garden: Garden, sowings: Sequence[Sowing]) -> TooEarlyHarvests:
    """The harvests that come too early, by sowing and day; of several manures the last counts."""
    days = {one.id: [taken.day for taken in one.harvest] for one in sowings}
    found: dict[tuple[str, date], TooEarly] = {}
    for check in manure_checks(garden, sowings):
        for pick in check.too_early:
            wait = TooEarly(pick.from_on, check.manure.bed)
            for day in days[pick.sowing]:
                known = found.get((pick.sowing, day), wait)
                if check.manure.on <= day < pick.from_on and known.from_on <= wait.from_on:
                    found[pick.sowing, day] = wait
    return found
