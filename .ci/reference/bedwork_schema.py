"""JSON Schema of what `planner bedwork --json` prints, part by part."""

from planner.bedwork import Known
from planner.garden import AmountBasis, StartFrom
from planner.terms import UNITS
from reference.shapes import (
    HARVEST,
    Schema,
    count,
    day,
    many,
    number,
    or_null,
    record,
    text,
    week,
    word,
)
from reference.soil_schema import (
    BED,
    CROP,
    cautions_part,
    filling_part,
    litres,
    manure_part,
    turnover_part,
)


def _runs() -> Schema:
    runs = record(
        "Runs of a drip line.",
        {
            "times": count("How often a week."),
            "minutes": number("How long each run is.", 0),
            "parts": count("In how many parts a run goes, with a rest between.", 1),
        },
    )
    return or_null(runs, "null where nothing tells what the line gives.")


def _water() -> Schema:
    bed = record(
        "A bed.",
        {
            "bed": BED,
            "coefficient": number("Crop coefficient, mean of days with something there.", 0),
            "planted": number("Share of its ground that is planted.", 0, 1),
            "depth_mm": number("Water wanted beyond rain, millimetres.", 0),
            "volume_l": litres("What that takes from the tap"),
            "drip": _runs(),
        },
    )
    given = record(
        "A bed on it.",
        {
            "bed": BED,
            "given_mm": number("What it gets in the week, millimetres.", 0),
            "wanted_mm": number("What it wants, millimetres.", 0),
        },
    )
    timer = record(
        "A timer that beds share.",
        {
            "timer": text("Its name."),
            **_runs()["anyOf"][0]["properties"],
            "gives": many("Each bed on it.", given),
        },
    )
    one_week = record(
        "A week.",
        {
            "week": week("The week."),
            "evaporation_mm": number("Reference evapotranspiration, millimetres.", 0),
            "rain_mm": number("Rain that roots get, millimetres.", 0),
            "beds": many("Each bed in which something stands.", bed),
            "timers": many("Each timer that beds share.", timer),
            "not_up": many("Sowings kept moist by hand until they are up.", text()),
        },
    )
    return record(
        "How much water beds take, week by week (§48, §49).",
        {
            "evaporation": word("How evaporation is known.", (one.value for one in Known)),
            "evaporation_source": text("Where that is from."),
            "rain_source": or_null(text("Where rain is from."), "null where it is not known."),
            "efficiency": number("Share of drip water that roots get.", 0, 1),
            "rain_used": number("Share of rain that roots get.", 0, 1),
            "weeks": many("Each week in which something stands.", one_week),
        },
    )


def _away() -> Schema:
    bed = record(
        "A bed to water.",
        {"bed": BED, "each_l": litres("What it takes each time by hand"), "drip": _runs()},
    )
    away = record(
        "A time away.",
        {
            "from": day("The first day."),
            "to": day("The last day."),
            "water_on": many("Days on which to water.", day()),
            "beds": many("Beds to water.", bed),
            "pick": many("Sowings to pick.", text()),
            "ready": many("Sowings that are ready and can wait.", text()),
            "too_early": many("Sowings not to be picked yet, for raw manure.", text()),
            "trays": many("Sowings in trays.", text()),
            "not_up": many("Sowings in place that are not up yet.", text()),
        },
    )
    return many("Each time away that is not over (§50).", away)


def _seed() -> Schema:
    need = record(
        "A crop.",
        {
            "crop": CROP,
            "start_from": word("What is planted.", (one.value for one in StartFrom)),
            "plants": count("Plants that are wanted."),
            "seeds": count("Seeds that takes; cloves, sets, tubers and slips likewise."),
            "comes_up": number("Share that comes up.", 0, 1),
            "in_box": count("Seeds in the box that are worth sowing."),
            "too_old": count("Seeds in the box that are not."),
            "to_buy": count("Seeds to buy."),
            "packets": or_null(
                count("In so many packets.", 1), "null where none, or their size is not told."
            ),
            "first_on": day("The first day they are used."),
            "order_by": day("The day to order them by."),
        },
    )
    trays = record(
        "Trays.",
        {
            "cells": count("The most cells in use on one day.", 1),
            "trays": count("In so many trays.", 1),
            "on": day("The first such day."),
        },
    )
    return record(
        "Seed to order (§51).",
        {
            "as_of": day("The day on which the season was made."),
            "confidence": number("How surely there are enough plants.", 0, 1),
            "kept": number("Share of seedlings that reach their place.", 0, 1),
            "crops": many("Each crop still to be sown.", need),
            "trays": or_null(trays, "null where nothing is started indoors any more."),
        },
    )


def _appetite() -> Schema:
    amount = record(
        "A published amount.",
        {
            "for": word("What it is for.", (one.value for one in AmountBasis)),
            "low": number("", 0),
            "high": number("", 0),
            "unit": text("Its unit."),
            "source": text("A key of docs/bibliography.md."),
            "note": text("", least=0),
        },
    )
    units = [name for name, unit in UNITS.items() if unit.dimension in HARVEST]
    wanted = record(
        "A crop wanted.",
        {
            "crop": CROP,
            "unit": word("The unit of its target.", units),
            "each_week": number("Mean amount of a week in which it is wanted.", 0),
            "weeks": count("Weeks in which it is wanted."),
            "feeds": or_null(
                many("People that feeds, fewest and most.", number("", 0), minItems=2, maxItems=2),
                "null where nobody says what a person eats.",
            ),
            "published": many("What is published of it.", amount),
        },
    )
    target = record(
        "A target.",
        {
            "crop": CROP,
            "for_people": number("For so many people.", 0),
            "from": day("The first day."),
            "to": day("The last day."),
            "ground_share": number("Share of the beds' ground it holds.", 0),
        },
    )
    proposal = record(
        "Targets for a household; only with --people.",
        {
            "people": number("How many they are.", 0),
            "targets": many("What to want.", target),
            "left_out": many("Crops that fit, but ground or appetite was short for them.", text()),
        },
    )
    keys = {"wanted": many("Each crop wanted.", wanted), "proposal": proposal}
    return record("How many people the targets feed (§52).", keys, optional=["proposal"])


def bedwork_schema() -> Schema:
    """All parts; those that rest on sowings are left out where there is no season."""
    parts = {
        "filling": filling_part(),
        "turnover": turnover_part(),
        "manure": manure_part(),
        "water": _water(),
        "away": _away(),
        "seed": _seed(),
        "appetite": _appetite(),
    }
    return record("", {**parts, "cautions": cautions_part()}, optional=parts)
