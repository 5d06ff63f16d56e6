"""The pace of a crop with what the garden itself has shown of it (§37)."""

from dataclasses import dataclass
from datetime import date

from planner.growth.own_pace import OwnPace
from planner.growth.paces import CropPace


def at_own_pace(pace: CropPace, own: OwnPace) -> CropPace:
    """A crop's pace with the garden's own; the same pace where too little was seen."""
    if not own.words:
        return pace
    words = f"{pace.words}, and {own.words}"
    past = tuple(OwnCropPace(year, own.factor, words) for year in pace.past)
    return OwnCropPace(pace, own.factor, words, past)


@dataclass(frozen=True, slots=True)
class OwnCropPace:
    """A pace that takes so many times the days; `past` the same for each past year on record."""

    published: CropPace
    factor: float
    words: str
    past: "tuple[OwnCropPace, ...]" = ()

    def ripe_on(self, start: date, days: float) -> date:
        """The day a crop of `days` to maturity, counted from `start`, is ripe."""
        return self.published.ripe_on(start, days * self.factor)

    def day_after(self, start: date, growing_days: float) -> date:
        """The first day on which so many growing days, at this pace, have passed since `start`."""
        return self.published.day_after(start, growing_days * self.factor)

    def fall_extra_days(self, day: date) -> float:
        """Extra days counted for a crop ripe on `day` because it is fall."""
        return self.published.fall_extra_days(day)
