"""Gardens made up by chance, and what may happen in them: a revision breaks no rule either."""

from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st

from planner.journal import Entry, Event, Journal
from planner.season import Season, make_season, record_of
from planner.terms import UNITS, Place, Quantity
from planner.writing import write_harvest_sheet
from tests.test_generated_gardens import QUICK, SOME, Written, earlier_of, garden_from, gardens
from tests.verifier import broken_rules_of

# What a journal tells may break these: a grower may sow on any day and pick before it is likely.
_ONLY_PLANNED = {
    "blocks last from entering to clearing",
    "dates are in order",
    "every sowing has its tasks",
    "guests stand under their hosts",
    "nothing is planned for the past",
    "tasks fall in the life of their sowing",
    "work falls on garden days",
    "tender crops stand out of frost",
    "yield bounds harvest",
}
_DAYS = UNITS["days"]


@st.composite
def _told(draw: st.DrawFn, season: Season, until: date) -> Journal:
    """Up to four entries of sowings that were to begin before a day."""
    begun = [one for one in season.sowings if one.sow_on < until]
    entries = []
    for _ in range(draw(st.integers(1, 4)) if begun else 0):
        one = draw(st.sampled_from(begun))
        event = draw(st.sampled_from([*Event]))
        if event is Event.SET_OUT and one.set_out_on is None:
            event = Event.LOST
        amount = None
        if event is Event.LATE:
            amount = Quantity(float(draw(st.integers(-5, 30))), _DAYS)
        elif event is Event.PICKED:
            amount = Quantity(float(draw(st.integers(1, 20))), one.crop.unit)
        latest = (until - one.sow_on).days
        day = one.sow_on + timedelta(days=draw(st.integers(0, latest)))
        entries.append(Entry(day, event, one.id, amount, "", Place("journal.csv", 2, "")))
    return Journal(tuple(entries))


@SOME
@given(gardens(), st.data())
def test_a_revision_breaks_no_rule(written: Written, data: st.DataObject) -> None:
    garden = garden_from(written)
    before = make_season(garden, written.as_of, None, QUICK)
    journal = data.draw(_told(before, written.later))
    after = make_season(
        garden, written.later, earlier_of(before, written.later), QUICK, journal=journal
    )
    told = {one.sowing for one in journal.entries}
    harvest = write_harvest_sheet(after).decode()
    broken = [
        words
        for words in broken_rules_of(written.text, "", record_of(after), harvest)
        if not (words.split(":")[0] in _ONLY_PLANNED and any(name in words for name in told))
    ]
    assert broken == [], (written.text, journal)


@SOME
@given(gardens(), st.data())
def test_a_revision_made_again_changes_nothing_more(written: Written, data: st.DataObject) -> None:
    garden = garden_from(written)
    before = make_season(garden, written.as_of, None, QUICK)
    journal = data.draw(_told(before, written.later))
    first = make_season(
        garden, written.later, earlier_of(before, written.later), QUICK, journal=journal
    )
    again = make_season(
        garden, written.later, earlier_of(first, written.later), QUICK, journal=journal
    )
    assert record_of(again) == record_of(first)
