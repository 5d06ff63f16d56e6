"""Tried supply: low and high of each week from past years, where there are any on record."""

from dataclasses import replace
from datetime import date

from planner.climate import Climate
from planner.garden import DailyWeather, Garden
from planner.scheduling import Sowing, Supply
from planner.season.crop_outlook import CropOutlook
from planner.trial import Basis, CropTrial, trial_of, tried_years


def tried_outlooks(
    garden: Garden,
    climate: Climate,
    sowings: tuple[Sowing, ...],
    as_of: date,
    outlooks: tuple[CropOutlook, ...],
) -> tuple[tuple[CropOutlook, ...], tuple[float, ...]]:
    """The outlooks with the harvest of one and of nine past years in ten as low and high.

    With them what each year would have given of all that is wanted, as a share. Without a daily
    record the outlooks stay as they are, and there is no year. What the plan expects stays too;
    where it lies outside these years it is itself the low or the high.
    """
    if not isinstance(garden.site.weather, DailyWeather):
        return outlooks, ()
    tried = tried_years(garden, climate)
    if tried.basis is not Basis.PAST_YEARS:
        return outlooks, ()
    trial = trial_of(sowings, tried, as_of)
    with_years = tuple(
        replace(one, supply=_tried(one.supply, crop))
        for one, crop in zip(outlooks, trial.crops, strict=True)
    )
    return with_years, trial.fills


def _tried(supply: Supply, crop: CropTrial) -> Supply:
    expected = supply.expected
    return Supply(
        expected=expected,
        low={week: min(crop.poor.get(week, 0.0), amount) for week, amount in expected.items()},
        high={week: max(crop.good.get(week, 0.0), amount) for week, amount in expected.items()},
    )
