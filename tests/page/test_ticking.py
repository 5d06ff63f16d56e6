"""Ticking over HTTP: what is noted, what is refused, and two phones at once."""

import gzip
import http.client
import json
import threading
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from urllib.parse import urlencode

import pytest

from planner.cli.share.sent import LARGEST_BODY_BYTES
from tests.page.conftest import LOOKED_AT, TOKEN, Shared

_FORM = "application/x-www-form-urlencoded"


def _sown(shared: Shared, number: int = 0) -> dict[str, object]:
    task = shared.task("sow", number)
    return {"task": task["id"], "event": "sown", "sowing": task["sowing"], "seen": 0}


def test_a_tick_is_a_line_of_the_journal(shared: Shared) -> None:
    told = _sown(shared)
    status, said = shared.tick(**told)
    assert (status, said) == (200, f"Noted: {told['sowing']} sown on 20 May 2027.")
    assert shared.journal == [f"{LOOKED_AT},sown,{told['sowing']},,"]


def test_a_form_without_script_notes_the_same(shared: Shared) -> None:
    told = _sown(shared) | {"on": "2027-05-12", "note": "in the rain, <i>late</i>"}
    status, page = shared.send(urlencode(told).encode(), Content_Type=_FORM)
    assert status == 200
    assert b"Noted: " in page
    assert b"in the rain, &lt;i&gt;late&lt;/i&gt;" in page
    assert shared.journal == [f'2027-05-12,sown,{told["sowing"]},,"in the rain, <i>late</i>"']


@pytest.mark.parametrize(
    ("event", "amount", "noted"),
    [
        ("picked", "22", "22 roots"),
        ("picked", " 7,5 ", "7.5 roots"),
        ("picked", "12 roots", "12 roots"),
        ("late", "6", "6 days"),
        ("lost", "3", "3 plants"),
        ("lost", "", ""),
    ],
)
def test_a_bare_number_has_the_unit_that_is_asked_for(
    shared: Shared, event: str, amount: str, noted: str
) -> None:
    sowing = shared.task("pick")["sowing"]
    assert shared.tick(event=event, sowing=sowing, amount=amount)[0] == 200
    assert shared.journal == [f"{LOOKED_AT},{event},{sowing},{noted},"]


def test_a_tick_can_be_taken_back(shared: Shared) -> None:
    told = _sown(shared)
    shared.tick(**told)
    status, said = shared.tick(event="undone", sowing=told["sowing"], seen=1)
    assert (status, said) == (200, f"Taken back: {told['sowing']} sown on 20 May 2027.")
    assert shared.tick(**told | {"seen": 2})[0] == 200
    assert [line.split(",")[1] for line in shared.journal] == ["sown", "undone", "sown"]


def test_two_phones_at_once_note_a_task_once_and_others_all(shared: Shared) -> None:
    ticks = [_sown(shared, number) for number in (0, 1, 2, 0, 1, 2)]
    together = threading.Barrier(len(ticks))

    def tick(told: dict[str, object]) -> int:
        together.wait()
        return shared.tick(**told)[0]

    with ThreadPoolExecutor(len(ticks)) as pool:
        answers = list(pool.map(tick, ticks))
    assert sorted(answers) == [200, 200, 200, 409, 409, 409]
    assert sorted(shared.journal) == sorted(
        f"{LOOKED_AT},sown,{told['sowing']},," for told in ticks[:3]
    )


def test_who_has_not_seen_what_was_noted_is_told(shared: Shared) -> None:
    told = _sown(shared)
    shared.tick(**told)
    status, said = shared.tick(event="picked", sowing=told["sowing"], amount="5", seen=0)
    assert status == 409
    assert "meanwhile this was noted: sown on 20 May 2027" in said
    status, said = shared.tick(**told | {"seen": 1})
    assert status == 409
    assert "It is already noted" in said
    assert len(shared.journal) == 1


def test_what_has_ended_takes_nothing_more(shared: Shared) -> None:
    sowing = shared.task("pick")["sowing"]
    shared.tick(event="lost", sowing=sowing)
    status, said = shared.tick(event="picked", sowing=sowing, amount="5", seen=1)
    assert status == 409
    assert "has ended, lost on 20 May 2027" in said


@pytest.mark.parametrize(
    ("told", "status", "said"),
    [
        ({"event": "picked", "amount": ""}, 422, "does not tell how much"),
        ({"event": "picked", "amount": "lots"}, 422, "is not a quantity"),
        ({"event": "picked", "amount": "5 oz"}, 422, "is counted in roots"),
        ({"event": "sown", "on": "20.5.2027"}, 422, "is not a date"),
        ({"event": "sown", "on": "2026-05-20"}, 422, "days before that"),
        ({"event": "thinned"}, 422, "is no event of a journal"),
        ({"event": ""}, 422, "has no event"),
        ({"event": "undone"}, 422, "left to undo"),
        ({"event": "set out"}, 422, "is sown in place"),
        ({"event": "sown", "task": "radish 1/sow/9"}, 404, "does not know radish 1/sow/9"),
        ({"event": "sown", "task": "tomato 1/sow/1"}, 404, "does not know tomato"),
        ({"event": "sown", "sowing": "radish 99"}, 404, "does not know radish 99"),
        ({"event": "sown", "sowing": ""}, 404, "Nothing was noted"),
        ({"event": "sown", "seen": "x"}, 409, "Nothing was noted"),
        ({"event": "sown", "seen": 7}, 409, "Nothing was noted"),
    ],
)
def test_what_cannot_stand_is_told_and_not_noted(
    shared: Shared, told: dict[str, object], status: int, said: str
) -> None:
    answer = shared.tick(**{"sowing": "radish 1", **told})
    assert answer[0] == status
    assert said in answer[1]
    assert not (shared.folder / "journal.csv").exists()


@pytest.mark.parametrize(
    "headers",
    [
        {"Origin": "http://elsewhere.example"},
        {"Origin": "http://127.0.0.1:1"},
        {"Origin": "http://127.0.0.1"},
        {"Origin": "null"},
        {"Origin": None},
        {"Origin": "http://[bad"},
        {"Sec_Fetch_Site": "cross-site"},
        {"Sec_Fetch_Site": "same-site"},
        {"Sec_Fetch_Site": "none"},
    ],
    ids=str,
)
@pytest.mark.parametrize("name", ["tick", "revision"])
def test_another_site_can_send_nothing(
    shared: Shared, name: str, headers: dict[str, str | None]
) -> None:
    """The origin is checked, and none is refused (OWASP on request forgery, from memory)."""
    status, content = shared.send(_sown(shared), name, TOKEN, **headers)
    assert status == 403
    assert "not sent from a page that is shared here" in " ".join(json.loads(content)["said"])
    assert shared.journal == []


def test_nobody_without_the_address_can_send_anything(shared: Shared) -> None:
    told = _sown(shared)
    assert shared.send(told, token="x" * 43) == (404, b"")
    assert shared.send(told, name="season.html") == (404, b"")
    elsewhere = {"Host": "garden.example", "Origin": "http://garden.example"}
    assert shared.send(told, **elsewhere) == (404, b"")
    assert shared.journal == []


@pytest.mark.parametrize(
    ("body", "headers", "status"),
    [
        (b"x" * (LARGEST_BODY_BYTES + 1), {}, 413),
        (b"", {"Content_Length": "99999999999"}, 413),
        (b"{}", {"Content_Length": None}, 411),
        (b"{}", {"Content_Length": "-2"}, 411),
        (b"{}", {"Content_Length": None, "Transfer_Encoding": "chunked"}, 411),
        (b"{}", {"Content_Type": "text/plain"}, 415),
        (b"{}", {"Content_Type": None}, 415),
        (b"{", {}, 400),
        (b"[" * 8_000, {}, 400),
        (b"[1, 2]", {}, 400),
        (b'{"event": ["sown"]}', {}, 400),
        (b'{"event": null}', {}, 400),
        (b"\xff\xfe", {}, 400),
        (b'{"sowing": "\\ud800"}', {}, 400),
        (b"{}", {}, 404),
        (b"a=1&" * 30, {"Content_Type": _FORM}, 400),
    ],
    ids=lambda told: str(told)[:40],
)
def test_what_is_not_understood_is_one_message(
    shared: Shared, body: bytes, headers: dict[str, str | None], status: int
) -> None:
    answer, content = shared.send(body, "tick", TOKEN, **headers)
    assert answer == status
    assert b"Traceback" not in content
    assert content
    assert shared.journal == []


def test_pages_are_kept_from_other_sites_and_from_being_kept(shared: Shared) -> None:
    for name in ("", "season.html", "note?sowing=radish+1", "revision"):
        status, _, headers = shared.read(name)
        assert status == 200
        policy = headers["Content-Security-Policy"]
        assert policy.startswith("default-src 'none'; ")
        assert "frame-ancestors 'none'" in policy
        assert "unsafe" not in policy
        assert headers["X-Frame-Options"] == "DENY"
        assert headers["X-Content-Type-Options"] == "nosniff"
        assert headers["Referrer-Policy"] == "same-origin"
        assert headers["Cache-Control"] == "no-store"
        assert "Access-Control-Allow-Origin" not in headers


def test_lines_that_cannot_stand_are_told_and_others_count(shared: Shared) -> None:
    sowing = shared.task("sow")["sowing"]
    journal = f"date,event,sowing,amount,note\n2027-05-19,sown,{sowing},,\n2027-05-20,eaten,x,,\n"
    (shared.folder / "journal.csv").write_text(journal, "utf-8")
    status, content, _ = shared.read()
    assert status == 200
    assert "journal.csv, line 3" in content
    assert "Noted: sown on 19 May 2027." in content


@pytest.mark.parametrize("name", ["", "note?sowing=radish+1"])
def test_a_season_that_cannot_be_read_is_told(shared: Shared, name: str) -> None:
    record = shared.folder / "season" / "season.json"
    record.write_text("{", "utf-8")
    status, content, _ = shared.read(name)
    assert status == 503
    assert "season.json" in content
    assert shared.tick(event="sown", sowing="radish 1")[0] == 503
    record.unlink()
    assert shared.read(name)[0] == 503


@pytest.mark.parametrize("damage", [None, b"", b"<html>no page of ours</html>", b"\xff"])
def test_a_page_that_was_not_written_here_is_not_shared(
    shared: Shared, damage: bytes | None
) -> None:
    page: Path = shared.folder / "season" / "season.html"
    page.unlink()
    if damage is not None:
        page.write_bytes(damage)
    status, content, _ = shared.read()
    assert status == 503
    assert "planner schedule" in content


def test_the_page_is_made_small_for_the_way(shared: Shared) -> None:
    _, page, _ = shared.read()
    connection = http.client.HTTPConnection("127.0.0.1", shared.port, timeout=30)
    connection.request("GET", f"/{TOKEN}/", headers={"Accept-Encoding": "gzip, deflate"})
    answer = connection.getresponse()
    content = answer.read()
    connection.close()
    assert answer.headers["Content-Encoding"] == "gzip"
    assert len(content) < len(page.encode()) / 5
    assert gzip.decompress(content).decode() == page


def test_an_unknown_sowing_has_no_page(shared: Shared) -> None:
    assert shared.read("note?sowing=%3Cscript%3E")[0] == 404
    assert shared.read("note")[0] == 404
