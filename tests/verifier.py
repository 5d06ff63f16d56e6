"""An independent verifier of seasons: it shares no code with the engine it checks.

It reads garden.toml and crops.toml with tomllib, season.json with json, harvest.csv and the
almanac's tables with csv, and parses quantities itself. Every rule is one function that gives
a sentence for each place where the season breaks it.
"""

import csv
import io
import json
import math
import re
import tomllib
from collections import Counter, defaultdict
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache
from itertools import combinations, pairwise, product
from pathlib import Path
from statistics import NormalDist, fmean
from typing import Any

Record = dict[str, Any]
Span = tuple[float, float]

_DATA = Path(__file__).resolve().parent.parent / "planner" / "almanac" / "data"
_METRES = {"in": 0.0254, "ft": 0.3048, "cm": 0.01, "m": 1.0, "mm": 0.001}
_KILOGRAMS = {"oz": 0.45359237 / 16, "lb": 0.45359237, "g": 0.001, "kg": 1.0}
_PIECES = {"each", "roots", "heads"}
_PLURALS = {"head": "heads", "root": "roots", "bunch": "bunches"}
_LIGHT = {"shade": 0, "part": 1, "full": 2}
_WEEKDAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
_ASSUMED_SPREAD_DAYS = 11.7
_QUANTITY = re.compile(r"\s*([\d.]+)\s*(?:(?:-|–|to)\s*([\d.]+))?\s*([A-Za-z]+)\s*")  # noqa: RUF001 - growers paste ranges with a long dash
_NAME = re.compile(r"(.+) ([1-9]\d*)")
_BEGINS = {"sow": "sow_on", "start indoors": "sow_on", "set out": "set_out_on"}
_HARVESTS = {"pick", "cut"}
_LONGEST_HARDENING_DAYS = 14
_TINY_M = 2e-6
# A sowing stands in few blocks, but one larger than any bed in as many more as it needs.
_MOST_BLOCKS = 4
# Depth of soil is told in round inches or centimetres: 30 cm stand for 12 in.
_ROUNDED_M = 0.01
# harvest.csv shows four decimals, and so does what season.json says is unmet.
_SHOWN = 0.0003


def broken_rules(folder: Path) -> list[str]:
    """Every rule the season in a plan folder breaks, as "rule: what breaks it"."""
    crops = folder / "crops.toml"
    return broken_rules_of(
        garden=(folder / "garden.toml").read_text(encoding="utf-8"),
        crops=crops.read_text(encoding="utf-8") if crops.exists() else "",
        record=json.loads((folder / "season" / "season.json").read_bytes()),
        harvest=(folder / "season" / "harvest.csv").read_text(encoding="utf-8"),
    )


def broken_rules_of(garden: str, crops: str, record: Record, harvest: str) -> list[str]:
    """The same for texts and a record at hand."""
    case = _Case(Plan(tomllib.loads(garden), Shelf(tomllib.loads(crops))), record, harvest)
    return [f"{name}: {words}" for name, rule in RULES.items() for words in rule(case)]


# What the grower wrote.


@dataclass(frozen=True, slots=True)
class BedFacts:
    """A bed in metres. A round bed's line is its rim, its width a quarter of its diameter."""

    line_m: float
    width_m: float
    is_round: bool
    soil_m: float
    light: int


@dataclass(frozen=True, slots=True)
class CropFacts:
    """What the almanac or the grower's own crops.toml states of a crop."""

    stated: Mapping[str, tuple[str, str, str]]

    def word(self, figure: str) -> str:
        """A figure that is a word."""
        return self.stated[figure][0]

    def middle(self, figure: str) -> float:
        """The middle of a range, in its own unit."""
        low, high, _ = self.stated[figure]
        return (float(low) + float(high or low)) / 2

    def unit(self, figure: str) -> str:
        """The unit a figure is stated in."""
        return self.stated[figure][2]

    @property
    def spacing_m(self) -> float:
        """Distance between plants, metres."""
        return self.middle("spacing") * _METRES[self.unit("spacing")]

    @property
    def soil_m(self) -> float:
        """Least depth of soil, metres."""
        return float(self.stated["soil_depth"][0]) * _METRES[self.unit("soil_depth")]

    @property
    def light(self) -> int:
        """The light it needs, by rank."""
        return _LIGHT[self.word("sun")]

    @property
    def dies_of_frost(self) -> bool:
        """Whether a freeze kills it."""
        return self.word("hardiness") in {"tender", "warm loving"}

    def most_of_a_plant(self, unit: str) -> float:
        """What one plant gives in its whole life, in a unit."""
        times = int(self.middle("cuts")) if self.word("habit") == "cut" else 1
        return self.middle("yield") * times * factor_between(self.unit("yield"), unit)

    def fits(self, bed: BedFacts) -> bool:
        """Whether a bed is deep, light and large enough for one plant."""
        area_m2 = bed.line_m * bed.width_m
        return (
            bed.soil_m >= self.soil_m - _ROUNDED_M - _TINY_M
            and bed.light >= self.light
            and area_m2 >= self.spacing_m**2
            and bed.line_m >= self.spacing_m
        )


def factor_between(written: str, counted: str) -> float:
    """What turns an amount in one unit of harvest into another."""
    if written == counted or {written, counted} <= _PIECES:
        return 1.0
    return _KILOGRAMS[written] / _KILOGRAMS[counted]


def quantity(text: str) -> tuple[str, str, str]:
    """Low, high and unit of a quantity such as "6-8 weeks" or "4 ft"."""
    match = _QUANTITY.fullmatch(text)
    assert match is not None, f"not a quantity: {text}"
    unit = _PLURALS.get(match[3], match[3])
    return match[1], match[2] or match[1], unit


def _metres(text: str) -> float:
    low, _, unit = quantity(text)
    return float(low) * _METRES[unit]


@cache
def almanac() -> dict[str, CropFacts]:
    """Every crop of the almanac, with the rows it is planned with."""
    stated: dict[str, dict[str, tuple[str, str, str]]] = defaultdict(dict)
    for row in _rows("crops.csv"):
        if row["used"] == "yes":
            stated[row["crop"]][row["figure"]] = (row["low"], row["high"], row["unit"])
    return {name: CropFacts(figures) for name, figures in stated.items()}


@cache
def _other_names() -> dict[str, str]:
    names: dict[str, str] = {}
    for row in _rows("crop_names.csv"):
        for name in (row["crop"], row["label"], *row["other_names"].split(";")):
            names.setdefault(_folded(name), row["crop"])
    return names


def _rows(table: str) -> list[dict[str, str]]:
    return list(csv.DictReader((_DATA / table).read_text(encoding="utf-8").splitlines()))


def _folded(name: str) -> str:
    return " ".join(name.casefold().replace("-", " ").replace("_", " ").split())


@dataclass(frozen=True, slots=True)
class Pattern:
    """How a pair shares ground; `closes_at` is the share of a host's days."""

    name: str
    closes_at: float
    ground_share: float
    yield_share: float
    relay_days: int

    def in_time(self, host: Record, guest: Record) -> bool:
        """Whether a guest's block keeps to the days this pattern leaves it under a host's."""
        came, left = _day(host["enter_on"]), _day(host["leave_on"])
        enters, leaves = _day(guest["enter_on"]), _day(guest["leave_on"])
        if self.name == "relay":
            return max(came, left - timedelta(days=self.relay_days)) <= enters < left < leaves
        if self.name == "beneath":
            return came <= enters and leaves <= left
        closes = came + timedelta(days=math.ceil(self.closes_at * (left - came).days))
        return came <= enters and leaves <= closes


@cache
def patterns() -> dict[tuple[str, str], tuple[Pattern, ...]]:
    """Every pattern in which a host and a guest of the almanac may share ground."""
    closes_at = {row["crop"]: float(row["closes_at_percent"]) / 100 for row in _rows("canopy.csv")}
    figures = {row["pattern"]: row for row in _rows("sharing_patterns.csv")}
    found: dict[tuple[str, str], list[Pattern]] = defaultdict(list)
    for row in _rows("sharing.csv"):
        figure = figures[row["pattern"]]
        found[row["host"], row["guest"]].append(
            Pattern(
                row["pattern"],
                closes_at[row["host"]],
                float(figure["ground_share"]),
                float(figure["yield_share"]),
                int(figure["relay_days"]),
            )
        )
    return {pair: tuple(listed) for pair, listed in found.items()}


class Shelf:
    """The crops of a plan: the grower's own before the almanac's."""

    def __init__(self, crops_toml: Mapping[str, Any]) -> None:
        self._own: dict[str, CropFacts] = {}
        self._models: dict[str, str] = {}
        for name, table in crops_toml.get("crop", {}).items():
            known = _other_names().get(_folded(name), _folded(name))
            beneath = _other_names().get(_folded(table.get("like", known)))
            stated = dict(almanac()[beneath].stated) if beneath else {}
            for figure, value in table.items():
                is_quantity = isinstance(value, str) and _QUANTITY.fullmatch(value)
                stated[figure] = quantity(value) if is_quantity else (str(value), "", "text")
            mine = _folded(name) if "like" in table else known
            self._own[mine] = CropFacts(stated)
            self._models[mine] = beneath or ""

    def name(self, written: str) -> str:
        """The one name of a crop written under any of its names."""
        folded = _folded(written)
        if folded in self._own:
            return folded
        for spelling in (folded, folded.removesuffix("s"), folded.removesuffix("es"), folded + "s"):
            if spelling in _other_names():
                return _other_names()[spelling]
        return folded

    def crop(self, name: str) -> CropFacts:
        """The facts of a crop under its one name."""
        return self._own.get(name) or almanac()[name]

    def patterns(self, host: str, guest: str) -> tuple[Pattern, ...]:
        """How a guest may share ground with a host; a crop of one's own as the one it is like."""
        models = (self._models.get(host, host), self._models.get(guest, guest))
        return patterns().get(models, ()) if host != guest else ()


@dataclass(frozen=True, slots=True)
class KeptFacts:
    """Ground that is not the planner's from one day until it is free on another."""

    bed: str
    what: str
    from_m: float
    to_m: float
    since: date
    until: date


class Plan:
    """A garden.toml, parsed once more and in another way."""

    def __init__(self, written: Mapping[str, Any], shelf: Shelf) -> None:
        season = written["season"]
        self.shelf = shelf
        self.first: date = season["from"]
        self.last: date = season["to"]
        self.turnover = timedelta(days=season.get("turnover_days", 0))
        self.risk: float = season.get("freeze_risk", 0.1)
        self.cover_days: float = 7 * season.get("cover_weeks", 0)
        days = season.get("garden_days", _WEEKDAYS)
        self.weekdays = {_WEEKDAYS.index(day.strip().casefold()[:3]) for day in days}
        self.away = [(time["from"], time["to"]) for time in season.get("away", ())]
        self.beds = {bed["name"].strip(): _bed(bed) for bed in written["bed"]}
        self.site: Mapping[str, Any] = written["site"]
        self.shares_ground: bool = season.get("share_ground", True)
        self.kept = [self._kept(one) for one in written.get("kept", ())]
        self._targets: list[Mapping[str, Any]] = written["target"]

    def _kept(self, kept: Mapping[str, Any]) -> KeptFacts:
        bed = next(
            name for name in self.beds if _folded_spaces(name) == _folded_spaces(kept["bed"])
        )
        return KeptFacts(
            bed,
            kept["what"],
            _metres(kept["from"]) if "from" in kept else 0.0,
            _metres(kept["to"]) if "to" in kept else self.beds[bed].line_m,
            kept.get("since", date.min),
            kept.get("until", date.max),
        )

    def is_away(self, day: date) -> bool:
        """Whether nobody is there."""
        return any(first <= day <= last for first, last in self.away)

    def is_garden_day(self, day: date) -> bool:
        """Whether garden work may fall on a day."""
        return day.weekday() in self.weekdays and not self.is_away(day)

    def wants(self, units: Mapping[str, str]) -> dict[tuple[str, str], float]:
        """What is wanted by crop and ISO week, in the unit each crop is counted in."""
        wants: dict[tuple[str, str], float] = defaultdict(float)
        for week, amount, _ in self._asked(units):
            wants[week] += amount
        return wants

    def weights(self, units: Mapping[str, str]) -> dict[tuple[str, str], float]:
        """The share of everything wanted that each crop and week is.

        A crop's share goes by the mean priority of what is wanted of it, a week's share of its
        crop by priority times amount.
        """
        wanted: dict[str, float] = defaultdict(float)
        pressing: dict[tuple[str, str], float] = defaultdict(float)
        for (crop, week), amount, priority in self._asked(units):
            wanted[crop] += amount
            pressing[crop, week] += amount * priority
        shares = {(crop, week): one / wanted[crop] for (crop, week), one in pressing.items()}
        everything = sum(shares.values())
        return {week: share / everything for week, share in shares.items()}

    def _asked(self, units: Mapping[str, str]) -> Iterator[tuple[tuple[str, str], float, float]]:
        """Crop and week, amount and priority of all that is asked for."""
        for target in self._targets:
            crop = self.shelf.name(target["crop"])
            facts = self.shelf.crop(crop)
            if "for_people" in target:
                amount, unit = facts.middle("portion"), facts.unit("portion")
                amount *= target["for_people"]
            else:
                low, _, unit = quantity(target.get("each_week") or target["once"])
                amount = float(low)
            for week in self._weeks(target):
                counted = amount * factor_between(unit, units.get(crop, unit))
                yield (crop, week), counted, float(target.get("priority", 1))

    def _weeks(self, target: Mapping[str, Any]) -> list[str]:
        """Weeks whose Thursday lies in the target; the week it begins in when none does.

        What is wanted once is wanted in the last week whose Thursday is not past its day.
        """
        if "once" in target:
            by: date = target["by"]
            return [iso_week(by - timedelta(days=(by.weekday() - 3) % 7))]
        first, last = target.get("from", self.first), target.get("to", self.last)
        days = (first + timedelta(days=n) for n in range((last - first).days + 1))
        return [iso_week(day) for day in days if day.weekday() == 3] or [iso_week(first)]

    def frost_free(self) -> list[Span] | None:
        """Stretches of days, as ordinals, without frost at the risk taken; None for always.

        A cover lets plants out earlier. Of freezes read off a weather file nothing is said.
        """
        freezes = self._freezes()
        if freezes is None:
            return None
        spring, fall = freezes
        z = NormalDist().inv_cdf(1 - self.risk)
        spans: list[Span] = []
        for year in range(self.first.year - 2, self.last.year + 3):
            last_freeze = _in_year(spring[0], year)
            # Fall's freeze is the one after the height of summer.
            summer = (8, 1) if self.site["latitude"] >= 0 else (2, 1)
            high_summer = _next(summer, last_freeze)
            first_freeze = _next(fall[0], high_summer)
            begin = last_freeze.toordinal() + z * spring[1] - self.cover_days
            end = first_freeze.toordinal() - z * fall[1]
            if end < begin:
                continue
            if spans and begin <= spans[-1][1]:
                begin = spans.pop()[0]
            spans.append((begin, end))
        return spans

    def _freezes(
        self,
    ) -> tuple[tuple[tuple[int, int], float], tuple[tuple[int, int], float]] | None:
        if "station" in self.site:
            row = next(one for one in _rows("stations.csv") if one["station"] == self._station)
            words = [
                (row["last_spring_half"], row["last_spring_nine_in_ten_later"]),
                (row["first_fall_half"], row["first_fall_nine_in_ten_earlier"]),
            ]
        else:
            keys = ("last_spring_freeze", "first_fall_freeze")
            words = [(self.site.get(key, "never"), self._tail(key)) for key in keys]
        if words[0][0] == "never":
            return None
        spring, fall = ((_month_day(half), _spread(half, tail)) for half, tail in words)
        return spring, fall

    @property
    def _station(self) -> str:
        return str(self.site["station"])

    def _tail(self, key: str) -> str:
        one_in_ten = self.site.get(f"{key}_one_in_ten", "")
        return str(one_in_ten or self.site.get(f"{key}_nine_in_ten", ""))


def _folded_spaces(name: str) -> str:
    return " ".join(name.casefold().split())


def _bed(bed: Mapping[str, Any]) -> BedFacts:
    soil_m, light = _metres(bed["soil_depth"]), _LIGHT[bed["sun"].strip().casefold()]
    if "diameter" in bed:
        diameter_m = _metres(bed["diameter"])
        return BedFacts(math.pi * diameter_m, diameter_m / 4, True, soil_m, light)  # noqa: FBT003 - a field of a frozen value
    sides = sorted((_metres(bed["length"]), _metres(bed["width"])))
    return BedFacts(sides[1], sides[0], False, soil_m, light)  # noqa: FBT003 - as above


def _month_day(text: str) -> tuple[int, int]:
    month, day = text.strip().split("-")
    return int(month), int(day)


def _in_year(month_day: tuple[int, int], year: int) -> date:
    return date(year, month_day[0], 1) + timedelta(days=month_day[1] - 1)


def _next(month_day: tuple[int, int], day: date) -> date:
    this_year = _in_year(month_day, day.year)
    return this_year if this_year >= day else _in_year(month_day, day.year + 1)


def _spread(half: str, tail: str) -> float:
    """Spread in days from a half-of-years date and one that one year in ten passes."""
    if not tail:
        return _ASSUMED_SPREAD_DAYS
    apart = (_in_year(_month_day(tail), 2023) - _in_year(_month_day(half), 2023)).days % 365
    return min(apart, 365 - apart) / NormalDist().inv_cdf(0.9)


def iso_week(day: date) -> str:
    """The ISO week of a day, such as 2027-W19."""
    year, number, _ = day.isocalendar()
    return f"{year}-W{number:02d}"


# The season to check.


@dataclass(frozen=True, slots=True)
class HarvestRow:
    """A line of harvest.csv."""

    week: str
    crop: str
    wanted: float
    expected: float
    low: float
    high: float
    unit: str


def _harvest_row(row: Mapping[str, str]) -> HarvestRow:
    return HarvestRow(
        week=row["week"],
        crop=row["crop"],
        wanted=float(row["wanted"]),
        expected=float(row["expected"]),
        low=float(row["low"]),
        high=float(row["high"]),
        unit=row["unit"],
    )


class _Case:
    """A plan and the season made of it."""

    def __init__(self, plan: Plan, record: Record, harvest: str) -> None:
        self.plan = plan
        self.record = record
        self.sowings: list[Record] = record["sowings"]
        self.tasks: list[Record] = record["tasks"]
        self.as_of = date.fromisoformat(record["as_of"])
        table = csv.DictReader(io.StringIO(harvest, newline=""))
        self.rows = [_harvest_row(row) for row in table]

    def crop(self, sowing: Record) -> CropFacts:
        return self.plan.shelf.crop(sowing["crop"])

    def blocks(self) -> Iterator[tuple[Record, Record]]:
        for sowing in self.sowings:
            for block in sowing["blocks"]:
                yield sowing, block

    def host(self, block: Record) -> Record | None:
        """The sowing under which a block stands, if there is one of that name."""
        return next((one for one in self.sowings if one["id"] == block["under"]), None)

    def in_time(self, sowing: Record, block: Record) -> list[Pattern]:
        """The patterns a guest's block keeps to, in days; all of its pair where it is let go."""
        crop, _, number = block["under"].rpartition(" ")
        listed = self.plan.shelf.patterns(crop, sowing["crop"])
        host = self.host(block)
        if host is None:
            let_go = sowing["state"] == "begun" and int(number) <= self._given(crop)
            return list(listed) if let_go else []
        over = _blocks_over(host, block)
        return [one for one in listed if any(one.in_time(ground, block) for ground in over)]

    def _given(self, crop: str) -> int:
        return int(self.record["names_given"].get(crop, 0))

    def held(self, sowing: Record, block: Record) -> int:
        """Plants at full spacing that a block has room for."""
        bed = self.plan.beds.get(block["bed"])
        return _held(block, bed, self.crop(sowing)) if bed else 0

    def by_crop(self) -> dict[str, list[HarvestRow]]:
        rows: dict[str, list[HarvestRow]] = defaultdict(list)
        for row in self.rows:
            rows[row.crop].append(row)
        return rows


def _day(text: str) -> date:
    return date.fromisoformat(text)


# Ground.


def _blocks_inside_beds(case: _Case) -> Iterator[str]:
    for sowing, block in case.blocks():
        bed = case.plan.beds.get(block["bed"])
        if bed is None:
            yield f"{sowing['id']} stands in {block['bed']}, which the plan does not have"
        elif not 0 <= block["from_m"] < block["to_m"] <= bed.line_m + _TINY_M:
            yield (
                f"{sowing['id']} holds {block['from_m']} to {block['to_m']} m of "
                f"{block['bed']}, which is {bed.line_m:.4f} m long"
            )


def _blocks_apart(case: _Case) -> Iterator[str]:
    rest = case.plan.turnover
    for (one, first), (other, second) in combinations(case.blocks(), 2):
        if (
            first["under"] != other["id"]
            and second["under"] != one["id"]
            and first["bed"] == second["bed"]
            and first["from_m"] < second["to_m"] - 1e-9
            and second["from_m"] < first["to_m"] - 1e-9
            and _day(first["enter_on"]) < _day(second["leave_on"]) + rest
            and _day(second["enter_on"]) < _day(first["leave_on"]) + rest
        ):
            yield f"{one['id']} and {other['id']} meet in {first['bed']}"


def _blocks_last(case: _Case) -> Iterator[str]:
    for sowing, block in case.blocks():
        enter_on, leave_on = block["enter_on"], block["leave_on"]
        if not enter_on < leave_on:
            yield f"{sowing['id']} enters on {enter_on} and leaves on {leave_on}"
        if enter_on != (sowing["set_out_on"] or sowing["sow_on"]):
            yield f"{sowing['id']} takes ground on {enter_on}, not when it is sown or set out"
        if leave_on != sowing["clear_on"]:
            yield f"{sowing['id']} leaves on {leave_on} and is cleared on {sowing['clear_on']}"


def _off_kept_ground(case: _Case) -> Iterator[str]:
    rest = case.plan.turnover
    for (sowing, block), kept in product(case.blocks(), case.plan.kept):
        enters, leaves = _day(block["enter_on"]), _day(block["leave_on"])
        if (
            block["bed"] == kept.bed
            and block["from_m"] < kept.to_m - _TINY_M
            and kept.from_m < block["to_m"] - _TINY_M
            and (kept.until == date.max or enters < kept.until + rest)
            and kept.since < leaves + rest
        ):
            yield f"{sowing['id']} stands in {kept.bed} on ground kept for {kept.what}"


def _guests_under_hosts(case: _Case) -> Iterator[str]:
    for sowing, block in case.blocks():
        if not block["under"]:
            continue
        host = case.host(block)
        if not case.plan.shares_ground:
            yield f"{sowing['id']} stands under {block['under']} in a plan that shares no ground"
        if not case.plan.shelf.patterns(block["under"].rpartition(" ")[0], sowing["crop"]):
            yield f"{sowing['id']} is no guest for {block['under']}"
        elif host is not None and not _blocks_over(host, block):
            yield f"{sowing['id']} does not stand inside a block of {host['id']}"
        elif not case.in_time(sowing, block):
            yield (
                f"{sowing['id']} stands under {block['under']} from {block['enter_on']} to "
                f"{block['leave_on']}, against every pattern of the two"
            )


def _blocks_over(host: Record, block: Record) -> list[Record]:
    """The blocks of a host, on ground of its own, that reach from end to end of a guest's."""
    return [
        one
        for one in host["blocks"]
        if one["bed"] == block["bed"]
        and not one["under"]
        and one["from_m"] <= block["from_m"] + _TINY_M
        and block["to_m"] <= one["to_m"] + _TINY_M
    ]


def _room_for_plants(case: _Case) -> Iterator[str]:
    """Room at full spacing; for a guest the part of it that its pattern leaves to guests."""
    for sowing in case.sowings:
        held = sum(
            _shared(case, sowing, block) if block["under"] else case.held(sowing, block)
            for block in sowing["blocks"]
        )
        if not sowing["blocks"] or sowing["plants"] > held:
            yield f"{sowing['id']} has {sowing['plants']} plants on ground for {held}"


def _shared(case: _Case, sowing: Record, block: Record) -> int:
    share = max((one.ground_share for one in case.in_time(sowing, block)), default=1.0)
    return math.floor(case.held(sowing, block) * share + 1e-6)


def _few_blocks(case: _Case) -> Iterator[str]:
    for sowing in case.sowings:
        crop, plants = case.crop(sowing), sowing["plants"]
        whole = [
            _held({"from_m": 0.0, "to_m": bed.line_m}, bed, crop)
            for bed in case.plan.beds.values()
            if crop.fits(bed)
        ]
        most = _MOST_BLOCKS - 1 + math.ceil(plants / max(whole, default=1))
        if len(sowing["blocks"]) > most:
            yield f"{sowing['id']}: {plants} plants in {len(sowing['blocks'])} blocks"


def _held(block: Record, bed: BedFacts, crop: CropFacts) -> int:
    """Plants a block holds: on a square grid, or by area where no grid fits."""
    length_m = float(block["to_m"] - block["from_m"]) + _TINY_M
    spacing_m = crop.spacing_m
    if bed.is_round or bed.width_m < spacing_m - _TINY_M:
        return math.floor(length_m * bed.width_m / spacing_m**2 + 1e-4)
    across = math.floor(bed.width_m / spacing_m + 1e-6)
    return math.floor(length_m / spacing_m + 1e-6) * across


def _soil_and_sun(case: _Case) -> Iterator[str]:
    for sowing, block in case.blocks():
        crop, bed = case.crop(sowing), case.plan.beds.get(block["bed"])
        if bed is None:
            continue
        if bed.soil_m < crop.soil_m - _ROUNDED_M - _TINY_M:
            yield f"{sowing['id']} needs {crop.soil_m} m of soil, {block['bed']} has {bed.soil_m}"
        if bed.light < crop.light:
            yield f"{sowing['id']} needs more sun than {block['bed']} has"


# Time.


def _dates_in_order(case: _Case) -> Iterator[str]:
    for sowing in case.sowings:
        name, set_out_on = sowing["id"], sowing["set_out_on"]
        ripe = sowing["first_pick_on"]
        days = [one["on"] for one in sowing["harvest_days"]]
        order = [
            ("sown before it emerges", sowing["sow_on"] <= sowing["emerges_on"]),
            ("ripe early, likely, late", ripe["early"] <= ripe["likely"] <= ripe["late"]),
            ("in the ground before it is ripe", (set_out_on or sowing["sow_on"]) < ripe["early"]),
            ("indoors exactly when set out", (sowing["method"] == "indoors") == bool(set_out_on)),
            ("sown before it is set out", not set_out_on or sowing["sow_on"] < set_out_on),
            ("picked once it is likely ripe", bool(days) and ripe["likely"] <= days[0]),
            ("harvest days in order", all(one < two for one, two in pairwise(days))),
            (
                "last picked on the last harvest day",
                bool(days) and sowing["last_pick_on"] == days[-1],
            ),
            ("cleared after its last harvest", bool(days) and days[-1] <= sowing["clear_on"]),
        ]
        yield from (f"{name}: {words}, is not so" for words, holds in order if not holds)


def _garden_days(case: _Case) -> Iterator[str]:
    for task in case.tasks:
        day = _day(task["on"])
        if case.plan.is_away(day):
            yield f"{task['id']} falls on {day}, when nobody is there"
        if task["kind"] in _BEGINS and day.weekday() not in case.plan.weekdays:
            yield f"{task['id']} falls on {day}, which is no garden day"


def _not_in_the_past(case: _Case) -> Iterator[str]:
    for sowing in case.sowings:
        begins = _day(sowing["sow_on"])
        if begins < case.plan.first and sowing["state"] == "planned":
            yield f"{sowing['id']} begins on {begins}, before the season"
        if (begins < case.as_of) != (sowing["state"] == "begun"):
            yield f"{sowing['id']} is {sowing['state']} and begins on {begins}"
    planned = {one["id"] for one in case.sowings if one["state"] == "planned"}
    for task in case.tasks:
        if task["sowing"] in planned and _day(task["on"]) < max(case.as_of, case.plan.first):
            yield f"{task['id']} is set for {task['on']}, which is past"


def _tender_crops_out_of_frost(case: _Case) -> Iterator[str]:
    spans = case.plan.frost_free()
    for sowing, block in case.blocks():
        if spans is None or not case.crop(sowing).dies_of_frost:
            continue
        enters, leaves = (_day(block[key]).toordinal() for key in ("enter_on", "leave_on"))
        # Freeze dates are whole days, so half a day is lost or won.
        if not any(begin - 0.501 <= enters and leaves <= end + 0.501 for begin, end in spans):
            yield f"{sowing['id']} stands out from {block['enter_on']} to {block['leave_on']}"


# Harvest.


def _harvest_adds_up(case: _Case) -> Iterator[str]:
    for sowing in case.sowings:
        weeks: dict[str, float] = defaultdict(float)
        for taken in sowing["harvest_days"]:
            weeks[iso_week(_day(taken["on"]))] += taken["amount"]
        said = {one["week"]: one["amount"] for one in sowing["harvest"]}
        total = sum(weeks.values())
        if set(said) != set(weeks) or any(abs(said[one] - weeks[one]) > 0.001 for one in said):
            yield f"{sowing['id']}: its weeks {said} are not its days {dict(weeks)}"
        if abs(sum(said.values()) - total) > 0.001:
            yield f"{sowing['id']}: {sum(said.values())} by week, {total} by day"
        if any(taken["amount"] <= 0 for taken in sowing["harvest_days"]):
            yield f"{sowing['id']} has a harvest day without a harvest"


def _yield_bounds_harvest(case: _Case) -> Iterator[str]:
    for sowing in case.sowings:
        total = sum(taken["amount"] for taken in sowing["harvest_days"])
        most = sowing["plants"] * case.crop(sowing).most_of_a_plant(sowing["unit"])
        most *= max((_yield_share(case, sowing, block) for block in sowing["blocks"]), default=1)
        if total > most + 1e-6:
            yield f"{sowing['id']}: {sowing['plants']} plants give {most}, not {total}"
        if sowing["seeds"] < sowing["plants"] or sowing["plants"] < 1:
            yield f"{sowing['id']}: {sowing['seeds']} seeds for {sowing['plants']} plants"


def _yield_share(case: _Case, sowing: Record, block: Record) -> float:
    """What a plant gives here against one on ground of its own, at the best.

    Of the patterns a guest keeps to in days, those count that leave room for its plants.
    """
    if not block["under"]:
        return 1.0
    in_time, held = case.in_time(sowing, block), case.held(sowing, block)
    roomy = [one for one in in_time if sowing["plants"] <= one.ground_share * held + 1e-6]
    return max((one.yield_share for one in roomy or in_time), default=1.0)


def _expected_is_harvested(case: _Case) -> Iterator[str]:
    """Each week's expectation is that week's harvests; a store's counts in all.

    Harvests in weeks neither wanted nor of the season count for nothing.
    """
    for crop, rows in case.by_crop().items():
        sowings = [one for one in case.sowings if one["crop"] == crop]
        weeks: dict[str, float] = defaultdict(float)
        for sowing in sowings:
            for one in sowing["harvest"]:
                weeks[one["week"]] += one["amount"]
        said = {row.week: row.expected for row in rows}
        passed = [week for week in weeks if not _counts(case, rows, week)]
        passed_over = sum(weeks[week] for week in passed)
        unsaid = sum(weeks.values()) - sum(said.values())
        shown = 0.1 + _SHOWN * len(said)
        if not -shown <= unsaid <= passed_over + shown:
            yield f"{crop}: {sum(said.values())} expected of {sum(weeks.values())} harvested"
        if case.plan.shelf.crop(crop).word("habit") == "store":
            continue
        for week in (set(said) | set(weeks)) - set(passed):
            if abs(said.get(week, 0.0) - weeks.get(week, 0.0)) > _SHOWN:
                yield f"{crop} in {week}: {said.get(week)} expected, {weeks.get(week)} harvested"


def _counts(case: _Case, rows: list[HarvestRow], week: str) -> bool:
    in_season = iso_week(case.plan.first) <= week <= iso_week(case.plan.last)
    return in_season or any(row.week == week and row.wanted for row in rows)


def _wanted_as_written(case: _Case) -> Iterator[str]:
    units = {row.crop: row.unit for row in case.rows}
    wants = case.plan.wants(units)
    said = {(row.crop, row.week): row.wanted for row in case.rows if row.wanted}
    for crop, week in sorted(set(wants) | set(said)):
        asked, shown = wants.get((crop, week), 0.0), said.get((crop, week), 0.0)
        if abs(asked - shown) > _SHOWN:
            yield f"{crop} in {week}: {asked} asked for, {shown} in harvest.csv"


def _all_wanted_is_accounted_for(case: _Case) -> Iterator[str]:
    unmet: dict[tuple[str, str], float] = defaultdict(float)
    for one in case.record["unmet"]:
        unmet[one["crop"], one["week"]] += one["amount"]
        if not one["why"] or not one["remedy"] or one["amount"] <= 0:
            yield f"{one['crop']} in {one['week']}: unmet without amount, reason or remedy"
    for row in case.rows:
        missing = unmet.pop((row.crop, row.week), 0.0)
        if row.expected + missing < row.wanted - _SHOWN:
            yield (
                f"{row.crop} in {row.week}: {row.wanted} wanted, {row.expected} expected and "
                f"only {missing} said to be unmet"
            )
        if missing and row.expected + missing > row.wanted + _SHOWN:
            yield (
                f"{row.crop} in {row.week}: said to lack {missing} of {row.wanted}, but has "
                f"{row.expected}"
            )
        if not row.low <= row.expected + _SHOWN or not row.expected <= row.high + _SHOWN:
            yield f"{row.crop} in {row.week}: {row.expected} is not in {row.low} to {row.high}"
    yield from (f"{crop} in {week}: unmet but never wanted" for crop, week in unmet)


def _measures_by_the_book(case: _Case) -> Iterator[str]:
    said = case.record["measures"]
    crops = [rows for rows in case.by_crop().values() if any(row.wanted for row in rows)]
    surplus = fmean(
        sum(max(0.0, row.expected - row.wanted) for row in rows) / sum(row.wanted for row in rows)
        for rows in crops
    )
    fill = _weighted_fill(case)
    if abs(fill - said["fill"]) > 0.001:
        yield f"fill is {fill:.4f}, not {said['fill']}"
    if abs(surplus - said["surplus"]) > 0.001 * (1 + surplus):
        yield f"surplus is {surplus:.4f}, not {said['surplus']}"
    least, most = (fmean(_met(rows, by) for rows in crops) for by in (_SHOWN, -_SHOWN))
    if not least - 0.0002 <= said["weeks_met"] <= most + 0.0002:
        yield f"weeks met are {least:.4f} to {most:.4f}, not {said['weeks_met']}"
    if not 0 <= said["fill"] <= said["bound"] + 0.0002 <= 1.0004:
        yield f"fill {said['fill']} and bound {said['bound']} are not shares in order"
    if abs(said["bound"] - said["fill"] - said["gap"]) > 0.0002:
        yield f"gap is {said['gap']}, not bound less fill"


def _weighted_fill(case: _Case) -> float:
    """What is expected of what is wanted, each crop and week by its share of everything."""
    expected = {(row.crop, row.week): row.expected for row in case.rows}
    units = {row.crop: row.unit for row in case.rows}
    wants = case.plan.wants(units)
    return sum(
        share * min(1.0, expected.get(week, 0.0) / wants[week])
        for week, share in case.plan.weights(units).items()
    )


def _met(rows: list[HarvestRow], by: float) -> float:
    """The share of wanted weeks that have what is wanted and so much more."""
    return fmean(row.expected >= row.wanted + by for row in rows if row.wanted)


# Names and tasks.


def _names(case: _Case) -> Iterator[str]:
    given = case.record["names_given"]
    for name, times in Counter(one["id"] for one in case.sowings).items():
        if times > 1:
            yield f"{name} is the name of {times} sowings"
    for sowing in case.sowings:
        match = _NAME.fullmatch(sowing["id"])
        if match is None or match[1] != sowing["crop"]:
            yield f"{sowing['id']} is no name for a sowing of {sowing['crop']}"
        elif int(match[2]) > given.get(sowing["crop"], 0):
            yield f"{sowing['id']} is not among the names given: {given}"


def _tasks_of_sowings(case: _Case) -> Iterator[str]:
    sowings = {one["id"]: one for one in case.sowings}
    done: dict[str, set[tuple[str, str]]] = defaultdict(set)
    for name, times in Counter(one["id"] for one in case.tasks).items():
        if times > 1:
            yield f"{name} is the name of {times} tasks"
    for task in case.tasks:
        if task["sowing"] not in sowings:
            yield f"{task['id']} is for {task['sowing']}, which is not there"
        kind = "harvest" if task["kind"] in _HARVESTS else task["kind"]
        done[task["sowing"]].add((kind, task["on"]))
    for name, sowing in sowings.items():
        missing = _needed_tasks(sowing) - done[name]
        yield from (f"{name} has no task to {kind} on {day}" for kind, day in sorted(missing))
    if case.tasks != sorted(case.tasks, key=lambda one: str(one["on"])):
        yield "tasks are not in order of the day"


def _needed_tasks(sowing: Record) -> set[tuple[str, str]]:
    needed = {("harvest", one["on"]) for one in sowing["harvest_days"]}
    needed.add(("clear", sowing["clear_on"]))
    if sowing["method"] == "direct":
        return needed | {("sow", sowing["sow_on"])}
    return needed | {("start indoors", sowing["sow_on"]), ("set out", sowing["set_out_on"])}


def _begin_on_their_dates(case: _Case) -> Iterator[str]:
    sowings = {one["id"]: one for one in case.sowings}
    for task in case.tasks:
        sowing = sowings.get(task["sowing"])
        key = _BEGINS.get(task["kind"])
        if sowing is not None and key is not None and sowing[key] != task["on"]:
            yield f"{task['id']} falls on {task['on']}, its sowing says {sowing[key]}"
        if sowing is not None and not sowing["sow_on"] <= task["on"] <= sowing["clear_on"]:
            yield f"{task['id']} falls on {task['on']}, outside the life of its sowing"
        if sowing is not None and sowing["set_out_on"] and task["kind"] == "harden off":
            days = (_day(sowing["set_out_on"]) - _day(task["on"])).days
            if not 1 <= days <= _LONGEST_HARDENING_DAYS:
                yield f"{task['id']} begins {days} days before setting out"


RULES: dict[str, Callable[[_Case], Iterator[str]]] = {
    "blocks lie inside their bed": _blocks_inside_beds,
    "blocks do not meet": _blocks_apart,
    "blocks last from entering to clearing": _blocks_last,
    "kept ground is left alone": _off_kept_ground,
    "guests stand under their hosts": _guests_under_hosts,
    "blocks have room for their plants": _room_for_plants,
    "a sowing stands in few blocks": _few_blocks,
    "soil and sun are enough": _soil_and_sun,
    "dates are in order": _dates_in_order,
    "work falls on garden days": _garden_days,
    "nothing is planned for the past": _not_in_the_past,
    "tender crops stand out of frost": _tender_crops_out_of_frost,
    "harvest adds up": _harvest_adds_up,
    "yield bounds harvest": _yield_bounds_harvest,
    "what is expected is harvested": _expected_is_harvested,
    "what is wanted is as written": _wanted_as_written,
    "all that is wanted is accounted for": _all_wanted_is_accounted_for,
    "measures follow their definitions": _measures_by_the_book,
    "names are given once": _names,
    "every sowing has its tasks": _tasks_of_sowings,
    "tasks fall in the life of their sowing": _begin_on_their_dates,
}
