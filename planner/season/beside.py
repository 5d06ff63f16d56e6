"""Beside each other: a season and the rule of thumb, promised and tried in the same years."""

from dataclasses import dataclass
from datetime import date

from planner.climate import Climate
from planner.garden import Garden
from planner.scheduling import Room, Thumb, rule_of_thumb
from planner.season.crop_outlook import outlooks_of
from planner.season.measures import fill_of
from planner.season.revised import Begins, Revised, revised_trial
from planner.season.season import EarlierSeason
from planner.trial import Trial, trial_of, tried_years


@dataclass(frozen=True, slots=True)
class Beside:
    """A season's fill as promised and its trial, and the same of the rule of thumb.

    The rule of thumb is that of a grower who knows what the season allows, on the same beds.
    `revised` has a few of the years with a revision each fortnight, where they were asked for.
    """

    garden: Garden
    as_of: date
    promised: float
    trial: Trial
    thumb_promised: float
    thumb_trial: Trial
    revised: Revised


def beside_thumb(
    garden: Garden,
    season: EarlierSeason,
    as_of: date,
    revised_years: int = 0,
    begins: Begins = lambda _: None,
) -> Beside:
    """A season's sowings, as known on a day, tried beside the rule of thumb from that day on.

    In so many of the years it is revised each fortnight too; `begins` is told the number of each.
    """
    climate, sowings = Climate(garden.site), season.sowings
    tried = tried_years(garden, climate)
    thumb = rule_of_thumb(garden, climate, as_of, Thumb.KNOWS_SEASON, Room.LIMITED)
    trial = trial_of(sowings, tried, as_of)
    return Beside(
        garden=garden,
        as_of=as_of,
        promised=fill_of(garden, outlooks_of(garden, sowings)),
        trial=trial,
        thumb_promised=thumb.fill,
        thumb_trial=trial_of(thumb.grown, tried, as_of),
        revised=revised_trial(season, as_of, tried, trial.fills, revised_years, begins),
    )
