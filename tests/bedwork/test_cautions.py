"""Cautions: sourced, deferring to who decides, told where they matter and once."""

import pytest

from planner.almanac import all_cautions, bibliography
from planner.bedwork import cautions_of
from planner.garden import Caution, CautionTime, Garden
from planner.season import make_season
from planner.writing import cautions_record, cautions_text
from tests.bedwork.soil_plans import BED, new_bed, rectangle, soil_garden, soil_plan
from tests.plan_text import garden_of, own_crop

_PARTS = ("filling", "turnover", "manure", "water", "seed", "appetite")
_MANURE = '[[manure]]\nbed = "Gate bed"\non = 2027-03-20'
_NEW = BED + new_bed(rectangle("4 ft", "4 ft"), "12 in")
_each = pytest.mark.parametrize(
    "caution", all_cautions(), ids=lambda one: f"{one.hazard}, {one.part}"
)


def _hazards(garden: Garden, part: str) -> set[str]:
    return {one.hazard for one in cautions_of(garden, _PARTS)[part]}


# Hazards of the trade that a garden plan can run into, as extension services and public health
# bodies treat them; the list is common practice, no source.
_OF_THE_TRADE = {
    "backflow",
    "blades",
    "buried lines",
    "dust and soil germs",
    "green potatoes",
    "heat",
    "herbicide residue",
    "lifting",
    "pesticide labels",
    "raw beans",
    "raw manure",
    "rhubarb leaves",
    "soil lead",
    "structures",
    "treated wood",
    "washing",
}


def test_the_hazards_of_the_trade_are_there() -> None:
    assert {one.hazard for one in all_cautions()} >= _OF_THE_TRADE


@_each
def test_a_caution_has_sources_and_defers_to_someone(caution: Caution) -> None:
    assert caution.sources
    assert {source.key for source in caution.sources} <= set(bibliography())
    assert caution.ask
    assert caution.part in _PARTS
    assert bool(caution.crops) is (caution.time is CautionTime.CROP)


@_each
def test_a_caution_is_short(caution: Caution) -> None:
    assert len(caution.text.split()) <= 60


def test_new_beds_have_their_cautions_and_old_ones_none() -> None:
    assert {"soil lead", "treated wood", "lifting", "buried lines", "structures"} <= _hazards(
        soil_garden(beds=_NEW), "filling"
    )
    assert _hazards(soil_garden(), "filling") == set()


def test_manure_has_its_cautions_and_without_it_there_are_none() -> None:
    assert "raw manure" in _hazards(soil_garden(_MANURE), "manure")
    assert _hazards(soil_garden(), "manure") == set()


def test_poisonous_parts_are_told_of_crops_in_the_plan_alone() -> None:
    assert "green potatoes" in _hazards(soil_garden(crops=("potato",)), "appetite")
    without = _hazards(soil_garden(), "appetite")
    assert {"green potatoes", "raw beans", "rhubarb leaves"} & without == set()


def test_kept_rhubarb_is_told_of() -> None:
    garden = soil_garden('[[kept]]\nbed = "Gate bed"\nwhat = "Rhubarb"\nfrom = "0 ft"\nto = "2 ft"')
    [caution] = [
        one
        for one in cautions_of(garden, ["appetite"])["appetite"]
        if one.hazard == "rhubarb leaves"
    ]
    assert caution.crops == ("Rhubarb",)
    assert "Rhubarb leaves (Rhubarb): Eat the stalks only" in cautions_text([caution], 200)


def test_a_crop_of_ones_own_has_the_cautions_of_the_one_it_is_like() -> None:
    own = own_crop("blue potato", like="potato")
    plan = soil_plan(crops=("potato",)).replace('crop = "potato"', 'crop = "blue potato"')
    garden = garden_of(plan.replace("2 lb", "2 heads"), own)
    [caution] = [
        one for one in cautions_of(garden, ["appetite"])["appetite"] if one.time is CautionTime.CROP
    ]
    assert caution.crops == ("blue potato",)


def test_a_hazard_of_several_parts_is_told_with_the_first() -> None:
    garden = soil_garden(_MANURE, beds=_NEW)
    told = cautions_of(garden, _PARTS)
    hazards = [one.hazard for part in _PARTS for one in told[part]]
    assert len(hazards) == len(set(hazards))
    assert "dust and soil germs" in {one.hazard for one in told["filling"]}
    alone = cautions_of(garden, ["turnover"])["turnover"]
    assert "dust and soil germs" in {one.hazard for one in alone}


def test_the_text_names_who_decides_and_the_source() -> None:
    garden = soil_garden(beds=_NEW)
    text = cautions_text(cautions_of(garden, ["filling"])["filling"], 100)
    assert text.startswith("Take care\n")
    assert "Ask: local health department" in text
    assert "[TRADE-S88]" in text
    assert cautions_text((), 100) == ""


def test_the_record_keeps_keys_and_words() -> None:
    garden = soil_garden(beds=_NEW)
    record = cautions_record(cautions_of(garden, ["filling"])["filling"])
    lead = next(one for one in record if one["hazard"] == "soil lead")
    assert lead["sources"] == ["TRADE-S01", "TRADE-S77", "TRADE-S78"]
    assert lead["part"] == "filling"


def test_no_season_rests_on_soil_and_cautions() -> None:
    plain = soil_garden()
    told = garden_of(soil_plan() + '\n[soil]\nbag_price = 5\ntop_dress = "1 in"\n')
    first = make_season(plain, plain.wish.first, None, 0)
    second = make_season(told, told.wish.first, None, 0)
    assert (first.basis, first.sowings) == (second.basis, second.sowings)
