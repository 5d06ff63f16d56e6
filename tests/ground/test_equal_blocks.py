"""Blocks on a line of ground: what must hold whatever the garden.

Blocks of one length, placed where they first fit in the order they enter, take up no more ground
than is held at once on the busiest day: colouring an interval graph in order of the left ends
uses as many colours as its largest clique (Trotter, lecture notes on interval graphs, as told in
the project's reference figures). Blocks of several lengths can take more, never less.
"""

from datetime import date, timedelta
from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st

from planner.garden import Bed, BedNote, Sun
from planner.ground import NOBODY, Ground, Holding
from planner.terms import UNITS, Place

_BLOCK_UM = 300_000
_FIRST = date(2027, 3, 1)


def _line(blocks: int) -> Ground:
    """One bed as long as so many blocks of the one length."""
    note = BedNote(UNITS["m"], Place("garden.toml"))
    bed = Bed("Line", blocks * _BLOCK_UM, 1_000_000.0, False, 0.3, Sun.FULL, note)  # noqa: FBT003 - a field of a frozen value
    return Ground((bed,))


def _most_held(stays: list[tuple[int, int, int]]) -> int:
    """The most that is held at once: length summed over what stands on the busiest day."""
    return max(
        sum(length for enters, leaves, length in stays if enters <= day < leaves)
        for day, _, _ in stays
    )


def _placed(ground: Ground, stays: list[tuple[int, int, int]]) -> list[Holding]:
    """Each block where it first fits, in the order given."""
    placed = []
    for number, (enters, leaves, length) in enumerate(stays):
        gap = next(one for one in ground.gaps(0, enters, leaves) if one.length_um >= length)
        holding = Holding(gap.from_um, gap.from_um + length, enters, leaves, number, "", NOBODY)
        ground.hold(0, holding)
        placed.append(holding)
    return placed


_STAY = st.tuples(st.integers(0, 200), st.integers(1, 90)).map(
    lambda one: (
        (_FIRST + timedelta(days=one[0])).toordinal(),
        (_FIRST + timedelta(days=one[0] + one[1])).toordinal(),
    )
)


@settings(max_examples=200, deadline=None, derandomize=True)
@given(st.lists(_STAY, min_size=1, max_size=60))
def test_equal_blocks_in_order_of_entering_take_no_more_than_is_held_at_once(
    spans: list[tuple[int, int]],
) -> None:
    stays = [(enters, leaves, _BLOCK_UM) for enters, leaves in sorted(spans)]
    placed = _placed(_line(len(stays)), stays)
    assert max(one.to_um for one in placed) == _most_held(stays)


@settings(max_examples=200, deadline=None, derandomize=True)
@given(st.lists(st.tuples(_STAY, st.integers(1, 8)), min_size=1, max_size=40))
def test_blocks_of_any_length_never_meet_and_take_at_least_what_is_held_at_once(
    wishes: list[tuple[tuple[int, int], int]],
) -> None:
    stays = [(*span, length * _BLOCK_UM) for span, length in sorted(wishes)]
    placed = _placed(_line(8 * len(stays)), stays)
    assert max(one.to_um for one in placed) >= _most_held(stays)
    for one, other in combinations(placed, 2):
        together = one.enters < other.leaves and other.enters < one.leaves
        assert not (together and one.from_um < other.to_um and other.from_um < one.to_um)
