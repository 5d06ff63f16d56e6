"""Published worked examples come out as they were printed.

Two conventions stand side by side and are never mixed: days counted back from where harvest
STARTS (Maryland's broccoli, Washington's peas) and from where it ENDS (Virginia's formula).
"""

from datetime import date, timedelta

import pytest

from planner.climate import Climate
from planner.garden import Crop, Garden
from planner.growth import Conditions, Course, Pace, course_of, outdoor_times
from planner.scheduling import Sowing
from planner.season import make_season
from planner.terms import week_of
from tests.plan_text import garden_of, own_crop


def _plan(
    freezes: tuple[str, str], season: tuple[str, str], target: str, garden_days: str = ""
) -> str:
    return f"""
        plan = 1
        [site]
        latitude = 39.0
        last_spring_freeze = "{freezes[0]}"
        first_fall_freeze = "{freezes[1]}"
        [season]
        from = {season[0]}
        to = {season[1]}
        {f"garden_days = [{garden_days}]" if garden_days else ""}
        [[bed]]
        name = "Long bed"
        length = "40 ft"
        width = "4 ft"
        soil_depth = "18 in"
        sun = "full"
        [[target]]
        {target}
    """


def _course(garden: Garden, start_on: date) -> Course:
    """The course of the garden's first crop, in its first way, started on a day."""
    crop = next(iter(garden.crops.values()))
    climate, wish = Climate(garden.site), garden.wish
    times = outdoor_times(crop, climate, wish.freeze_risk, (wish.first, wish.last))
    conditions = Conditions(times, Pace(climate, wish.first, wish.last))
    course = course_of(crop, crop.ways[0], start_on, conditions)
    assert isinstance(course, Course)
    return course


def _only_sowing(garden: Garden) -> Sowing:
    season = make_season(garden, garden.wish.first, None)
    assert season.unmet == ()
    (sowing,) = season.sowings
    return sowing


# "Time to start fall brassica seedlings", 19 June 2012, Grow It Eat It, the home garden blog of
# the University of Maryland Extension (the publisher is inferred from its text). Harvest wanted
# on 15 October, less 14 days for short days, 60 days from transplanting, 35 to 42 days raising
# and 5 to 7 days to germinate: seed started 14 June, set out in the first week of August.
_BROCCOLI = own_crop(
    "fall broccoli",
    method="indoors",
    weeks_indoors="7 weeks",  # the upper values printed: 42 + 7 days
    days_from_setting_out="60 days",
    hardiness="very hardy",
    autumn_tolerance="several freezes",
    hold_days="5 days",
)


def _broccoli(year: int, garden_days: str = "") -> Garden:
    week = week_of(date(year, 10, 15))
    target = f"""
        crop = "fall broccoli"
        each_week = "6 heads"
        from = {week.monday}
        to = {week.sunday}
    """
    season = f"{year}-01-01", f"{year}-12-31"
    return garden_of(_plan(("05-01", "10-31"), season, target, garden_days), _BROCCOLI)


def test_broccoli_started_14_june_is_set_out_2_august_and_ripe_15_october() -> None:
    course = _course(_broccoli(2029), date(2029, 6, 14))
    assert course.set_out_on == date(2029, 8, 2)
    assert course.ripe.likely == date(2029, 10, 15)
    assert course.fall_extra_days == 14


def test_14_june_is_the_latest_start_for_broccoli_on_15_october() -> None:
    """In 2029 that day is a Monday, the first garden day of its week."""
    sowing = _only_sowing(_broccoli(2029))
    assert sowing.sow_on == date(2029, 6, 14)
    assert sowing.set_out_on == date(2029, 8, 2)
    assert sowing.ripe.likely == sowing.harvest[0].day == date(2029, 10, 15)
    assert _course(_broccoli(2029), date(2029, 6, 15)).ripe.likely > date(2029, 10, 15)


def test_with_fridays_only_it_is_the_last_friday_before() -> None:
    """In 2027 the 15 October is a Friday, and 14 June a Monday."""
    sowing = _only_sowing(_broccoli(2027, '"Fri"'))
    assert sowing.sow_on == date(2027, 6, 11)
    assert sowing.harvest[0].day == date(2027, 10, 15)


def _fall(crops: str, name: str, wanted: tuple[date, date], begin: str = "2027-03-01") -> Garden:
    """A crop wanted around a first freeze on 15 October, gardened on Sundays and Mondays."""
    target = f"""
        crop = "{name}"
        each_week = "5 lb"
        from = {wanted[0]}
        to = {wanted[1]}
    """
    return garden_of(
        _plan(("04-15", "10-15"), (begin, "2027-12-31"), target, '"Sun", "Mon"'), crops
    )


# Virginia Cooperative Extension 426-334, "Fall Vegetable Gardening" (VCE-FALL): counted back from
# the first frost are the days to maturity, the harvest period, about two weeks because it is fall
# and two more for a tender crop. For a 60-day bean picked 14 days and frost on 15 October:
# 60 + 14 + 14 + 14 = 102 days, so 5 July. The sum is worked out here, not printed.
_BEAN = own_crop(
    "sixty-day bean",
    habit="pick",
    days_from_sowing="60 days",
    picking_days="14 days",
    hardiness="tender",
    autumn_tolerance="none",
    **{"yield": "0.2 lb"},
)


def test_a_tender_bean_sown_5_july_ends_two_weeks_before_frost() -> None:
    garden = _fall(_BEAN, "sixty-day bean", (date(2027, 9, 13), date(2027, 10, 3)), "2027-07-05")
    season = make_season(garden, date(2027, 7, 5), None)
    sowing = min(season.sowings, key=lambda one: one.sow_on)
    assert sowing.sow_on == date(2027, 7, 5)
    assert sowing.ripe.likely == date(2027, 7, 5) + timedelta(days=60 + 14)
    assert sowing.ripe.likely + timedelta(days=14) == date(2027, 10, 1)
    # All that fourteen days bring is picked by then, none of it lost to frost.
    assert sum(taken.amount for taken in sowing.harvest) == pytest.approx(sowing.plants * 0.2)
    assert max(taken.day for taken in sowing.harvest) <= sowing.clear_on <= date(2027, 10, 1)


def test_no_tender_bean_is_promised_for_the_week_of_the_frost() -> None:
    garden = _fall(_BEAN, "sixty-day bean", (date(2027, 10, 11), date(2027, 10, 17)))
    season = make_season(garden, garden.wish.first, None)
    assert season.sowings == ()
    assert [str(one.week) for one in season.unmet] == ["2027-W41"]


def test_a_65_day_crop_takes_about_80_days_in_fall() -> None:
    """Alan McDaniel, Virginia Tech, 2011 (VT-MCDANIEL): "closer to 80" days."""
    crops = own_crop("fall green", days_from_sowing="65 days", **{"yield": "0.2 lb"})
    garden = _fall(crops, "fall green", (date(2027, 10, 4), date(2027, 10, 10)))
    in_fall = _course(garden, date(2027, 7, 20))
    assert (in_fall.ripe.likely - in_fall.start_on).days == pytest.approx(80, abs=2)
    in_spring = _course(garden, date(2027, 4, 5))
    assert (in_spring.ripe.likely - in_spring.start_on).days == 65


def test_snow_peas_for_frost_on_15_october_are_sown_23_july() -> None:
    """Grant-Adams Master Gardeners, Washington State University, 5 October 2018 (WSU-GA).

    70 days from seeding and 14 more before frost on 15 October; the date is worked out here.
    """
    crops = own_crop(
        "fall pea",
        habit="pick",
        days_from_sowing="70 days",
        picking_days="14 days",
        hardiness="very hardy",
        **{"yield": "0.2 lb"},
    )
    garden = _fall(crops, "fall pea", (date(2027, 10, 11), date(2027, 10, 17)))
    assert _course(garden, date(2027, 7, 23)).ripe.likely == date(2027, 10, 15)


def test_garlic_set_in_october_is_lifted_eight_or_nine_months_later() -> None:
    """University of Maryland Extension GE 007 (UMD_GE007): 250 to 270 days from cloves.

    The winter is part of those days, as cloves are set in fall; it is not added once more.
    """
    target = 'crop = "garlic"\neach_week = "2 heads"\nfrom = 2028-08-01\nto = 2028-09-30'
    garden = garden_of(_plan(("04-20", "10-20"), ("2027-08-01", "2028-12-31"), target))
    ripe = _course(garden, date(2027, 10, 15)).ripe
    assert date(2027, 10, 15) + timedelta(days=250) <= ripe.likely
    assert ripe.likely <= date(2027, 10, 15) + timedelta(days=270)


def _almanac_crop(name: str, freezes: tuple[str, str]) -> tuple[Crop, Garden]:
    season = "2027-01-01", "2027-12-31"
    garden = garden_of(_plan(freezes, season, f'crop = "{name}"\nfor_people = 1'))
    return next(iter(garden.crops.values())), garden


def _opens(name: str, freezes: tuple[str, str]) -> date:
    """The earliest day outdoors in 2027, at the average last freeze (risk one in two)."""
    crop, garden = _almanac_crop(name, freezes)
    days = date(2027, 1, 1), date(2027, 12, 31)
    times = outdoor_times(crop, Climate(garden.site), 0.5, days)
    return next(time.opens for time in times if time.opens.year == 2027)


# Virginia Cooperative Extension 426-331 (2006), days against the average last freeze from which
# and until which a crop is planted outdoors, read off columns ten days wide.
@pytest.mark.parametrize(
    ("name", "first_days", "last_days"),
    [
        ("bush bean", -10, 90),
        ("lima bean", 20, 70),
        ("pole bean", -10, 80),
        ("beet", -40, 0),
        ("broccoli", -30, 10),
        ("brussels sprouts", -30, 10),
        ("cabbage", -40, 0),
    ],
)
def test_the_first_day_outdoors_lies_in_virginias_window(
    name: str, first_days: int, last_days: int
) -> None:
    """VCE_426_331_2006, with its own example of a last freeze on 15 April; a column of grace."""
    apart = (_opens(name, ("04-15", "10-20")) - date(2027, 4, 15)).days
    assert first_days - 10 <= apart <= last_days + 10


# University of Illinois Extension, "Planting Vegetables", 19 April 2017 (IL_NEWS2017): central
# Illinois, average frost-free date 22 April. One crop of each class stands for it.
_ILLINOIS = {
    "cabbage": ("very hardy", date(2027, 3, 25)),
    "carrot": ("hardy", date(2027, 4, 10)),
    "bush bean": ("tender", date(2027, 4, 25)),
    "melon": ("warm loving", date(2027, 5, 10)),
}


def test_very_hardy_crops_go_out_four_weeks_before_the_last_freeze() -> None:
    """The one point on which the table and its rule (4 weeks before 22 April) agree exactly."""
    assert _opens("cabbage", ("04-22", "10-15")) == date(2027, 3, 25)


def test_classes_of_hardiness_go_out_in_order() -> None:
    opens = {name: _opens(name, ("04-22", "10-15")) for name in _ILLINOIS}
    assert list(opens.values()) == sorted(set(opens.values()))
    for name, (hardiness, _) in _ILLINOIS.items():
        crop, _garden = _almanac_crop(name, ("04-22", "10-15"))
        assert crop.frost.hardiness == hardiness


def test_classes_go_out_within_four_days_of_the_printed_dates() -> None:
    """The dated table is up to four days later than the rule the planner counts by."""
    for name, (_, printed) in _ILLINOIS.items():
        assert abs(_opens(name, ("04-22", "10-15")) - printed) <= timedelta(days=4), name
