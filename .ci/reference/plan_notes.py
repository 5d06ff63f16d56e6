"""What the keys of a plan mean: a sentence for each, its usual value, and what hangs together.

Which keys there are, of which type and within which bounds, is heard from the reader.
"""

from planner.garden import USUAL_PRIORITY
from planner.reading.season_part import USUAL_FREEZE_RISK
from planner.reading.site_part import USUAL_SPREAD_DAYS
from planner.terms import Dimension
from reference.bedwork_notes import MANURE, MIX, PACKET, SEED, SOIL, WATER
from reference.key_note import KeyNote, TableNote, both, none_of, twelve
from reference.shapes import HARVEST, Schema, flow, many, month_day, quantity, weekday


def _freeze(about: str) -> KeyNote:
    schema = {"anyOf": [month_day(), {"const": "never"}]}
    return KeyNote(about, usual_words="see above", schema=schema, form='month-day, or `"never"`')


def _rarer(about: str) -> KeyNote:
    return KeyNote(
        about,
        usual_words=f"a spread of {USUAL_SPREAD_DAYS:g} days",
        source="NCEI-1981-2010",
    )


_HAND = ("last_spring_freeze", "first_fall_freeze")
_RARER = tuple(f"{key}_{odds}" for key in _HAND for odds in ("nine_in_ten", "one_in_ten"))
_AMOUNT = quantity(HARVEST, "above zero", is_range=False)


def _never(*, is_so: bool) -> Schema:
    never: Schema = {"const": "never"}
    return {"properties": dict.fromkeys(_HAND, never if is_so else {"not": never})}


_PLAN = TableNote(
    "",
    "The whole plan.",
    {
        "plan": KeyNote("The shape of this file.", schema={"const": 1}, form="the number 1"),
        "site": KeyNote("Where the garden lies."),
        "season": KeyNote("From when to when is planned, and how."),
        "bed": KeyNote("A bed; one heading for each."),
        "target": KeyNote("What is wanted of a crop; one heading for each."),
        "kept": KeyNote(
            "Ground that is not the planner's; one heading for each piece.", usual_words="none"
        ),
        "soil": KeyNote("What beds are filled and fed with.", usual_words="usual figures"),
        "manure": KeyNote(
            "Raw manure worked into a bed; one heading for each time.", usual_words="none"
        ),
        "water": KeyNote("What watering is counted with.", usual_words="usual figures"),
        "seed": KeyNote("How seed is counted.", usual_words="usual figures"),
        "packet": KeyNote("A packet of seed; one heading for each crop.", usual_words="not told"),
    },
)

_SITE = TableNote(
    "`[site]`",
    "Where the garden lies, and how cold it gets there.",
    {
        "name": KeyNote("What the garden is called.", '"My garden"'),
        "latitude": KeyNote("Degrees north of the equator; negative in the south.", form="degrees"),
        "last_spring_freeze": _freeze("Half of all years still freeze after this day."),
        "last_spring_freeze_nine_in_ten": _rarer("Nine in ten years still freeze after this day."),
        "last_spring_freeze_one_in_ten": _rarer("One year in ten still freezes after this day."),
        "first_fall_freeze": _freeze("Half of all years have frozen before this day."),
        "first_fall_freeze_nine_in_ten": _rarer("Nine in ten years have frozen by this day."),
        "first_fall_freeze_one_in_ten": _rarer("One year in ten has frozen by this day."),
        "station": KeyNote(
            "A weather station whose freeze dates hold here: its id, or its name.",
            usual_words="see above",
        ),
        "mean_high": KeyNote(
            "Mean daily high of each month, January first.",
            usual_words="not known",
            schema=twelve(Dimension.TEMPERATURE, "any"),
            form="twelve temperatures",
        ),
        "mean_low": KeyNote(
            "Mean daily low of each month, January first.",
            usual_words="not known",
            schema=twelve(Dimension.TEMPERATURE, "any"),
            form="twelve temperatures",
        ),
        "weather": KeyNote(
            "The name of a file of daily temperatures in this folder.",
            usual_words="none",
            schema={"type": "string", "pattern": r"^[^/\\]*[^/\\\s][^/\\]*$"},
        ),
        "weather_unit": KeyNote(
            "The unit of that file's temperatures.", usual_words="what the file itself says"
        ),
        "paper": KeyNote(
            "The paper of printed sheets.",
            usual_words="letter where the first bed is measured in feet or inches, else A4",
        ),
    },
    (
        {
            "oneOf": [
                {"required": ["station"], **none_of(*_HAND, *_RARER)},
                {"required": [*_HAND], **none_of("station"), "allOf": [_never(is_so=False)]},
                {
                    "required": [*_HAND],
                    **none_of("station", *_RARER),
                    "allOf": [_never(is_so=True)],
                },
                {"required": ["weather"], **none_of("station", *_HAND, *_RARER)},
            ]
        },
        both("mean_high", "mean_low"),
        {"dependentRequired": {"weather_unit": ["weather"]}},
    ),
    (
        "Freeze dates come from two days stated by hand, from a `station`, or from `weather`.",
        "Where the rarer dates are not stated, the spread is the median of US stations.",
        "`mean_high` and `mean_low` go together; `weather_unit` needs `weather`.",
    ),
)

_SEASON = TableNote(
    "`[season]`",
    "From when to when is planned (a week to two years), and how.",
    {
        "from": KeyNote("The first day."),
        "to": KeyNote("The last day."),
        "freeze_risk": KeyNote(
            "Tender plants go out when at most this share of years still freezes.",
            f"{USUAL_FREEZE_RISK:g}",
        ),
        "garden_days": KeyNote(
            "Days of the week on which there is work, where the crop allows.",
            usual_words="every day",
            schema=many("", weekday(), minItems=1),
            form="a list of days, such as Wed",
        ),
        "away": KeyNote("Times when nobody is there.", "[]"),
        "turnover_days": KeyNote("Days a stretch lies between clearing and the next crop.", "0"),
        "cover_weeks": KeyNote("So many weeks earlier covered tender plants go out.", "0"),
        "share_ground": KeyNote("Whether guests may stand between and beneath others.", "true"),
    },
)

_AWAY = TableNote(
    "`away` in `[season]`",
    "A time when nobody is there.",
    {"from": KeyNote("The first day."), "to": KeyNote("The last day.")},
)

_BED = TableNote(
    "`[[bed]]`",
    "A bed, 5 cm to 200 m on each side.",
    {
        "name": KeyNote("What it is called; no two beds alike."),
        "length": KeyNote("One side; blocks follow the longer one.", usual_words="see above"),
        "width": KeyNote("The other side.", usual_words="see above"),
        "diameter": KeyNote(
            "Of a round bed, in place of length and width.", usual_words="see above"
        ),
        "soil_depth": KeyNote("How deep roots can go."),
        "sun": KeyNote("The light it gets."),
        "sunny_end": KeyNote(
            "Which end is toward the midday sun, so that tall crops are kept away from it.",
            usual_words="not known",
        ),
        "new": KeyNote("Whether it is still to be filled.", "false"),
        "flow": KeyNote(
            "What its drip line gives, as measured.",
            usual_words="what `drip` says, if anything",
            schema=flow(),
            form="water in a time",
        ),
        "drip": KeyNote("Its drip line as stamped.", usual_words="not known"),
        "timer": KeyNote("The timer it shares with other beds.", usual_words="none"),
    },
    (
        {
            "oneOf": [
                {"required": ["diameter"], **none_of("length", "width", "sunny_end")},
                {"required": ["length", "width"], **none_of("diameter")},
            ]
        },
    ),
    ("A bed has `length` and `width`; or `diameter`, and then no `sunny_end`.",),
)

_DRIP = TableNote(
    "`drip` in `[[bed]]`",
    "A drip line as stamped; it gives 0.1 to 20,000 litres an hour.",
    {
        "emitters": KeyNote("How many there are."),
        "each": KeyNote("What one gives.", schema=flow(), form="water in a time"),
    },
)

_TARGET = TableNote(
    "`[[target]]`",
    "What is wanted of a crop. It lies within the season.",
    {
        "crop": KeyNote("The crop, by any of its names."),
        "each_week": KeyNote("So much in every week.", usual_words="see above", schema=_AMOUNT),
        "for_people": KeyNote(
            "Portions for so many people in every week.", usual_words="see above", form="people"
        ),
        "once": KeyNote("So much in all, by one day.", usual_words="see above", schema=_AMOUNT),
        "from": KeyNote("The first day it is wanted.", usual_words="the season's first"),
        "to": KeyNote("The last day it is wanted.", usual_words="the season's last"),
        "by": KeyNote("The day by which all of `once` is wanted.", usual_words="see above"),
        "priority": KeyNote(
            "How many times it counts where ground is short.", f"{USUAL_PRIORITY:g}"
        ),
    },
    (
        {
            "oneOf": [
                {"required": ["each_week"], **none_of("for_people", "once", "by")},
                {"required": ["for_people"], **none_of("each_week", "once", "by")},
                {"required": ["once", "by"], **none_of("each_week", "for_people", "from", "to")},
            ]
        },
    ),
    (
        "A target says how much in one way: `each_week`, `for_people`, or `once` with `by`.",
        "With `once` there is no `from` and `to`.",
    ),
)

_KEPT = TableNote(
    "`[[kept]]`",
    "Ground that is not the planner's, such as a rhubarb corner.",
    {
        "bed": KeyNote("The bed it lies in."),
        "what": KeyNote("What stands there."),
        "family": KeyNote(
            "Its botanical family.", usual_words="that of the crop `what` names, if it is known"
        ),
        "from": KeyNote("Where it begins along the bed.", usual_words="the whole bed is kept"),
        "to": KeyNote("Where it ends along the bed.", usual_words="the whole bed is kept"),
        "since": KeyNote("The first day it stands there.", usual_words="since ever"),
        "until": KeyNote("The day the ground is free again.", usual_words="for good"),
    },
    (both("from", "to"),),
    ("`from` and `to` go together.",),
)

_CROPS = TableNote("", "All of crops.toml.", {"crop": KeyNote("Crops by their names.")})

_CROP = TableNote(
    "`[crop.NAME]`",
    "A crop of your own, or figures of a known one that you know better.",
    {
        "like": KeyNote(
            "The almanac's crop whose figures hold where nothing is stated.",
            usual_words="none; a crop of that name in the almanac is corrected",
        ),
        "label": KeyNote("How it is shown.", usual_words="its name"),
    },
)

GARDEN, CROPS = "garden.toml", "crops.toml"
_EACH_CROP = TableNote("", "Every crop under its own name.", {"*": KeyNote("A crop.")})
NOTES: dict[tuple[str, ...], TableNote] = {
    (GARDEN,): _PLAN,
    (GARDEN, "site"): _SITE,
    (GARDEN, "season"): _SEASON,
    (GARDEN, "season", "away"): _AWAY,
    (GARDEN, "bed"): _BED,
    (GARDEN, "bed", "drip"): _DRIP,
    (GARDEN, "target"): _TARGET,
    (GARDEN, "kept"): _KEPT,
    (GARDEN, "soil"): SOIL,
    (GARDEN, "soil", "mix"): MIX,
    (GARDEN, "manure"): MANURE,
    (GARDEN, "water"): WATER,
    (GARDEN, "seed"): SEED,
    (GARDEN, "packet"): PACKET,
    (CROPS,): _CROPS,
    (CROPS, "crop"): _EACH_CROP,
    (CROPS, "crop", "*"): _CROP,
}
