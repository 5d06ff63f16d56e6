"""A picture, with what it is called for those who do not see it."""

from planner.page.element import Html, el


def figure(svg: str, called: str) -> Html:
    """A picture as SVG text, which is markup already and escaped by who drew it.

    It keeps its size; where that is more than a phone has, it is moved sideways by itself.
    """
    return el("div", Html(svg), class_="drawing", tabindex=0, role="region", aria_label=called)
