"""The table of docs/checks.md says what the model says today.

    python -m tests.growth.test_checks_table

renews it in place, between its two marks. The text around it is written by hand.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from planner.almanac import bibliography
from planner.climate import Climate
from planner.garden import (
    FreezeDates,
    FreezeDay,
    MonthlyTemperatures,
    NoTemperatures,
    NoWeather,
    Site,
)
from planner.growth.heat import double_triangle
from planner.terms import MonthDay, Source, days_between
from tests.growth import test_heat_growth as checks
from tests.published import published_rows

DOCUMENT = Path(__file__).resolve().parent.parent.parent / "docs" / "checks.md"
BEGINS = "<!-- The table begins; renew it with: python -m tests.growth.test_checks_table -->"
ENDS = "<!-- The table ends. -->"
_HEAD = ("what", "published", "source", "model", "where and when", "remark")


@dataclass(frozen=True, slots=True)
class Check:
    """One published figure beside the model's."""

    what: str
    published: str
    source: str
    model: str
    where: str
    remark: str = ""

    @property
    def line(self) -> str:
        """A line of the table."""
        cells = (self.what, self.published, self.source, self.model, self.where, self.remark)
        return f"| {' | '.join(cells)} |"


def table_text() -> str:
    """The whole table, as it should stand in the document."""
    lines = [f"| {' | '.join(_HEAD)} |", "|" + "---|" * len(_HEAD)]
    for checked in (_successions(), _beans(), _maturity(), _by_month(), _fall(), _degree_days()):
        lines += [check.line for check in checked]
    return "\n".join(lines)


def _successions() -> Iterator[Check]:
    what, published = "peas sown 14 days apart in early spring", "about 7 days apart"
    for degc, remark in (
        (10, ""),
        (
            7,
            "crowds them more; a base of 0 to 1 degC (BOURGEOIS2000) would do so less",
        ),
    ):
        cool, warm = (
            checks.spring_gap_days(site, degc)
            for site in (checks.cool_summer(), checks.warm_summer())
        )
        where = f"cool / warm summer, first sown at a daily mean of {degc} degC"
        yield Check(what, published, "TRADE-S62", f"{cool} / {warm} days", where, remark)
    cool_most, warm_most = (
        2 * checks.fall_stretch(site) for site in (checks.cool_summer(), checks.warm_summer())
    )
    yield Check(
        "peas sown 2 days apart before fall",
        "up to 2 or even 3 weeks apart",
        "TRADE-S62",
        f"up to {cool_most:g} / {warm_most:g} days",
        "cool / warm summer, ripe before 21 December",
        "the last of them ripen in days under ten hours (§10)",
    )
    for sown, slope in checks.SLOPES.items():
        found = checks.sine_slope(sown)
        yield Check(
            f"days of ripening for a day of sowing, {_day(sown)}",
            f"{slope:.2f}",
            "derived",
            "not ripe" if found is None else f"{found:.2f}",
            "sine year, mean 11, swing 12, base 4.4 degC",
            "warmest on 19 July and 850 degree-days, fitted",
        )


def _beans() -> Iterator[Check]:
    where = "Corvallis by monthly means from memory, sown"
    yield Check(
        "bush bean, sowing to emergence",
        "12-17 days",
        "OSU-BEAN69",
        f"{checks.bean_emergence_days(checks.APRIL_SOWING)} days",
        f"{where} 25 April",
        "soil is estimated from the air (§24)",
    )
    yield Check(
        "bush bean, sowing to emergence",
        "5-6 days",
        "OSU-BEAN69",
        f"{checks.bean_emergence_days(checks.JULY_SOWING)} days",
        f"{where} 1 July",
        "5 to 6 days are those of steady soil at 30 degC or more (UCSC-A4)",
    )
    pace = checks.paces_at(checks.corvallis()).of(checks.crop_named("bush bean"))
    days = [
        checks.days_to_ripe(pace, sown, 54.5)
        for sown in days_between(date(2027, 4, 25), date(2027, 7, 21))
    ]
    yield Check(
        "bush bean, sowing to harvest",
        "64-84 days",
        "OSU-BEAN69",
        f"{min(days)}-{max(days)} days",
        f"{where} 25 April to 21 July",
        "the almanac's sorts of today are quicker (51 to 58 days, IL_VG)",
    )


def _maturity() -> Iterator[Check]:
    for row in checks.MATURITY:
        name, counted_from = row["crop"], row["counted_from"]
        seasons = [
            checks.main_season(site, name, counted_from)
            for site in (checks.cool_summer(), checks.warm_summer())
        ]
        cool, warm = (f"{one.days}" if one else "none" for one in seasons)
        low, high = row["days_low"], row["days_high"]
        remark = checks.EXCEPTIONS.get(name, "")
        if not remark and name in checks.TOO_COOL:
            remark = f"cool summer: {checks.TOO_COOL[name]}"
        yield Check(
            f"{name}, days from {counted_from}",
            low if low == high else f"{low}-{high}",
            row["source"],
            f"{cool} / {warm}",
            "cool / warm summer, in its main season",
            remark,
        )


_WINTER = (
    "days under ten hours count half on top of their little heat (§10, §21), which is from "
    "memory and slow"
)
_FAO_FEBRUARY = (
    "published slower than winter sowings, though it grows into spring; the model does not share it"
)
_FAO_SPAN = "published to the end of harvest, the model to its beginning"
# The crop, FAO's words, the months counted, its days, and a remark (table 11).
_STAGES = (
    ("head lettuce", "April", (4,), 75, _FAO_SPAN),
    ("head lettuce", "November to January", (11, 12, 1), 105, _WINTER),
    ("head lettuce", "October, November; arid", (10, 11), 100, _WINTER),
    ("head lettuce", "February", (2,), 140, _FAO_FEBRUARY),
    ("spinach", "April", (4,), 65, _FAO_SPAN),
    ("spinach", "September, October", (9, 10), 65, _WINTER),
    ("spinach", "November; arid", (11,), 100, _WINTER),
    ("radish", "March, April", (3, 4), 35, _FAO_SPAN),
    ("radish", "winter; arid", (12, 1, 2), 40, _WINTER),
)


def _by_month() -> Iterator[Check]:
    for name, months_words, months, published, remark in _STAGES:
        days = [checks.days_by_month(name, month) for month in months]
        yield Check(
            f"{name}, whole season",
            f"{published} days",
            "FAO56/PYFAO56",
            " / ".join(f"{one}" for one in days) + " days",
            f"Mediterranean, planted in {months_words}; model sown on the 15th",
            remark,
        )


def _freeze_dates_only() -> Climate:
    spring, fall = (
        FreezeDay(MonthDay(month, 15), 11.7, Source("memory"), Source("NCEI-1981-2010"))
        for month in (4, 10)
    )
    return Climate(Site("", 39, FreezeDates(spring, fall), NoTemperatures(), NoWeather()))


_QUICK = "quicker than published: heat above its best still counts, up to 28 degC"


def _fall() -> Iterator[Check]:
    calendar = checks.paces_at(_freeze_dates_only()).of(checks.crop_named("kale"))
    sown = date(2027, 7, 20)
    yield Check(
        "a crop of 65 days, ripe in fall",
        "about 80 days",
        "VT-MCDANIEL",
        f"{checks.days_to_ripe(calendar, sown, 65)} days",
        "by the calendar, first freeze 15 October, sown 20 July",
    )
    cool, warm = (
        checks.days_to_ripe(checks.paces_at(site).of(checks.crop_named("kale")), sown, 65)
        for site in (checks.cool_summer(), checks.warm_summer())
    )
    yield Check(
        "the same by heat (as kale)",
        "about 80 days",
        "VT-MCDANIEL",
        f"{cool} / {warm} days",
        "cool / warm summer, sown 20 July",
        "days are taken to be meant for 17 degC, and August is warmer; counted by heat, such "
        "crops are sown later than the formula says",
    )
    sown = date(2027, 9, 1)
    yield Check(
        "radish of 25 days, ripe in fall",
        "25-50 days",
        "BRIT-VEG",
        f"{checks.days_to_ripe(calendar, sown, 25)} days",
        "by the calendar, first freeze 15 October, sown 1 September",
        "the whole 14 days (VCE-FALL) are long for so short a crop; a share of its days would be 6",
    )
    for sown in (date(2027, 9, 1), date(2027, 7, 1)):
        cool, warm = (
            checks.days_to_ripe(checks.paces_at(site).of(checks.crop_named("radish")), sown, 25)
            for site in (checks.cool_summer(), checks.warm_summer())
        )
        where = f"cool / warm summer, sown {_day(sown)}"
        remark = _QUICK if min(cool, warm) < 25 else ""
        yield Check(
            "the same by heat", "25-50 days", "BRIT-VEG", f"{cool} / {warm} days", where, remark
        )


def _degree_days() -> Iterator[Check]:
    for row in published_rows("degree_days_zalom.csv"):
        if row["double_triangle"] == row["double_triangle_as_printed"]:
            continue
        names = ("low_degf", "high_degf", "next_low_degf", "base_degf", "upper_degf")
        found = double_triangle(*(float(row[name]) for name in names))
        yield Check(
            "degree-days of a day, double triangle",
            row["double_triangle_as_printed"],
            "ZALOM83/DEGDAY",
            f"{found:.3f}",
            f"{row['low_degf']} to {row['high_degf']} degF, next low {row['next_low_degf']}",
            "a misprint: by hand it is (23.75 + 30.5) / 2",
        )


def _day(day: date) -> str:
    return f"{day.day} {day:%B}"


def renewed(document: str) -> str:
    """The document with its table as it should be."""
    before, rest = document.split(BEGINS)
    after = rest.split(ENDS)[1]
    return f"{before}{BEGINS}\n\n{table_text()}\n\n{ENDS}{after}"


def test_the_table_of_checks_is_fresh() -> None:
    document = DOCUMENT.read_text(encoding="utf-8")
    assert document == renewed(document), "python -m tests.growth.test_checks_table"


def test_every_source_of_the_table_is_in_the_bibliography() -> None:
    lines = table_text().splitlines()[2:]
    assert {line.split(" | ")[2] for line in lines} <= set(bibliography())


def test_every_crop_whose_days_are_published_has_a_line() -> None:
    table = table_text()
    for row in checks.MATURITY:
        assert f"| {row['crop']}, days from {row['counted_from']} |" in table


def test_the_sites_of_the_document_are_those_of_the_table() -> None:
    document = " ".join(DOCUMENT.read_text(encoding="utf-8").split())
    for site in (checks.cool_summer(), checks.warm_summer(), checks.mediterranean()):
        months = site.site.temperatures
        assert isinstance(months, MonthlyTemperatures)
        pairs = zip(months.low_degc, months.high_degc, strict=True)
        means = ", ".join(f"{(low + high) / 2:g}" for low, high in pairs)
        assert means in document


if __name__ == "__main__":
    DOCUMENT.write_text(renewed(DOCUMENT.read_text(encoding="utf-8")), encoding="utf-8")
