"""Labels to cut out: one for each block of a sowing, for the tray first and then the bed."""

from collections.abc import Iterator
from dataclasses import dataclass

from planner.garden import Bed
from planner.scheduling import Block, Sowing, SowingState
from planner.sheets.bed_drawing import bed_words
from planner.sheets.day_words import dated_words, day_words
from planner.sheets.frame import Frame, frame_of
from planner.sheets.letters import shown
from planner.sheets.typesetter import typeset
from planner.sheets.work import Work

_GONE = {SowingState.CLEARED, SowingState.LOST}
_LONGEST_NAME = 36
_LONGEST_BED = 30


@dataclass(frozen=True, slots=True)
class Label:
    """What stands on one label; `part` tells which of several blocks it is for."""

    sowing: str
    kind: str
    part: str
    begun: str
    bed: str
    place: str
    picked: str


@dataclass(frozen=True, slots=True)
class _Labels:
    frame: Frame
    labels: tuple[Label, ...]


def write_labels(work: Work) -> bytes:
    """Labels of all that is not yet cleared on the day of planning, in order of being begun."""
    return typeset(
        "labels",
        _Labels(
            frame=frame_of(work),
            labels=tuple(_labels(work)),
        ),
    )


def _labels(work: Work) -> Iterator[Label]:
    standing = [
        one for one in work.sowings if one.state not in _GONE and one.clear_on >= work.as_of
    ]
    for sowing in sorted(standing, key=lambda one: (one.sow_on, one.crop.name, one.id)):
        for number, block in enumerate(sowing.blocks, 1):
            yield _label(work, sowing, block, number)


def _label(work: Work, sowing: Sowing, block: Block, number: int) -> Label:
    crop, blocks = sowing.crop, len(sowing.blocks)
    bed = work.beds[block.bed]
    return Label(
        sowing=shown(sowing.id, _LONGEST_NAME),
        kind="" if crop.label.casefold() == crop.name else shown(crop.label, _LONGEST_BED),
        part=f"{number} of {blocks}" if blocks > 1 else "",
        begun=_begun(sowing),
        bed=bed_words(bed.name, work.number_of(bed.name), _LONGEST_BED),
        place=f"{bed.stretch_words(block.from_um, block.to_um)} {_counted(bed)}",
        picked=_picked(work, sowing),
    )


def _counted(bed: Bed) -> str:
    return "clockwise from the mark" if bed.is_round else "from the mark"


def _begun(sowing: Sowing) -> str:
    if sowing.set_out_on is None:
        return f"into the bed {dated_words(sowing.sow_on)}"
    return f"indoors {day_words(sowing.sow_on)}, out {dated_words(sowing.set_out_on)}"


def _picked(work: Work, sowing: Sowing) -> str:
    """From when on it is picked; where all of its harvest comes too early, until when it is not."""
    first = work.first_pick(sowing)
    if first is None and sowing.harvest:
        from_on = work.too_early[sowing.id, sowing.harvest[-1].day].from_on
        return f"do not pick before {day_words(from_on)}"
    return f"pick from about {day_words(first or sowing.ripe.likely)}"
