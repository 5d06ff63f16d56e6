"""Faults that harmed files brought to light, each with its least case."""

from pathlib import Path

from planner.cli.publish.published import PUBLISHED, published_record

_AT = "https://dav.example.org/robin/garden/"


def test_a_line_cut_short_does_not_take_the_next_one_with_it(tmp_path: Path) -> None:
    """A run that died while noting what it sent; what the next run sent was forgotten again."""
    (tmp_path / PUBLISHED).write_text('{"at": "https://dav.exam', encoding="utf-8")
    published_record(tmp_path, _AT).sent("sow/1", "imprint")
    assert published_record(tmp_path, _AT).imprints == {"sow/1": "imprint"}


def test_a_sign_that_some_take_for_a_line_end_parts_no_line(tmp_path: Path) -> None:
    record = published_record(tmp_path, _AT)
    record.sent("sow/1", "first")
    text = (tmp_path / PUBLISHED).read_text("utf-8").replace("first", "fi\u2028rst")
    (tmp_path / PUBLISHED).write_text(text, encoding="utf-8")
    assert published_record(tmp_path, _AT).imprints == {"sow/1": "fi\u2028rst"}
