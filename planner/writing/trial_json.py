"""A trial as plain values that JSON can hold."""

from typing import Any

from planner.season import Beside
from planner.terms import Week
from planner.trial import CropTrial, TooFewPicks, Trial
from planner.writing.recorded import recorded


def trial_record(beside: Beside) -> dict[str, Any]:
    """The trial beside the rule of thumb's; amounts are in each crop's unit."""
    return {
        "as_of": beside.as_of.isoformat(),
        "basis": beside.trial.basis.value,
        "years": beside.trial.years,
        "season": {"promised_fill": recorded(beside.promised), **_measures(beside.trial)},
        "rule_of_thumb": {
            "promised_fill": recorded(beside.thumb_promised),
            **_measures(beside.thumb_trial),
        },
        "revised_each_fortnight": [
            {"kept": recorded(kept), "revised": recorded(revised)}
            for kept, revised in zip(beside.revised.kept, beside.revised.revised, strict=True)
        ],
        "crops": [_crop_record(one) for one in beside.trial.crops],
        "weakest": [
            {
                "crop": one.crop,
                "week": str(one.week),
                "share_of_years": recorded(one.share),
                "failing": one.failing.value,
                "remedy": one.remedy,
            }
            for one in beside.trial.weakest
        ],
    }


def _measures(trial: Trial) -> dict[str, Any]:
    spread = trial.interval_spread_days
    return {
        "fill": recorded(trial.fill),
        "fill_by_year": [recorded(one) for one in trial.fills],
        "weeks_met": recorded(trial.weeks_met),
        "weeks_with_nothing": recorded(trial.weeks_with_nothing),
        "interval_spread_days": None if isinstance(spread, TooFewPicks) else recorded(spread),
    }


def _crop_record(one: CropTrial) -> dict[str, Any]:
    return {
        "crop": one.crop.name,
        "unit": one.crop.unit.name,
        "fill": recorded(one.fill),
        "weeks_met": recorded(one.weeks_met),
        "weeks_with_nothing": recorded(one.weeks_with_nothing),
        "weeks": [_week_record(one, week) for week in one.weeks],
    }


def _week_record(one: CropTrial, week: Week) -> dict[str, Any]:
    return {
        "week": str(week),
        "wanted": recorded(one.wants.get(week, 0.0)),
        "poor": recorded(one.poor[week]),
        "usual": recorded(one.usual[week]),
        "good": recorded(one.good[week]),
        "by_year": [recorded(year.get(week, 0.0)) for year in one.years],
    }
