"""The harvest by week and crop: wanted, expected, poor and good, and what stays unmet."""

from collections.abc import Iterator, Mapping

from planner.bedwork import cautions_of
from planner.page.care import care
from planner.page.element import Html, el, joined
from planner.page.figure import figure
from planner.page.fold import fold
from planner.page.table import Row, table
from planner.page.wording import day_words
from planner.pictures import harvest_weeks
from planner.season import CropOutlook, Season
from planner.terms import amount_words
from planner.writing import UnmetWords, bound_sentences, help_sentences, share_words, unmet_words

_BY_YEARS = "Poor and good are what one and nine past years in ten do not pass."
_BY_DATES = (
    "Least and most are what a week has when all its sowings come early, as is likely, or late."
)


def outlook_part(season: Season) -> Html:
    """All crops together, then crop by crop with a picture, a table and reasons."""
    unmet: dict[str, list[UnmetWords]] = {}
    for one in unmet_words(season):
        unmet.setdefault(one.crop, []).append(one)
    return joined(
        [
            el("p", _BY_YEARS if season.tried_fills else _BY_DATES),
            *(_crop(season, one, unmet) for one in season.outlooks),
            _unmet("Weeks with nobody there", unmet.get("", [])),
            _help(season),
            care(cautions_of(season.garden, ["appetite"])["appetite"], "care-eating"),
        ]
    )


def _help(season: Season) -> Html:
    told = [*bound_sentences(season), *help_sentences(season)]
    return joined(
        [el("h3", "All crops together"), el("ul", *(el("li", sentence) for sentence in told))]
    )


def _crop(season: Season, outlook: CropOutlook, unmet: Mapping[str, list[UnmetWords]]) -> Html:
    name = outlook.crop.name
    told = (
        f"Of {amount_words(outlook.wanted, outlook.crop.unit)} wanted {share_words(outlook.fill)} "
        f"can be expected; {share_words(outlook.weeks_met)} of its weeks are met in full."
    )
    return joined(
        [
            el(
                "div",
                el("h3", name.capitalize()),
                el("p", told),
                figure(
                    harvest_weeks(season, name),
                    f"{name.capitalize()} by week: wanted and expected",
                ),
                class_="together",
            ),
            fold(
                "Week by week",
                table(
                    f"{name.capitalize()} by week, in {outlook.crop.unit.name}",
                    ("week", "wanted", "expected", *_ends(season)),
                    _rows(outlook),
                    numbers=range(1, 5),
                ),
            ),
            _unmet(f"What stays unmet of {name}", unmet.get(name, [])),
        ]
    )


def _ends(season: Season) -> Row:
    return ("poor year", "good year") if season.tried_fills else ("least", "most")


def _rows(outlook: CropOutlook) -> Iterator[Row]:
    for week, *amounts in outlook.weeks:
        yield (f"{day_words(week.monday)} ({week})", *map(_number, amounts))


def _number(amount: float) -> str:
    return f"{amount:.0f}" if amount >= 100 else f"{amount:.1f}".removesuffix(".0")


def _unmet(title: str, unmet: list[UnmetWords]) -> Html:
    if not unmet:
        return Html()
    return joined(
        [
            el("h4", title),
            el(
                "ul",
                *(
                    el("li", f"{one.told} ", el("strong", "What would help: "), one.remedy)
                    for one in unmet
                ),
                class_="unmet",
            ),
        ]
    )
