"""garden.toml and crops.toml together become a Garden, or a list of problems."""

import math
from collections.abc import Callable

from planner.garden import Bed, Crop, Garden, Sun, Target
from planner.reading.bed_part import read_beds
from planner.reading.crops_file import CropShelf, read_crops
from planner.reading.kept_part import read_kept
from planner.reading.plan_cautions import cautions_of_plan
from planner.reading.plan_files import PlanFiles
from planner.reading.plan_sharing import shared_ground
from planner.reading.season_part import read_season
from planner.reading.seed_part import read_seed
from planner.reading.site_part import read_site
from planner.reading.soil_part import read_soil
from planner.reading.target_part import read_targets
from planner.reading.toml_table import TomlTable
from planner.reading.toml_text import parse_toml
from planner.reading.water_part import read_water
from planner.terms import UNITS, Problem

PLAN_VERSION = 1
_LIGHT = {Sun.FULL: "full sun", Sun.PART: "part sun", Sun.SHADE: "shade at least"}


def read_garden(files: PlanFiles) -> Garden | tuple[Problem, ...]:
    """The complete garden, or every problem in its files, in the order of the files."""
    problems: list[Problem] = []
    shelf = read_crops(files.crops, problems)
    parsed = parse_toml(files.garden)
    if isinstance(parsed, Problem):
        return tuple(sorted([*problems, parsed], key=lambda one: one.order))
    plan = TomlTable(parsed, (), parsed.values, "A plan", problems)
    garden = _read_plan(plan, shelf, files, problems)
    plan.refuse_unknown()
    if problems or garden is None:
        return tuple(sorted(dict.fromkeys(problems), key=lambda one: one.order))
    return garden


def _read_plan(
    plan: TomlTable, shelf: CropShelf, files: PlanFiles, problems: list[Problem]
) -> Garden | None:
    _check_version(plan)
    site = _read_part(plan, "site")
    season = _read_part(plan, "season")
    the_site = read_site(site, files, problems) if site else None
    wish = read_season(season) if season else None
    beds = read_beds(plan)
    targets = read_targets(plan, shelf, wish, beds)
    soil = read_soil(plan, shelf, wish, beds, targets)
    water = read_water(plan, shelf, targets)
    seed = read_seed(plan, shelf, targets)
    kept = read_kept(plan, shelf, wish, beds)
    _check_beds_fit(beds, targets, problems)
    _check_all_read(plan, targets, problems)
    if the_site is None or wish is None or not beds or not targets:
        return None
    shared = shared_ground(targets, shelf, wish)
    cautions = cautions_of_plan(targets, kept, shelf)
    return Garden(
        the_site,
        wish,
        tuple(beds),
        tuple(targets),
        soil=soil,
        water=water,
        seed=seed,
        cautions=cautions,
        kept=kept,
        shared=shared,
    )


def _check_version(plan: TomlTable) -> None:
    if not plan.need("plan", "plan = 1 at the top of the file"):
        return
    version = plan.whole_number("plan", 0, 10**6)
    if version is not None and version != PLAN_VERSION:
        plan.report(
            "plan-version",
            "plan",
            f"This file says plan = {version}; this program reads plan = {PLAN_VERSION}.",
            "use a later version of the program, or write plan = 1 if the file is of that shape.",
        )


def _check_all_read(plan: TomlTable, targets: list[Target], problems: list[Problem]) -> None:
    """A target that is left out is never left out in silence."""
    if problems or len(targets) == len(plan.items("target", "") or ()):
        return
    plan.report(
        "empty-season",
        "target",
        "A target cannot be planned, and the program cannot tell why.",
        "take out targets one by one to find which it is, and write to the makers of planner.",
    )


def _read_part(plan: TomlTable, key: str) -> TomlTable | None:
    if not plan.need(key, f"[{key}] and below it what belongs there"):
        return None
    return plan.table(key, f"The {key}")


def _check_beds_fit(beds: list[Bed], targets: list[Target], problems: list[Problem]) -> None:
    if not beds:
        return
    told: set[str] = set()
    for target in targets:
        crop = target.crop
        if crop.name in told or any(crop.fits(bed) for bed in beds):
            continue
        told.add(crop.name)
        remedy = "deepen a bed, choose one with more sun or room, or take the target out."
        problems.append(Problem("no-bed-fits", target.place, _why_no_bed(crop, beds), remedy))


def _why_no_bed(crop: Crop, beds: list[Bed]) -> str:
    needs = crop.ground
    deepest = max(bed.soil_depth_m for bed in beds)
    words = f"{crop.label} needs soil {_in_both_systems(needs.least_soil_m, round)} deep"
    if not needs.is_deep_enough(deepest):
        # Rounded down, or a bed that is too shallow would seem as deep as what is needed.
        return f"{words}; the deepest bed has {_in_both_systems(deepest, _rounded_down)}."
    room = f"{_in_both_systems(needs.spacing_um / 1e6, round)} for each plant"
    return f"{words}, {_LIGHT[needs.sun]} and {room}; no bed has all of that."


def _rounded_down(length: float) -> int:
    return math.floor(length + 1e-9)


def _in_both_systems(length_m: float, rounded: Callable[[float], int]) -> str:
    return f"{rounded(length_m * 100)} cm ({rounded(length_m / UNITS['in'].factor)} in)"
