"""Lacking weeks: what every week of a made plan still lacks, and why."""

from collections.abc import Iterator, Mapping

from planner.garden import Garden
from planner.scheduling.sowing import Sowing
from planner.scheduling.starts import CropCandidates
from planner.scheduling.supply import supply_of
from planner.scheduling.unfed.diagnosis import why_unfed
from planner.scheduling.unfed.reasons import no_ground_reason, partial_reason, too_little_reason
from planner.scheduling.unmet import Reason, Unmet
from planner.terms import Week

_NOTHING = 1e-6
# A week that lacks less than this share of its want is hardly short.
_HARDLY = 0.1
_FULL_FLOW = 0.5


def unmet_of(
    garden: Garden, found: Mapping[str, CropCandidates], sowings: tuple[Sowing, ...]
) -> Iterator[Unmet]:
    """What every wanted week still lacks, crop by crop, with its reason."""
    for name, wants in garden.wants().items():
        expected = supply_of([one for one in sowings if one.crop.name == name], wants).expected
        for week, want in wants.items():
            lacking = want - expected.get(week, 0.0)
            if lacking > _NOTHING:
                yield Unmet(name, week, lacking, _reason(found[name], week, lacking, want))


def _reason(found: CropCandidates, week: Week, lacking: float, want: float) -> Reason:
    serving = found.serving(week)
    if not serving:
        return why_unfed(found.about, week)
    if lacking < _HARDLY * want:
        return too_little_reason(found.about.crop, week)
    flows = [one.flow[week] / max(one.flow.values()) for one in serving if week in one.flow]
    if flows and max(flows) < _FULL_FLOW:
        return partial_reason(found, week)
    return no_ground_reason(found, week, lacking)
