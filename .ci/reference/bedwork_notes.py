"""What the keys of soil, water and seed mean."""

from planner.terms import Dimension
from reference.key_note import KeyNote, TableNote, twelve, usual_number, usual_size

SOIL = TableNote(
    "`[soil]`",
    "What beds are filled and fed with.",
    {
        "mix": KeyNote(
            "Parts by volume, under any names, of the soil roots live in.",
            usual_words="a published mix, named by `planner bedwork`",
        ),
        "settling": usual_size("How far a new filling sinks in its first season.", "settling"),
        "bag": usual_size("What a bag of soil holds, 1 to 100,000 litres.", "bag"),
        "bag_price": KeyNote("What a bag costs, in your own money.", usual_words="not told"),
        "bulk": usual_size("The least amount a soil yard sells loose.", "bulk"),
        "bulk_price": KeyNote("What so much costs, in your own money.", usual_words="not told"),
        "top_dress": usual_size(
            "Compost spread on cleared ground, at most 60 cm deep.", "top_dress"
        ),
        "compost_a_year": usual_size(
            "The most compost a spot gets in twelve months.", "compost_a_year"
        ),
    },
)

MIX = TableNote(
    "`mix` in `[soil]`",
    "Parts by volume; their names are yours.",
    {"*": KeyNote("How many parts of it.", form="parts")},
)

MANURE = TableNote(
    "`[[manure]]`",
    "Raw manure worked into a bed, within two years before the season or in it.",
    {"bed": KeyNote("The bed."), "on": KeyNote("The day.")},
)

WATER = TableNote(
    "`[water]`",
    "What watering is counted with.",
    {
        "rain": KeyNote(
            "Rain of each month in all, January first, up to 1500 mm.",
            usual_words="the daily record's, if it has any",
            schema=twelve(Dimension.LENGTH, "from zero"),
            form="twelve depths",
        ),
        "evaporation": KeyNote(
            "Reference evapotranspiration of each month in all, January first.",
            usual_words="worked out from temperatures, where they are known",
            schema=twelve(Dimension.LENGTH, "from zero"),
            form="twelve depths",
        ),
        "efficiency": usual_number("Share of drip water that roots get.", "water", "efficiency"),
        "rain_used": usual_number("Share of rain that roots get.", "water", "rain_used"),
        "runs_each_week": usual_number("How often a bed is watered.", "water", "runs_each_week"),
        "longest_run_minutes": usual_number(
            "Longer runs are parted; shorter for sand.", "water", "longest_run"
        ),
    },
)

SEED = TableNote(
    "`[seed]`",
    "How seed is counted.",
    {
        "confidence": usual_number(
            "How surely there are to be enough plants.", "seed", "confidence"
        ),
        "kept": usual_number("Share of seedlings that reach their place.", "seed", "kept"),
        "lead_weeks": usual_number("Weeks from ordering seed to having it.", "seed", "lead_weeks"),
        "tray_cells": usual_number("Cells of a tray.", "seed", "tray_cells"),
    },
)

PACKET = TableNote(
    "`[[packet]]`",
    "A packet of seed; one for a crop that a target wants.",
    {
        "crop": KeyNote("The crop."),
        "seeds": KeyNote("How many seeds a packet holds.", usual_words="not told"),
        "germination": usual_number("Share of fresh seed that comes up.", "seed", "comes_up"),
        "keeps_years": KeyNote(
            "Years it keeps.", usual_words="as published for the crop, else one year"
        ),
        "packed": KeyNote("The year on the packet.", usual_words="not told"),
        "left": KeyNote("Seeds left in the box.", usual_words="none"),
    },
    ({"dependentRequired": {"left": ["packed"]}},),
    ("`left` needs `packed`: how well old seed comes up hangs on its age.",),
)
