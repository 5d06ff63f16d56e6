"""Filling new beds: volumes, layers, mixes, bags, weights, and what a plan may say of them."""

import math
from dataclasses import replace
from datetime import date

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.almanac import soil_figures, soil_mixes
from planner.bedwork import (
    Doubt,
    Filling,
    LayerKind,
    fillings_of,
    order_of,
    tight_depths,
    whole_parcels,
)
from planner.garden import Bed, Garden, NoPrice, rectangular_bed_line, round_bed_line
from planner.writing import filling_record, filling_text
from tests.bedwork.soil_plans import BED, new_bed, rectangle, soil_garden, soil_plan, standing
from tests.plan_text import problem_kinds_of, read_plan

_UNITS: pint.UnitRegistry[float] = pint.UnitRegistry()


def _cu_ft(volume_l: float) -> float:
    return float(_UNITS.Quantity(volume_l, "liter").to("foot ** 3").magnitude)


def _lb(weight_kg: float) -> float:
    return float(_UNITS.Quantity(weight_kg, "kilogram").to("pound").magnitude)


def _inches(depth_m: float) -> float:
    return float(_UNITS.Quantity(depth_m, "meter").to("inch").magnitude)


def _filling(size: str, depth: str, *parts: str, crops: tuple[str, ...] = ("radish",)) -> Filling:
    garden = soil_garden(*parts, beds=BED + new_bed(size, depth), crops=crops)
    [filling] = fillings_of(garden, ())
    return filling


# Volumes


def test_a_round_bed_38_in_across_and_30_in_tall_holds_about_19_7_cu_ft() -> None:
    # Geometry; the figure is common practice, no source.
    filling = _filling('diameter = "38 in"', "30 in")
    assert _cu_ft(filling.volume_l) == pytest.approx(19.7, abs=0.05)
    by_hand = _UNITS.Quantity(math.pi * 19**2 * 30, "inch ** 3").to("liter").magnitude
    assert filling.volume_l == pytest.approx(float(by_hand))


@pytest.mark.parametrize(
    ("depth", "cu_ft", "cu_yd"),
    # TRADE-S103: length x width x depth in feet, by 27 for cubic yards; the products by hand.
    [("10 in", 26.7, 0.99), ("12 in", 32, 1.19), ("18 in", 48, 1.78), ("24 in", 64, 2.37)],
)
def test_a_bed_of_8_by_4_ft_takes_what_its_sides_say(
    depth: str, cu_ft: float, cu_yd: float
) -> None:
    volume = _cu_ft(_filling(rectangle("8 ft", "4 ft"), depth).volume_l)
    assert volume == pytest.approx(cu_ft, abs=0.05)
    assert volume / 27 == pytest.approx(cu_yd, abs=0.005)


def test_12_5_sq_ft_15_in_deep_take_15_to_16_cu_ft() -> None:
    # Common practice, no source.
    assert 15 <= _cu_ft(_filling(rectangle("5 ft", "2.5 ft"), "15 in").volume_l) <= 16


def test_only_new_beds_are_filled() -> None:
    assert fillings_of(soil_garden(), ()) == ()
    assert "new = true" in filling_text(
        soil_garden(), (), order_of(soil_garden().soil, ()), (), 100
    )


# Layers


def test_the_top_12_in_of_a_deep_bed_are_good_mix_and_60_to_70_percent_is_coarse() -> None:
    # Common practice, no source.
    filling = _filling('diameter = "38 in"', "30 in")
    coarse, finer, good = filling.layers
    assert [layer.kind for layer in filling.layers] == list(LayerKind)
    assert _inches(good.depth_m) == pytest.approx(12)
    assert 0.6 - 1e-9 <= (coarse.volume_l + finer.volume_l) / filling.volume_l <= 0.7
    assert coarse.depth_m > finer.depth_m


def test_good_mix_is_as_deep_as_the_crops_planned_there_would_have_it() -> None:
    # The almanac's comfortable depth of tomatoes is 18 in, that of lettuce 10 in.
    garden = soil_garden(
        beds=BED + new_bed(rectangle("8 ft", "4 ft"), "30 in"), crops=("tomato", "leaf lettuce")
    )
    new = garden.beds[1]
    days = (date(2027, 5, 1), date(2027, 7, 1))
    lettuce = standing(garden, "leaf lettuce 1", days, bed=new)
    tomato = standing(garden, "tomato 1", days, bed=new)
    assert _inches(fillings_of(garden, (lettuce,))[0].layers[-1].depth_m) == pytest.approx(12)
    assert _inches(fillings_of(garden, (tomato,))[0].layers[-1].depth_m) == pytest.approx(18)
    assert _inches(fillings_of(garden, ())[0].layers[-1].depth_m) == pytest.approx(18)


@pytest.mark.parametrize("depth", ["8 in", "12 in", "15 in", "17 in"])
def test_a_bed_with_little_room_below_its_good_mix_is_good_mix_all_through(depth: str) -> None:
    [layer] = _filling(rectangle("8 ft", "4 ft"), depth).layers
    assert layer.kind is LayerKind.GOOD_MIX


_GARDEN = soil_garden(beds=new_bed(rectangle("8 ft", "4 ft"), "12 in"))
_SIZES = st.floats(0.2, 12.0)


@st.composite
def _beds(draw: st.DrawFn) -> Bed:
    bed = _GARDEN.beds[0]
    is_round = draw(st.booleans())
    line = (
        round_bed_line(draw(_SIZES))
        if is_round
        else rectangular_bed_line(draw(_SIZES), draw(_SIZES))
    )
    depth_m = draw(st.floats(0.05, 2.0))
    return replace(bed, line_um=line[0], width_um=line[1], is_round=is_round, soil_depth_m=depth_m)


@given(_beds())
def test_layers_add_up_and_the_mix_is_what_its_parts_are(bed: Bed) -> None:
    [filling] = fillings_of(replace(_GARDEN, beds=(bed,)), ())
    assert sum(layer.depth_m for layer in filling.layers) == pytest.approx(bed.soil_depth_m)
    assert filling.volume_l == pytest.approx(bed.area_m2 * bed.soil_depth_m * 1000)
    good = filling.layers[-1]
    assert good.kind is LayerKind.GOOD_MIX
    assert sum(filling.parts.values()) == pytest.approx(good.volume_l + filling.settles_l)
    assert _inches(good.depth_m) >= min(12, _inches(bed.soil_depth_m)) - 1e-6
    assert filling.volume_l - good.volume_l <= 0.7 * filling.volume_l + 1e-9


# Mixes, settling, doubts


def test_the_usual_mix_is_within_the_published_share_of_organic_matter() -> None:
    # TRADE-S01: 25 to 50 % by volume in a mix with soil.
    for name in ("usual", "rich"):
        assert 0.25 <= soil_mixes()[name].shares["compost"] <= 0.5


def test_a_mix_of_ones_own_is_counted_by_parts() -> None:
    filling = _filling(
        rectangle("8 ft", "4 ft"),
        "12 in",
        '[soil]\nmix = { loam = 3, "leaf mold" = 1 }\nsettling = "0 in"',
    )
    assert _cu_ft(filling.parts["loam"]) == pytest.approx(24)
    assert _cu_ft(filling.parts["leaf mold"]) == pytest.approx(8)
    assert filling.settles_l == 0


def test_what_settles_is_kept_ready() -> None:
    filling = _filling(rectangle("8 ft", "4 ft"), "12 in", '[soil]\nsettling = "3 in"')
    assert _cu_ft(filling.settles_l) == pytest.approx(8)


@pytest.mark.parametrize(
    ("depth", "doubts"),
    # 6 in is the least depth, and only with a rich mix: common practice, no source.
    [
        ("5 in", (Doubt.TOO_SHALLOW,)),
        ("6 in", (Doubt.ONLY_RICH,)),
        ("7 in", (Doubt.ONLY_RICH,)),
        ("8 in", ()),
        ("12 in", ()),
    ],
)
def test_a_shallow_bed_is_doubted_and_gets_a_rich_mix(
    depth: str, doubts: tuple[Doubt, ...]
) -> None:
    filling = _filling(rectangle("8 ft", "4 ft"), depth)
    assert filling.doubts == doubts
    rich = filling.mix.shares["compost"] > soil_mixes()["usual"].shares["compost"]
    assert rich is bool(doubts)


def test_pure_compost_is_doubted() -> None:
    # TRADE-S05: peppers burned in a bed of compost alone.
    filling = _filling(rectangle("8 ft", "4 ft"), "12 in", "[soil]\nmix = { compost = 1 }")
    assert filling.doubts == (Doubt.MUCH_COMPOST,)


def test_a_crop_that_would_have_deeper_soil_is_named_with_its_bed() -> None:
    # Long roots want 12 to 15 in: common practice, no source. The almanac has potatoes at 15 in.
    garden = soil_garden(crops=("potato", "leaf lettuce"))
    days = (date(2027, 5, 1), date(2027, 7, 1))
    sowings = (
        standing(garden, "potato 1", days, (0, 4)),
        standing(garden, "leaf lettuce 1", days, (4, 8)),
    )
    [tight] = tight_depths(garden, sowings)
    assert (tight.bed.name, tight.crop.name) == ("Gate bed", "potato")
    assert "Gate bed, 1 ft: potato 1 ft 3 in" in _text(garden)
    assert tight_depths(garden, ()) == ()


def _text(garden: Garden, width: int = 100) -> str:
    days = (date(2027, 5, 1), date(2027, 7, 1))
    sowings = tuple(standing(garden, f"{name} 1", days) for name in garden.crops)
    fillings = fillings_of(garden, sowings)
    order = order_of(garden.soil, fillings)
    return filling_text(garden, fillings, order, tight_depths(garden, sowings), width)


# Bags, loads, weights, costs


def test_36_bags_of_0_75_cu_ft_go_to_the_cubic_yard() -> None:
    # TRADE-S102.
    yard = float(_UNITS.Quantity(1, "yard ** 3").to("liter").magnitude)
    bag_l = soil_figures()["bag"].middle
    assert whole_parcels(yard, bag_l) == 36
    assert whole_parcels(yard * 1.001, bag_l) == 37


@given(st.floats(0.001, 1e5), st.floats(1, 1000))
def test_bags_are_rounded_up(volume_l: float, bag_l: float) -> None:
    bags = whole_parcels(volume_l, bag_l)
    assert bags >= 1
    assert (bags - 1) * bag_l < volume_l <= bags * bag_l * (1 + 1e-8)


def test_a_bed_of_8_by_4_ft_a_foot_deep_weighs_about_2260_lb_wet() -> None:
    # TRADE-S101: vegetable mix, saturated and compacted, 1908 lb to the cubic yard.
    assert _lb(_filling(rectangle("8 ft", "4 ft"), "12 in").wet_kg) == pytest.approx(2261, abs=1)


_PRICES = '[soil]\nsettling = "0 in"\nmix = { mix = 1 }\nbag_price = 5\nbulk_price = 20'


def test_what_all_new_beds_take_is_bought_together() -> None:
    two = new_bed(rectangle("8 ft", "4 ft"), "12 in") + new_bed(
        rectangle("4 ft", "4 ft"), "12 in", name="Other"
    )
    garden = soil_garden(_PRICES, beds=two)
    order = order_of(garden.soil, fillings_of(garden, ()))
    # 48 cu ft are 64 bags of 0.75 cu ft, or 3.6 loads of half a cubic yard (13.5 cu ft).
    assert (order.bags, order.loads) == (64, 4)
    assert (order.bags_cost, order.loads_cost) == (320.0, 80.0)
    assert _lb(order.bag_kg) == pytest.approx(40)
    assert "Loads cost less." in _text(garden)


def test_without_prices_there_is_no_cost() -> None:
    garden = soil_garden(beds=new_bed(rectangle("8 ft", "4 ft"), "12 in"))
    order = order_of(garden.soil, fillings_of(garden, ()))
    assert order.bags_cost == order.loads_cost == NoPrice()
    record = filling_record(fillings_of(garden, ()), order, ())
    assert record["order"]["bags_cost"] is None
    assert "cost" not in _text(garden)


def test_a_bag_too_heavy_for_one_person_is_told() -> None:
    # TRADE-S87: 51 lb at most, in ideal conditions; 1.5 cu ft weigh 80 lb.
    plan = new_bed(rectangle("8 ft", "4 ft"), "12 in")
    assert "heavier than 51 lb" in _text(soil_garden('[soil]\nbag = "1.5 cu ft"', beds=plan))
    assert "heavier" not in _text(soil_garden(beds=plan))


def test_the_day_something_enters_a_new_bed_is_told() -> None:
    plan = new_bed(rectangle("8 ft", "4 ft"), "12 in")
    garden = soil_garden(beds=plan)
    days = (date(2027, 5, 1), date(2027, 7, 1))
    [filling] = fillings_of(garden, (standing(garden, "radish 1", days),))
    assert filling.first_in == date(2027, 5, 1)
    assert "New bed, by 1 May 2027: 32 cu ft" in _text(garden)


def test_a_crop_for_which_a_settled_bed_is_too_shallow_is_named() -> None:
    # The almanac's least depth of radishes is 6 in; a bed of 7 in settles to 5 in.
    garden = soil_garden(beds=new_bed(rectangle("8 ft", "4 ft"), "7 in"))
    days = (date(2027, 5, 1), date(2027, 7, 1))
    [filling] = fillings_of(garden, (standing(garden, "radish 1", days),))
    assert filling.shallow_for == ("radish",)
    assert "too shallow for radish until it is topped up" in _text(garden)
    deep = soil_garden(beds=new_bed(rectangle("8 ft", "4 ft"), "9 in"))
    assert fillings_of(deep, (standing(deep, "radish 1", days),))[0].shallow_for == ()


def test_metric_beds_are_told_in_litres_and_kilograms() -> None:
    garden = soil_garden('[soil]\nbag = "40 L"', beds=new_bed(rectangle("2 m", "1 m"), "30 cm"))
    text = _text(garden)
    assert "600 L, 30 cm deep" in text
    assert "A bag holds 40 L" in text
    assert "lb" not in text.replace("51 lb", "")


@pytest.mark.parametrize("width", [40, 60, 100])
def test_lines_fit_the_screen(width: int) -> None:
    garden = soil_garden(_PRICES, beds=new_bed('diameter = "38 in"', "30 in"))
    assert max(map(len, _text(garden, width).splitlines())) <= width


# What a plan may say


@pytest.mark.parametrize(
    ("soil", "kind"),
    [
        ('settling = "9 ft"', "out-of-range"),
        ('settling = "2 lb"', "wrong-unit"),
        ("settling = 2", "wrong-type"),
        ('top_dress = "-1 in"', "out-of-range"),
        ('top_dress = "0.5-1 in"', "bad-quantity"),
        ('compost_a_year = "much"', "bad-quantity"),
        ('bag = "0 L"', "out-of-range"),
        ('bag = "2 cm"', "wrong-unit"),
        ('bulk = "1000 m3"', "out-of-range"),
        ("bag_price = -1", "out-of-range"),
        ('bulk_price = "20"', "wrong-type"),
        ("mix = {}", "missing-key"),
        ('mix = { "" = 1 }', "missing-key"),
        ("mix = { topsoil = 0 }", "out-of-range"),
        ('mix = { topsoil = "2" }', "wrong-type"),
        ('mix = "compost"', "wrong-type"),
        ("bagprice = 4", "unknown-key"),
    ],
)
def test_a_slip_in_the_soil_part_is_told_once(soil: str, kind: str) -> None:
    assert problem_kinds_of(soil_plan(f"[soil]\n{soil}")) == [kind]


def test_a_misspelt_word_is_suggested() -> None:
    read = read_plan(soil_plan("[soil]\nbagprice = 4"))
    assert isinstance(read, tuple)
    assert 'write "bag_price"' in str(read[0])


def test_whether_a_bed_is_new_is_yes_or_no() -> None:
    plan = soil_plan(beds=BED + 'new = "yes"\n')
    assert problem_kinds_of(plan) == ["wrong-type"]
