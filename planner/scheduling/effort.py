"""Effort: how much work is done to find a good season. It is counted, never timed."""

from dataclasses import dataclass

USUAL_EFFORT = 1


@dataclass(frozen=True, slots=True)
class Effort:
    """How much work is done.

    `drawn`: plans begun, each drawn together in so many rounds; `orders` of arranging; `stages`
    of regrowing, each a `share` of a whole one: the first for every plan, the rest for the best.
    """

    drawn: tuple[int, ...]
    orders: int
    stages: int
    share: float = 1.0


EFFORTS = (
    Effort(drawn=(3,), orders=4, stages=1, share=0.06),
    Effort(drawn=(1, 3), orders=40, stages=3),
    Effort(drawn=(0, 1, 2, 3), orders=40, stages=12),
    Effort(drawn=(0, 1, 2, 3, 4, 6), orders=60, stages=60),
)
