"""The pages of reference name all there is, and their links lead to it."""

import re
from pathlib import Path

import pytest

from planner.almanac import FIGURE_KINDS, bibliography, crop_pages
from tests.plans import AS_OF, planner, write_plan
from tests.reference.plan_probes import EVERY_KEY
from tests.reference.schemas import DOCS, GARDEN, schema_in

_PAGES = ("files.md", "crops.md", "figures.md")
_CROPS = (DOCS / "crops.md").read_text("utf-8")
_LIST = (DOCS / "files.md").read_text("utf-8").partition("\n## ")[0]


def _anchors(page: Path) -> set[str]:
    """Where a page can be linked to: its headings, as code forges name them, and names it gives."""
    text = page.read_text(encoding="utf-8")
    headings = re.findall(r"^#+ (.*)$", text, flags=re.MULTILINE)
    named = {re.sub(r"[^\w\- ]", "", one).strip().casefold().replace(" ", "-") for one in headings}
    return named | set(re.findall(r'<a id="([^"]+)">', text))


@pytest.mark.parametrize("page", _PAGES)
def test_every_link_into_a_page_leads_to_a_place_on_it(page: str) -> None:
    links = set(re.findall(r"\]\(([^()#]*)#([^()]+)\)", (DOCS / page).read_text("utf-8")))
    assert links
    lost = [
        (other, anchor) for other, anchor in links if anchor not in _anchors(DOCS / (other or page))
    ]
    assert lost == []


def test_every_crop_and_every_figure_it_is_counted_with_is_told_with_its_source() -> None:
    parts = dict(re.findall(r"^## (.*?)\n(.*?)(?=^## |\Z)", _CROPS, flags=re.MULTILINE | re.DOTALL))
    for name, page in crop_pages().items():
        rows = [line.split(" | ") for line in parts[name].splitlines() if line.startswith("| ")]
        told = {row[0].removeprefix("| "): row[3] for row in rows}
        for figure, row in page.used.items():
            assert re.sub(r"\[|\]\(.*\)", "", told[figure.replace("_", " ")]) == row.source
        assert {"canopy closes", "crop coefficient", "stages", "seed keeps"} <= set(told)
    assert set(parts) == {*crop_pages(), "any other crop"}


def test_what_is_from_memory_says_so_and_all_else_leads_to_its_work() -> None:
    sources = {row.split(" | ")[3] for row in _CROPS.splitlines() if row.startswith("| ")}
    keys = set(re.findall(r"\[([^\]]+)\]", " ".join(sources)))
    assert sources - {"source", "memory"} == {one for one in sources if one.startswith("[")}
    assert keys <= set(bibliography()) - {"memory"}


def test_every_figure_of_a_crop_is_on_its_page() -> None:
    text = (DOCS / "figures.md").read_text("utf-8")
    assert re.findall(r"^\| `(\w+)`", text, flags=re.MULTILINE) == list(FIGURE_KINDS)


def test_every_file_of_a_plan_folder_is_told_of(tmp_path: Path) -> None:
    plan = write_plan(tmp_path / "plan", EVERY_KEY)
    assert planner("schedule", plan, *AS_OF).returncode == 0
    done = planner("log", plan, "sown", "radish 1", "--on", "2027-04-01")
    assert done.returncode == 0, done.stderr
    found = {one.relative_to(plan).as_posix() for one in plan.rglob("*") if one.is_file()}
    told = set(re.findall(r"^\| `([^`]+)` \| [\w ]+ \| ", _LIST, flags=re.MULTILINE))
    told_of = {re.sub(r"-(BED|CROP)\.", "-.", one) for one in told}
    named = {re.sub(r"(year|harvest)-.*\.svg", r"\1-.svg", one) for one in found}
    assert named - told_of == set()
    by_hand = {"crops.toml", "weather.csv", ".published", ".share-token"}
    assert told_of - named == by_hand


def test_the_plan_in_files_md_says_nearly_all_that_a_plan_can_say() -> None:
    def words(part: object) -> set[str]:
        if not isinstance(part, dict):
            return set()
        inner = {word for one in part.values() for word in words(one)}
        return inner | set(part.get("properties", ()))

    site = schema_in(GARDEN)["properties"]
    unsaid = {
        word for word in words({"properties": site}) if not re.search(rf"\b{word}\b", EVERY_KEY)
    }
    assert unsaid == {"station", "weather", "weather_unit"}


def test_the_readme_leads_to_the_reference() -> None:
    readme = (DOCS.parent / "README.md").read_text("utf-8")
    for page in ("commands", "files", "crops", "figures", "rules", "problems", "bibliography"):
        assert f"(docs/{page}.md)" in readme
    assert "(docs/schemas/)" in readme
