"""A strip of ten rows of two low plants or five of one tall one; the low may stand beneath.

Low ones sown on 5 April are cleared on 3 May, tall ones on 31 May.
"""

from dataclasses import replace
from datetime import date, timedelta

import numpy as np

from planner.climate import Climate
from planner.garden import Garden, SharedGround, SharingPattern
from planner.scheduling import Block, HarvestDay, Sowing, crop_candidates
from planner.scheduling.arranging.filling import CropMarket
from planner.scheduling.choice import markets_of
from planner.scheduling.question import Question
from planner.terms import Source
from tests.plan_text import own_crop
from tests.scheduling.by_hand import FIRST, bed, paper_garden
from tests.scheduling.sown_by_hand import sowing_of

INCH_UM = 25_400
SOWN, RIPE = date(2027, 4, 5), date(2027, 5, 3)
WEEK = timedelta(days=7)
TALL_RIPE = SOWN + 8 * WEEK
_LOW = {"days_from_sowing": "28 days", "hold_days": "13 days", "spacing": "6 in"}
_TALL = own_crop("tall", days_from_sowing="56 days", hold_days="13 days", spacing="12 in")
# Half the host's ground is the guest's, at six tenths of a harvest.
_PAIR = SharedGround("tall", "low", SharingPattern.BENEATH, 1.0, 0.5, 0.6, 0, Source("memory"))


def strip_garden(rest: int = 0, low_gives: str = "1 heads") -> Garden:
    """The garden of one strip; ground rests so many days, a low plant gives so much."""
    garden = paper_garden(
        own_crop("low", **{**_LOW, "yield": low_gives}) + _TALL,
        ("low", "4 heads", "2027-05-03", "2027-06-27"),
        ("tall", "1 heads", "2027-05-31", "2027-06-27"),
        beds=bed("Strip", "60 in", "12 in"),
        wishes=f"turnover_days = {rest}",
    )
    return replace(garden, shared=(_PAIR,))


def question_of(
    garden: Garden, standing: tuple[Sowing, ...] = (), movable: tuple[Sowing, ...] = ()
) -> Question:
    """What the planner is asked."""
    found = crop_candidates(garden, Climate(garden.site), FIRST)
    return Question(garden, {one.about.crop.name: one for one in found}, standing, movable)


def free_markets(question: Question) -> list[CropMarket]:
    """What may be proposed where all ground is worth the same."""
    return markets_of(question, np.zeros_like(question.ground.free_m))


def low_sowing(first_in: int = 0, last_in: int = 12, **told: object) -> Sowing:
    """Four low ones in two rows, or in other inches of the strip."""
    block = Block("Strip", first_in * INCH_UM, last_in * INCH_UM, SOWN, RIPE)
    one = sowing_of(
        strip_garden().crops["low"],
        "low 1",
        SOWN,
        plants=4,
        harvest=(HarvestDay(RIPE, 4.0),),
        blocks=(block,),
    )
    return replace(one, **told)  # type: ignore[arg-type]


def tall_sowing() -> Sowing:
    """One tall one in the last foot of the strip."""
    block = Block("Strip", 48 * INCH_UM, 60 * INCH_UM, SOWN, TALL_RIPE)
    return sowing_of(
        strip_garden().crops["tall"],
        "tall 1",
        SOWN,
        plants=1,
        harvest=(HarvestDay(TALL_RIPE, 1.0),),
        blocks=(block,),
    )


def guest_sowing(plants: int = 2) -> Sowing:
    """Low ones beneath the tall one."""
    block = replace(low_sowing(48, 60).blocks[0], under="tall 1")
    return low_sowing(plants=plants, blocks=(block,))
