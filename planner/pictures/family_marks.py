"""Family marks: a hatch and a muted colour for each botanical family, and one for kept ground.

The hatch alone tells families apart, in grey print too; the colour helps the eye. Colours are
the nine of Paul Tol's "light" scheme (Colour Schemes, SRON/EPS/TN/09-002, issue 3.2, 2021),
made to be written on in black and to differ for colour-blind eyes.
"""

from dataclasses import dataclass

from planner.pictures.svg import PAPER, number, rectangle, tag

TOL_LIGHT = {
    "light blue": "#77AADD",
    "orange": "#EE8866",
    "light yellow": "#EEDD88",
    "pink": "#FFAABB",
    "light cyan": "#99DDFF",
    "mint": "#44BB99",
    "pear": "#BBCC33",
    "olive": "#AAAA00",
    "pale grey": "#DDDDDD",
}
# Each hatch as the side of its square tile and the path drawn in it.
HATCHES = {
    "rising": (7, "M-1,1L1,-1M0,7L7,0M6,8L8,6"),
    "falling": (7, "M-1,6L1,8M0,0L7,7M6,-1L8,1"),
    "upright": (6, "M3,0V6"),
    "level": (6, "M0,3H6"),
    "dots": (7, "M1.4,1.4h1.4v1.4h-1.4zM4.9,4.9h1.4v1.4h-1.4z"),
    "lattice": (9, "M0,0L9,9M0,9L9,0"),
    "grid": (9, "M4.5,0V9M0,4.5H9"),
    "dashes": (10, "M1,2.5H6M6,7.5H10M0,7.5H1"),
    "ticks": (10, "M2.5,1V6M7.5,6V10M7.5,0V1"),
    "waves": (8, "M0,5L2,3L4,5L6,3L8,5"),
    "bricks": (8, "M0,4H8M0,8H8M2,0V4M6,4V8"),
    "triangles": (10, "M2,7.5L5,2.5L8,7.5Z"),
    "rings": (9, "M2.5,4.5a2,2 0 1,0 4,0a2,2 0 1,0 -4,0"),
    "plus signs": (10, "M2.5,0.5V4.5M0.5,2.5H4.5M7.5,5.5V9.5M5.5,7.5H9.5"),
    "steps": (8, "M0,2H4V6H8"),
}


@dataclass(frozen=True, slots=True)
class FamilyMark:
    """How a family is drawn; `pale` is the ground of its hatch, `full` where it is harvested."""

    name: str
    hatch: str
    full: str

    @property
    def pale(self) -> str:
        """The colour thinned with white, so that hatch and words stand out on it."""
        return pale_of(self.full)


def pale_of(colour: str) -> str:
    """A colour #rrggbb thinned with white."""
    return mixed(colour, PAPER, 0.6)


def mixed(first: str, second: str, share: float) -> str:
    """Two colours #rrggbb mixed, `share` (0 to 1) of the second."""
    pairs = ((int(one[at : at + 2], 16) for one in (first, second)) for at in (1, 3, 5))
    return "#" + "".join(f"{round(a + (b - a) * share):02x}" for a, b in pairs)


# Families by a vegetable of theirs: common practice, no source.
_GROWERS_WORDS = {
    "Amaranthaceae": "beet",
    "Amaryllidaceae": "onion",
    "Apiaceae": "carrot",
    "Asteraceae": "lettuce",
    "Brassicaceae": "cabbage",
    "Convolvulaceae": "sweet potato",
    "Cucurbitaceae": "cucumber",
    "Fabaceae": "bean",
    "Lamiaceae": "basil",
    "Malvaceae": "okra",
    "Poaceae": "corn",
    "Solanaceae": "tomato",
}
_KNOWN = {
    "Amaranthaceae": ("dots", "pink"),
    "Amaryllidaceae": ("upright", "light cyan"),
    "Apiaceae": ("rising", "orange"),
    "Asteraceae": ("waves", "pear"),
    "Brassicaceae": ("falling", "light blue"),
    "Convolvulaceae": ("bricks", "pink"),
    "Cucurbitaceae": ("rings", "light yellow"),
    "Fabaceae": ("level", "mint"),
    "Lamiaceae": ("plus signs", "olive"),
    "Malvaceae": ("steps", "light cyan"),
    "Poaceae": ("ticks", "light yellow"),
    "Solanaceae": ("lattice", "olive"),
}
_SPARE = (("triangles", "pear"), ("dashes", "light blue"))
KEPT = FamilyMark("kept ground, not the planner's", "grid", TOL_LIGHT["pale grey"])


def marks_of(families: set[str]) -> dict[str, FamilyMark]:
    """A mark for each family, the same in every picture of a garden.

    Families the almanac does not know take the spare hatches, and share them when there are many.
    """
    strange = sorted(families - set(_KNOWN))
    spare = {name: _SPARE[place % len(_SPARE)] for place, name in enumerate(strange)}
    return {
        name: FamilyMark(_family_words(name), hatch, TOL_LIGHT[colour])
        for name, (hatch, colour) in sorted({**_KNOWN, **spare}.items())
        if name in families
    }


def _family_words(name: str) -> str:
    if name in _GROWERS_WORDS:
        return f"{_GROWERS_WORDS[name]} family ({name})"
    return name or "family not stated"


def hatch_of(mark: FamilyMark, ground: str, ink: str, name: str) -> str:
    """A pattern element of that id: the hatch in an ink on a ground."""
    side, path = HATCHES[mark.hatch]
    return tag(
        "pattern",
        rectangle(0, 0, side, side, fill=ground),
        tag("path", d=path, fill="none", stroke=ink, stroke_width=0.7),
        id=name,
        patternUnits="userSpaceOnUse",
        width=number(side),
        height=number(side),
    )
