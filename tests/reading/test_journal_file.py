"""journal.csv as a grower or a spreadsheet writes it: read whole, or every damaged line told."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.garden import Garden
from planner.journal import Event, Journal
from planner.reading import (
    NamedSowings,
    NotedEntry,
    PlanFile,
    PlanFiles,
    named_sowings,
    read_garden,
    read_journal,
    read_new_entry,
)
from planner.terms import UNITS, Problem, Quantity
from tests.journals import HEADER, RECORD, known_sowings
from tests.plans import garden_toml

KNOWN = known_sowings()


def read(text: str | bytes) -> Journal | tuple[Problem, ...]:
    """What a journal of this text tells of the season's sowings."""
    content = text if isinstance(text, bytes) else text.encode()
    return read_journal(PlanFile("journal.csv", content), KNOWN)


def journal_of(text: str | bytes) -> Journal:
    """The journal of a text that can stand."""
    journal = read(text)
    assert isinstance(journal, Journal), [str(one) for one in journal]
    return journal


def told(*lines: str) -> list[tuple[int, str]]:
    """Line and kind of every problem of a journal with these lines below the first."""
    problems = read(HEADER + "\n".join(lines) + "\n")
    return [] if isinstance(problems, Journal) else [(p.place.line, p.kind) for p in problems]


def problem(*lines: str) -> Problem:
    """The one problem of a journal with these lines below the first."""
    problems = read(HEADER + "\n".join(lines) + "\n")
    assert isinstance(problems, tuple)
    (one,) = problems
    return one


# Shapes that can stand


def test_each_event_is_read() -> None:
    journal = journal_of(
        HEADER
        + "2027-04-14,sown,radish 1,,in the drizzle\n"
        + "2027-04-20,emerged,radish 1,,\n"
        + "2027-04-08,set out,leaf lettuce 1,,\n"
        + "2027-05-20,picked,radish 1,12 roots,\n"
        + "2027-05-21,lost,radish 1,6 plants,slugs\n"
        + "2027-05-22,late,radish 3,2 weeks,\n"
        + "2027-05-23,cleared,radish 1,,\n"
        + "2027-05-24,missed,radish 3,,\n"
        + "2027-05-25,lost,leaf lettuce 1,,all of it\n"
        + "2027-05-26,undone,leaf lettuce 1,,\n"
    )
    assert [one.event for one in journal.entries] == [
        Event.SOWN,
        Event.EMERGED,
        Event.SET_OUT,
        Event.PICKED,
        Event.LOST,
        Event.LATE,
        Event.CLEARED,
        Event.MISSED,
        Event.LOST,
        Event.UNDONE,
    ]
    first, pick = journal.entries[0], journal.entries[3]
    assert (first.day, first.sowing, first.note) == (
        date(2027, 4, 14),
        "radish 1",
        "in the drizzle",
    )
    assert (first.place.file, first.place.line) == ("journal.csv", 2)
    assert pick.amount == Quantity(12, UNITS["roots"])


SOWN = "2027-04-14,sown,radish 1,,\n"


@pytest.mark.parametrize(
    "text",
    [
        pytest.param(b"\xef\xbb\xbf" + (HEADER + SOWN).encode(), id="a byte order mark"),
        pytest.param((HEADER + SOWN).replace("\n", "\r\n"), id="line ends of Windows"),
        pytest.param((HEADER + SOWN).replace("\n", "\r"), id="line ends of an old Mac"),
        pytest.param((HEADER + SOWN).replace(",", ";"), id="semicolons"),
        pytest.param((HEADER + SOWN).removesuffix("\n"), id="no line end at the end"),
        pytest.param(HEADER + "\n  \n,,,,\n" + SOWN + "\n\n", id="blank lines"),
        pytest.param("\n" + HEADER + SOWN, id="a blank line above"),
        pytest.param('"Date","Event","Sowing","Amount","Note"\n' + SOWN, id="capitals"),
        pytest.param(HEADER + "2027-04-14,sown,radish 1\n", id="cells left out at the end"),
        pytest.param(HEADER + SOWN.rstrip() + ",,,\n", id="empty cells too many"),
        pytest.param(HEADER + ' 2027-04-14 , SOWN , "Radish  1", ,\n', id="spaces"),
        pytest.param(
            HEADER.rstrip() + ",weather,who\n" + SOWN.rstrip() + ",dry,Ines\n",
            id="columns of one's own",
        ),
        pytest.param(HEADER.rstrip() + ",weather,,\n" + SOWN, id="nameless columns"),
    ],
)
def test_a_journal_is_read_however_it_was_saved(text: str | bytes) -> None:
    (entry,) = journal_of(text).entries
    assert (entry.day, entry.event, entry.sowing) == (date(2027, 4, 14), Event.SOWN, "radish 1")


@pytest.mark.parametrize("text", ["", "\n\n", HEADER, "date,eve", "\ufeff", f"{HEADER}\n\n"])
def test_a_journal_without_entries_is_empty(text: str) -> None:
    assert journal_of(text) == Journal()


def test_a_note_may_hold_commas_and_quotes() -> None:
    (entry,) = journal_of(f'{HEADER}2027-04-14,sown,radish 1,,"cold, ""wet"" soil"\n').entries
    assert entry.note == 'cold, "wet" soil'


def test_a_crop_may_go_by_another_name_of_its_own() -> None:
    known = named_sowings({"names_given": {"beet": 2}, "sowings": []})
    file = PlanFile("journal.csv", f"{HEADER}2027-04-14,sown,Beetroot 2,,\n".encode())
    journal = read_journal(file, known)
    assert isinstance(journal, Journal), journal
    assert journal.entries[0].sowing == "beet 2"


def test_a_sowing_that_was_let_go_is_still_known() -> None:
    assert told("2026-05-20,picked,radish 2,3 lb,", "2026-04-20,set out,radish 2,,") == []


# Shapes that cannot


@pytest.mark.parametrize(
    "text",
    [
        "2027-04-14,sown,radish 1,,\n",
        "date,event,sowing,note,amount\n",
        "date,event,sowing,amount\n",
        "day,event,sowing,amount,note\n",
        "format,date,event,sowing,amount,note\n",
        "date\tevent\tsowing\tamount\tnote\n",
        '"date,event,sowing,amount,note\n',
        "\0\0\0\0",
        HEADER.encode("utf-16"),
    ],
)
def test_a_journal_of_another_shape_is_one_problem(text: str | bytes) -> None:
    later = text if isinstance(text, bytes) else text + SOWN * 5
    problems = read(later)
    assert isinstance(problems, tuple)
    assert [one.kind for one in problems] == ["journal-shape"]
    assert problems[0].place.line == 1


def test_a_journal_beyond_five_megabytes_is_not_read() -> None:
    problems = read(HEADER + SOWN * 200_000)
    assert isinstance(problems, tuple)
    assert [one.kind for one in problems] == ["file-too-large"]


def test_entries_without_a_season_are_one_problem() -> None:
    file = PlanFile("journal.csv", (HEADER + SOWN * 3).encode())
    problems = read_journal(file, NamedSowings({}, {}))
    assert isinstance(problems, tuple)
    assert [one.kind for one in problems] == ["season-gone"]
    assert read_journal(PlanFile("journal.csv", HEADER.encode()), NamedSowings({}, {})) == Journal()


# Damaged lines


@pytest.mark.parametrize(
    ("line", "kind", "wrong"),
    [
        ("4/14/2027,sown,radish 1,,", "journal-line", '"4/14/2027" is not a date.'),
        ("2027-4-14,sown,radish 1,,", "journal-line", '"2027-4-14" is not a date.'),
        ("2027-02-30,sown,radish 1,,", "journal-line", '"2027-02-30" is not a date.'),
        ("20270414,sown,radish 1,,", "journal-line", '"20270414" is not a date.'),
        (",sown,radish 1,,", "journal-line", "It has no date."),
        ("1027-04-14,sown,radish 1,,", "journal-line", "The year 1027 is out of reach."),
        ("2027-04-14,pikced,radish 1,,", "journal-line", '"pikced" is no event of a journal.'),
        ("2027-04-14,,radish 1,,", "journal-line", "It has no event."),
        ("2027-04-14,sown", "journal-sowing", "It names no sowing."),
        ("2027-04-14,sown,radish 4,,", "journal-sowing", 'No sowing was ever named "radish 4".'),
        ("2027-04-14,sown,radish 0,,", "journal-sowing", 'No sowing was ever named "radish 0".'),
        ("2027-04-14,sown,radish 01,,", "journal-sowing", 'No sowing was ever named "radish 01".'),
        ("2027-04-14,sown,radish ²,,", "journal-sowing", 'No sowing was ever named "radish ²".'),
        ("2027-04-14,sown,radish,,", "journal-sowing", 'No sowing was ever named "radish".'),
        ("2027-04-14,sown,radish 1,12 roots,", "journal-amount", '"sown" takes no amount'),
        ("2027-05-14,picked,radish 1,,", "journal-amount", "It does not tell how much"),
        ("2027-05-14,picked,radish 1,12,", "journal-amount", '"12" is not a quantity.'),
        ("2027-05-14,picked,radish 1,2 lb,", "journal-amount", "The sowing is counted in roots"),
        ("2027-05-14,picked,radish 1,2 bunches,", "journal-amount", "The sowing is counted in"),
        ("2027-05-14,picked,radish 1,0 roots,", "journal-amount", "Nobody picks 0 roots."),
        ("2027-05-14,picked,radish 1,-3 roots,", "journal-amount", "Nobody picks -3 roots."),
        ("2027-05-14,picked,radish 2,3 days,", "journal-amount", 'Nothing is picked in "days".'),
        ("2027-05-14,lost,radish 1,6,", "journal-amount", '"6" is not a number of plants.'),
        ("2027-05-14,lost,radish 1,6.5 plants,", "journal-amount", '"6.5 plants" is not a number'),
        ("2027-05-14,lost,radish 1,0 plants,", "journal-amount", '"0 plants" is not a number'),
        ("2027-05-14,lost,radish 1,2 kg,", "journal-amount", '"2 kg" is not a number of plants.'),
        ("2027-05-14,late,radish 1,,", "journal-amount", "It does not tell how late."),
        ("2027-05-14,late,radish 1,10,", "journal-amount", '"10" is not a time.'),
        ("2027-05-14,late,radish 1,2 lb,", "journal-amount", '"2 lb" is not a time.'),
        ("2027-05-14,late,radish 1,-2 days,", "journal-amount", "-2 days is no time"),
        ("2027-05-14,late,radish 1,60 weeks,", "journal-amount", "60 weeks is no time"),
        ("2027-04-14,set out,radish 1,,", "journal-event", "radish 1 is sown in place"),
        ("2027-04-14,undone,radish 1,,", "journal-event", "Nothing that is told of this sowing"),
        ("2027-02-12,sown,radish 1,,", "journal-day", "radish 1 begins on 2027-04-14;"),
        ("2026-04-14,missed,radish 1,,", "journal-day", "The season begins on 2027-03-10;"),
        ("2027-04-14,sown,radish 1,,wet, cold", "journal-line", "It has 6 cells"),
        ('2027-04-14,sown,radish 1,,"wet', "journal-line", "Its double quotes do not come"),
        ('2027-04-14,sown,radish 1,,"wet"cold', "journal-line", "Its double quotes do not come"),
        ("2027-0", "journal-line", '"2027-0" is not a date. It has no event. It names no sowing.'),
        ("\0\0\0\0\0", "journal-line", ""),
        (f"2027-04-14,sown,radish 1,,{'x' * 2001}", "journal-line", "The note has 2001 letters."),
        (f"2027-04-14,sown,radish 1,,{'x' * 200_000}", "journal-line", "Its double quotes"),
    ],
)  # fmt: skip
def test_a_damaged_line_is_told_with_what_is_wrong(line: str, kind: str, wrong: str) -> None:
    one = problem(SOWN.replace("radish 1", "radish 2").rstrip(), line)
    assert (one.place.file, one.place.line, one.kind) == ("journal.csv", 3, kind)
    assert one.wrong.startswith(wrong)
    assert one.remedy
    assert line.startswith(one.place.text.removesuffix("..."))


@pytest.mark.parametrize(
    ("line", "remedy"),
    [
        ("2027-04-14,pikced,radish 1,,", 'write "picked".'),
        ("2027-04-14,setout,leaf lettuce 1,,", 'write "set out".'),
        ("2027-06-01,harvested,radish 1,12 roots,", 'write "picked".'),
        ("2027-04-20,Came-up,radish 1,,", 'write "emerged".'),
        ("2027-06-01,bolted,radish 1,,", 'write "lost".'),
        # By us or by slugs.
        ("2027-06-01,eaten,radish 1,,", "write one of sown, emerged, set out, picked, cleared"),
        # Garlic is planted in place, cabbages are planted out.
        ("2027-04-14,planted,radish 1,,", "write one of sown, emerged, set out, picked, cleared"),
        ("2027-04-14,zzz,radish 1,,", "write one of sown, emerged, set out, picked, cleared"),
        ("2027-04-14,sown,raddish 1,,", 'write "radish 1", if that is meant.'),
        ("2027-04-14,sown,radish 99,,", 'write "radish 3", if that is meant.'),
        ("2027-04-14,sown,leaf letuce 1,,", 'write "leaf lettuce 1", if that is meant.'),
        ("2027-04-14,sown,dahlia 7,,", "planner week shows the names."),
    ],
)
def test_the_nearest_word_is_offered(line: str, remedy: str) -> None:
    assert problem(line).remedy.startswith(remedy)


def test_a_line_with_several_faults_is_told_once_with_all_of_them() -> None:
    one = problem("14.4.2027,pikced,radish 9,,")
    assert one.kind == "journal-line"
    assert [word in one.wrong for word in ("14.4.2027", "pikced", "radish 9")] == [True] * 3
    assert one.remedy.count(";") == 2


def test_all_damaged_lines_are_told_in_one_run_in_their_order() -> None:
    assert told(
        "2027-04-14,sown,radish 1,,",
        "2027-04-10,emerged,radish 1,,",
        "",
        "soon,sown,radish 3,,",
        '2027-05-20,picked,"radish 1,12 roots,',
        "2027-05-20,picked,radish 1,12 lb,",
        "2027-05-20,undone,leaf lettuce 1,,",
    ) == [
        (3, "journal-day"),
        (5, "journal-line"),
        (6, "journal-line"),
        (7, "journal-amount"),
        (8, "journal-event"),
    ]  # fmt: skip


def test_a_line_in_another_encoding_harms_no_other() -> None:
    latin_1 = "2027-04-20,emerged,radish 1,,süß\n".encode("latin-1")
    problems = read(HEADER.encode() + SOWN.encode() + latin_1 + b"2027-05-20,sawn,radish 1,,\n")
    assert isinstance(problems, tuple)
    assert [one.place.line for one in problems] == [3, 4]
    assert "UTF-8" in problems[0].wrong


def test_a_line_cut_short_harms_no_line_after_it() -> None:
    assert told('2027-04-14,sown,radish 1,,"wet a', SOWN.rstrip(), SOWN.rstrip()) == [
        (2, "journal-line")
    ]


@given(
    st.lists(
        st.one_of(
            st.binary(max_size=40),
            st.sampled_from(
                [
                    SOWN.encode().rstrip(),
                    b"2027-05-20,undone,radish 1,,",
                    b"2027-05-20,picked,radish 1,3 roots,",
                    b'2027-05-20,"picked',
                    b"9999-12-31,late,radish 3,1 days,",
                    b"0001-01-01,missed,radish 3,,",
                ]
            ),
        ),
        max_size=8,
    )
)
def test_whatever_stands_below_the_first_line_is_read_or_told_by_line(lines: list[bytes]) -> None:
    content = HEADER.encode() + b"\n".join(lines)
    problems = read(content)
    if isinstance(problems, Journal):
        return
    numbers = [one.place.line for one in problems]
    assert numbers == sorted(set(numbers))
    assert {one.place.file for one in problems} == {"journal.csv"}
    assert min(numbers) > 1
    new = noted(content, "2027-06-12", "emerged", "radish 3", "", "")
    assert [one.place.line for one in new.damaged] == numbers


# What cannot be


@pytest.mark.parametrize("event", ["emerged", "picked", "cleared", "lost"])
def test_nothing_happens_to_a_sowing_before_it_was_sown(event: str) -> None:
    amount = "3 roots" if event == "picked" else ""
    assert told("2027-04-14,sown,radish 1,,", f"2027-04-13,{event},radish 1,{amount},") == [
        (3, "journal-day")
    ]
    assert told("2027-04-14,sown,radish 1,,", f"2027-04-14,{event},radish 1,{amount},") == []


def test_nothing_is_picked_before_it_was_set_out() -> None:
    one = problem("2027-04-08,set out,leaf lettuce 1,,", "2027-04-07,picked,leaf lettuce 1,2 oz,")
    assert (one.place.line, one.kind) == (3, "journal-day")


def test_of_two_entries_that_part_the_one_written_later_is_told() -> None:
    one = problem("2027-05-20,picked,radish 1,3 roots,", "2027-05-21,sown,radish 1,,")
    assert one.place.line == 3
    assert "journal.csv, line 2" in one.wrong


def test_what_was_sown_earlier_than_planned_may_be_told_within_sixty_days() -> None:
    assert told("2027-02-13,sown,radish 1,,") == []
    assert told("2027-02-12,sown,radish 1,,") == [(2, "journal-day")]


def test_a_sowing_missed_in_spring_and_planned_again_in_summer_stays_told() -> None:
    assert told("2027-03-12,missed,radish 3,,") == []


def test_what_was_undone_is_not_judged() -> None:
    assert told("2025-04-14,sown,radish 1,,", "2027-04-15,undone,radish 1,,", SOWN.rstrip()) == []


def test_an_undoing_after_a_damaged_line_of_its_sowing_is_not_told_as_well() -> None:
    undone = "2027-05-20,undone,radish 1,,"
    assert told("soon,sown,radish 1,,", undone) == [(2, "journal-line")]
    assert told("2027-04-14,sown,raddish 1,,", undone) == [(2, "journal-sowing")]
    assert told('2027-04-14,sown,"radish 1,,', undone) == [(2, "journal-line")]


def test_weights_are_taken_in_any_unit_of_weight() -> None:
    for amount in ("8 oz", "1 lb", "200 g", "0.2 kg"):
        assert told(f"2027-05-20,picked,leaf lettuce 1,{amount},") == []
    for amount in ("8 cuts", "1 head", "200 L"):
        assert told(f"2027-05-20,picked,leaf lettuce 1,{amount},") == [(2, "journal-amount")]


def test_the_unit_of_the_plan_counts_where_it_has_changed_since_the_season() -> None:
    garden = read_garden(PlanFiles(PlanFile("garden.toml", garden_toml(("8 oz", "1 kg")).encode())))
    assert isinstance(garden, Garden)
    known = named_sowings(RECORD, garden.crops)
    assert known.planned["leaf lettuce 1"].unit == UNITS["kg"]
    assert known.planned["radish 1"].unit == UNITS["roots"]


# Lines to add


def noted(content: bytes, *cells: str) -> NotedEntry:
    """What is written for a new entry after a journal of this content."""
    read_entry = read_new_entry(PlanFile("journal.csv", content), cells, KNOWN)
    assert isinstance(read_entry, NotedEntry)
    return read_entry


NEW = ("2027-04-14", "sown", "radish 1", "", "")


@pytest.mark.parametrize(
    ("before", "appended"),
    [
        (b"", HEADER + SOWN),
        (b"date,ev", HEADER.removeprefix("date,ev") + SOWN),
        (HEADER.encode().rstrip(), "\n" + SOWN),
        (HEADER.encode(), SOWN),
        (b"\xef\xbb\xbf", HEADER + SOWN),
        (b"\n", HEADER + SOWN),
        (b"  ", "\n" + HEADER + SOWN),
        (HEADER.encode() + SOWN.encode().rstrip(), "\n" + SOWN),
        (HEADER.encode() + b"2027-04", "\n" + SOWN),
        (HEADER.replace("\n", "\r\n").encode(), SOWN.replace("\n", "\r\n")),
        (HEADER.replace(",", ";").encode(), SOWN.replace(",", ";")),
        (HEADER.encode().rstrip() + b",weather\n", SOWN.rstrip() + ",\n"),
    ],
)
def test_a_line_is_added_in_the_way_the_file_is_written(before: bytes, appended: str) -> None:
    assert noted(before, *NEW).appended == appended.encode()


@given(st.text(st.characters(exclude_categories=["Cs", "Cc", "Zl", "Zp"]), max_size=60))
def test_a_note_is_read_as_it_was_told(note: str) -> None:
    for before in (b"", HEADER.replace(",", ";").encode()):
        new = noted(before, *NEW[:4], note)
        (entry,) = journal_of(before + new.appended).entries
        assert entry.note == new.entry.note == " ".join(note.split())


def test_a_new_entry_is_refused_for_what_stands_before_it() -> None:
    file = PlanFile("journal.csv", (HEADER + SOWN).encode())
    cells = ("2027-04-13", "emerged", "radish 1", "", "")
    problems = read_new_entry(file, cells, KNOWN)
    assert isinstance(problems, tuple)
    assert [(str(one.place), one.kind) for one in problems] == [("the new entry", "journal-day")]


def test_a_new_entry_stands_beside_damaged_lines() -> None:
    new = noted(f"{HEADER}2027-04-14,sawn,radish 1,,\n".encode(), *NEW)
    assert [one.place.line for one in new.damaged] == [2]
    assert new.appended == SOWN.encode()


def test_an_undoing_names_what_it_takes_back() -> None:
    new = noted((HEADER + SOWN).encode(), "2027-04-15", "undone", "radish 1", "", "")
    assert new.takes_back is not None
    assert new.takes_back.event is Event.SOWN
    assert noted(HEADER.encode(), *NEW).takes_back is None
