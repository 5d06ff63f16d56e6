"""Block marks: how stands are drawn in one picture, and its key to them."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from planner.pictures.family_marks import KEPT, FamilyMark, hatch_of, marks_of
from planner.pictures.key import SWATCH_HEIGHT, SWATCH_WIDTH
from planner.pictures.stands import Stand
from planner.pictures.svg import FAINT_INK, INK, PAPER, rectangle
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
        """The hatches, pale and full, to stand in the picture's defs."""
        every = (*self.families.values(), KEPT)
        return tuple(
            pattern
            for place, one in enumerate(every)
            for pattern in (
                hatch_of(one, one.pale, FAINT_INK, f"{self.prefix}-pale-{place}"),
                hatch_of(one, one.full, INK, f"{self.prefix}-full-{place}"),
            )
        )

    def growing(self, stand: Stand) -> str:
        """The fill of ground a stand grows on."""
        return f"url(#{self.prefix}-pale-{self._place(stand)})"

    def harvested(self, stand: Stand) -> str:
        """The fill of ground a stand is harvested from."""
        return f"url(#{self.prefix}-full-{self._place(stand)})"

    def _place(self, stand: Stand) -> int:
        return len(self.families) if stand.is_kept else list(self.families).index(stand.family)

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
        looks = {self._place(one): one for one in reversed(shown)}
        for place in sorted(looks):
            yield _swatch(self.growing(looks[place])), self.mark(looks[place]).name
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
