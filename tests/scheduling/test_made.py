"""What the planner's numbers become: sowings with dates, blocks and harvests, on paper."""

from datetime import date, timedelta

import pytest

from planner.scheduling import Block, HarvestDay, Method, Sowing, SowingState, name_sowings
from planner.scheduling.arranging.working_plan import Piece, Placed, WorkingPlan
from planner.scheduling.made import made_sowings
from planner.scheduling.question import Question
from tests.scheduling.low_and_tall import (
    INCH_UM,
    RIPE,
    SOWN,
    TALL_RIPE,
    WEEK,
    question_of,
    strip_garden,
    tall_sowing,
)

_LOW, _TALL = 0, 1


class _Planned:
    """A plan filled by hand."""

    def __init__(self, question: Question) -> None:
        self.question = question
        self.plan = WorkingPlan(question.offers, question.beds, question.worth)

    def place(
        self,
        crop: int,
        inches: tuple[int, int],
        plants: int,
        *,
        sown: date = SOWN,
        until: date = RIPE,
        host: int | None = None,
    ) -> Placed:
        """So many plants from an inch to another, on ground of their own or under a host."""
        piece = Piece(0, inches[0] * INCH_UM, inches[1] * INCH_UM, plants)
        if host is not None:
            piece = piece._replace(host=host)
        offer = self._offer(crop, sown, until)
        return self.plan.place(crop, offer, (piece,), 1.0 if host is None else 0.6)

    def _offer(self, crop: int, sown: date, until: date) -> int:
        offers = self.plan.offers[crop]
        rest = timedelta(days=self.question.garden.wish.turnover_days)
        (found,) = (
            number
            for number in range(len(offers))
            if offers.candidates[int(offers.starts[number])].course.start_on == sown
            and offers.leaves[number] == (until + rest).toordinal()
        )
        return found

    def made(self) -> tuple[Sowing, ...]:
        garden = self.question.garden
        return made_sowings(
            self.plan,
            garden.beds,
            garden.wish.turnover_days,
            self.question.hosts,
            garden.shared,
            garden.seed,
        )


def _planned(rest: int = 0, standing: tuple[Sowing, ...] = ()) -> _Planned:
    return _Planned(question_of(strip_garden(rest), standing))


@pytest.mark.parametrize("rest", [0, 3])
def test_a_sowing_has_its_days_its_block_and_its_harvest(rest: int) -> None:
    """Four heads are wanted in the week they are ripe; ground rests after they are cleared."""
    planned = _planned(rest)
    planned.place(_LOW, (0, 12), 4)
    (low,) = planned.made()
    assert (low.id, low.crop.name, low.plants) == ("", "low", 4)
    assert (low.method, low.state) == (Method.DIRECT, SowingState.PLANNED)
    assert (low.sow_on, low.set_out_on, low.ripe.likely) == (SOWN, None, RIPE)
    assert low.emerges_on == SOWN + timedelta(days=5)
    assert low.harvest == (HarvestDay(RIPE, 4.0),)
    assert low.clear_on == RIPE
    assert low.blocks == (Block("Strip", 0, 12 * INCH_UM, SOWN, RIPE),)
    assert low.seeds >= low.plants


def test_held_a_week_longer_it_is_cleared_with_its_last_harvest() -> None:
    """Six heads until the tenth: four in the first week, two in the second."""
    planned = _planned()
    planned.place(_LOW, (0, 18), 6, until=RIPE + WEEK)
    (low,) = planned.made()
    assert low.harvest == (HarvestDay(RIPE, 4.0), HarvestDay(RIPE + WEEK, 2.0))
    assert low.clear_on == low.blocks[0].leave_on == RIPE + WEEK


def test_it_is_cleared_no_later_for_a_week_that_another_feeds() -> None:
    """Of six that may stand a week longer four are eaten now, and two are beyond all wants."""
    planned = _planned()
    planned.place(_LOW, (0, 12), 4, sown=SOWN + WEEK, until=RIPE + WEEK)
    planned.place(_LOW, (12, 24), 4, until=RIPE + WEEK)
    first, second = sorted(planned.made(), key=lambda one: one.sow_on)
    assert (first.clear_on, first.harvest) == (RIPE, (HarvestDay(RIPE, 4.0),))
    assert second.harvest == (HarvestDay(RIPE + WEEK, 4.0),)


def test_what_is_sown_and_cleared_on_the_same_days_is_one_sowing() -> None:
    planned = _planned()
    planned.place(_LOW, (0, 6), 2)
    planned.place(_LOW, (30, 36), 2)
    (low,) = planned.made()
    assert low.plants == 4
    assert [(one.from_um, one.to_um) for one in low.blocks] == [
        (0, 6 * INCH_UM),
        (30 * INCH_UM, 36 * INCH_UM),
    ]
    assert low.harvest == (HarvestDay(RIPE, 4.0),)
    assert "4 plants give 4 heads" in low.why[-1]


def test_a_guest_is_a_sowing_of_its_own_under_its_host_s_name() -> None:
    """Two low ones beneath a tall one give six tenths of two heads."""
    planned = _planned()
    host = planned.place(_TALL, (48, 60), 1, until=TALL_RIPE)
    planned.place(_LOW, (0, 6), 2)
    planned.place(_LOW, (48, 54), 2, host=host.number)
    named, _ = name_sowings(planned.made(), (), {})
    by_name = {one.id: one for one in named}
    assert set(by_name) == {"low 1", "low 2", "tall 1"}
    (guest,) = [one for one in named if one.blocks[0].under]
    assert guest.blocks[0].under == "tall 1"
    assert guest.plants == 2
    assert guest.harvest[0].amount == pytest.approx(1.2)
    assert "beneath tall" in guest.why[-1]
    assert "60%" in guest.why[-1]


def test_a_host_stands_until_its_guests_were_promised() -> None:
    """Wanted in four weeks, its one head is cut in the first; it stays for two weeks of guests."""
    for guests, until in ((False, TALL_RIPE), (True, TALL_RIPE + WEEK)):
        planned = _planned()
        host = planned.place(_TALL, (48, 60), 1, until=TALL_RIPE + WEEK)
        if guests:
            planned.place(_LOW, (48, 54), 2, host=host.number)
        (tall,) = [one for one in planned.made() if one.crop.name == "tall"]
        assert tall.clear_on == tall.blocks[0].leave_on == until
        assert tall.harvest == (HarvestDay(TALL_RIPE, 1.0),)


def test_a_guest_of_what_stands_already_is_told_its_name() -> None:
    """The tall one began before: it is the first of those standing."""
    planned = _planned(standing=(tall_sowing(),))
    (number,) = planned.question.hosts
    planned.place(_LOW, (48, 54), 2, host=number)
    (guest,) = planned.made()
    assert guest.blocks[0].under == "tall 1"
    assert "beneath tall" in guest.why[-1]


def test_the_latest_start_for_its_week_is_told_as_the_latest() -> None:
    planned = _planned()
    planned.place(_LOW, (0, 12), 4)
    (low,) = planned.made()
    assert "the latest such start that has it ready for its week" in low.why[0]


def test_a_guest_costs_the_work_of_two_sowings_and_no_ground() -> None:
    """Eight weeks of four low heads and four of one tall one: a low head is worth 1000 / 2 / 32."""
    planned = _planned()
    host = planned.place(_TALL, (48, 60), 1, until=TALL_RIPE)
    before = planned.plan.cost
    planned.place(_LOW, (48, 54), 2, host=host.number)
    work, fed = 2 * 0.015 * 1000 / 12, 2 * 0.6 * 1000 / 2 / 32
    assert planned.plan.cost - before == pytest.approx(work - fed)


def test_a_host_taken_out_takes_its_guests_with_it() -> None:
    planned = _planned()
    host = planned.place(_TALL, (48, 60), 1, until=TALL_RIPE)
    guest = planned.place(_LOW, (48, 54), 2, host=host.number)
    alone = planned.place(_LOW, (0, 6), 2)
    assert planned.plan.has_guests(host)
    assert not planned.plan.has_guests(guest)
    assert planned.plan.take_out(host) == [guest, host]
    assert planned.plan.all_placed() == [alone]
