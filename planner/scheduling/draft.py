"""A crop's part of the schedule while it is being made: wants, supply, candidates."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import date

from planner.garden import Crop, Once, Store
from planner.scheduling.candidate import Candidate, CropTimes
from planner.scheduling.unmet import Reason
from planner.terms import Week

ENOUGH = 1e-6
# Growers count in whole plants; a week counts as served when it lacks less than this share.
_NEARLY_FULL = 0.99
# Ways to serve one week that are tried before its ground is called full.
_MOST_TRIED = 24


@dataclass(frozen=True, slots=True)
class Step:
    """The next sowing to place: candidates in order of preference for a week."""

    crop: Crop
    week: Week
    ranked: list[Candidate]


@dataclass(slots=True)
class CropDraft:
    """One crop's wants by week, what already serves them, and the weeks given up."""

    crop: Crop
    wants: dict[Week, float]
    about: CropTimes
    candidates: list[Candidate]
    supply: dict[Week, float]
    closed: dict[Week, Reason] = field(default_factory=dict)
    _by_week: dict[Week, list[Candidate]] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Index the candidates by the weeks they serve."""
        for candidate in self.candidates:
            for week in candidate.days:
                self._by_week.setdefault(week, []).append(candidate)

    def lacks(self, week: Week) -> float:
        """What a week still lacks."""
        return max(0.0, self.wants.get(week, 0.0) - self.supply.get(week, 0.0))

    def open_weeks(self) -> Iterable[Week]:
        """Weeks that still lack something and are not given up, in order."""
        return (w for w in self.wants if w not in self.closed and self.lacks(w) > ENOUGH)

    def serving(self, week: Week) -> list[Candidate]:
        """Every candidate that could serve a week."""
        return self._by_week.get(week, [])

    def step(self, week: Week) -> Step | None:
        """The candidates for a week, best first; None when there is none."""
        serving = self.serving(week)
        if not serving:
            return None
        garden_days = self.about.workdays.in_week(week)
        on_garden_days = [one for one in serving if one.days[week] in garden_days]
        ranked = sorted(
            on_garden_days or serving, key=lambda one: self._rank(one, week, garden_days)
        )
        return Step(self.crop, week, ranked[:_MOST_TRIED])

    def _rank(
        self, candidate: Candidate, week: Week, garden_days: list[date]
    ) -> tuple[bool, int, int]:
        """Best first: ripe by the first garden day (or in full flow); direct; latest.

        The latest start takes ground for the shortest time and gives the freshest harvest.
        """
        by = garden_days[0] if garden_days else week.sunday
        if candidate.flow:
            full = max(candidate.flow.values())
            short = candidate.flow.get(week, 0.0) < _NEARLY_FULL * full
        else:
            short = candidate.course.ripe.likely > by
        late = -candidate.course.start_on.toordinal()
        return short, int(not candidate.is_direct), late

    def weeks_served(self, candidate: Candidate, week: Week) -> list[Week]:
        """The weeks one sowing is made to serve, beginning with `week` (rules §13).

        A crop that stands or keeps for so many whole weeks serves that many from one sowing,
        the later ones on garden days only.
        """
        match self.crop.habit:
            case Once(hold_days=hold):
                most = max(1, int(hold.middle) // 7)
            case Store(store_days=store):
                most = max(1, int(store.middle) // 7)
            case _:
                most = 1
        wish = self.about.workdays.wish
        later = [one for one in self.wants if week <= one and one in candidate.days]
        near = [
            one
            for one in later
            if (one.monday - week.monday).days < 7 * most
            and (one == week or wish.is_garden_day(candidate.days[one]))
        ]
        return [one for one in near if self.lacks(one) > ENOUGH and one not in self.closed]
