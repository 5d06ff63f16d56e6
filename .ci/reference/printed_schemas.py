"""JSON Schemas of what commands print with --json, by the command."""

import json
from pathlib import Path

from planner.terms import PROBLEM_KINDS, UNITS
from planner.trial import Basis, Failing
from planner.writing.publication import Step
from reference.bedwork_schema import bedwork_schema
from reference.shapes import (
    HARVEST,
    Schema,
    count,
    day,
    many,
    month_day,
    number,
    or_null,
    record,
    text,
    week,
    whole,
    word,
    yes_or_no,
)

_DOCS = Path(__file__).parent.parent.parent / "docs"
HARVEST_UNITS = tuple(name for name, unit in UNITS.items() if unit.dimension in HARVEST)


def check_schema() -> Schema:
    """What `planner check --json` prints."""
    problem = record(
        "One thing that cannot stand.",
        {
            "kind": word("Its kind, as in docs/problems.md.", sorted(PROBLEM_KINDS)),
            "file": text("The file it is in."),
            "line": count("The line, from 1; 0 where the file as a whole is meant."),
            "wrong": text("What cannot stand, in a sentence."),
            "remedy": text("What to do."),
        },
    )
    about = "Every problem of the plan and its journal, in the order of the files; [] when none."
    return _printed("check", about, many("", problem))


def week_schema() -> Schema:
    """What `planner week --json` prints: tasks as they stand in season.json."""
    season = json.loads((_DOCS / "season.schema.json").read_text(encoding="utf-8"))
    shared = {name: season["$defs"][name] for name in ("day", "sowing_name", "task")}
    schema = many("", {"$ref": "#/$defs/task"}) | {"$defs": shared}
    return _printed("week", "The tasks of one week, as they stand in season.json.", schema)


def why_schema() -> Schema:
    """What `planner why --json` prints."""
    about = "Why the dates and the size of a sowing are what they are."
    return _printed("why", about, many("", text("A sentence."), minItems=1))


def crops_schema() -> Schema:
    """What `planner crops --json` prints, with and without a name."""
    others = many("Other names that are understood.", text())
    listed = record("A crop.", {"crop": text("Its name."), "other_names": others})
    row = record(
        "One published figure.",
        {
            "figure": text("What it tells; those of docs/figures.md, and a few not counted with."),
            "low": text("Its lower end as published, or a word.", least=0),
            "high": text("Its upper end; empty where there is but one.", least=0),
            "unit": text("Its unit: d are days, n a count, text and class a word.", least=0),
            "basis": text("What it was published for.", least=0),
            "source": text("A key of docs/bibliography.md."),
            "note": text("", least=0),
            "used": yes_or_no("Whether the planner counts with it."),
        },
    )
    page = record(
        "All that is published of one crop.",
        {
            "name": text("The crop."),
            "label": text("How it is shown."),
            "other_names": others,
            "rows": many("Every figure, used or kept for comparison.", row),
        },
    )
    about = "Every crop of the almanac; or, with a name, all that is published of that crop."
    return _printed("crops", about, {"anyOf": [many("All crops.", listed), page]})


def stations_schema() -> Schema:
    """What `planner stations --json` prints."""
    freeze = record(
        "A freeze date.",
        {
            "half_of_years": month_day() | {"description": "The day by half of all years."},
            "spread_days": number("How far the day strays from year to year, days.", 0),
        },
    )
    station = record(
        "A weather station.",
        {
            "station": text("Its id, for `station` in garden.toml."),
            "name": text("Where it is."),
            "state": text("The state it lies in.", least=0),
            "latitude_deg": number("North of the equator, degrees.", -90, 90),
            "longitude_deg": number("East of Greenwich, degrees.", -180, 180),
            "elevation_m": number("Above the sea, metres."),
            "distance_km": number("From the place asked for; only where one was.", 0),
            "last_spring_freeze": freeze | {"description": "The last freeze of spring."},
            "first_fall_freeze": freeze | {"description": "The first freeze of fall."},
            "freezes": word("Where there are no such dates: why.", ["never", "all year"]),
        },
        optional=("distance_km", "last_spring_freeze", "first_fall_freeze", "freezes"),
    )
    dates: Schema = {"required": ["last_spring_freeze", "first_fall_freeze"]}
    either = {"oneOf": [dates, {"required": ["freezes"]}]}
    about = "The stations found; those nearest to a place come nearest first."
    return _printed("stations", about, many("", station | either))


def publish_schema() -> Schema:
    """What `planner publish --json` prints."""
    counts = {str(step): count(_STEPS[step], 1) for step in Step}
    about = "How many events of the calendar went each way; ways that none went are left out."
    return _printed("publish", about, record("", counts, optional=counts))


_STEPS = {
    Step.NEW: "Sent for the first time.",
    Step.MOVED: "Sent again, on another day.",
    Step.REWORDED: "Sent again, in other words.",
    Step.CALLED_OFF: "Taken out: the season no longer has them.",
    Step.SAME: "Not sent: the server has them as they are.",
    Step.TICKED: "Left alone: the grower ticked them off.",
    Step.CHANGED: "Left alone: the grower changed them.",
    Step.TAKEN_OUT: "Left alone: the grower took them out.",
}


def outlook_schema() -> Schema:
    """What `planner outlook --json` prints."""
    measures = {
        "promised_fill": _share("Share of the amount wanted that the likely dates promise."),
        "fill": _share("Share that the tried years give, on average."),
        "fill_by_year": many("The same for each year.", _share("")),
        "weeks_met": _share("Share of the wanted weeks met in full."),
        "weeks_with_nothing": number("Wanted weeks of its crops with nothing, mean of years.", 0),
        "interval_spread_days": or_null(
            number("How far days between harvests stray from their mean, days.", 0),
            "null where there are too few harvests.",
        ),
    }
    revised = record(
        "One year.",
        {"kept": _share("Fill with the plan kept."), "revised": _share("Fill when revised.")},
    )
    weak = record(
        "A week.",
        {
            "crop": text("The crop."),
            "week": week("The week."),
            "share_of_years": _share("Share of the years in which it is met."),
            "failing": word("What mostly fails.", (one.value for one in Failing)),
            "remedy": text("What would help."),
        },
    )
    outlook = record(
        "",
        {
            "as_of": day("The day on which the season was made."),
            "basis": word("What it was tried in.", (one.value for one in Basis)),
            "years": count("In how many years, or of stated dates in how many cases.", 1),
            "season": record("The season.", measures),
            "rule_of_thumb": record("Sowing at fixed intervals in the same beds.", measures),
            "revised_each_fortnight": many(
                "A few of the years with a revision each fortnight; [] unless --revised asks.",
                revised,
            ),
            "crops": many("Each crop wanted.", _crop_outlook()),
            "weakest": many("Up to three weeks that hold in the fewest years.", weak),
        },
    )
    return _printed("outlook", "The season tried in past years (docs/rules.md §38).", outlook)


def _crop_outlook() -> Schema:
    one_week = record(
        "A week; amounts are in the crop's unit.",
        {
            "week": week("The week."),
            "wanted": number("What is wanted.", 0),
            "poor": number("What nine in ten years pass.", 0),
            "usual": number("What half of the years pass.", 0),
            "good": number("What one in ten years passes.", 0),
            "by_year": many("What each year gives.", number("", 0)),
        },
    )
    return record(
        "A crop.",
        {
            "crop": text("The crop."),
            "unit": word("The unit of its target.", HARVEST_UNITS),
            "fill": _share("Share of the amount wanted that the years give, on average."),
            "weeks_met": _share("Share of its wanted weeks met in full."),
            "weeks_with_nothing": number("Its wanted weeks with nothing, mean of years.", 0),
            "weeks": many("Every week with something wanted or given.", one_week),
        },
    )


def _share(about: str) -> Schema:
    return number(about, 0, 1)


def _printed(command: str, about: str, schema: Schema) -> Schema:
    title = f"planner {command} --json"
    return whole(title, about, f"planner-{command}.schema.json", schema)


def all_printed() -> dict[str, Schema]:
    """Every schema by its command; what `planner schedule --json` prints is season.json."""
    made = {
        "check": check_schema(),
        "week": week_schema(),
        "outlook": outlook_schema(),
        "publish": publish_schema(),
        "why": why_schema(),
        "crops": crops_schema(),
        "stations": stations_schema(),
    }
    about = "What the beds take. With --part only that part, and its cautions."
    return made | {"bedwork": _printed("bedwork", about, bedwork_schema())}
