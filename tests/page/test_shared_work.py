"""Which entries of a journal tell that a task is done."""

from datetime import date

from planner.journal import Entry, Event, Journal
from planner.page import SharedTask, SharedWork, tick_box
from planner.tasks import TaskKind
from planner.terms import Place, Quantity, read_quantity

_PLACE = Place("journal.csv")


def _entry(day: str, event: Event, amount: str = "", sowing: str = "radish 1") -> Entry:
    quantity: Quantity | None = read_quantity(amount) if amount else None
    return Entry(date.fromisoformat(day), event, sowing, quantity, "", _PLACE)


def _task(kind: TaskKind, day: str, number: int = 1) -> SharedTask:
    return SharedTask(f"radish 1/{kind}/{number}", date.fromisoformat(day), kind, "radish 1")


_SOW = _task(TaskKind.SOW, "2027-05-05")
_THIN = _task(TaskKind.THIN, "2027-05-19")
_FIRST = _task(TaskKind.PICK, "2027-06-02", 1)
_SECOND = _task(TaskKind.PICK, "2027-06-09", 2)


def _work(*entries: Entry) -> SharedWork:
    tasks = {one.id: one for one in (_SOW, _THIN, _FIRST, _SECOND)}
    return SharedWork(tasks, Journal(entries), {"radish 1": "roots"})


def test_a_picking_belongs_to_the_nearest_harvest_the_earlier_of_equals() -> None:
    early = _entry("2027-05-30", Event.PICKED, "5 roots")
    late = _entry("2027-06-06", Event.PICKED, "6 roots")
    work = _work(early, late, _entry("2027-06-20", Event.PICKED, "7 roots"))
    assert work.noted(_FIRST) == (early,)
    assert [str(one.amount) for one in work.noted(_SECOND)] == ["6 roots", "7 roots"]
    assert _work(_entry("2027-06-05", Event.PICKED, "1 roots")).noted(_SECOND) == ()


def test_what_was_taken_back_is_not_noted() -> None:
    work = _work(_entry("2027-05-05", Event.SOWN), _entry("2027-05-06", Event.UNDONE))
    assert work.noted(_SOW) == ()
    assert work.seen("radish 1") == 2


def test_a_sowing_that_is_lost_has_nothing_left_to_tick() -> None:
    work = _work(_entry("2027-05-20", Event.LOST))
    for task in (_SOW, _FIRST):
        box = tick_box(task, work)
        assert "Noted: lost on 20 May 2027." in box
        assert "today" not in box
    assert "today" in tick_box(_FIRST, _work(_entry("2027-05-20", Event.LOST, "6 plants")))


def test_what_the_journal_has_no_word_for_is_not_offered() -> None:
    box = tick_box(_THIN, _work())
    assert "Nothing to note: no date hangs on it." in box
    assert 'name="event"' not in box
