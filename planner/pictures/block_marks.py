"""Block marks: how stands are drawn in one picture, and its key to them."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from planner.pictures.family_marks import KEPT, FamilyMark, hatch_of, marks_of
from planner.pictures.key import SWATCH_HEIGHT, SWATCH_WIDTH
from planner.pictures.stands import Stand
from planner.pictures.svg import INK, PAPER, rectangle
from planner.season import Season

HARVEST_PX = 3.5
GUEST_DASH = "4 2"


@dataclass(frozen=True, slots=True)
class BlockMarks:
    """The marks of a picture whose ids begin with `prefix`, by family."""

    prefix: str
    families: dict[str, FamilyMark]

    @property
    def definitions(self) -> tuple[str, ...]:
        """The hatches, to stand in the picture's defs."""
        every = (*self.families.values(), KEPT)
        return tuple(hatch_of(one, f"{self.prefix}-hatch-{n}") for n, one in enumerate(every))

    def hatch(self, stand: Stand) -> str:
        """The fill of ground a stand grows on."""
        place = len(self.families) if stand.is_kept else list(self.families).index(stand.family)
        return f"url(#{self.prefix}-hatch-{place})"

    def mark(self, stand: Stand) -> FamilyMark:
        """The colours of a stand."""
        return KEPT if stand.is_kept else self.families[stand.family]

    def outline(self, stand: Stand) -> dict[str, str | float]:
        """The edge of a stand, dashed for a guest."""
        edge: dict[str, str | float] = {"fill": "none", "stroke": INK, "stroke_width": 1}
        return {**edge, "stroke_dasharray": GUEST_DASH} if stand.host else edge

    def key_items(self, stands: Iterable[Stand], bar: str) -> Iterator[tuple[str, str]]:
        """What the hatches of these stands stand for, then their edges, then their `bar`."""
        shown = tuple(stands)
        for family in dict.fromkeys(one.family for one in shown if not one.is_kept):
            place = list(self.families).index(family)
            yield _swatch(f"url(#{self.prefix}-hatch-{place})"), self.families[family].name
        if any(one.is_kept for one in shown):
            yield _swatch(f"url(#{self.prefix}-hatch-{len(self.families)})"), KEPT.name
        if any(one.host for one in shown):
            yield _swatch(PAPER, stroke_dasharray=GUEST_DASH), "guest, in its host's ground"
        if any(one.is_picked for one in shown):
            yield _swatch(PAPER) + bar, "harvest"


def harvest_bar(x: float, foot: float, width: float) -> str:
    """The bar along the foot of a block while it is harvested."""
    return rectangle(x, foot - HARVEST_PX, width, HARVEST_PX, fill=INK, class_="harvest")


def block_marks(prefix: str, season: Season) -> BlockMarks:
    """Marks for all that may stand in the beds of a season."""
    return BlockMarks(prefix, marks_of({sowing.crop.family.text for sowing in season.sowings}))


def _swatch(fill: str, **more: str) -> str:
    return rectangle(
        0.5, 0.5, SWATCH_WIDTH - 1, SWATCH_HEIGHT - 1, fill=fill, stroke=INK, stroke_width=1, **more
    )
