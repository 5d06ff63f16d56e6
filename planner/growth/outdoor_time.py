"""When a crop may stand outdoors, by its hardiness and this site's freezes (rules §7, §8)."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date, timedelta

from planner.climate import Climate, FreezeYearOdds
from planner.garden import Crop, FrostTolerance
from planner.terms import days_between

# A site where any night may freeze has no freeze dates to count from. There hardy crops go
# out in the half-year of long days; common practice, no source.
_LONG_DAY_H = 12.0
# Where frost sets no limit, a time ends so long after the season: later than any harvest counts.
_ENDLESS = timedelta(days=400)
# Crops that overwinter are still planted for some weeks after the first freeze, until the
# ground is frozen; from memory.
_WINTER_STARTS_DAYS = 28


@dataclass(frozen=True, slots=True)
class OutdoorTime:
    """A stretch of time: starts fall from `opens` to `last_start`, life ends by `ends`."""

    opens: date
    last_start: date
    ends: date
    why_opens: str
    why_ends: str


def outdoor_times(
    crop: Crop,
    climate: Climate,
    freeze_risk: float,
    days: tuple[date, date],
    cover_weeks: float = 0,
) -> tuple[OutdoorTime, ...]:
    """Every outdoor time of a crop that touches the days from first to last.

    Under a cover crops that frost kills go out `cover_weeks` earlier (rules §26).
    """
    first, last = days
    if climate.never_freezes:
        why = "frost sets no limit here"
        return (OutdoorTime(first, last, last + _ENDLESS, why, why),)
    if climate.freezes_all_year:
        return _between_long_days(crop, climate, days)
    years = climate.freeze_years(first, last)
    times = _joined([_covered(_time(crop, year, freeze_risk), crop, cover_weeks) for year in years])
    return tuple(time for time in times if time.ends >= first and time.opens <= last)


def _covered(time: OutdoorTime, crop: Crop, cover_weeks: float) -> OutdoorTime:
    if not cover_weeks or not crop.frost.hardiness.killed_by_frost:
        return time
    why = f"{time.why_opens}, and a cover lets it out {_weeks_words(cover_weeks)} earlier (§26)"
    return replace(time, opens=time.opens - timedelta(weeks=cover_weeks), why_opens=why)


def _joined(times: list[OutdoorTime]) -> list[OutdoorTime]:
    """Where one time opens before the one before it ends, life goes on into it."""
    for index in range(len(times) - 2, -1, -1):
        following = times[index + 1]
        if following.opens <= times[index].ends < following.ends:
            times[index] = replace(times[index], ends=following.ends, why_ends=following.why_ends)
    return times


def _time(crop: Crop, year: FreezeYearOdds, freeze_risk: float) -> OutdoorTime:
    if crop.frost.hardiness.killed_by_frost:
        return _tender_time(crop, year, freeze_risk)
    weeks = crop.frost.weeks_from_last_freeze.high
    opens = year.spring_half + timedelta(weeks=weeks)
    days = crop.frost.days_after_first_freeze.middle
    ends = year.fall_half + timedelta(days=days)
    last_start = year.fall_half
    why_ends = f"it stands about {days:g} days beyond the average first freeze ({year.fall_half})"
    if crop.frost.tolerance is FrostTolerance.OVERWINTERS:
        why_ends = "it stands through the winter"
        last_start += timedelta(days=_WINTER_STARTS_DAYS)
    before = f"{_weeks_words(-weeks)} before {_spring(year)}"
    return OutdoorTime(
        opens=opens,
        last_start=last_start,
        ends=ends,
        why_opens=f"{crop.frost.hardiness} crops go out {before}",
        why_ends=why_ends,
    )


def _weeks_words(weeks: float) -> str:
    """Weeks like "1 week" or "2.5 weeks"."""
    return f"{weeks:g} week" if weeks == 1 else f"{weeks:g} weeks"


def _spring(year: FreezeYearOdds) -> str:
    if year.has_spring_half:
        return f"the average last freeze ({year.spring_half})"
    return f"midwinter ({year.spring_half}), as less than half of all springs freeze"


def _tender_time(crop: Crop, year: FreezeYearOdds, freeze_risk: float) -> OutdoorTime:
    weeks = crop.frost.weeks_from_last_freeze.high
    by_risk = year.spring_at_risk(freeze_risk)
    by_class = year.spring_half + timedelta(weeks=weeks) if year.has_spring_half else by_risk
    ends = year.fall_at_risk(freeze_risk)
    share = f"{freeze_risk * 100:g}% of years"
    why_opens = f"after {by_risk} at most {share} still freeze"
    if by_class > by_risk:
        until = f"{_weeks_words(weeks)} after" if weeks else "for"
        why_opens = f"{crop.frost.hardiness} crops wait {until} {_spring(year)}"
    return OutdoorTime(
        opens=max(by_risk, by_class),
        last_start=ends,
        ends=ends,
        why_opens=why_opens,
        why_ends=f"before {ends} at most {share} have frozen",
    )


def _between_long_days(
    crop: Crop, climate: Climate, days: tuple[date, date]
) -> tuple[OutdoorTime, ...]:
    if crop.frost.hardiness.killed_by_frost:
        return ()
    year = timedelta(days=366)
    why = "any night may freeze here, so hardy crops keep to the days of 12 hours and more"
    stretches = _long_stretches(climate, days[0] - year, days[1] + year)
    return tuple(
        OutdoorTime(opens, ends, ends, why, why)
        for opens, ends in stretches
        if ends >= days[0] and opens <= days[1]
    )


def _long_stretches(climate: Climate, first: date, last: date) -> Iterator[tuple[date, date]]:
    """Stretches of long days, each with the day after it; one still open ends on `last`."""
    opens = None
    for day in days_between(first, last):
        long = climate.day_length_h(day) >= _LONG_DAY_H
        if long and opens is None:
            opens = day
        elif not long and opens is not None:
            yield opens, day
            opens = None
    if opens is not None:
        yield opens, last
