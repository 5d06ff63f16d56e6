"""Gardens made up by chance, the same for the same seed: so many beds, so many crops, so much load.

Sites, names and beds are invented. A crop is wanted in weeks that some sowing can feed, so what
stays unmet is for want of ground, hardly ever for want of time.
"""

import math
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import accumulate
from random import Random

from planner.almanac import crop_pages
from planner.climate import Climate
from planner.garden import Garden
from planner.reading import PlanFile, PlanFiles, read_garden
from planner.scheduling.starts.candidate import Candidate
from planner.scheduling.starts.crop_starts import crop_candidates
from planner.scheduling.starts.crop_years import CropCandidates
from planner.terms import Week, days_between

FIRST, LAST = date(2027, 3, 1), date(2027, 11, 30)
_SIZES = (
    'length = "8 ft"\nwidth = "4 ft"',
    'length = "8 ft"\nwidth = "4 ft"',
    'length = "8 ft"\nwidth = "4 ft"',
    'length = "10 ft"\nwidth = "4 ft"',
    'length = "6 ft"\nwidth = "3 ft"',
    'length = "6 ft"\nwidth = "3 ft"',
    'length = "12 ft"\nwidth = "2 ft"',
    'diameter = "4 ft"',
)
_DEPTHS_IN = (8, 10, 12, 12, 15, 15, 18)
_SUN = ("full", "full", "full", "full", "part")
_GARDEN_DAYS = ('"Wed", "Sat"', '"Tue", "Sat"', '"Mon", "Fri"', '"Thu", "Sun"')
_GOOD_BED = 'length = "8 ft"\nwidth = "4 ft"\nsoil_depth = "15 in"\nsun = "full"'
_FEWEST_WEEKS = 4
_BUSIEST = timedelta(weeks=13)
_WARMEST = date(2027, 7, 20)
_DAILY_SWING_DEGC = 5.5
# The mean of the day at the half-of-years freezes: the average low is then about 5 degC.
_FREEZES_BELOW_DEGC = 10.5


@dataclass(frozen=True, slots=True)
class RecordedPlace:
    """A place with a daily record: its latitude and the weather.csv it lies at."""

    latitude: float
    weather: PlanFile


def synthetic_garden(
    beds: int, crops: int, load: float, seed: int, place: RecordedPlace | None = None
) -> str:
    """The garden.toml of a made-up garden, at a made-up site or at a place with a record.

    `load` is the ground needed over the ground of all beds, on the mean of the thirteen weeks in
    which most is needed (`load_of`). Needed is, for every crop and wanted week, the amount wanted
    times the ground of a plant over what a plant gives, from the day it enters to the day it is
    harvested; of all starts that serve the week the one that needs least of ground times days. A
    plant picked or cut again is counted with its whole life and all it gives. Each crop asks for
    an equal share of ground times days, times a factor from 0.5 to 1.5. Whether a bed is deep and
    light enough for a crop is not counted, nor whole plants, nor that what is sown together
    stands together, so even a load below 1 may not be met in full: 0.5 is slack, 0.75 is tight,
    and 1.1 far over.
    """
    chance = Random(f"{beds} {crops} {seed}")  # noqa: S311 - chance that comes back, no secret
    ground = _ground(chance, beds, place)
    wishes = _wishes(chance, ground, crops, place)
    asked = [_ground_by_day(one.found, dict.fromkeys(one.weeks, 1.0)) for one in wishes]
    amounts = [chance.uniform(0.5, 1.5) / sum(by_day.values()) for by_day in asked]
    together: dict[date, float] = defaultdict(float)
    for amount, by_day in zip(amounts, asked, strict=True):
        for day, m2 in by_day.items():
            together[day] += amount * m2
    area_m2 = sum(bed.area_m2 for bed in garden_of(ground + _everything(), place).beds)
    times = load * area_m2 / _mean_of_busiest_weeks(together)
    return ground + _targets(wishes, [times * amount for amount in amounts])


def garden_of(text: str, place: RecordedPlace | None = None) -> Garden:
    """The garden of a plan in which nothing is wrong."""
    plan = PlanFile("garden.toml", text.encode())
    files = PlanFiles(plan, None, lambda _: place.weather) if place else PlanFiles(plan)
    read = read_garden(files)
    if not isinstance(read, Garden):
        raise TypeError("\n".join(map(str, read)))
    return read


def load_of(garden: Garden) -> float:
    """The load of any garden, as `synthetic_garden` defines it; weeks out of reach ask nothing."""
    found = crop_candidates(garden, Climate(garden.site), garden.wish.first)
    wants = garden.wants()
    together: dict[date, float] = defaultdict(float)
    for one in found:
        for day, m2 in _ground_by_day(one, wants[one.about.crop.name]).items():
            together[day] += m2
    return _mean_of_busiest_weeks(together) / sum(bed.area_m2 for bed in garden.beds)


@dataclass(frozen=True, slots=True)
class _Wish:
    """A crop and the weeks it is wanted in."""

    found: CropCandidates
    weeks: list[Week]


def _ground(chance: Random, beds: int, place: RecordedPlace | None) -> str:
    """Site, season and beds; the first bed is deep and light enough for any crop but a few."""
    lines = [_GOOD_BED, *(_bed(chance) for _ in range(beds - 1))]
    named = [f'[[bed]]\nname = "Bed {number}"\n{bed}' for number, bed in enumerate(lines, 1)]
    site = _recorded_site(place) if place else _site(chance)
    return "\n\n".join(["plan = 1", site, _season(chance), *named, ""])


def _bed(chance: Random) -> str:
    depth, sun = chance.choice(_DEPTHS_IN), chance.choice(_SUN)
    return f'{chance.choice(_SIZES)}\nsoil_depth = "{depth} in"\nsun = "{sun}"'


def _season(chance: Random) -> str:
    days = chance.choice(_GARDEN_DAYS)
    return f"[season]\nfrom = {FIRST}\nto = {LAST}\ngarden_days = [{days}]"


def _recorded_site(place: RecordedPlace) -> str:
    return f'[site]\nlatitude = {place.latitude}\nweather = "{place.weather.name}"'


def _site(chance: Random) -> str:
    """A site of the middle latitudes: warmest in the second half of July."""
    latitude = chance.uniform(37, 46)
    mean = 13.5 - 0.3 * (latitude - 37) + chance.uniform(-0.8, 0.8)
    swing = chance.uniform(10.5, 12.5)

    def degc(day: date) -> float:
        return mean + swing * math.cos(math.tau * (day - _WARMEST).days / 365)

    year = [date(2027, 1, 1) + timedelta(days=number) for number in range(365)]
    warm = [day for day in year if degc(day) >= _FREEZES_BELOW_DEGC]
    months = [degc(date(2027, month, 15)) for month in range(1, 13)]
    lines = [
        "[site]",
        'name = "Made-up garden"',
        f"latitude = {latitude:.1f}",
        f'last_spring_freeze = "{warm[0]:%m-%d}"',
        f'first_fall_freeze = "{warm[-1]:%m-%d}"',
    ]
    for key, apart in (("mean_high", _DAILY_SWING_DEGC), ("mean_low", -_DAILY_SWING_DEGC)):
        written = ", ".join(f'"{month + apart:.1f} degC"' for month in months)
        lines.append(f"{key} = [{written}]")
    return "\n".join(lines)


def _wishes(chance: Random, ground: str, crops: int, place: RecordedPlace | None) -> list[_Wish]:
    """Crops that fit a bed and can be had for some weeks on end, each wanted in a part of them."""
    probe = garden_of(ground + _everything(), place)
    found = crop_candidates(probe, Climate(probe.site), FIRST)
    chance.shuffle(found)
    wishes: list[_Wish] = []
    for one in found:
        weeks = _longest_run(week for each in one.candidates for week in each.days)
        if len(weeks) < _FEWEST_WEEKS or not any(map(one.about.crop.fits, probe.beds)):
            continue
        count = math.ceil(chance.uniform(0.4, 1.0) * len(weeks))
        begin = chance.randint(0, len(weeks) - count)
        wishes.append(_Wish(one, weeks[begin : begin + count]))
        if len(wishes) == crops:
            return wishes
    message = f"only {len(wishes)} crops can be had from these beds"
    raise ValueError(message)


def _longest_run(weeks: Iterable[Week]) -> list[Week]:
    longest: list[Week] = []
    run: list[Week] = []
    for week in sorted(set(weeks)):
        run = [*run, week] if run and run[-1].after(1) == week else [week]
        longest = max(longest, run, key=len)
    return longest


def _everything() -> str:
    """A target for every crop of the almanac, all through the season."""
    return "\n".join(
        _target(page.name, f"1 {page.used['yield'].unit}", FIRST, LAST)
        for page in crop_pages().values()
    )


def _targets(wishes: list[_Wish], amounts: list[float]) -> str:
    return "\n".join(
        _target(
            wish.found.about.crop.name,
            f"{float(f'{amount:.3g}'):g} {wish.found.about.crop.unit.name}",
            wish.weeks[0].monday,
            wish.weeks[-1].sunday,
        )
        for wish, amount in zip(wishes, amounts, strict=True)
    )


def _target(crop: str, amount: str, first: date, last: date) -> str:
    lines = [f'crop = "{crop}"', f'each_week = "{amount}"', f"from = {first}", f"to = {last}"]
    return "\n".join(["[[target]]", *lines, ""])


def _ground_by_day(found: CropCandidates, wants: dict[Week, float]) -> dict[date, float]:
    """Square metres held on each day by the sowings that need least for each week's want."""
    by_day: dict[date, float] = defaultdict(float)
    for week, amount in wants.items():
        serving = [one for one in found.candidates if week in one.days]
        if not serving:
            continue
        best = min(serving, key=lambda one: len(_days_held(one, week)) * _m2_per_unit(found, one))
        for day in _days_held(best, week):
            by_day[day] += amount * _m2_per_unit(found, best)
    return by_day


def _m2_per_unit(found: CropCandidates, candidate: Candidate) -> float:
    """The ground of a plant over all it gives."""
    crop = found.about.crop
    gives = sum(candidate.flow.values()) or crop.gives.middle
    return (crop.ground.spacing_um / 1e6) ** 2 / gives


def _days_held(candidate: Candidate, week: Week) -> list[date]:
    """The days in the ground of a sowing that serves a week and no later one."""
    last = max(candidate.days.values()) if candidate.flow else candidate.days[week]
    enters_on = candidate.course.enters_on
    return list(days_between(enters_on, max(enters_on, last - timedelta(days=1))))


def _mean_of_busiest_weeks(m2_by_day: dict[date, float]) -> float:
    """The highest mean of thirteen weeks on end."""
    days = list(days_between(min(m2_by_day), max(m2_by_day) + _BUSIEST))
    sums = [0.0, *accumulate(m2_by_day.get(day, 0.0) for day in days)]
    width = _BUSIEST.days
    return max(late - early for early, late in zip(sums, sums[width:], strict=False)) / width
