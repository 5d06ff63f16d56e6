"""An order: what to buy for all new beds, in bags or in loads (§44)."""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from planner.bedwork.filling import Filling
from planner.garden import NoPrice, SoilWish

# A volume that fills its bags to a drop does not ask for one more.
_A_DROP = 1e-9


@dataclass(frozen=True, slots=True)
class OrderLine:
    """One part of the mix for all new beds: in bags, or in loads."""

    part: str
    volume_l: float
    bags: int
    loads: int


@dataclass(frozen=True, slots=True)
class Order:
    """What to buy for all new beds, both ways; costs in the grower's money."""

    lines: tuple[OrderLine, ...]
    bag_kg: float
    bags_cost: float | NoPrice
    loads_cost: float | NoPrice

    @property
    def bags(self) -> int:
        """Bags of everything."""
        return sum(line.bags for line in self.lines)

    @property
    def loads(self) -> int:
        """Loads of everything."""
        return sum(line.loads for line in self.lines)


def order_of(soil: SoilWish, fillings: Iterable[Filling]) -> Order:
    """What all fillings take together; each part is rounded up to whole bags or loads."""
    volumes: dict[str, float] = {}
    for filling in fillings:
        for part, volume_l in filling.parts.items():
            volumes[part] = volumes.get(part, 0.0) + volume_l
    lines = tuple(
        OrderLine(
            part,
            volume_l,
            whole_parcels(volume_l, soil.bag.size.middle),
            whole_parcels(volume_l, soil.bulk.size.middle),
        )
        for part, volume_l in volumes.items()
    )
    return Order(
        lines,
        soil.bag.size.middle * soil.middle("bag_weight"),
        _cost(sum(line.bags for line in lines), soil.bag.price),
        _cost(sum(line.loads for line in lines), soil.bulk.price),
    )


def whole_parcels(volume_l: float, parcel_l: float) -> int:
    """How many bags or loads hold a volume."""
    return math.ceil(volume_l / parcel_l * (1 - _A_DROP))


def _cost(count: int, price: float | NoPrice) -> float | NoPrice:
    return price if isinstance(price, NoPrice) else count * price
