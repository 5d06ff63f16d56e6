"""The station table: its size, its distances, and the usual spread of freeze dates."""

from statistics import median

import pytest
from geopy.distance import geodesic, great_circle

from planner.almanac import nearest_stations, station, stations_named
from planner.garden import FreezeDates, FreezesAllYear, NeverFreezes
from tests.plan_text import bed, garden_of, plan_head, target

_STATIONS = stations_named("")
_PLACES = [(34.68, -82.81), (47.6, -122.3), (64.8, -147.7), (21.3, -157.9), (-14.3, -170.7)]


def test_the_table_holds_5808_stations() -> None:
    """NCEI 1981-2010 agricultural normals: 5,808 stations with an answer at 32 F."""
    assert len(_STATIONS) == 5808
    assert len({one.id for one in _STATIONS}) == 5808


def test_every_station_has_one_of_three_answers() -> None:
    kinds = [type(one.freezes) for one in _STATIONS]
    assert kinds.count(FreezeDates) == 5398
    assert kinds.count(NeverFreezes) == 121
    assert kinds.count(FreezesAllYear) == 289


def test_every_station_lies_on_the_globe() -> None:
    for one in _STATIONS:
        assert -90 <= one.latitude_deg <= 90
        assert -180 <= one.longitude_deg <= 180
        assert -100 <= one.elevation_m <= 4500


@pytest.mark.parametrize("place", _PLACES)
def test_distances_are_those_of_the_globe(place: tuple[float, float]) -> None:
    """The library geopy 2.4: great circle on the mean sphere, and geodesic on WGS 84.

    A sphere is at most about 0.56 % off the ellipsoid.
    """
    found = nearest_stations(*place, count=len(_STATIONS))
    for near in [*found[:20], *found[20::40]]:
        there = (near.station.latitude_deg, near.station.longitude_deg)
        assert near.distance_km == pytest.approx(great_circle(place, there).km, rel=0.001)
        assert near.distance_km == pytest.approx(geodesic(place, there).km, rel=0.006, abs=1e-6)


@pytest.mark.parametrize("place", _PLACES)
def test_the_nearest_station_is_the_nearest(place: tuple[float, float]) -> None:
    nearest, *others = nearest_stations(*place, count=5)
    assert len(others) == 4
    assert [one.distance_km for one in others] == sorted(one.distance_km for one in others)
    least_km = min(
        great_circle(place, (one.latitude_deg, one.longitude_deg)).km for one in _STATIONS
    )
    assert nearest.distance_km == pytest.approx(least_km, rel=0.001)


def test_a_station_is_nearest_to_itself() -> None:
    clemson = station("USC00381770")
    assert clemson is not None
    nearest = nearest_stations(clemson.latitude_deg, clemson.longitude_deg, count=1)[0]
    assert nearest.station == clemson
    assert nearest.distance_km == pytest.approx(0, abs=1e-6)


def test_a_station_is_found_by_id_and_by_words_of_its_name() -> None:
    assert station(" usc00381770 ") == station("USC00381770")
    assert station("XXX00000000") is None
    assert {one.id for one in stations_named("clemson univ")} == {"USC00381770"}
    assert stations_named("clemson minneapolis") == []


def test_the_usual_spread_is_the_median_of_the_table() -> None:
    """The planner assumes 11.7 days where a grower states only the half-of-years date."""
    freezes = [one.freezes for one in _STATIONS if isinstance(one.freezes, FreezeDates)]
    spring = median(one.last_spring.spread_days for one in freezes)
    fall = median(one.first_fall.spread_days for one in freezes)
    assert spring == pytest.approx(11.7, abs=0.05)
    assert fall == pytest.approx(11.7, abs=0.05)
    plan = plan_head() + bed() + target("radish", "25 roots")
    assumed = garden_of(plan).site.freezes
    assert isinstance(assumed, FreezeDates)
    assert assumed.last_spring.spread_days == pytest.approx(spring, abs=0.05)
    assert assumed.first_fall.spread_days == pytest.approx(fall, abs=0.05)
    assert assumed.last_spring.spread_source.key == "NCEI-1981-2010"


def test_no_station_freezes_on_the_same_day_every_year() -> None:
    for one in _STATIONS:
        if isinstance(one.freezes, FreezeDates):
            assert one.freezes.last_spring.spread_days > 0
            assert one.freezes.first_fall.spread_days > 0
