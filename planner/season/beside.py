"""Beside each other: a season and the rule of thumb, promised and tried in the same years."""

from dataclasses import dataclass
from datetime import date

from planner.climate import Climate
from planner.garden import Garden
from planner.scheduling import Room, Sowing, Thumb, rule_of_thumb, supply_of
from planner.trial import Trial, trial_of, tried_years


@dataclass(frozen=True, slots=True)
class Beside:
    """A season's fill as promised and its trial, and the same of the rule of thumb.

    The rule of thumb is that of a grower who knows what the season allows, on the same beds.
    """

    garden: Garden
    as_of: date
    promised: float
    trial: Trial
    thumb_promised: float
    thumb_trial: Trial


def beside_thumb(garden: Garden, as_of: date, sowings: tuple[Sowing, ...]) -> Beside:
    """A season's sowings, known up to `as_of`, tried beside the rule of thumb from that day on."""
    climate = Climate(garden.site)
    tried = tried_years(garden, climate)
    thumb = rule_of_thumb(garden, climate, as_of, Thumb.KNOWS_SEASON, Room.LIMITED)
    return Beside(
        garden=garden,
        as_of=as_of,
        promised=promised_fill(garden, sowings),
        trial=trial_of(sowings, tried, as_of),
        thumb_promised=thumb.fill,
        thumb_trial=trial_of(thumb.grown, tried, as_of),
    )


def promised_fill(garden: Garden, sowings: tuple[Sowing, ...]) -> float:
    """The fill of sowings as they are planned, each crop by its priority."""
    wants = garden.wants()
    fill = 0.0
    for name, weeks in garden.weights().items():
        mine = [one for one in sowings if one.crop.name == name]
        expected = supply_of(mine, wants[name]).expected
        fill += sum(
            share * min(1.0, expected[week] / wants[name][week]) for week, share in weeks.items()
        )
    return fill
