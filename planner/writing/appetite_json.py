"""Appetite as plain values that JSON can hold."""

from collections.abc import Sequence
from typing import Any

from planner.bedwork import CropAppetite, Feeds, Proposal
from planner.writing.recorded import recorded


def appetite_record(appetites: Sequence[CropAppetite]) -> list[dict[str, Any]]:
    """Each wanted crop, whom it feeds, and what is published of it."""
    return [
        {
            "crop": one.crop.name,
            "unit": one.crop.unit.name,
            "each_week": recorded(one.each_week),
            "weeks": one.weeks,
            "feeds": [recorded(one.feeds.fewest), recorded(one.feeds.most)]
            if isinstance(one.feeds, Feeds)
            else None,
            "published": [
                {
                    "for": amount.basis.value,
                    "low": amount.figure.low,
                    "high": amount.figure.high,
                    "unit": amount.figure.unit,
                    "source": amount.figure.source.key,
                    "note": amount.note,
                }
                for amount in one.published
            ],
        }
        for one in appetites
    ]


def proposal_record(proposal: Proposal) -> dict[str, Any]:
    """Targets for a household."""
    return {
        "people": proposal.people,
        "targets": [
            {
                "crop": one.portion.crop.name,
                "for_people": proposal.people,
                "from": one.first.isoformat(),
                "to": one.last.isoformat(),
                "ground_share": recorded(one.ground_share),
            }
            for one in proposal.targets
        ],
        "left_out": list(proposal.left_out),
    }
