"""What any grower of successions expects of a schedule.

Every statement in this file is common practice, no source, unless it says otherwise.
"""

from collections import defaultdict
from datetime import date, timedelta
from itertools import pairwise

import pytest

from planner.climate import Climate
from planner.garden import Bed, Garden
from planner.scheduling import Block, Method, Sowing, Unmet, UnmetKind
from planner.scheduling.starts.crop_starts import crop_candidates
from planner.season import Season
from planner.tasks import TaskKind
from planner.terms import Week, days_between, read_quantity, week_of
from tests.plan_text import garden_of, own_crop, problem_kinds_of, season_of

_SITE = """
    plan = 1
    [site]
    latitude = 40.0
    last_spring_freeze = "04-01"
    first_fall_freeze = "11-01"
"""
_SATURDAYS = 'garden_days = ["Sat"]'


def _season_part(wishes: str = "", last: str = "2027-12-31") -> str:
    return f"""
        [season]
        from = 2027-02-01
        to = {last}
        {wishes}
    """


def _bed(size: str, name: str = "Bed", depth: str = "15 in", sun: str = "full") -> str:
    return f"""
        [[bed]]
        name = "{name}"
        {size}
        soil_depth = "{depth}"
        sun = "{sun}"
    """


def _want(crop: str, amount: str, first: str, last: str) -> str:
    return f"""
        [[target]]
        crop = "{crop}"
        each_week = "{amount}"
        from = {first}
        to = {last}
    """


_LARGE = _bed('length = "24 ft"\nwidth = "4 ft"')


def _plan(*parts: str, wishes: str = "", last: str = "2027-12-31") -> str:
    return "\n".join((_SITE, _season_part(wishes, last), *parts))


def _supply(season: Season, crop: str) -> dict[Week, float]:
    return next(one.supply.expected for one in season.outlooks if one.crop.name == crop)


def _in_order(season: Season) -> list[Sowing]:
    return sorted(season.sowings, key=lambda one: (one.ripe.likely, one.sow_on))


def _bed_of(garden: Garden, name: str = "Bed") -> Bed:
    return next(bed for bed in garden.beds if bed.name == name)


def _blocks(season: Season) -> list[Block]:
    return [block for sowing in season.sowings for block in sowing.blocks]


def _held(blocks: list[Block], day: date) -> list[Block]:
    return [block for block in blocks if block.enter_on <= day < block.leave_on]


# --- a one-month root each week (common practice, no source) ------------------------------------

_MONTH_ROOT = own_crop(
    "month root",
    days_from_sowing="28 days",
    hold_days="7 days",
    spacing="3 in",
    **{"yield": "1 roots"},
)
_ROOTS_EACH_WEEK = _want("month root", "25 roots", "2027-05-03", "2027-08-22")
# Five to a row: 25 roots take five rows of 3 in, and four such blocks make the bed.
_FOUR_BLOCKS = _bed('length = "60 in"\nwidth = "15 in"')


@pytest.fixture(scope="module")
def month_roots() -> Season:
    plan = _plan(_FOUR_BLOCKS, _ROOTS_EACH_WEEK, wishes=_SATURDAYS)
    return season_of(plan, _MONTH_ROOT)


def test_a_one_month_root_comes_every_week(month_roots: Season) -> None:
    assert month_roots.unmet == ()
    (outlook,) = month_roots.outlooks
    assert len(outlook.wants) == 16
    for week in outlook.wants:
        assert outlook.supply.expected[week] == 25


def test_it_takes_four_equal_blocks_sown_a_week_apart(month_roots: Season) -> None:
    first_four = _in_order(month_roots)[:4]
    for before, after in pairwise(first_four):
        assert after.sow_on - before.sow_on == timedelta(days=7)
    blocks = [block for sowing in first_four for block in sowing.blocks]
    assert len(blocks) == 4
    fifteen_inches = 15 * 25_400
    assert {block.to_um - block.from_um for block in blocks} == {fifteen_inches}
    assert sorted(block.from_um for block in blocks) == [n * fifteen_inches for n in range(4)]


def test_in_the_fifth_week_the_first_block_is_pulled_and_sown_again(month_roots: Season) -> None:
    in_order = _in_order(month_roots)
    for before, after in zip(in_order, in_order[4:], strict=False):
        (old,), (new,) = before.blocks, after.blocks
        assert (new.bed, new.from_um, new.to_um) == (old.bed, old.from_um, old.to_um)
        assert new.enter_on == old.leave_on == before.harvest[0].day == after.sow_on


def test_four_blocks_of_ground_and_no_more_are_held(month_roots: Season) -> None:
    bed = _bed_of(month_roots.garden)
    for day in days_between(date(2027, 5, 1), date(2027, 7, 30)):
        held = _held(_blocks(month_roots), day)
        assert len(held) == 4
        assert sum(block.to_um - block.from_um for block in held) == bed.line_um


def test_a_bed_one_row_short_feeds_one_row_less() -> None:
    plan = _plan(_bed('length = "57 in"\nwidth = "15 in"'), _ROOTS_EACH_WEEK, wishes=_SATURDAYS)
    season = season_of(plan, _MONTH_ROOT)
    assert {one.reason.kind for one in season.unmet} == {UnmetKind.NO_GROUND}
    assert max(one.amount for one in season.unmet) == 5


def test_clearing_tells_what_follows_the_same_day(month_roots: Season) -> None:
    first, *_, fifth = _in_order(month_roots)[:5]
    clear = next(
        task
        for task in month_roots.tasks
        if task.kind is TaskKind.CLEAR and task.sowing == first.id
    )
    assert clear.on == fifth.sow_on
    assert f"{fifth.id} follows the same day" in clear.text


# --- indoors gains time (common practice, no source) --------------------------------------------


def _thirty_days(method: str) -> Season:
    crops = own_crop(
        "thirty-day green",
        method=method,
        days_from_sowing="30 days",
        weeks_indoors="2 weeks",
        hardiness="tender",
    )
    wanted = _want("thirty-day green", "6 heads", "2027-03-29", "2027-05-30")
    wishes = 'freeze_risk = 0.5\ngarden_days = ["Thu", "Sat"]'
    return season_of(_plan(_LARGE, wanted, wishes=wishes), crops)


def test_thirty_days_from_the_last_frost_on_1_april_is_1_may() -> None:
    first = _in_order(_thirty_days("direct"))[0]
    assert first.sow_on == date(2027, 4, 1)
    assert first.ripe.likely == date(2027, 5, 1)


def test_two_weeks_indoors_gain_two_weeks() -> None:
    first = _in_order(_thirty_days("indoors"))[0]
    assert first.sow_on == date(2027, 3, 18)
    assert first.set_out_on == date(2027, 4, 1)
    assert first.ripe.likely == date(2027, 4, 17)


def test_where_either_will_do_trays_feed_the_weeks_too_early_for_sowing() -> None:
    in_order = _in_order(_thirty_days("either"))
    assert in_order[0].method is Method.INDOORS
    assert in_order[0].ripe.likely == date(2027, 4, 17)
    indoors, direct = (
        [one for one in in_order if one.method is method]
        for method in (Method.INDOORS, Method.DIRECT)
    )
    assert direct[0].sow_on >= date(2027, 4, 1)
    assert indoors[-1].ripe.likely < direct[0].ripe.likely


# --- squares (common practice, no source) -------------------------------------------------------


@pytest.mark.parametrize(
    ("spacing", "plants"), [("3 in", 16), ("4 in", 9), ("6 in", 4), ("12 in", 1)]
)
def test_a_square_foot_carries_sixteen_nine_four_or_one(spacing: str, plants: int) -> None:
    wanted = _want("square crop", "1 heads", "2027-06-01", "2027-06-30")
    crops = own_crop("square crop", days_from_sowing="30 days", spacing=spacing)
    garden = garden_of(_plan(_bed('length = "1 ft"\nwidth = "1 ft"'), wanted), crops)
    bed = _bed_of(garden)
    apart = read_quantity(spacing)
    assert apart is not None
    spacing_um = apart.si * 1e6
    assert bed.plants_in(bed.line_um, spacing_um) == plants
    assert bed.stretch_for(plants, spacing_um) == bed.line_um
    assert bed.stretch_for(plants + 1, spacing_um) > bed.line_um
    assert garden.crops["square crop"].fits(bed)


def test_a_block_of_carrots_three_by_two_feet_holds_a_row_of_24_feet() -> None:
    """Colorado State University Extension, GardenNotes 713 (CSU713): 96 plants 3 in apart."""
    wanted = _want("carrot", "10 roots", "2027-08-01", "2027-08-31")
    bed = _bed_of(garden_of(_plan(_bed('length = "3 ft"\nwidth = "2 ft"'), wanted)))
    assert bed.plants_in(bed.line_um, 3 * 25_400) == 96 == 24 * 12 // 3


# --- several ages in one bed (common practice, no source) ---------------------------------------


def _lettuce(bed: str, last: str, wishes: str = _SATURDAYS) -> Season:
    crops = own_crop(
        "fifty-five-day lettuce", days_from_sowing="55 days", hold_days="5 days", spacing="12 in"
    )
    wanted = _want("fifty-five-day lettuce", "4 heads", "2027-06-07", last)
    season = season_of(_plan(_bed(bed), wanted, wishes=wishes), crops)
    assert season.unmet == ()
    return season


@pytest.fixture(scope="module")
def lettuce() -> Season:
    """Eight rows of four heads, each row standing eight weeks."""
    return _lettuce('length = "8 ft"\nwidth = "4 ft"', "2027-08-22")


def test_lettuce_stands_at_several_ages_on_any_summer_day() -> None:
    season = _lettuce('length = "12 ft"\nwidth = "4 ft"', "2027-10-17")
    for day in days_between(date(2027, 6, 1), date(2027, 8, 21)):
        ages = {one.sow_on for one in season.sowings if _held(list(one.blocks), day)}
        assert len(ages) >= 7, day


def test_a_row_of_lettuce_is_sown_again_the_day_its_heads_are_cut(lettuce: Season) -> None:
    cut_on = {one.harvest[0].day: one.blocks[0] for one in lettuce.sowings}
    later = [one for one in lettuce.sowings if one.sow_on >= min(cut_on)]
    assert later
    for sowing in later:
        old, new = cut_on[sowing.sow_on], sowing.blocks[0]
        assert (old.from_um, old.to_um) == (new.from_um, new.to_um)


# --- spaced by harvest date (common practice, no source) ----------------------------------------


def test_in_fall_sowings_draw_together_while_every_week_is_fed() -> None:
    """Fall growth is slower by about two weeks (VCE-FALL), so equal harvests need unequal gaps."""
    crops = own_crop(
        "forty-day root", days_from_sowing="40 days", hold_days="5 days", **{"yield": "1 roots"}
    )
    wanted = _want("forty-day root", "12 roots", "2027-06-28", "2027-10-31")
    season = season_of(_plan(_LARGE, wanted, wishes=_SATURDAYS), crops)
    assert season.unmet == ()
    assert set(_supply(season, "forty-day root").values()) == {12}
    gaps = {
        after.ripe.likely: (
            (after.sow_on - before.sow_on).days,
            (after.ripe.likely - before.ripe.likely).days,
        )
        for before, after in pairwise(_in_order(season))
    }
    summer = [gap for ripe, gap in gaps.items() if ripe < date(2027, 8, 16)]
    turning = [gap for ripe, gap in gaps.items() if date(2027, 9, 1) < ripe < date(2027, 10, 1)]
    assert set(summer) == {(7, 7)}
    assert turning
    assert all(ripening > sowing for sowing, ripening in turning)


# --- days (common practice, no source) ----------------------------------------------------------

_SUMMER_TABLE = (
    _want("radish", "25 roots", "2027-05-03", "2027-10-10"),
    _want("head lettuce", "4 heads", "2027-05-31", "2027-09-26"),
    _want("leaf lettuce", "16 oz", "2027-05-31", "2027-09-26"),
    _want("bush bean", "2 lb", "2027-07-05", "2027-09-12"),
    _want("tomato", "4 lb", "2027-08-09", "2027-09-26"),
)


def test_ground_rests_between_crops_only_where_that_is_wished(month_roots: Season) -> None:
    plan = _plan(_LARGE, _ROOTS_EACH_WEEK, wishes=f"{_SATURDAYS}\nturnover_days = 7")
    rested = _gaps_between_crops(season_of(plan, _MONTH_ROOT))
    assert rested
    assert min(rested) >= 7
    assert set(_gaps_between_crops(month_roots)) == {0}


def test_ground_rests_between_crops_of_different_kinds_too() -> None:
    season = season_of(_plan(_LARGE, *_SUMMER_TABLE, wishes="turnover_days = 10"))
    rested = _gaps_between_crops(season)
    assert len(rested) > 10
    assert min(rested) >= 10


def _gaps_between_crops(season: Season) -> list[int]:
    """Days from each block's clearing to the next that enters any of its ground."""
    gaps = []
    for old in _blocks(season):
        following = [
            new.enter_on
            for new in _blocks(season)
            if new.bed == old.bed
            and new.enter_on >= old.leave_on
            and new.from_um < old.to_um
            and old.from_um < new.to_um
        ]
        if following:
            gaps.append((min(following) - old.leave_on).days)
    return gaps


def test_no_two_crops_stand_in_the_same_place(month_roots: Season, lettuce: Season) -> None:
    for season in (month_roots, lettuce):
        blocks = _blocks(season)
        for number, one in enumerate(blocks):
            for other in blocks[number + 1 :]:
                apart = (
                    one.bed != other.bed
                    or one.to_um <= other.from_um
                    or other.to_um <= one.from_um
                    or one.leave_on <= other.enter_on
                    or other.leave_on <= one.enter_on
                )
                assert apart, (one, other)


@pytest.mark.parametrize("length", ["24 ft", "80 ft"])
def test_every_task_falls_on_a_garden_day(length: str) -> None:
    """Each of these crops stands ready on some Wednesday or Saturday, however crowded the bed."""
    bed = _bed(f'length = "{length}"\nwidth = "4 ft"')
    season = season_of(_plan(bed, *_SUMMER_TABLE, wishes='garden_days = ["Wed", "Sat"]'))
    off = [task for task in season.tasks if task.on.weekday() not in {2, 5}]
    assert [(task.kind.value, task.sowing, task.on) for task in off] == []


def test_nothing_is_to_do_while_nobody_is_there() -> None:
    wishes = 'garden_days = ["Wed", "Sat"]\naway = [{ from = 2027-07-03, to = 2027-07-16 }]'
    season = season_of(_plan(_LARGE, *_SUMMER_TABLE, wishes=wishes))
    assert season.tasks
    away = [task for task in season.tasks if date(2027, 7, 3) <= task.on <= date(2027, 7, 16)]
    assert [(task.kind.value, task.sowing, task.on) for task in away] == []


# --- beds (common practice, no source) ----------------------------------------------------------


def test_a_round_bed_38_inches_across_holds_what_its_area_holds() -> None:
    wanted = _want("four-inch root", "15 roots", "2027-05-31", "2027-08-22")
    crops = own_crop(
        "four-inch root", days_from_sowing="28 days", spacing="4 in", **{"yield": "1 roots"}
    )
    season = season_of(_plan(_bed('diameter = "38 in"'), wanted, wishes=_SATURDAYS), crops)
    bed = _bed_of(season.garden)
    area_in2 = 3.14159265 * 19**2
    assert bed.area_m2 == pytest.approx(area_in2 * 0.0254**2)
    assert bed.plants_in(bed.line_um, 4 * 25_400) == int(area_in2 / 16) == 70
    # Four ages of fifteen take sixty places of seventy.
    assert season.unmet == ()
    for day in days_between(date(2027, 5, 1), date(2027, 8, 31)):
        standing = sum(one.plants for one in season.sowings if _held(list(one.blocks), day))
        assert standing * 16 <= area_in2
    assert all("rim" in task.place for task in season.tasks)


def _beds_used(*parts: str) -> dict[str, set[str]]:
    """The beds in which each crop stands."""
    beds: dict[str, set[str]] = defaultdict(set)
    for sowing in season_of(_plan(*parts)).sowings:
        beds[sowing.crop.name] |= {block.bed for block in sowing.blocks}
    return beds


_EIGHT_BY_FOUR = 'length = "8 ft"\nwidth = "4 ft"'
_RADISHES_IN_SPRING = _want("radish", "25 roots", "2027-05-03", "2027-06-27")


def test_a_deep_root_goes_to_deep_soil_and_a_sun_lover_to_the_sun() -> None:
    beds = _beds_used(
        _bed(_EIGHT_BY_FOUR, "Shallow", depth="6 in"),
        _bed(_EIGHT_BY_FOUR, "Shady", depth="18 in", sun="part"),
        _bed(_EIGHT_BY_FOUR, "Deep and bright", depth="18 in"),
        _want("carrot", "20 roots", "2027-07-05", "2027-08-01"),
        _want("tomato", "4 lb", "2027-08-09", "2027-09-05"),
    )
    assert beds == {"carrot": {"Deep and bright"}, "tomato": {"Deep and bright"}}


def test_a_crop_that_bears_shade_leaves_the_sun_to_others() -> None:
    beds = _beds_used(
        _bed(_EIGHT_BY_FOUR, "Bright"),
        _bed(_EIGHT_BY_FOUR, "Shady", sun="part"),
        _RADISHES_IN_SPRING,
    )
    assert beds == {"radish": {"Shady"}}


def test_a_shallow_root_leaves_deep_soil_to_others() -> None:
    beds = _beds_used(
        _bed(_EIGHT_BY_FOUR, "Deep", depth="18 in"),
        _bed(_EIGHT_BY_FOUR, "Shallow", depth="8 in"),
        _RADISHES_IN_SPRING,
    )
    assert beds == {"radish": {"Shallow"}}


@pytest.mark.parametrize(
    ("depth", "sun"), [("6 in", "full"), ("18 in", "part"), ("18 in", "shade")]
)
def test_a_crop_that_no_bed_suits_is_told_at_once(depth: str, sun: str) -> None:
    plan = _plan(
        _bed('length = "8 ft"\nwidth = "4 ft"', depth=depth, sun=sun),
        _want("tomato", "4 lb", "2027-08-09", "2027-09-05"),
    )
    assert problem_kinds_of(plan) == ["no-bed-fits"]


# --- habits of harvest (common practice, no source) ---------------------------------------------


def test_a_crop_lifted_once_feeds_later_weeks_from_the_store() -> None:
    crops = own_crop(
        "store root",
        habit="store",
        days_from_sowing="90 days",
        hold_days="14 days",
        store_days="90 days",
        **{"yield": "0.5 lb"},
    )
    wanted = _want("store root", "5 lb", "2027-08-30", "2027-11-14")
    season = season_of(_plan(_LARGE, wanted, wishes=_SATURDAYS), crops)
    (sowing,) = season.sowings
    (lifted,) = sowing.harvest
    assert week_of(lifted.day) == Week(2027, 35)
    assert lifted.amount == 55
    assert sowing.plants == 110
    assert season.unmet == ()
    supply = _supply(season, "store root")
    assert [supply[week] for week in Week(2027, 35).until(Week(2027, 45))] == [5] * 11


def test_cut_leaves_come_again() -> None:
    crops = own_crop(
        "cut green",
        habit="cut",
        days_from_sowing="35 days",
        cuts="3 cuts",
        regrow_days="14 days",
        **{"yield": "2 oz"},
    )
    wanted = _want("cut green", "20 oz", "2027-06-07", "2027-08-01")
    season = season_of(_plan(_LARGE, wanted, wishes=_SATURDAYS), crops)
    assert season.unmet == ()
    assert len(season.sowings) == 4  # eight weeks, each sowing cut up to three times
    for sowing in season.sowings:
        days = [taken.day for taken in sowing.harvest]
        assert len(days) <= 3
        assert all((after - before).days == 14 for before, after in pairwise(days))
        assert sowing.clear_on == days[-1]
        for taken in sowing.harvest:
            assert taken.amount == pytest.approx(2 * sowing.plants)


def test_pods_are_picked_over_weeks() -> None:
    crops = own_crop(
        "three-week bean",
        habit="pick",
        days_from_sowing="56 days",
        picking_days="21 days",
        hardiness="tender",
        autumn_tolerance="none",
        **{"yield": "0.21 lb"},
    )
    wanted = _want("three-week bean", "2 lb", "2027-07-05", "2027-07-25")
    season = season_of(_plan(_LARGE, wanted), crops)
    assert all(one.amount < 0.2 for one in season.unmet)
    (sowing,) = season.sowings
    assert sowing.ripe.likely in Week(2027, 27).days
    assert [week_of(taken.day) for taken in sowing.harvest] == list(
        Week(2027, 27).until(Week(2027, 29))
    )
    _, second, third = (taken.amount for taken in sowing.harvest)
    assert second > third >= 2  # less and less, and still enough in the last week


def test_pods_ripe_before_a_garden_day_are_picked_on_it() -> None:
    """Ripe from a Sunday on and picked on Saturdays: none of the three weeks' pods is lost."""
    crops = own_crop(
        "three-week bean",
        habit="pick",
        days_from_sowing="57 days",
        picking_days="21 days",
        hardiness="tender",
        autumn_tolerance="none",
        **{"yield": "0.21 lb"},
    )
    wanted = _want("three-week bean", "2 lb", "2027-07-05", "2027-07-25")
    garden = garden_of(_plan(_LARGE, wanted, wishes=_SATURDAYS), crops)
    (found,) = crop_candidates(garden, Climate(garden.site), garden.wish.first)
    (sunday,) = [one for one in found.candidates if one.course.ripe.likely == date(2027, 7, 4)]
    assert [day.weekday() for day in sunday.days.values()] == [5, 5, 5]
    assert sum(sunday.flow.values()) == pytest.approx(0.21)


# --- unmet wishes (common practice, no source) --------------------------------------------------


def _unmet(plan: str, crops: str = "") -> tuple[Unmet, ...]:
    unmet = season_of(plan, crops).unmet
    assert unmet
    for one in unmet:
        assert one.amount > 0
        assert one.reason.why.endswith(".")
        assert one.reason.remedy.endswith(".")
    return unmet


def test_radishes_in_february_are_too_early() -> None:
    unmet = _unmet(_plan(_LARGE, _want("radish", "10 roots", "2027-02-15", "2027-05-30")))
    assert {one.reason.kind for one in unmet} == {UnmetKind.TOO_EARLY}
    assert unmet[0].week == Week(2027, 7)
    # Sown two weeks before the last freeze, and 25 days to maturity.
    assert unmet[-1].week < week_of(date(2027, 4, 12)) == unmet[-1].week.after(1)
    assert "2 weeks before the average last freeze" in unmet[0].reason.why


def test_tomatoes_in_december_are_too_late() -> None:
    unmet = _unmet(_plan(_LARGE, _want("tomato", "2 lb", "2027-09-06", "2027-12-05")))
    late = [one for one in unmet if one.reason.kind is UnmetKind.TOO_LATE]
    assert late[-1].week == Week(2027, 48)
    assert all(one.week.monday > date(2027, 10, 10) for one in late)
    assert "frozen" in late[-1].reason.why


def test_weeks_away_are_unmet_because_nobody_is_there() -> None:
    wishes = "away = [{ from = 2027-06-28, to = 2027-07-11 }]"
    radish = _want("radish", "10 roots", "2027-05-31", "2027-08-01")
    unmet = _unmet(_plan(_LARGE, radish, wishes=wishes))
    assert [one.week for one in unmet] == [Week(2027, 26), Week(2027, 27)]
    assert {one.reason.kind for one in unmet} == {UnmetKind.AWAY}
    assert [one.amount for one in unmet] == [10, 10]


def test_without_ground_the_rest_is_unmet_and_its_area_is_told() -> None:
    plan = _plan(
        _bed('length = "2 ft"\nwidth = "1 ft"'),
        _want("month root", "25 roots", "2027-06-28", "2027-07-04"),
    )
    (unmet,) = _unmet(plan, _MONTH_ROOT.replace("3 in", "6 in"))
    assert unmet.reason.kind is UnmetKind.NO_GROUND
    assert unmet.amount == 25 - 8
    # Seventeen plants at 6 in each way are 4.25 square feet.
    assert "4.2 sq ft" in unmet.reason.why or "4.3 sq ft" in unmet.reason.why


def test_a_freeze_risk_of_one_in_two_plants_tender_crops_earlier() -> None:
    wanted = _want("bush bean", "2 lb", "2027-05-31", "2027-07-25")
    early, safe = (
        season_of(_plan(_LARGE, wanted, wishes=f"freeze_risk = {risk}")) for risk in (0.5, 0.1)
    )
    assert min(one.sow_on for one in early.sowings) < min(one.sow_on for one in safe.sowings)
    assert min(one.sow_on for one in safe.sowings) >= date(2027, 4, 16)
