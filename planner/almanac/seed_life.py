"""How many years a crop's seed keeps in good storage, as published."""

from functools import cache

from planner.almanac.crop_page import crop_pages
from planner.almanac.usual_figures import usual_figures
from planner.terms import Figure, Source


@cache
def seed_life(crop: str) -> Figure:
    """Years a crop's seed keeps; where sources disagree, their range with the first one's key.

    A crop without a published seed life has the usual one.
    """
    page = crop_pages().get(crop)
    rows = [row for row in page.rows if row.figure == "seed_life"] if page else []
    if not rows:
        return usual_figures("seed")["life_years"]
    years = [float(end) for row in rows for end in (row.low, row.high)]
    return Figure(min(years), max(years), "years", Source(rows[0].source))
