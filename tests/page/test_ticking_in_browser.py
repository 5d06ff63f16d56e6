"""The shared page in a real browser: ticked on a phone, by two at once, and the plan revised."""

import json
from pathlib import Path

from tests.page.conftest import LOOKED_AT, Phone, Shared, violations


def _named(shared: Shared, kind: str) -> str:
    """The sowing of a task that is due in the week that is looked at, or the next."""
    record = json.loads((shared.folder / "season" / "season.json").read_bytes())
    return next(
        str(one["sowing"])
        for one in record["tasks"]
        if one["kind"] == kind and "2027-05-17" <= one["on"] <= "2027-05-30"
    )


def test_a_task_is_ticked_and_found_in_the_journal(phone: Phone, shared: Shared, axe: str) -> None:
    page, sowing = phone.page, _named(shared, "sow")
    page.goto(shared.base)
    assert violations(page, axe) == []
    page.get_by_role("button", name=f"Sown today, {sowing}", exact=True).click()
    page.locator("#said", has_text=f"Noted: {sowing} sown on 20 May 2027.").wait_for()
    assert shared.journal == [f"{LOOKED_AT},sown,{sowing},,"]
    assert page.evaluate("document.activeElement.textContent") == "Take back"
    assert violations(page, axe) == []
    page.keyboard.press("Enter")
    page.locator("#said", has_text=f"Taken back: {sowing}").wait_for()
    assert shared.journal[1:] == [f"{LOOKED_AT},undone,{sowing},,"]
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    assert {one.split("/")[2] for one in phone.asked} == {f"127.0.0.1:{shared.port}"}


def test_how_much_was_picked_is_asked(phone: Phone, shared: Shared) -> None:
    page, sowing = phone.page, _named(shared, "pick")
    page.goto(f"{shared.base}season.html")
    button = page.get_by_role("button", name=f"Picked today, {sowing}", exact=True).first
    box = page.locator(".tick", has=button).first
    box.get_by_label("How much").fill("many")
    button.click()
    fault = page.locator("#said.fault")
    fault.wait_for()
    assert '"many" is not a quantity' in fault.inner_text()
    box.get_by_label("How much").fill("11")
    box.get_by_role("button", name="Picked today").click()
    page.locator("#said", has_text="Noted: ").wait_for()
    assert shared.journal == [f"{LOOKED_AT},picked,{sowing},11 roots,"]


def test_two_phones_tick_at_once(phone: Phone, other_phone: Phone, shared: Shared) -> None:
    sowing = _named(shared, "sow")
    pages = phone.page, other_phone.page
    for page in pages:
        page.goto(shared.base)
    for page in pages:
        button = page.get_by_role("button", name=f"Sown today, {sowing}", exact=True)
        button.evaluate("(one) => { setTimeout(() => one.click(), 50); }")
    said = [page.locator("#said", has_text=sowing) for page in pages]
    for one in said:
        one.wait_for()
    words = sorted(one.inner_text().partition(":")[0] for one in said)
    assert words == ["Noted", f"Of {sowing} meanwhile this was noted"]
    assert shared.journal == [f"{LOOKED_AT},sown,{sowing},,"]
    for page in pages:
        assert page.locator(".tick .noted").all_inner_texts() == ["Noted: sown on 20 May 2027."]


def test_a_lost_sowing_is_told_and_the_plan_revised(
    plain_phone: Phone, phone: Phone, shared: Shared, axe: str
) -> None:
    """Told by a phone whose JavaScript is off; revised by another."""
    page, sowing = plain_phone.page, _named(shared, "pick")
    page.goto(shared.base)
    more = page.locator(f'button[aria-label="More ... to note of {sowing}"]').first
    page.locator("details.week", has=more).first.locator("summary").click()
    more.click()
    page.get_by_text("Plants were lost").click()
    page.get_by_role("button", name="Note: lost").click()
    assert page.get_by_role("status").inner_text() == f"Noted: {sowing} lost on 20 May 2027."
    assert shared.journal == [f"{LOOKED_AT},lost,{sowing},,"]

    page, before = phone.page, _season(shared)
    page.goto(shared.base)
    page.get_by_role("link", name="Revise the plan").click()
    assert violations(page, axe) == []
    page.get_by_role("button", name="Show what would change").click()
    page.locator("#revision[data-stage=shown]").wait_for(timeout=60_000)
    assert f"Lost; its ground is free: {sowing}." in page.locator("main").inner_text()
    assert violations(page, axe) == []
    assert _season(shared) == before
    page.get_by_role("button", name="Write this season").click()
    page.get_by_text("The season is written").wait_for()
    assert json.loads(_season(shared))["as_of"] == str(LOOKED_AT)
    page.get_by_role("link", name="Back to the week").click()
    assert page.get_by_text("As of Thursday 20 May 2027").is_visible()
    assert "lost" in page.locator("details.story", has_text=sowing).first.inner_text()


def _season(shared: Shared) -> bytes:
    return Path(shared.folder / "season" / "season.json").read_bytes()


def test_no_answer_is_told(phone: Phone, shared: Shared) -> None:
    page = phone.page
    page.goto(shared.base)
    page.route("**/tick", lambda route: route.abort())
    page.get_by_role("button", name="Sown today").first.click()
    page.locator("#said.fault", has_text="may not be noted").wait_for()
    assert page.get_by_role("button", name="Sown today").first.is_enabled()
