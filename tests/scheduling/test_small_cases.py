"""Small gardens whose best plan is found by trying every plan there is.

Nothing of the planner's choosing is used but its list of what could be sown: when each offer
enters and leaves, and which weeks it feeds. What a plan costs is said here once more, for crops
harvested at once of which each plant gives one head.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date, timedelta
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planner.scheduling import EFFORTS
from planner.scheduling.choice import plan_of, question_for
from planner.scheduling.offers.crop_offers import CropOffers
from planner.scheduling.question import Question
from tests.plan_text import garden_of, own_crop

_EFFORT = 1
_FIRST_WANTED = date(2027, 5, 10)
_ROW_IN = 6


@dataclass(frozen=True)
class Wish:
    """A crop harvested at once: its days, its hold, how many rows of the bed one of its takes."""

    heads: tuple[int, ...]
    days: int = 28
    hold_days: int = 6
    rows_wide: int = 1


@dataclass(frozen=True)
class Small:
    """A bed two plants of the narrow crop across, so many rows long, and one or two wishes."""

    rows: int
    wishes: tuple[Wish, ...]
    before: int = 0
    after: int = 0
    turnover_days: int = 0

    @property
    def first(self) -> date:
        """The first day: as early as the slowest crop needs, and so many weeks before."""
        longest = max(one.days for one in self.wishes)
        return _FIRST_WANTED - timedelta(days=longest + 7 * self.before)

    @property
    def last(self) -> date:
        """The last day: of the last week wanted, and so many weeks after."""
        weeks = max(len(one.heads) for one in self.wishes)
        return _FIRST_WANTED + timedelta(days=7 * (weeks + self.after) - 1)


def question_of(small: Small) -> Question:
    """What the planner is asked."""
    garden = f"""
plan = 1

[site]
latitude = 45.5
last_spring_freeze = "never"
first_fall_freeze = "never"

[season]
from = {small.first}
to = {small.last}
garden_days = ["Mon"]
turnover_days = {small.turnover_days}
share_ground = false

[[bed]]
name = "Strip"
length = "{small.rows * _ROW_IN} in"
width = "{2 * _ROW_IN} in"
soil_depth = "12 in"
sun = "full"
"""
    crops = ""
    for number, wish in enumerate(small.wishes):
        crops += own_crop(
            f"crop{number}",
            days_from_sowing=f"{wish.days} days",
            hold_days=f"{wish.hold_days} days",
            spacing=f"{_ROW_IN * wish.rows_wide} in",
            family=f"Family {number}",
        )
        for week, heads in enumerate(wish.heads):
            monday = _FIRST_WANTED + timedelta(days=7 * week)
            garden += f'\n[[target]]\ncrop = "crop{number}"\neach_week = "{heads} heads"\n'
            garden += f"from = {monday}\nto = {monday + timedelta(days=6)}\n"
    read = garden_of(garden, crops)
    return question_for(read, small.first)


def cost_of_the_planner(small: Small) -> float:
    """What the planner's plan costs, by its own count."""
    return plan_of(question_of(small), EFFORTS[_EFFORT]).cost


# Every plan there is.


@dataclass(frozen=True)
class _Choice:
    """So many rows of an offer of a crop, and what they cost by being there."""

    crop: int
    offer: int
    rows: int
    enters: int
    leaves: int
    costs: float

    @property
    def length(self) -> int:
        """How many rows of the narrow crop they take up."""
        return self.rows


class Exhaustive:
    """The least that any plan costs."""

    def __init__(self, small: Small) -> None:
        self.small = small
        self.question = question_of(small)
        self.best = float("inf")

    def least_cost(self) -> float:
        """Try every number of rows of every offer, wherever they can stand."""
        self._choose([], list(self._listed()))
        return self.best

    def _listed(self) -> Iterator[list[_Choice]]:
        """What may be chosen of each offer: one row, two, or as many as the bed holds."""
        for crop, (offers, wish) in enumerate(
            zip(self.question.offers, self.small.wishes, strict=True)
        ):
            for offer in range(len(offers)):
                yield [
                    self._choice(offers, (crop, offer), rows * wish.rows_wide)
                    for rows in range(1, self.small.rows // wish.rows_wide + 1)
                ]

    def _choice(self, offers: CropOffers, which: tuple[int, int], rows: int) -> _Choice:
        crop, offer = which
        enters, leaves = int(offers.enters[offer]), int(offers.leaves[offer])
        worth = self.question.worth
        metre_days = rows * _ROW_IN * 0.0254 * (leaves - enters)
        work = worth.sowing * float(offers.work[offer])
        return _Choice(crop, offer, rows, enters, leaves, work + worth.metre_day * metre_days)

    def _choose(self, chosen: list[_Choice], left: list[list[_Choice]]) -> None:
        if not left:
            self._judge(chosen)
            return
        self._choose(chosen, left[1:])
        for one in left[0]:
            if self._most_held([*chosen, one]) <= self.small.rows:
                self._choose([*chosen, one], left[1:])

    def _most_held(self, chosen: list[_Choice]) -> int:
        """The most rows held on any day something enters."""
        return max(
            sum(one.length for one in chosen if one.enters <= day < one.leaves)
            for day in {one.enters for one in chosen}
        )

    def _judge(self, chosen: list[_Choice]) -> None:
        cost = sum(one.costs for one in chosen)
        cost += sum(
            self._unmet_cost(crop, offers, [one for one in chosen if one.crop == crop])
            for crop, offers in enumerate(self.question.offers)
        )
        if cost < self.best - 1e-9 and _can_stand(chosen, [], self.small.rows):
            self.best = cost

    def _unmet_cost(self, crop: int, offers: CropOffers, chosen: list[_Choice]) -> float:
        """What goes without, when only plants that are eaten are sown.

        Every week of a crop is worth the same here, and a plant gives one head, so nothing need
        be harvested in vain; but where it would be cheaper to, it may.
        """
        wish = self.small.wishes[crop]
        across = 2 // wish.rows_wide
        heads = {one.offer: one.rows // wish.rows_wide * across for one in chosen}
        eaten = _most_eaten(offers, heads)
        worth = float(offers.worth.mean()) if len(offers.worth) else 0.0
        return (float(offers.lacks.sum()) - eaten) * worth


def _most_eaten(offers: CropOffers, heads: dict[int, int]) -> float:
    """The most that offers can bring to the weeks they feed: the least cut, by Ford and Fulkerson.

    For any weeks, no more is eaten than these want and the offers that feed another have.
    """
    weeks = range(len(offers.weeks))
    return min(
        sum(float(offers.lacks[week]) for week in some)
        + sum(
            many
            for offer, many in heads.items()
            if any(offers.gives[offer][week] > 0 for week in weeks if week not in some)
        )
        for size in range(len(offers.weeks) + 1)
        for some in map(set, combinations(weeks, size))
    )


def _can_stand(chosen: list[_Choice], placed: list[tuple[int, _Choice]], rows: int) -> bool:
    """Whether each choice can have rows side by side, whatever rows those are."""
    if len(placed) == len(chosen):
        return True
    one = chosen[len(placed)]
    return any(
        _can_stand(chosen, [*placed, (begin, one)], rows)
        for begin in range(rows - one.length + 1)
        if not any(_meet(begin, one, *other) for other in placed)
    )


def _meet(begin: int, one: _Choice, other_begin: int, other: _Choice) -> bool:
    return (
        begin < other_begin + other.length
        and other_begin < begin + one.length
        and one.enters < other.leaves
        and other.enters < one.leaves
    )


def _one(*heads: int, **figures: int) -> tuple[Wish, ...]:
    return (Wish(heads, **figures),)


_CASES = {
    "one week, one row": Small(2, _one(2)),
    "one week, more than there is": Small(2, _one(7)),
    "two weeks": Small(3, _one(4, 4)),
    "two weeks, less ground than wanted": Small(2, _one(4, 4)),
    "three weeks, held two": Small(3, _one(2, 2, 2, hold_days=13)),
    "a week that wants much": Small(4, _one(1, 6, 1)),
    "three weeks of a quick crop": Small(2, _one(4, 4, 4, days=7)),
    "four weeks, half of them in the ground": Small(3, _one(3, 3, 3, 3, days=14)),
    "five weeks, half of them in the ground": Small(2, _one(2, 2, 2, 2, 2, days=14)),
    "held three weeks": Small(3, _one(2, 2, 2, 2, hold_days=20), before=1),
    "ground that rests": Small(3, _one(2, 4, 2, days=14), turnover_days=3),
    "two crops": Small(3, (Wish((2, 2)), Wish((2, 2)))),
    "two crops of other days": Small(3, (Wish((4, 2), days=21), Wish((2, 2, 2), days=7))),
    "a wide crop and a narrow one": Small(4, (Wish((1, 1), rows_wide=2), Wish((2, 2, 2), days=14))),
    "a wide crop that is held": Small(
        5, (Wish((1, 1), hold_days=13, rows_wide=2), Wish((3, 3), days=14))
    ),
    "odd heads": Small(4, _one(3, 1, 3, days=21, hold_days=13)),
}


@pytest.mark.parametrize("small", _CASES.values(), ids=_CASES)
def test_no_plan_is_cheaper_than_the_planner_s(small: Small) -> None:
    assert cost_of_the_planner(small) == pytest.approx(Exhaustive(small).least_cost(), abs=1e-6)


@st.composite
def smalls(draw: st.DrawFn) -> Small:
    """Two to five rows, one or two crops, two to five weeks."""
    wishes = tuple(
        Wish(
            tuple(draw(st.lists(st.integers(1, 6), min_size=2, max_size=5 if number == 0 else 3))),
            days=7 * draw(st.integers(1, 4)),
            hold_days=draw(st.sampled_from((6, 13))),
            rows_wide=draw(st.sampled_from((1, 1, 2))),
        )
        for number in range(draw(st.integers(1, 2)))
    )
    rest = draw(st.sampled_from((0, 0, 2)))
    return Small(draw(st.integers(2, 5)), wishes, turnover_days=rest)


@settings(max_examples=30, deadline=None, derandomize=True)
@given(smalls())
def test_more_ground_or_time_never_makes_the_plan_cost_more(small: Small) -> None:
    cost = cost_of_the_planner(small)
    assert cost_of_the_planner(replace(small, rows=small.rows + 1)) <= cost + 1e-6
    assert cost_of_the_planner(replace(small, before=1)) <= cost + 1e-6
    assert cost_of_the_planner(replace(small, after=1)) <= cost + 1e-6
