"""season.html: a season as one page that needs nothing beside it."""

import base64
import hashlib
import re
from importlib import resources

from planner.page.beds_part import day_part, year_part
from planner.page.element import Html, el, joined
from planner.page.outlook_part import outlook_part
from planner.page.stories_part import stories_part
from planner.page.weeks_part import weeks_part
from planner.page.wording import full_day_words, share_words
from planner.season import Season
from planner.terms import count_words

_PARTS = (
    ("week", "Week", "What to do, week by week"),
    ("beds", "Day", "The beds on a day"),
    ("year", "Year", "The beds through the year"),
    ("sowings", "Sowings", "Every sowing, and why"),
    ("harvest", "Harvest", "What can be expected"),
)
# What a page may not do unless it is shared, and where a page says what it may.
WITHOUT_FORMS = "form-action 'none'"
POLICY = re.compile(r'<meta http-equiv="Content-Security-Policy" content="[^"]*">')


def season_page(season: Season) -> str:
    """The page: the week, the beds on a day and through the year, sowings, harvest."""
    site = season.garden.site.name
    makers = (weeks_part, day_part, year_part, stories_part, outlook_part)
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


def whole_page(title: str, body: list[Html], script: str, *, forms: str = WITHOUT_FORMS) -> str:
    """A page with its style and script within, and leave for nothing else."""
    style = packaged("style.css")
    policy = (
        f"default-src 'none'; style-src {hash_of(style)}; script-src {hash_of(script)}; "
        f"base-uri 'none'; {forms}"
    )
    head = [
        el("meta", charset="utf-8"),
        Html(f'<meta http-equiv="Content-Security-Policy" content="{policy}">'),
        el("meta", name="viewport", content="width=device-width, initial-scale=1"),
        el("meta", name="color-scheme", content="light"),
        el("title", title),
        Html(f"<style>{style}</style>"),
    ]
    content = joined([*body, Html(f"<script>{script}</script>")])
    page = el("html", el("head", *head), Html("<body>\n"), content, Html("</body>"), lang="en")
    return f"<!doctype html>\n{page}\n"


def packaged(name: str) -> str:
    """A style or script of this room."""
    return resources.files("planner.page").joinpath(name).read_text(encoding="utf-8")


def hash_of(content: str) -> str:
    """What a Content-Security-Policy knows a style or script by (CSP level 2)."""
    digest = hashlib.sha256(content.encode()).digest()
    return f"'sha256-{base64.b64encode(digest).decode()}'"
