"""What came before: the sowings of an earlier season, what has happened, what may change."""

from dataclasses import dataclass

from planner.journal import NOTHING_TOLD, Journal
from planner.scheduling.changing import Changing
from planner.scheduling.sowing import Sowing


@dataclass(frozen=True, slots=True)
class Earlier:
    """An earlier season as far as a new one rests on it; the first season rests on nothing."""

    sowings: tuple[Sowing, ...] = ()
    journal: Journal = NOTHING_TOLD
    changing: Changing = Changing.LITTLE
