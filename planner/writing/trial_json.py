"""A trial as plain values that JSON can hold."""

from typing import Any

from planner.season import Beside
from planner.terms import Week
from planner.trial import CropTrial, TooFewPicks, Trial

_PLACES = 4


def trial_record(beside: Beside) -> dict[str, Any]:
    """The trial beside the rule of thumb's; amounts are in each crop's unit."""
    return {
        "as_of": beside.as_of.isoformat(),
        "basis": beside.trial.basis.value,
        "years": beside.trial.years,
        "season": {"promised_fill": _round(beside.promised), **_measures(beside.trial)},
        "rule_of_thumb": {
            "promised_fill": _round(beside.thumb_promised),
            **_measures(beside.thumb_trial),
        },
        "revised_each_fortnight": [
            {"kept": _round(kept), "revised": _round(revised)}
            for kept, revised in zip(beside.revised.kept, beside.revised.revised, strict=True)
        ],
        "crops": [_crop_record(one) for one in beside.trial.crops],
        "weakest": [
            {
                "crop": one.crop,
                "week": str(one.week),
                "share_of_years": _round(one.share),
                "failing": one.failing.value,
                "remedy": one.remedy,
            }
            for one in beside.trial.weakest
        ],
    }


def _round(value: float) -> float:
    return round(value, _PLACES)


def _measures(trial: Trial) -> dict[str, Any]:
    spread = trial.interval_spread_days
    return {
        "fill": _round(trial.fill),
        "fill_by_year": [_round(one) for one in trial.fills],
        "weeks_met": _round(trial.weeks_met),
        "weeks_with_nothing": _round(trial.weeks_with_nothing),
        "interval_spread_days": None if isinstance(spread, TooFewPicks) else _round(spread),
    }


def _crop_record(one: CropTrial) -> dict[str, Any]:
    return {
        "crop": one.crop.name,
        "unit": one.crop.unit.name,
        "fill": _round(one.fill),
        "weeks_met": _round(one.weeks_met),
        "weeks_with_nothing": _round(one.weeks_with_nothing),
        "weeks": [_week_record(one, week) for week in one.weeks],
    }


def _week_record(one: CropTrial, week: Week) -> dict[str, Any]:
    return {
        "week": str(week),
        "wanted": _round(one.wants.get(week, 0.0)),
        "poor": _round(one.poor[week]),
        "usual": _round(one.usual[week]),
        "good": _round(one.good[week]),
        "by_year": [_round(year.get(week, 0.0)) for year in one.years],
    }
