"""Offers: every sowing a crop could have, as rows of numbers the chooser can weigh at once.

An offer is a start together with the day its ground is given back: the same start held a week
longer, or cut once more, is another offer.
"""

import math
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cached_property
from typing import NamedTuple

import numpy as np

from planner.garden import Crop, Store
from planner.scheduling.offers.arrays import Floats, Whole
from planner.scheduling.offers.unbeaten import OfferRow, unbeaten
from planner.scheduling.offers.worth import UNPICKED, work_of
from planner.scheduling.starts import Candidate, CropCandidates, in_years
from planner.terms import Week, week_of

ENOUGH = 1e-6
_NEARLY_FULL = 0.5
# So many weeks beyond its likely end may ground be kept for years that are late.
_MOST_LATER = 3


@dataclass(frozen=True)
class CropOffers:
    """A crop's offers, and the weeks that lack it and that some offer could feed.

    `lacks`: amount each week lacks, in the crop's unit; `worth`: what one unit of it is worth
    in that week. `starts`: the candidate an offer begins as; `enters`, `leaves`: ordinals, the
    turnover in them. `gives`: offers by weeks; what one plant brings to a week where harvest
    flows, else 1 where the whole harvest may be taken that week. `beyond`: what one plant
    could bring to weeks that do not want it or come after its ground is given back, as surplus.
    `work`: how much work an offer is, against one sown in place that is harvested as it is wanted.
    `years`: as `gives`, in each year the offers are weighed in; at least one.
    """

    crop: Crop
    candidates: list[Candidate]
    weeks: tuple[Week, ...]
    lacks: Floats
    worth: Floats
    starts: Whole
    enters: Whole
    leaves: Whole
    gives: Floats
    beyond: Floats
    work: Floats
    flows: bool
    years: Floats

    def __len__(self) -> int:
        """How many offers there are."""
        return len(self.starts)

    @cached_property
    def mean_worth(self) -> float:
        """What one unit is worth in an average week of these."""
        return float(self.worth.mean()) if len(self.worth) else 0.0

    @cached_property
    def plants(self) -> Floats:
        """Plants that would feed each week in full, for a crop harvested at once."""
        return self.lacks / self.crop.gives.middle

    @cached_property
    def largest(self) -> Floats:
        """The most plants of each offer that are of use, by its weeks in nearly full flow."""
        if not self.flows:
            return self.gives @ self.plants
        full = self.gives >= _NEARLY_FULL * self.gives.max(axis=1, keepdims=True)
        with np.errstate(divide="ignore", invalid="ignore"):
            needed = np.where(full & (self.gives > 0), self.lacks / self.gives, 0.0)
        most: Floats = needed.max(axis=1)
        return most

    @cached_property
    def first_week(self) -> list[int]:
        """The first week each offer feeds, by its place in `weeks`."""
        return [int(one) for one in (self.gives > 0).argmax(axis=1)]

    @cached_property
    def last_week(self) -> list[int]:
        """The last week each offer feeds."""
        return last_weeks(self.gives)


def last_weeks(gives: Floats) -> list[int]:
    """The last week each offer feeds, offers by weeks; the last of all where it feeds none."""
    if not gives.size:
        return [0] * len(gives)
    return [int(gives.shape[1] - 1 - one) for one in (gives > 0)[:, ::-1].argmax(axis=1)]


class Was(NamedTuple):
    """An offer that an earlier season took: when it began, entered and gave its ground back."""

    start_on: date
    enters_on: date
    leaves_on: date


def offers_of(
    found: CropCandidates,
    lacks: Mapping[Week, float],
    worth: Mapping[Week, float],
    taken: Collection[Was] = (),
) -> CropOffers:
    """All offers of a crop worth weighing, for the weeks that lack it.

    `worth` is what one unit is worth by week. An offer that another one beats in every way is
    left out: one that enters no earlier, leaves no later, and gives no less in any week. Those
    `taken` by an earlier season stay.
    """
    served = {week for one in found.candidates for week in one.days}
    weeks = tuple(week for week, lack in lacks.items() if lack > ENOUGH and week in served)
    every = list(_Rows(found, weeks))
    taken_rows = {id(row) for row in _taken(every, found.candidates, taken)}
    rows = unbeaten(every, len(weeks), taken_rows)
    flows = any(one.flow for one in found.candidates)
    return CropOffers(
        crop=found.about.crop,
        candidates=found.candidates,
        weeks=weeks,
        lacks=np.array([lacks[week] for week in weeks], float),
        worth=np.array([worth[week] for week in weeks], float),
        starts=np.array([row.start for row in rows], np.int64),
        enters=np.array([row.enters for row in rows], np.int64),
        leaves=np.array([row.leaves for row in rows], np.int64),
        gives=np.array([row.gives for row in rows], float).reshape(len(rows), len(weeks)),
        beyond=np.array([row.beyond for row in rows], float),
        work=np.array([row.work for row in rows], float),
        flows=flows,
        years=_by_year(rows, len(found.years.years), len(weeks)),
    )


def _by_year(rows: list[OfferRow], years: int, weeks: int) -> Floats:
    """What each offer gives in each year: years by offers by weeks.

    Where no past year is known the likely dates are the only year.
    """
    if not years:
        return np.array([row.gives for row in rows], float).reshape(1, len(rows), weeks)
    each = np.array([row.years for row in rows], float).reshape(len(rows), years, weeks)
    return each.transpose(1, 0, 2).copy()


@dataclass(frozen=True)
class _Rows:
    """The rows of a crop's offers over the weeks that lack it."""

    found: CropCandidates
    weeks: tuple[Week, ...]

    @cached_property
    def _place(self) -> dict[Week, int]:
        return {week: number for number, week in enumerate(self.weeks)}

    @cached_property
    def _on_garden_days(self) -> set[Week]:
        """Weeks in which some candidate is harvested on a garden day."""
        return {
            week
            for one in self.found.candidates
            for week, day in one.days.items()
            if self.found.about.workdays.wish.is_garden_day(day)
        }

    def __iter__(self) -> Iterator[OfferRow]:
        for number, candidate in enumerate(self.found.candidates):
            yield from self._of(number, candidate)

    def _of(self, number: int, candidate: Candidate) -> Iterator[OfferRow]:
        """One row for each day on which the candidate's ground could be given back."""
        gives, brings = np.zeros(len(self.weeks)), math.fsum(candidate.flow.values())
        years = in_years(candidate, self.found.years)
        stored = isinstance(self.found.about.crop.habit, Store)
        for week, day in sorted(candidate.days.items()):
            if week not in self._place:
                continue
            if not candidate.flow and self._waits_for_garden_day(week, day):
                continue
            gives[self._place[week]] = candidate.flow.get(week, 1.0)
            if not stored:
                yield self._row(number, candidate, (gives, brings), day, years)
        if gives.any():
            ends = [day for week, day in candidate.days.items() if week in self._place]
            last = min(candidate.days.values()) if stored else max(ends)
            if stored:
                yield self._row(number, candidate, (gives, brings), last, years)
            for day in _later_days(years, last, stored=stored):
                yield self._row(number, candidate, (gives, brings), day, years)

    def _waits_for_garden_day(self, week: Week, day: date) -> bool:
        return week in self._on_garden_days and not self.found.about.workdays.wish.is_garden_day(
            day
        )

    def _row(
        self,
        number: int,
        candidate: Candidate,
        brings: tuple[Floats, float],
        last: date,
        years: list[Candidate],
    ) -> OfferRow:
        gives, all_of_it = brings
        enters = candidate.course.enters_on
        rest = self.found.about.workdays.wish.turnover_days
        leaves = max(last, enters + timedelta(days=1)) + timedelta(days=rest)
        first = self.weeks[int((gives > 0).argmax())].monday
        waits = max(0, (first - min(candidate.days.values())).days) / 7
        return OfferRow(
            start=number,
            enters=enters.toordinal(),
            leaves=leaves.toordinal(),
            gives=gives.copy(),
            beyond=UNPICKED * max(0.0, all_of_it - float(gives.sum())),
            direct=candidate.is_direct,
            work=work_of(direct=candidate.is_direct, weeks_waiting=waits),
            years=np.array([self._until(one, last) for one in years]).reshape(
                len(years), len(self.weeks)
            ),
        )

    def _until(self, candidate: Candidate, last: date) -> Floats:
        """What a candidate gives each week until its ground is given back.

        What is stored is lifted on one day: it gives all its weeks or none.
        """
        gives = np.zeros(len(self.weeks))
        for week, day in candidate.days.items():
            waits = not candidate.flow and self._waits_for_garden_day(week, day)
            if week in self._place and day <= last and not waits:
                gives[self._place[week]] = candidate.flow.get(week, 1.0)
        return gives


def _later_days(years: list[Candidate], last: date, *, stored: bool) -> list[date]:
    """Days after the last by the likely dates until which the ground may be kept for late years.

    One in each week; what is stored is lifted on its first.
    """
    days: dict[Week, date] = {}
    for one in years:
        ends = sorted(one.days.values())
        for day in ends[:1] if stored else ends:
            if day > last:
                days[week_of(day)] = max(day, days.get(week_of(day), day))
    return sorted(days.values())[:_MOST_LATER]


def _taken(
    rows: list[OfferRow], candidates: list[Candidate], taken: Collection[Was]
) -> Iterator[OfferRow]:
    """For each offer once taken the row that begins as it did and leaves no earlier."""
    for was in taken:
        alike = [
            row
            for row in rows
            if candidates[row.start].course.start_on == was.start_on
            and row.enters == was.enters_on.toordinal()
            and row.leaves >= was.leaves_on.toordinal()
        ]
        if alike:
            yield min(alike, key=lambda row: row.leaves)
