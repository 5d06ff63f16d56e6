"""What a journal tells of a sowing, and what an undoing takes back."""

from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st

from planner.journal import NOTHING_TOLD, Entry, Event, History, Journal
from planner.terms import Place, read_quantity

FIRST = date(2027, 4, 1)


def journal_of(*told: tuple[str, Event, int] | tuple[str, Event, int, str]) -> Journal:
    """A journal of (sowing, event, days after 1 April, amount) in the order written."""
    return Journal(
        tuple(
            Entry(
                FIRST + timedelta(days=one[2]),
                one[1],
                one[0],
                read_quantity(one[3]) if len(one) > 3 else None,
                "",
                Place("journal.csv", number),
            )
            for number, one in enumerate(told, 2)
        )
    )


def test_a_journal_that_tells_nothing_has_no_histories() -> None:
    assert NOTHING_TOLD.histories == {}
    assert NOTHING_TOLD.of("radish 1") == History()
    assert NOTHING_TOLD.last_written("radish 1") is None


def test_entries_may_be_written_in_any_order_of_days() -> None:
    journal = journal_of(("radish 1", Event.EMERGED, 6), ("radish 1", Event.SOWN, 0))
    assert [one.event for one in journal.of("radish 1").entries] == [Event.SOWN, Event.EMERGED]
    assert journal.of("radish 1").day_of(Event.SOWN) == FIRST
    assert journal.of("radish 1").day_of(Event.CLEARED) is None


def test_an_undoing_takes_back_the_last_entry_of_its_sowing_only() -> None:
    journal = journal_of(
        ("radish 1", Event.SOWN, 0),
        ("radish 1", Event.EMERGED, 6),
        ("radish 2", Event.SOWN, 14),
        ("radish 1", Event.UNDONE, 15),
    )
    assert [one.event for one in journal.of("radish 1").entries] == [Event.SOWN]
    assert [one.event for one in journal.of("radish 2").entries] == [Event.SOWN]


def test_two_undoings_take_back_two_entries() -> None:
    journal = journal_of(
        ("radish 1", Event.SOWN, 0),
        ("radish 1", Event.EMERGED, 6),
        ("radish 1", Event.UNDONE, 7),
        ("radish 1", Event.UNDONE, 7),
        ("radish 1", Event.SOWN, 8),
    )
    assert journal.of("radish 1").day_of(Event.SOWN) == FIRST + timedelta(days=8)
    assert len(journal.of("radish 1").entries) == 1


def test_an_undoing_goes_by_what_was_written_last_not_by_the_later_day() -> None:
    journal = journal_of(
        ("radish 1", Event.EMERGED, 6), ("radish 1", Event.SOWN, 0), ("radish 1", Event.UNDONE, 3)
    )
    assert [one.event for one in journal.of("radish 1").entries] == [Event.EMERGED]


def test_an_undoing_of_nothing_is_in_vain_and_takes_nothing_back_later() -> None:
    journal = journal_of(("radish 1", Event.UNDONE, 0), ("radish 1", Event.SOWN, 1))
    assert [one.day for one in journal.undone_in_vain] == [FIRST]
    assert journal.of("radish 1").day_of(Event.SOWN) == FIRST + timedelta(days=1)


def test_the_entry_to_be_undone_next_is_the_last_that_counts() -> None:
    journal = journal_of(
        ("radish 1", Event.SOWN, 0), ("radish 1", Event.EMERGED, 6), ("radish 1", Event.UNDONE, 7)
    )
    last = journal.last_written("radish 1")
    assert last is not None
    assert last.event is Event.SOWN


def test_a_journal_as_of_a_day_ends_with_that_day() -> None:
    journal = journal_of(("radish 1", Event.SOWN, 0), ("radish 1", Event.EMERGED, 6))
    assert len(journal.as_of(FIRST + timedelta(days=5)).entries) == 1
    assert len(journal.as_of(FIRST + timedelta(days=6)).entries) == 2
    assert journal.as_of(FIRST - timedelta(days=1)) == NOTHING_TOLD


def test_an_undoing_dated_before_what_it_takes_back_takes_back_nothing_else() -> None:
    journal = journal_of(
        ("radish 1", Event.SOWN, 0), ("radish 1", Event.PICKED, 40), ("radish 1", Event.UNDONE, 9)
    )
    assert [one.event for one in journal.as_of(FIRST + timedelta(days=20)).entries] == [Event.SOWN]


def test_plants_lost_add_up_and_a_whole_loss_has_its_day() -> None:
    journal = journal_of(
        ("radish 1", Event.LOST, 5, "6 plants"),
        ("radish 1", Event.LOST, 9, "4 each"),
        ("radish 2", Event.LOST, 9),
    )
    assert journal.of("radish 1").plants_lost == 10
    assert journal.of("radish 1").lost_whole_on is None
    assert journal.of("radish 2").lost_whole_on == FIRST + timedelta(days=9)


def test_the_last_word_on_how_late_a_sowing_is_counts() -> None:
    journal = journal_of(
        ("radish 1", Event.LATE, 20, "2 weeks"), ("radish 1", Event.LATE, 30, "3 days")
    )
    late = journal.of("radish 1").last_late
    assert late is not None
    assert late.amount is not None
    assert late.amount.si == 3


@given(
    st.lists(
        st.tuples(
            st.sampled_from(["radish 1", "radish 2"]),
            st.sampled_from([Event.SOWN, Event.EMERGED, Event.CLEARED, Event.UNDONE]),
            st.integers(0, 60),
        ),
        max_size=20,
    )
)
def test_every_entry_counts_or_is_taken_back_or_takes_back(
    told: list[tuple[str, Event, int]],
) -> None:
    journal = journal_of(*told)
    counting = sum(len(one.entries) for one in journal.histories.values())
    undoings = sum(one.event is Event.UNDONE for one in journal.entries)
    taken_back = undoings - len(journal.undone_in_vain)
    assert counting + taken_back + undoings == len(told)
    assert journal.as_of(FIRST + timedelta(days=60)).histories == journal.histories
