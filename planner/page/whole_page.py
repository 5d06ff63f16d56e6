"""A whole page: its head, style and script, and a policy that lets in nothing else."""

import base64
import hashlib
import re
from importlib import resources

from planner.page.element import Html, el, joined
from planner.pictures import colours_in_the_dark

# What a page may not do unless it is shared, and where a page says what it may.
WITHOUT_FORMS = "form-action 'none'"
POLICY = re.compile(r'<meta http-equiv="Content-Security-Policy" content="([^"]*)">')
_DARK = "@media screen and (prefers-color-scheme: dark)"


def whole_page(title: str, body: list[Html], script: str, *, forms: str = WITHOUT_FORMS) -> str:
    """A page with its style and script within, and leave for nothing else."""
    style = packaged("style.css") + _dark_pictures()
    policy = (
        f"default-src 'none'; style-src {hash_of(style)}; script-src {hash_of(script)}; "
        f"base-uri 'none'; {forms}"
    )
    head = [
        el("meta", charset="utf-8"),
        Html(f'<meta http-equiv="Content-Security-Policy" content="{policy}">'),
        el("meta", name="viewport", content="width=device-width, initial-scale=1"),
        el("meta", name="color-scheme", content="light dark"),
        el("title", title),
        Html(f"<style>{style}</style>"),
    ]
    content = joined([*body, Html(f"<script>{script}</script>")])
    page = el("html", el("head", *head), Html("<body>\n"), content, Html("</body>"), lang="en")
    return f"<!doctype html>\n{page}\n"


def packaged(name: str) -> str:
    """A style or script of this room."""
    return resources.files("planner.page").joinpath(name).read_text(encoding="utf-8")


def hash_of(content: str) -> str:
    """What a Content-Security-Policy knows a style or script by (CSP level 2)."""
    digest = hashlib.sha256(content.encode()).digest()
    return f"'sha256-{base64.b64encode(digest).decode()}'"


def policy_of(page: str) -> str:
    """The Content-Security-Policy within a page; one that lets in nothing where it has none."""
    found = POLICY.search(page)
    return found[1] if found else "default-src 'none'"


def _dark_pictures() -> str:
    """Rules by which pictures within a page follow its dark scheme."""
    rules = (
        f'.drawing [{paint}="{colour}"]{{{paint}:{dark}}}'
        for colour, dark in colours_in_the_dark().items()
        for paint in ("fill", "stroke")
    )
    return f"{_DARK}{{{''.join(rules)}}}\n"
