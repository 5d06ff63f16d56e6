"""season.html: a season as one page that needs nothing beside it."""

from planner.page.beds_part import day_part, year_part
from planner.page.bedwork_part import bedwork_part
from planner.page.element import Html, el
from planner.page.outlook_part import outlook_part
from planner.page.stories_part import stories_part
from planner.page.weeks_part import weeks_part
from planner.page.whole_page import packaged, whole_page
from planner.page.wording import full_day_words
from planner.season import Season
from planner.terms import count_words
from planner.writing import share_words

_PARTS = (
    ("week", "Week", "What to do, week by week"),
    ("beds", "Day", "The beds on a day"),
    ("year", "Year", "The beds through the year"),
    ("bedwork", "Bed work", "What the beds take"),
    ("sowings", "Sowings", "Every sowing, and why"),
    ("harvest", "Harvest", "What can be expected"),
)


def season_page(season: Season) -> str:
    """The page: the week, the beds on a day and through the year, sowings, harvest."""
    site = season.garden.site.name
    makers = (weeks_part, day_part, year_part, bedwork_part, stories_part, outlook_part)
    parts = [
        _part(name, title, make(season))
        for (name, _, title), make in zip(_PARTS, makers, strict=True)
    ]
    links = (el("li", el("a", short, href=f"#{name}")) for name, short, _ in _PARTS)
    body = [
        el("a", "To the week's tasks", href="#week", class_="skip"),
        el("header", el("h1", site), el("p", _in_short(season))),
        el("nav", el("ul", *links), aria_label="Parts of this page"),
        el("main", *parts),
        el("footer", el("p", _CAUTION)),
    ]
    return whole_page(f"{site}, season", body, packaged("page.js"))


_CAUTION = (
    "Freeze dates are odds, not a forecast; yields are published averages, not promises. Look at "
    "the weather before tender plants go out, and follow local rules and labels in everything "
    "that can harm."
)


def _in_short(season: Season) -> str:
    shares = season.measures
    return (
        f"As of {full_day_words(season.as_of)}: {count_words(len(season.sowings), 'sowing')} in "
        f"{count_words(len(season.garden.beds), 'bed')}. By the likely dates "
        f"{share_words(shares.fill)} of all that is wanted is met, and "
        f"{share_words(shares.weeks_met)} of weeks in full."
    )


def _part(name: str, title: str, content: Html) -> Html:
    heading = f"{name}-title"
    return el("section", el("h2", title, id=heading), content, id=name, aria_labelledby=heading)
