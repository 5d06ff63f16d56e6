"""JSON Schema of what `planner bedwork --json` prints of soil, manure and cautions."""

from planner.bedwork import Doubt, LayerKind
from planner.garden import EatenPart, Feeding
from reference.shapes import (
    Schema,
    count,
    day,
    many,
    number,
    or_null,
    record,
    text,
    word,
    yes_or_no,
)

BED = text("The bed.")
SOWING = text("The sowing.")
CROP = text("The crop.")
KEY = "A key of docs/bibliography.md, or plan where garden.toml or crops.toml says it."


def litres(about: str) -> Schema:
    """A volume."""
    return number(f"{about}, litres.", 0)


def filling_part() -> Schema:
    """What fills new beds."""
    layer = record(
        "A layer.",
        {
            "kind": word("What it is of.", LayerKind),
            "depth_m": number("How deep, metres.", 0),
            "volume_l": litres("How much"),
        },
    )
    mix = record(
        "What the good mix is made of.",
        {
            "parts": _by_name("Parts by volume, by name.", number("", 0)),
            "source": text(KEY),
        },
    )
    bed = record(
        "A new bed.",
        {
            "bed": BED,
            "volume_l": litres("All that goes in at first"),
            "layers": many("From the bottom up.", layer, minItems=1),
            "mix": mix,
            "mix_l": _by_name("Each part of the good mix, litres.", number("", 0)),
            "settles_l": litres("What to keep for topping up"),
            "wet_kg": number("Its weight when wet, kilograms.", 0),
            "first_in": or_null(
                day("The day on which something is to enter it."), "null where nothing is planned."
            ),
            "shallow_when_settled_for": many("Crops for which it is shallow then.", text()),
            "doubts": many("What is doubtful in it.", word("", Doubt)),
        },
    )
    part = record(
        "A part of the mix for all new beds.",
        {
            "part": text("Its name."),
            "volume_l": litres("How much of it"),
            "bags": count("In so many bags."),
            "loads": count("Or in so many loads."),
        },
    )
    price = "in the grower's own money; null where no price is told."
    order = record(
        "What to buy for all new beds.",
        {
            "parts": many("Each part of the mix.", part),
            "bag_kg": number("What a bag weighs, kilograms.", 0),
            "bags_cost": or_null(number("All of it in bags,", 0), price),
            "loads_cost": or_null(number("All of it in loads,", 0), price),
        },
    )
    tight = record(
        "A crop that would have deeper soil than its bed has.",
        {
            "bed": BED,
            "depth_m": number("How deep the bed is, metres.", 0),
            "crop": CROP,
            "wanted_m": number("How deep it would have it, metres.", 0),
        },
    )
    return record(
        "What fills new beds (§44).",
        {
            "beds": many("Each new bed.", bed),
            "order": order,
            "tight": many("Crops planned where soil is less deep than they would have it.", tight),
        },
    )


def turnover_part() -> Schema:
    """What is done to ground that is cleared."""
    block = record(
        "A block that is cleared.",
        {
            "on": day("The day."),
            "sowing": SOWING,
            "bed": BED,
            "from_m": number("Where it begins along the bed's line, metres.", 0),
            "to_m": number("Where it ends, metres.", 0),
            "pulled": yes_or_no("Whether roots come out; else they are cut and left."),
            "compost_l": litres("Compost to spread there"),
            "compost_mm": number("The same as a depth, millimetres.", 0),
            "running_mm": number("Compost at the fullest spot in that year so far, mm.", 0),
            "held_back": yes_or_no("Whether the year's ceiling leaves less than the usual depth."),
            "followers": many("Sowings that come next there.", text()),
        },
    )
    compost = record(
        "A bed in a calendar year.",
        {
            "bed": BED,
            "year": count("The year.", None),
            "volume_l": litres("Its compost in all"),
            "deepest_mm": number("At the fullest spot, millimetres.", 0),
            "full_on": or_null(
                day("The first day on which some was held back."), "null where none was."
            ),
        },
    )
    hunger = record(
        "A crop.",
        {
            "crop": CROP,
            "class": word("How hungry it is.", Feeding),
            "source": text(KEY),
            "disputed": text("What other sources hold of it; empty where none does.", least=0),
            "fed_again": text("When it is fed again; empty where nothing is printed.", least=0),
        },
    )
    return record(
        "What is done to the ground of blocks that are cleared (§45).",
        {
            "blocks": many("Each, in order of the day.", block),
            "compost": many("Each bed and year.", compost),
            "feeding": many("Each crop wanted.", hunger),
        },
    )


def manure_part() -> Schema:
    """Raw manure and the harvests after it."""
    pick = record(
        "The first harvest of a sowing after it.",
        {
            "sowing": SOWING,
            "eaten_part": word("Where what is eaten grows.", EatenPart),
            "on": day("The day of that harvest."),
            "days": count("Days from manure to harvest."),
            "needed_days": count("Days there must be."),
            "from_on": day("The first day it may be picked."),
            "too_early": yes_or_no("Whether that harvest comes too early."),
        },
    )
    check = record(
        "Raw manure worked into a bed.",
        {
            "bed": BED,
            "on": day("The day."),
            "touching_from": day("From then on what touches the soil may be picked."),
            "clear_from": day("From then on what does not touch it may be picked."),
            "unchecked": many(
                "What stands there on kept ground; nobody plans its harvest.", text()
            ),
            "picks": many("The first harvest of each sowing after it.", pick),
        },
    )
    return many("Each time raw manure was spread (§46).", check)


def cautions_part() -> Schema:
    """What can hurt, and whom to ask."""
    caution = record(
        "A caution.",
        {
            "part": text("The part of bed work it belongs to."),
            "hazard": text("What can hurt."),
            "crops": many("The crops it is about; [] where it is about none.", text()),
            "text": text("The usual caution."),
            "ask": text("Whom to ask."),
            "sources": many("Keys of docs/bibliography.md.", text()),
        },
    )
    return many("The cautions of these parts, each told once (§47).", caution)


def _by_name(about: str, one: Schema) -> Schema:
    return {"description": about, "type": "object", "additionalProperties": one}
