"""What becomes of the ground, in words: what is kept, and which crops may share it."""

from planner.garden import Garden, KeptGround
from planner.writing.place_words import short_stretch_words


def ground_text(garden: Garden) -> str:
    """A line for each piece of kept ground, and two for crops that may share ground.

    Empty where nothing is kept and no two crops wanted go together.
    """
    lines = [_kept_line(kept, garden) for kept in garden.kept]
    if garden.shared:
        guests = ", ".join(dict.fromkeys(pair.guest for pair in garden.shared))
        hosts = ", ".join(dict.fromkeys(pair.host for pair in garden.shared))
        lines.append(f"Guests that may share the ground of another crop: {guests}.")
        lines.append(f"Hosts: {hosts}.")
    elif not garden.wish.shares_ground:
        lines.append("No ground is shared, as you wish.")
    return "\n".join(lines)


def _kept_line(kept: KeptGround, garden: Garden) -> str:
    bed = garden.bed(kept.bed)
    where = short_stretch_words(bed, kept.from_um, kept.to_um)
    days = ""
    if kept.first > garden.wish.first:
        days += f" from {kept.first}"
    if kept.last <= garden.wish.last:
        days += f" until {kept.last}"
    return f"Kept in {kept.bed} for {kept.what}: {where}{days}."
