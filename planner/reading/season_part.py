"""The season in the text: its days, garden days, away times and the freeze risk taken."""

from datetime import date

from planner.garden import AwayTime, SeasonWish
from planner.reading.toml_table import TomlTable
from planner.terms import FIRST_YEAR, LAST_YEAR

_WEEKDAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
_AWAY_EXAMPLE = "{ from = 2027-07-10, to = 2027-07-20 }"
_LONGEST_DAYS = 731
USUAL_FREEZE_RISK = 0.1


def read_season(table: TomlTable) -> SeasonWish | None:
    """The season's wishes, or None when something in them cannot stand."""
    days = _read_days(table)
    weekdays = _read_weekdays(table)
    away = [
        time
        for one in table.tables("away", "A time away", _AWAY_EXAMPLE)
        if (time := _read_away(one))
    ]
    risk = table.number("freeze_risk", 0.01, 0.9) if "freeze_risk" in table else USUAL_FREEZE_RISK
    turnover = table.whole_number("turnover_days", 0, 60) if "turnover_days" in table else 0
    cover = table.number("cover_weeks", 0, 8) if "cover_weeks" in table else 0.0
    shares = table.yes_or_no("share_ground") if "share_ground" in table else True
    table.refuse_unknown()
    if days is None or weekdays is None:
        return None
    if risk is None or turnover is None or cover is None or shares is None:
        return None
    return SeasonWish(*days, risk, weekdays, tuple(away), turnover, cover, shares)


def read_span(table: TomlTable, usual: tuple[date, date] | None = None) -> tuple[date, date] | None:
    """`from` and `to` of a table, in order; `usual` stands in for what is not stated."""
    if usual is None:
        known = [
            table.need("from", "from = 2027-05-01"),
            table.need("to", "to = 2027-10-15"),
        ]
        if not all(known):
            return None
    first = table.day("from") if "from" in table else usual and usual[0]
    last = table.day("to") if "to" in table else usual and usual[1]
    if first is None or last is None:
        return None
    if last < first:
        table.report(
            "date-order",
            "to" if "to" in table else "from",
            f"It ends on {last}, before it begins on {first}.",
            "check the year of both dates.",
        )
        return None
    return first, last


def _read_days(table: TomlTable) -> tuple[date, date] | None:
    span = read_span(table)
    if span is None:
        return None
    if not FIRST_YEAR <= span[0].year <= span[1].year <= LAST_YEAR:
        table.report(
            "out-of-range",
            "from" if span[0].year < FIRST_YEAR else "to",
            f"Seasons lie between the years {FIRST_YEAR} and {LAST_YEAR}.",
            "correct the year.",
        )
        return None
    days = (span[1] - span[0]).days + 1
    if days < 7:
        table.report(
            "empty-season",
            "to",
            f"The season has {days} days; a week is the least that can be planned.",
            "move its first or last day.",
        )
        return None
    if days > _LONGEST_DAYS:
        table.report(
            "out-of-range",
            "to",
            f"The season has {days} days; at most two years can be planned at once.",
            "plan one year, and the next from its end.",
        )
        return None
    return span


def _read_weekdays(table: TomlTable) -> frozenset[int] | None:
    if "garden_days" not in table:
        return frozenset(range(7))
    written = table.items("garden_days", 'write it like: garden_days = ["Wed", "Sat"]')
    if written is None:
        return None
    found: set[int] = set()
    for index, one in enumerate(written):
        word = one.strip().removesuffix(".").casefold() if isinstance(one, str) else ""
        if word.isalpha() and word[:3] in _WEEKDAYS:
            found.add(_WEEKDAYS.index(word[:3]))
        else:
            table.report(
                "not-a-choice",
                ("garden_days", index),
                f'"{one}" is not a day of the week.',
                "write Mon, Tue, Wed, Thu, Fri, Sat or Sun.",
            )
    if not written:
        table.report(
            "empty-season",
            "garden_days",
            "No day of the week is left for garden work.",
            'name at least one day, such as garden_days = ["Sat"].',
        )
    return frozenset(found) if found else None


def _read_away(table: TomlTable) -> AwayTime | None:
    span = read_span(table)
    table.refuse_unknown()
    return AwayTime(*span) if span else None
