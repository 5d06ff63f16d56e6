"""Every crop that could be wanted, with what a person eats of it in a week."""

from collections.abc import Iterator

from planner.almanac import crop_pages, kitchen_groups, published_amounts
from planner.garden import Crop, Portion
from planner.reading.crops_file import CropShelf, read_crops
from planner.reading.plan_files import PlanFile


def read_portions(crops: PlanFile | None) -> tuple[Portion, ...]:
    """The portions of all complete crops, the almanac's and those of crops.toml.

    What is wrong in crops.toml is told by reading the garden; here it is passed over.
    """
    shelf = read_crops(crops, [])
    return tuple(_portions(shelf))


def _portions(shelf: CropShelf) -> Iterator[Portion]:
    for name in dict.fromkeys([*crop_pages(), *shelf.own]):
        crop, each_week = shelf.find(name), shelf.portion(name)
        if isinstance(crop, Crop) and each_week is not None:
            like = shelf.model(name)
            group = kitchen_groups().get(like, "")
            yield Portion(crop, each_week, group, published_amounts().get(like, ()))
