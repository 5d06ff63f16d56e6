"""The trial: a season kept as it was planned, in every past year."""

import math
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from statistics import fmean

from planner.garden import Crop
from planner.scheduling import Sowing
from planner.terms import Week
from planner.trial.crop_trial import CropTrial
from planner.trial.eaten import harvest_by_week
from planner.trial.replay import Replay, Replayer
from planner.trial.stay import stays_of
from planner.trial.tried_year import Basis, TriedYears
from planner.trial.weak_week import WeakWeek, Weights, weakest_weeks


@dataclass(frozen=True, slots=True)
class TooFewPicks:
    """No crop has three sowings that gave anything: there are no two intervals to compare."""


@dataclass(frozen=True)
class Trial:
    """What the season's sowings would have given in each year, and where they are weakest.

    Shares are of what is wanted: `fills` in each year, each crop by its priority.
    """

    basis: Basis
    crops: tuple[CropTrial, ...]
    fills: tuple[float, ...]
    weakest: tuple[WeakWeek, ...]

    @property
    def years(self) -> int:
        """In how many years it was tried."""
        return len(self.fills)

    @property
    def fill(self) -> float:
        """The simulated fill: the mean over years."""
        return fmean(self.fills)

    @property
    def weeks_met(self) -> float:
        """The share of wanted weeks met in full, mean over crops."""
        return fmean(one.weeks_met for one in self.crops)

    @property
    def weeks_with_nothing(self) -> float:
        """Wanted weeks of all crops that have nothing, in an average year."""
        return math.fsum(one.weeks_with_nothing for one in self.crops)

    @cached_property
    def interval_spread_days(self) -> float | TooFewPicks:
        """How unevenly successive sowings of a crop come in, mean over years, then crops."""
        by_crop = [fmean(spreads) for one in self.crops if (spreads := one.interval_spreads)]
        return fmean(by_crop) if by_crop else TooFewPicks()


def trial_of(sowings: tuple[Sowing, ...], tried: TriedYears, as_of: date) -> Trial:
    """The trial of a season's sowings, of which those begun are known up to `as_of`."""
    garden = tried.garden
    replays = _replays(sowings, tried, as_of)
    wants, weights = garden.wants(), garden.weights()
    by_year = [[one[year] for one in replays] for year in range(tried.count)]
    crops = tuple(_crop_trial(crop, wants[name], by_year) for name, crop in garden.crops.items())
    fills = tuple(_fill(crops, weights, year) for year in range(tried.count))
    return Trial(tried.basis, crops, fills, weakest_weeks(crops, weights, replays))


def _replays(sowings: tuple[Sowing, ...], tried: TriedYears, as_of: date) -> list[list[Replay]]:
    """Every sowing's replays, one for each year."""
    stays = stays_of(tried.garden, sowings)
    return [
        Replayer(one, tried.crops[one.crop.name], stays[one.id], as_of).replays(tried.count)
        for one in sowings
        if one.crop.name in tried.crops
    ]


def _crop_trial(crop: Crop, wants: dict[Week, float], by_year: list[list[Replay]]) -> CropTrial:
    mine = [[one for one in year if one.sowing.crop.name == crop.name] for year in by_year]
    had = tuple(harvest_by_week(year, wants) for year in mine)
    picks = tuple(tuple(sorted(day for one in year for day in one.first_picks)) for year in mine)
    return CropTrial(crop, wants, had, picks)


def _fill(crops: tuple[CropTrial, ...], weights: Weights, year: int) -> float:
    return math.fsum(
        share * one.met(year, week)
        for one in crops
        for week, share in weights[one.crop.name].items()
    )
