"""Which crops of a plan may share ground: the almanac's pairs, under the plan's names."""

from collections.abc import Sequence
from dataclasses import replace

from planner.almanac import sharing_pairs
from planner.garden import SeasonWish, SharedGround, Target
from planner.reading.crops_file import CropShelf


def shared_ground(
    targets: Sequence[Target], shelf: CropShelf, wish: SeasonWish
) -> tuple[SharedGround, ...]:
    """The pairs among the crops wanted, hosts in the order of the plan; none where unwished.

    A crop of one's own shares ground as the crop it is like does.
    """
    if not wish.shares_ground:
        return ()
    wanted = {name: shelf.model(name) for name in dict.fromkeys(one.crop.name for one in targets)}
    pairs = sharing_pairs()
    return tuple(
        replace(pair, host=host, guest=guest)
        for host, host_model in wanted.items()
        for guest, guest_model in wanted.items()
        for pair in pairs
        if host != guest and (pair.host, pair.guest) == (host_model, guest_model)
    )
