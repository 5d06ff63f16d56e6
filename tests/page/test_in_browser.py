"""season.html in a real browser, opened as a file: phone and desk, keyboard, paper, no network."""

import io
import re
from collections import Counter
from pathlib import Path
from typing import Literal

import pdfplumber
import pytest
from pypdf import PdfReader

from planner.pictures import colours_in_the_dark
from planner.pictures.svg import FAINT_INK, INK, PAPER
from tests.page.conftest import Phone, violations

_WIDTHS = (360, 1280)
_LEAST_TARGET_PX = 44  # WCAG 2.2, 2.5.5 (target size, enhanced)

_TARGETS = "button, summary, nav a, input, .button"
_SMALL_TARGETS = f"""(least) => [...document.querySelectorAll("{_TARGETS}")]
  .filter((one) => one.getClientRects().length > 0)
  .map((one) => [one.outerHTML, one.getBoundingClientRect()])
  .filter(([, box]) => box.height < least || box.width < least)
  .map(([html]) => html)"""

_PAINT = "(one, which) => getComputedStyle(one)[which]"
_PAINT_OF_PAGE = "getComputedStyle(document.documentElement).backgroundColor"


@pytest.fixture
def opened(phone: Phone, made: Path) -> Phone:
    phone.page.goto((made / "season" / "season.html").as_uri())
    return phone


def test_the_week_is_that_of_the_day_it_is_looked_at(opened: Phone) -> None:
    weeks = opened.page.locator("details.week[open]")
    assert weeks.count() == 2
    assert weeks.nth(0).locator("summary").inner_text().startswith("This week")
    assert "17 to 23 May" in weeks.nth(0).locator("summary").inner_text()
    assert weeks.nth(1).locator("summary").inner_text().startswith("Next week")
    assert opened.page.locator("#now").inner_text() == "Today is Thursday 20 May 2027."
    assert opened.page.locator("#past-weeks > details").count() > 0


def test_the_slider_is_moved_by_keyboard_and_says_the_day(opened: Phone) -> None:
    page = opened.page
    slider, said = page.get_by_label("Day", exact=True), page.locator("#day-said")
    assert said.inner_text().startswith("Thursday 20 May 2027: ")
    slider.focus()
    page.keyboard.press("ArrowRight")
    assert said.inner_text().startswith("Friday 21 May 2027: ")
    assert slider.get_attribute("aria-valuetext") == "Friday 21 May 2027"
    page.keyboard.press("Home")
    assert said.inner_text() == "Monday 1 March 2027: nothing stands in the beds."
    assert page.locator("#any-day [data-from]:visible").count() == 0
    for _ in range(25):
        page.get_by_role("button", name="Week on").press("Enter")
    day = page.evaluate("new Date(Date.UTC(2027, 2, 1 + 25 * 7)).toISOString().slice(0, 10)")
    drawn = page.locator("#any-day [data-sowing]")
    for one in drawn.all():
        stands = str(one.get_attribute("data-from")) <= day < str(one.get_attribute("data-to"))
        assert one.is_visible() == stands
    rows = page.locator("#standing tbody tr:not([hidden])")
    assert f": {rows.count()} block" in said.inner_text()
    assert str(page.locator("#any-day svg > text").first.text_content()).endswith(
        "on 23 August 2027"
    )


def test_a_beds_year_begins_to_be_seen_at_today(opened: Phone) -> None:
    """20 May is day 80 of the 275 from 1 March to the end of November."""
    drawing = opened.page.locator("#year .drawing").first
    left, ground, shown = drawing.evaluate(
        """(one) => [one.getBoundingClientRect().left, one.clientWidth,
        one.querySelector('[data-first]').getBoundingClientRect().toJSON()].flat()"""
    )
    today = shown["left"] + shown["width"] * 80 / 275
    assert today - left == pytest.approx(ground / 4, abs=2)


def test_a_link_to_a_sowing_opens_its_story(opened: Phone) -> None:
    page = opened.page
    link = page.locator("details.week[open] .task a").first
    name = link.inner_text()
    link.click()
    story = page.locator(f"details.story[open] > summary:has-text('{name}')")
    assert story.is_visible()
    assert page.locator("details.story[open] h4:visible").inner_text() == "Why"


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", _WIDTHS)
def test_nothing_is_against_wcag_or_cut_off(
    opened: Phone, axe: str, width: int, scheme: Literal["light", "dark"]
) -> None:
    page = opened.page
    page.emulate_media(color_scheme=scheme)
    page.set_viewport_size({"width": width, "height": 800})
    assert violations(page, axe) == []
    page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
    assert violations(page, axe) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    assert page.evaluate(_SMALL_TARGETS, _LEAST_TARGET_PX) == []


def test_every_stop_of_the_keyboard_is_seen(opened: Phone) -> None:
    page = opened.page
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.textContent") == "To the week's tasks"
    for _ in range(8):
        page.keyboard.press("Tab")
        width = page.evaluate("getComputedStyle(document.activeElement).outlineWidth")
        assert width == "3px"


def test_without_javascript_all_but_the_slider_is_there(plain_phone: Phone, made: Path) -> None:
    page = plain_phone.page
    page.goto((made / "season" / "season.html").as_uri())
    assert page.locator("#any-day").is_hidden()
    assert page.locator("#one-day svg").is_visible()
    week = page.locator("details.week").nth(5)
    week.locator("summary").click()
    assert week.locator(".task").first.is_visible()


def test_paper_has_the_week_every_sowing_and_the_harvest(opened: Phone) -> None:
    printed = PdfReader(io.BytesIO(opened.page.pdf(format="A4")))
    words = " ".join(" ".join(one.extract_text().split()) for one in printed.pages)
    assert 5 <= len(printed.pages) <= 14
    for title in ("What to do, week by week", "The beds through the year", "What can be expected"):
        assert title in words
    assert re.search(r"radish 1\s+sow \d+ \w+", words)
    assert "Week on" not in words
    # ISO 216: 210 mm by 297 mm, at 72 to the inch.
    assert printed.pages[0].mediabox[2:] == pytest.approx([595.28, 841.89], abs=1)


def test_in_the_dark_the_page_and_its_pictures_are_light_on_dark(opened: Phone) -> None:
    page = opened.page
    shown = page.locator("#any-day svg > rect").first
    assert shown.evaluate(_PAINT, "fill") == _rgb(PAPER)
    page.emulate_media(color_scheme="dark")
    dark = colours_in_the_dark()
    assert shown.evaluate(_PAINT, "fill") == _rgb(dark[PAPER])
    assert page.evaluate(_PAINT_OF_PAGE) == _rgb(dark[PAPER])
    title = page.locator("#any-day svg > text").first
    assert title.evaluate(_PAINT, "fill") == _rgb(dark[INK])
    for hatch in page.locator("#any-day pattern path").all():
        assert hatch.evaluate(_PAINT, "stroke") in {_rgb(dark[INK]), _rgb(dark[FAINT_INK])}


def _rgb(colour: str) -> str:
    red, green, blue = (int(colour[at : at + 2], 16) for at in (1, 3, 5))
    return f"rgb({red}, {green}, {blue})"


def test_paper_is_black_on_white_whatever_the_scheme(opened: Phone) -> None:
    opened.page.emulate_media(color_scheme="light")
    light = pdfplumber.open(io.BytesIO(opened.page.pdf(format="A4")))
    opened.page.emulate_media(color_scheme="dark")
    dark = pdfplumber.open(io.BytesIO(opened.page.pdf(format="A4")))
    for one, other in zip(light.pages, dark.pages, strict=True):
        colours = Counter(str(letter["non_stroking_color"]) for letter in one.chars)
        assert colours == Counter(str(letter["non_stroking_color"]) for letter in other.chars)
        assert all(max(letter["non_stroking_color"]) < 0.5 for letter in other.chars)


def test_the_file_asks_the_network_for_nothing(opened: Phone) -> None:
    opened.page.evaluate(
        "document.querySelectorAll('details').forEach((one) => { one.open = true; })"
    )
    opened.page.mouse.wheel(0, 20_000)
    assert [one for one in opened.asked if not one.startswith("file://")] == []
    assert len(opened.asked) == 1
