"""Crop sums: what weighing a crop takes, as plain lists, which are quicker one by one."""

from planner.scheduling.offers.crop_offers import CropOffers, last_weeks
from planner.scheduling.offers.worth import Worth


class CropSums:
    """What weighing a crop takes, as plain lists."""

    def __init__(self, offers: CropOffers, worth: Worth) -> None:
        self.gives: list[list[float]] = offers.gives.tolist()
        self.last: list[int] = offers.last_week
        # In each year it is weighed in.
        self.years: list[tuple[list[list[float]], list[int]]] = [
            (year.tolist(), last_weeks(year)) for year in offers.years
        ]
        self.lacks: list[float] = offers.lacks.tolist()
        self.worth: list[float] = offers.worth.tolist()
        self.beyond: list[float] = (offers.beyond * offers.mean_worth).tolist()
        self.sowing: list[float] = (worth.sowing * offers.work).tolist()
        self.days: list[int] = (offers.leaves - offers.enters).tolist()
        self.each = offers.crop.gives.middle
        self.mean_worth = offers.mean_worth
