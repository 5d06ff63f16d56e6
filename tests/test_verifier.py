"""The verifier can fail: a good season is broken in one place, and the right rule says so."""

import copy
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import pairwise

import pytest

from planner.season import make_season, record_of
from planner.writing import write_harvest_sheet
from tests.plan_text import garden_of
from tests.season_runs import SMALL_PLAN
from tests.verifier import RULES, Record, broken_rules_of

_FIRST_DAY = date(2027, 3, 1)
# One bed, part of it kept, and cabbages that leave radishes no ground of their own for long.
_SHARING_PLAN = """
plan = 1

[site]
latitude = 45.5
last_spring_freeze = "04-20"
first_fall_freeze = "10-15"

[season]
from = 2027-03-01
to = 2027-11-30
garden_days = ["Wed", "Sat"]
turnover_days = 2
share_ground = true

[[bed]]
name = "South"
length = "8 ft"
width = "4 ft"
soil_depth = "18 in"
sun = "full"

[[kept]]
bed = "South"
what = "rhubarb"
from = "0 ft"
to = "2 ft"

[[target]]
crop = "cabbage"
once = "24 heads"
by = 2027-07-16
priority = 3

[[target]]
crop = "radish"
each_week = "20 roots"
from = 2027-05-10
to = 2027-06-20

[[target]]
crop = "radish"
each_week = "20 roots"
from = 2027-09-13
to = 2027-10-10
"""


@dataclass
class Case:
    """A plan and the season made of it, to be damaged."""

    garden: str
    record: Record
    harvest: str

    def broken(self) -> set[str]:
        """The rules the verifier finds broken."""
        said = broken_rules_of(self.garden, "", self.record, self.harvest)
        return {words.split(":")[0] for words in said}

    @property
    def sowings(self) -> list[Record]:
        """The sowings of the season."""
        sowings: list[Record] = self.record["sowings"]
        return sowings

    def first(self, method: str = "direct", *, guest: bool = False) -> Record:
        """The first sowing of a method, on ground of its own or under a host."""
        return next(
            one
            for one in self.sowings
            if one["method"] == method and bool(one["blocks"][0]["under"]) is guest
        )

    def guest_and_host(self) -> tuple[Record, Record]:
        """A guest and the sowing it stands under."""
        guest = self.first(guest=True)
        under = guest["blocks"][0]["under"]
        return guest, next(one for one in self.sowings if one["id"] == under)

    def move(self, sowing: Record, kind: str, day: str) -> None:
        """Put a task of a sowing on another day, the tasks in order."""
        for task in self.record["tasks"]:
            if task["sowing"] == sowing["id"] and task["kind"] == kind:
                task["on"] = day
        self.record["tasks"].sort(key=lambda one: str(one["on"]))

    def clear(self, sowing: Record, day: str) -> None:
        """Let a sowing leave its ground on another day, wherever that is said."""
        sowing["clear_on"] = day
        for block in sowing["blocks"]:
            block["leave_on"] = day
        self.move(sowing, "clear", day)

    def rewrite(self, old: str, new: str) -> None:
        """Another plan for the same season."""
        assert old in self.garden, old
        self.garden = self.garden.replace(old, new)


def _case(garden: str) -> Case:
    season = make_season(garden_of(garden), _FIRST_DAY, None, 0)
    return Case(garden, record_of(season), write_harvest_sheet(season).decode())


@pytest.fixture(scope="module")
def small() -> Case:
    return _case(SMALL_PLAN)


@pytest.fixture(scope="module")
def sharing() -> Case:
    return _case(_SHARING_PLAN)


# Ground.


def _longer_than_its_bed(case: Case) -> None:
    case.first()["blocks"][0]["to_m"] = 9.0


def _in_a_bed_nobody_has(case: Case) -> None:
    case.first()["blocks"][0]["bed"] = "North"


def _on_taken_ground(case: Case) -> None:
    blocks = [block for one in case.sowings for block in one["blocks"]]
    one, other = next(
        (one, other)
        for one in blocks
        for other in blocks
        if one is not other
        and not one["under"]
        and not other["under"]
        and one["bed"] == other["bed"]
        and one["enter_on"] < other["leave_on"]
        and other["enter_on"] < one["leave_on"]
    )
    one["from_m"], one["to_m"] = other["from_m"], other["to_m"]


def _never_leaving(case: Case) -> None:
    for one in case.sowings:
        case.clear(one, "2027-11-30")


def _before_the_ground_has_rested(case: Case) -> None:
    case.rewrite("turnover_days = 2", "turnover_days = 200")


def _left_before_it_is_cleared(case: Case) -> None:
    block = case.first()["blocks"][0]
    block["leave_on"] = str(date.fromisoformat(block["leave_on"]) - timedelta(days=1))


def _more_plants_than_room(case: Case) -> None:
    sowing = case.first()
    sowing["plants"] += 400
    sowing["seeds"] += 400


def _in_too_little_sun(case: Case) -> None:
    block = case.first("indoors")["blocks"][0]
    block["bed"], block["from_m"], block["to_m"] = "Barrel", 0.0, 3.0


def _in_too_little_soil(case: Case) -> None:
    case.rewrite('soil_depth = "18 in"', 'soil_depth = "4 in"')


def _on_kept_ground(case: Case) -> None:
    block = case.first()["blocks"][0]
    length_m = block["to_m"] - block["from_m"]
    block["from_m"], block["to_m"] = 0.0, length_m


def _on_ground_kept_until_yesterday(case: Case) -> None:
    first = min(date.fromisoformat(one["blocks"][0]["enter_on"]) for one in case.sowings)
    case.rewrite('from = "0 ft"\nto = "2 ft"', f"until = {first - timedelta(days=1)}")


def _on_ground_kept_from_tomorrow(case: Case) -> None:
    last = max(date.fromisoformat(one["clear_on"]) for one in case.sowings)
    case.rewrite('from = "0 ft"\nto = "2 ft"', f"since = {last + timedelta(days=1)}")


def _in_ever_so_many_blocks(case: Case) -> None:
    guests = (one for one in case.sowings if one["blocks"][0]["under"])
    guest = max(guests, key=lambda one: int(one["plants"]))
    (block,) = guest["blocks"]
    row_m = 3 * 0.0254
    rows = round((block["to_m"] - block["from_m"]) / row_m)
    ends = [block["from_m"] + row_m * number for number in range(rows)] + [block["to_m"]]
    guest["blocks"] = [{**block, "from_m": from_m, "to_m": to_m} for from_m, to_m in pairwise(ends)]
    case.clear(guest, guest["clear_on"])


# Guests and hosts.


def _a_guest_when_the_canopy_has_closed(case: Case) -> None:
    guest, host = case.guest_and_host()
    case.clear(guest, host["clear_on"])


def _a_guest_before_its_host(case: Case) -> None:
    guest, host = case.guest_and_host()
    day = str(date.fromisoformat(host["set_out_on"]) - timedelta(days=3))
    guest["sow_on"] = guest["blocks"][0]["enter_on"] = day
    case.move(guest, "sow", day)


def _a_guest_beyond_its_host(case: Case) -> None:
    guest, host = case.guest_and_host()
    guest["blocks"][0]["from_m"] = host["blocks"][0]["from_m"] - 0.01


def _a_guest_of_nobody(case: Case) -> None:
    case.first(guest=True)["blocks"][0]["under"] = "cabbage 9"


def _a_guest_of_another_crop(case: Case) -> None:
    case.first(guest=True)["blocks"][0]["under"] = case.first()["id"]


def _a_guest_where_none_is_wished(case: Case) -> None:
    case.rewrite("share_ground = true", "share_ground = false")


def _guests_as_close_as_on_their_own_ground(case: Case) -> None:
    guest, _ = case.guest_and_host()
    (block,) = guest["blocks"]
    rows = round((block["to_m"] - block["from_m"]) / (3 * 0.0254))
    guest["plants"] = rows * 8 + 1
    guest["seeds"] = rows * 16


def _a_guest_that_gives_like_a_crop_of_its_own(case: Case) -> None:
    guest, _ = case.guest_and_host()
    more = guest["plants"] - sum(one["amount"] for one in guest["harvest_days"])
    guest["harvest_days"][0]["amount"] += more
    guest["harvest"][0]["amount"] += more


def _two_guests_on_one_stretch(case: Case) -> None:
    guest, _ = case.guest_and_host()
    other = copy.deepcopy(guest)
    other["id"] = "radish 1"
    case.sowings.append(other)


def _a_guest_that_is_none(case: Case) -> None:
    case.first(guest=True)["blocks"][0]["under"] = None


# Time.


def _ripe_before_it_is_sown(case: Case) -> None:
    case.first()["first_pick_on"]["early"] = "2027-03-01"


def _picked_before_it_is_ripe(case: Case) -> None:
    sowing = case.first()
    sowing["harvest_days"][0]["on"] = sowing["sow_on"]


def _sown_on_a_sunday(case: Case) -> None:
    next(one for one in case.record["tasks"] if one["kind"] == "sow")["on"] = "2027-06-06"


def _picked_while_away(case: Case) -> None:
    next(one for one in case.record["tasks"] if one["kind"] == "pick")["on"] = "2027-07-20"


def _sown_in_the_past(case: Case) -> None:
    case.record["as_of"] = "2027-06-01"


def _begun_before_it_is_begun(case: Case) -> None:
    case.first()["state"] = "begun"


def _tomatoes_in_the_snow(case: Case) -> None:
    sowing = case.first("indoors")
    sowing["set_out_on"] = sowing["blocks"][0]["enter_on"] = "2027-03-10"
    case.move(sowing, "set out", "2027-03-10")


def _a_later_spring(case: Case) -> None:
    case.rewrite('last_spring_freeze = "04-20"', 'last_spring_freeze = "07-20"')


# Harvest.


def _harvest_out_of_nothing(case: Case) -> None:
    case.first()["harvest"][0]["amount"] += 1


def _more_than_plants_can_give(case: Case) -> None:
    sowing = case.first()
    sowing["harvest"][0]["amount"] += 50
    sowing["harvest_days"][0]["amount"] += 50


def _fewer_seeds_than_plants(case: Case) -> None:
    sowing = case.first()
    sowing["seeds"] = sowing["plants"] - 1


def _a_sowing_forgotten(case: Case) -> None:
    case.sowings.remove(case.first())


def _want_left_unsaid(case: Case) -> None:
    case.record["unmet"].clear()


def _more_unmet_than_is_missing(case: Case) -> None:
    case.record["unmet"][0]["amount"] += 1


def _unmet_without_a_reason(case: Case) -> None:
    case.record["unmet"][0]["why"] = ""


def _a_want_that_was_changed(case: Case) -> None:
    case.rewrite('"20 roots"', '"21 roots"')


def _a_week_that_is_not_wanted(case: Case) -> None:
    case.rewrite("to = 2027-06-20", "to = 2027-06-13")


# Measures.


def _fill_too_good(case: Case) -> None:
    case.record["measures"]["fill"] += 0.002


def _fill_without_priorities(case: Case) -> None:
    case.rewrite("priority = 3", "priority = 1")


def _fill_beyond_the_bound(case: Case) -> None:
    measures = case.record["measures"]
    measures["bound"], measures["gap"] = measures["fill"] - 0.01, -0.01


def _gap_too_small(case: Case) -> None:
    case.record["measures"]["gap"] -= 0.01


def _more_weeks_met(case: Case) -> None:
    case.record["measures"]["weeks_met"] += 0.05


def _less_surplus(case: Case) -> None:
    case.record["measures"]["surplus"] += 0.01


# Names and tasks.


def _a_name_twice(case: Case) -> None:
    case.sowings[1]["id"] = case.sowings[0]["id"]


def _a_name_beyond_those_given(case: Case) -> None:
    case.record["names_given"]["radish"] = 0


def _a_name_of_another_crop(case: Case) -> None:
    case.first()["id"] = "parsnip 1"


def _a_task_for_nobody(case: Case) -> None:
    case.record["tasks"][0]["sowing"] = "radish 99"


def _a_task_twice(case: Case) -> None:
    case.record["tasks"].append(case.record["tasks"][-1])


def _a_task_forgotten(case: Case) -> None:
    case.record["tasks"].pop()


def _tasks_out_of_order(case: Case) -> None:
    case.record["tasks"].reverse()


def _cleared_before_it_is_sown(case: Case) -> None:
    next(one for one in case.record["tasks"] if one["kind"] == "clear")["on"] = "2027-03-03"


def _hardened_off_for_a_month(case: Case) -> None:
    sowing = case.first("indoors")
    day = date.fromisoformat(sowing["set_out_on"]) - timedelta(days=28)
    case.move(sowing, "harden off", str(max(day, date.fromisoformat(sowing["sow_on"]))))


Damage = Callable[[Case], None]

# Damage that breaks one rule and no other.
_ONE_RULE: tuple[tuple[Damage, str], ...] = (
    (_in_too_little_soil, "soil and sun are enough"),
    (_before_the_ground_has_rested, "blocks do not meet"),
    (_left_before_it_is_cleared, "blocks last from entering to clearing"),
    (_on_kept_ground, "kept ground is left alone"),
    (_on_ground_kept_until_yesterday, "kept ground is left alone"),
    (_on_ground_kept_from_tomorrow, "kept ground is left alone"),
    (_in_ever_so_many_blocks, "a sowing stands in few blocks"),
    (_more_plants_than_room, "blocks have room for their plants"),
    (_a_guest_when_the_canopy_has_closed, "guests stand under their hosts"),
    (_a_guest_before_its_host, "guests stand under their hosts"),
    (_a_guest_where_none_is_wished, "guests stand under their hosts"),
    (_guests_as_close_as_on_their_own_ground, "blocks have room for their plants"),
    (_a_guest_that_is_none, "blocks do not meet"),
    (_fewer_seeds_than_plants, "yield bounds harvest"),
    (_more_unmet_than_is_missing, "all that is wanted is accounted for"),
    (_unmet_without_a_reason, "all that is wanted is accounted for"),
    (_want_left_unsaid, "all that is wanted is accounted for"),
    (_fill_without_priorities, "measures follow their definitions"),
    (_fill_too_good, "measures follow their definitions"),
    (_fill_beyond_the_bound, "measures follow their definitions"),
    (_gap_too_small, "measures follow their definitions"),
    (_more_weeks_met, "measures follow their definitions"),
    (_less_surplus, "measures follow their definitions"),
    (_a_name_beyond_those_given, "names are given once"),
    (_a_task_twice, "every sowing has its tasks"),
    (_a_task_forgotten, "every sowing has its tasks"),
    (_tasks_out_of_order, "every sowing has its tasks"),
    (_hardened_off_for_a_month, "tasks fall in the life of their sowing"),
)
# Damage that cannot but break others as well.
_AMONG_OTHERS: tuple[tuple[Damage, str], ...] = (
    (_longer_than_its_bed, "blocks lie inside their bed"),
    (_in_a_bed_nobody_has, "blocks lie inside their bed"),
    (_on_taken_ground, "blocks do not meet"),
    (_never_leaving, "blocks do not meet"),
    (_a_guest_beyond_its_host, "guests stand under their hosts"),
    (_a_guest_of_nobody, "guests stand under their hosts"),
    (_a_guest_of_another_crop, "guests stand under their hosts"),
    (_a_guest_that_gives_like_a_crop_of_its_own, "yield bounds harvest"),
    (_two_guests_on_one_stretch, "blocks do not meet"),
    (_ripe_before_it_is_sown, "dates are in order"),
    (_picked_before_it_is_ripe, "dates are in order"),
    (_sown_on_a_sunday, "work falls on garden days"),
    (_sown_in_the_past, "nothing is planned for the past"),
    (_begun_before_it_is_begun, "nothing is planned for the past"),
    (_harvest_out_of_nothing, "harvest adds up"),
    (_more_than_plants_can_give, "yield bounds harvest"),
    (_a_sowing_forgotten, "what is expected is harvested"),
    (_a_want_that_was_changed, "what is wanted is as written"),
    (_a_week_that_is_not_wanted, "what is wanted is as written"),
    (_a_name_twice, "names are given once"),
    (_a_name_of_another_crop, "names are given once"),
    (_a_task_for_nobody, "every sowing has its tasks"),
    (_cleared_before_it_is_sown, "tasks fall in the life of their sowing"),
)
# Damage to a season with a barrel in part sun, days away and tomatoes.
_TO_THE_SMALL_PLAN: tuple[tuple[Damage, str], ...] = (
    (_in_too_little_sun, "soil and sun are enough"),
    (_picked_while_away, "work falls on garden days"),
    (_tomatoes_in_the_snow, "tender crops stand out of frost"),
    (_a_later_spring, "tender crops stand out of frost"),
)


def _ids(one: object) -> str:
    return str(getattr(one, "__name__", one)).strip("_")


def test_the_seasons_are_good(small: Case, sharing: Case) -> None:
    assert small.broken() == set()
    assert sharing.broken() == set()


@pytest.mark.parametrize(("damage", "rule"), _ONE_RULE, ids=_ids)
def test_one_thing_broken_is_found_by_one_rule(damage: Damage, rule: str, sharing: Case) -> None:
    case = copy.deepcopy(sharing)
    damage(case)
    assert case.broken() == {rule}


@pytest.mark.parametrize(("damage", "rule"), _AMONG_OTHERS, ids=_ids)
def test_one_thing_broken_is_found_by_its_rule(damage: Damage, rule: str, sharing: Case) -> None:
    case = copy.deepcopy(sharing)
    damage(case)
    assert rule in case.broken()


@pytest.mark.parametrize(("damage", "rule"), _TO_THE_SMALL_PLAN, ids=_ids)
def test_days_and_light_are_checked(damage: Damage, rule: str, small: Case) -> None:
    case = copy.deepcopy(small)
    damage(case)
    assert rule in case.broken()


def test_what_is_expected_is_what_is_harvested(sharing: Case) -> None:
    case = copy.deepcopy(sharing)
    row = next(row for row in case.harvest.splitlines() if ",radish,20,20," in row)
    case.harvest = case.harvest.replace(row, row.replace(",20,20,", ",20,19,"))
    assert "what is expected is harvested" in case.broken()


def test_every_rule_has_a_season_that_breaks_it() -> None:
    found = {rule for _, rule in (*_ONE_RULE, *_AMONG_OTHERS, *_TO_THE_SMALL_PLAN)}
    assert found == set(RULES)
