"""Words on the photographs of a verdict: where each camera stood, and how well its marks fit."""

from collections.abc import Iterator

from core.adjustment.marks import AdjustedMark
from core.readings.photograph import Photograph
from core.readings.reading import CRITICAL
from core.text.plain_text import plain
from core.text.quantity import LengthUnit, format_length
from core.verdict.verdict import Verdict
from wizard.phrases.amounts import count_words
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.mark_names import POINTS

LONGEST_NAME = 60


def photograph_facts(verdict: Verdict, photograph: Photograph, unit: LengthUnit) -> Iterator[Fact]:
    """Facts on one photograph: its camera, its marks, and each mark that cannot be right."""
    adjustment = verdict.adjustment
    name = f"photograph {photograph.number}"
    marks = [mark for mark in adjustment.marks if mark.photograph == photograph.number]
    cameras = [
        camera for camera in adjustment.cameras if camera.photograph.number == photograph.number
    ]
    if not cameras:
        yield Fact(name, f"{plain(photograph.file, LONGEST_NAME)}: none of its marks counts.", LOOK)
        return
    ahead, _, up = cameras[0].place
    largest = max((largest_residual(mark) for mark in marks), default=0.0)
    yield Fact(
        name,
        f"{count_words(len(marks))} marks, which fit within {largest:.1f} pixels. The camera stood "
        f"{format_length(float(ahead), unit)} ahead of the axle and "
        f"{format_length(float(up), unit)} above the floor.",
    )
    for mark in marks:
        if mark.w is not None and mark.w > CRITICAL:
            words = f"its {POINTS[mark.point]} is {largest_residual(mark):.1f} pixels off"
            yield Fact("", f"{words}: it cannot be right. Mark it again.", LOOK)


def largest_residual(mark: AdjustedMark) -> float:
    """Larger of the residuals across and down, pixels."""
    return max(map(abs, mark.residual))
