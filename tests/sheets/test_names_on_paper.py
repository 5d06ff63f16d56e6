"""Whatever a garden, a bed or a crop is called, it stands on paper as written, or in boxes."""

import unicodedata
from collections.abc import Callable, Sequence

import pytest

from planner.sheets import Work, write_labels, write_season_sheets, write_seed_starting
from tests.sheets.paper_read import ReadPdf, faults_of
from tests.sheets.works import brief, draft, with_beds_named, with_both_named, with_crops_named

_SMALLEST_PT = 11
# What would be an instruction to the typesetter, if names were markup.
_MARKUP = (
    '#panic("x")',
    "*bold* _slanted_ `raw` $x^2$",
    "= Heading",
    "// a remark /* another */",
    '#include "week.typ"',
    "<label> @reference",
    "back\\slash \\u{41} \\",
    "\"double\" 'single' ]]) }}",
    "#{ while true {} }",
    "-- --- ... ~ 10%",
)
_LETTERS = (
    "Grünbeet Straße",
    "Jardín de la abuela, ¿sí?",
    "Grządka północna",
    "Vườn rau nhà Hạnh",
    "Грядка за домом",
    "Κήπος στην αυλή",
    "Gru\u0308nbeet",  # an accent apart from its letter
)
_RIGHT_TO_LEFT = ("ערוגה צפונית", "حوض الخضار")
_WITHOUT_TYPE = ("日当たりの良い畑", "햇볕 드는 밭", "สวนผัก", "Bed 🥕🐌", "👩\u200d🌾 bed")
_TRYING = (
    "M" * 5000,
    "word " * 400,
    "new\nline\ttab\rreturn\x00\x1b[31m\x7f",
    "\u202egnorw yaw eht\u202c",
    "a" + "\u0301" * 300,
    "\ufffe\uffff\ue000\U000f0000",
)


@pytest.mark.parametrize("names", [_MARKUP[:5], _MARKUP[5:], _LETTERS[:4], _LETTERS[4:]])
def test_a_name_stands_on_each_sheet_as_it_is_written(names: tuple[str, ...]) -> None:
    work = with_beds_named(_work(), names)
    sheets, labels, _ = _printed(work)
    for bed in {block.bed for one in work.sowings for block in one.blocks}:
        name = _closed(unicodedata.normalize("NFC", bed))
        assert name in sheets
        assert name in labels


def test_what_is_read_from_the_right_has_all_its_letters() -> None:
    """A PDF keeps letters as they stand on paper, so their order is not compared, and Arabic
    letters in the form they take within a word."""
    sheets, labels, _ = _printed(with_beds_named(_work(), _RIGHT_TO_LEFT))
    for text in (sheets, labels):
        assert set(_closed("".join(_RIGHT_TO_LEFT))) <= set(unicodedata.normalize("NFKC", text))
        assert "□" not in text


def test_a_letter_without_type_is_a_box_and_the_bed_is_told_by_its_number() -> None:
    work = with_beds_named(_work(), _WITHOUT_TYPE)
    sheets, labels, seeds = _printed(work)
    used = {block.bed for one in work.sowings for block in one.blocks}
    assert "□" in sheets
    for text in (sheets, labels, seeds):
        assert "□standsforaletterthatthesesheetshavenotypefor." in text
    for number, bed in enumerate(work.garden.beds, 1):
        if bed.name in used:
            assert f"(bed{number}oftheplan)" in sheets
            assert f"(bed{number}oftheplan)" in labels


@pytest.mark.parametrize("names", [_TRYING, _MARKUP, _LETTERS, _WITHOUT_TYPE], ids=range(4))
@pytest.mark.parametrize("named", [with_beds_named, with_crops_named, with_both_named])
def test_no_name_runs_off_the_paper_or_over_another(
    named: Callable[[Work, Sequence[str]], Work], names: tuple[str, ...]
) -> None:
    for content in _contents(named(_work(), names)):
        for page in ReadPdf(content).pages:
            assert faults_of(page, _SMALLEST_PT) == []


def _work() -> Work:
    return brief(draft("stony_ridge"))


def _contents(work: Work) -> tuple[bytes, bytes, bytes]:
    return write_season_sheets(brief(work), {}), write_labels(work), write_seed_starting(work)


def _printed(work: Work) -> tuple[str, str, str]:
    """All letters of each of the three files, in the order they were set."""
    sheets, labels, seeds = (
        _closed("".join(letter["text"] for page in ReadPdf(one).pages for letter in page.chars))
        for one in _contents(work)
    )
    return sheets, labels, seeds


def _closed(text: str) -> str:
    return "".join(text.split()).replace("\u200b", "")
