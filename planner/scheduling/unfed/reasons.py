"""Why a week stays short although a sowing could feed it, with what would help."""

import math

from planner.garden import Crop
from planner.scheduling.starts import CropCandidates
from planner.scheduling.unmet import Reason, UnmetKind
from planner.terms import M2_PER_SQ_FT, Week


def no_ground_reason(found: CropCandidates, week: Week, lacking: float) -> Reason:
    """Why a week stays short although a sowing could feed it."""
    crop = found.about.crop
    per_plant = crop.gives.middle
    flows = [one.flow[week] for one in found.serving(week) if week in one.flow]
    if flows:
        per_plant = max(flows)
    plants = math.ceil(lacking / per_plant)
    area_m2 = plants * (crop.ground.spacing_um / 1e6) ** 2
    return Reason(
        UnmetKind.NO_GROUND,
        f"Every bed deep and light enough for {crop.name} is full while it would grow; for one "
        f"such week alone it would take {_area_words(area_m2)} more.",
        "add ground, want less of a crop that stands long, or buy that week.",
    )


def _area_words(area_m2: float) -> str:
    def number(value: float) -> str:
        return f"{value:.0f}" if value >= 10 else f"{value:.1f}"

    return f"{number(area_m2)} square metres ({number(area_m2 / M2_PER_SQ_FT)} sq ft)"


def partial_reason(found: CropCandidates, week: Week) -> Reason:
    """Why the first or last week of a flow is short."""
    crop = found.about.crop
    earlier = any(min(one.days) < week for one in found.serving(week))
    if earlier:
        why, remedy = "only ending", "end the target a week earlier, or want less that week."
    else:
        why, remedy = "only coming into harvest", "begin the target a week later."
    return Reason(UnmetKind.COMING_IN, f"{crop.label} is {why} in {week}.", remedy)


def too_little_reason(crop: Crop, week: Week) -> Reason:
    """Why a week that nearly has enough gets no sowing of its own."""
    return Reason(
        UnmetKind.TOO_LITTLE,
        f"Less than a tenth of the {crop.name} wanted is lacking in {week}.",
        "take it as met, or want a little less.",
    )
