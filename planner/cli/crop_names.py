"""Crops by the names people give them, some of which could be any of several."""

import re

from planner.almanac import crop_page, crop_pages
from planner.reading import nearest_word


def crops_meant(name: str) -> tuple[str, ...]:
    """The crops of the almanac that a name may mean.

    The one that bears it; else all with that word in a name of theirs, so that "beans" are bush
    beans, lima beans and pole beans. Empty where there is none.
    """
    page = crop_page(name)
    if page is not None:
        return (page.name,)
    told = name.strip().casefold()
    singular = {told, told.removesuffix("s"), told.removesuffix("es")} - {""}
    return tuple(
        page.name
        for page in crop_pages().values()
        if any(singular & _words(one) for one in (page.name, *page.other_names))
    )


def _words(name: str) -> set[str]:
    return set(re.split(r"[^\w']+", name.casefold()))


def what_to_write(name: str, otherwise: str) -> str:
    """What to write in place of a name that is no crop's; `otherwise` where nothing is like it."""
    meant = crops_meant(name)
    if meant:
        return f"name one of: {', '.join(meant)}."
    others = [other for page in crop_pages().values() for other in page.other_names]
    near = nearest_word(name, [*crop_pages(), *others])
    return f'try "{near}".' if near else otherwise
