"""Slips of marks in photographs: two marks exchanged, and a mark that belongs elsewhere."""

from collections.abc import Callable, Iterator
from dataclasses import replace

from core.adjustment.least_squares import Adjustment, NoSolution
from core.adjustment.slips import NEIGHBOURS, SlipKind, Trial
from core.readings.photograph import CONTACTS, HUBS, Mark, Photograph, without_mark
from core.readings.reading import CRITICAL, Reading

MOST_ASIDE = 6
"""Most marks that are set aside in turn, the worst first."""

TAKEN_FOR_EACH_OTHER = (*NEIGHBOURS, HUBS, CONTACTS, *zip(HUBS, CONTACTS, strict=True))
"""Points whose marks are exchanged."""

Photographs = tuple[Photograph, ...]


def trials_of_marks(
    readings: tuple[Reading, ...],
    photographs: Photographs,
    adjustment: Adjustment,
    readjust: Callable[[Photographs], Adjustment],
) -> Iterator[Trial]:
    """Trials of every slip of a mark that does not fit.

    Parameters
    ----------
    readings : tuple of Reading
    photographs : tuple of Photograph
    adjustment : Adjustment
        Adjustment of these readings and photographs.
    readjust : callable
        Adjustment with other marks.
    """

    def trials(slip: SlipKind, after: Photographs, *changed: str) -> Iterator[Trial]:
        try:
            others = readjust(after)
        except NoSolution:
            return
        yield Trial(slip, changed, (), readings, others, after)

    suspects = [mark for mark in adjustment.marks if mark.w is not None and mark.w > CRITICAL]
    suspect_names = {mark.name for mark in suspects}
    for photograph in photographs:
        marks = {mark.point: mark for mark in photograph.marks if mark.counts}
        for first, second in TAKEN_FOR_EACH_OTHER:
            if first in marks and second in marks:
                names = [photograph.name_of(marks[each]) for each in (first, second)]
                if suspect_names & {*names}:
                    after = _exchanged(photographs, photograph, marks[first], marks[second])
                    yield from trials(SlipKind.EXCHANGED, after, *names)
    for mark in sorted(suspects, key=lambda mark: -(mark.w or 0.0))[:MOST_ASIDE]:
        after = without_mark(photographs, mark.name)
        yield from trials(SlipKind.SET_ASIDE, after, mark.name)


def _exchanged(
    photographs: Photographs, photograph: Photograph, first: Mark, second: Mark
) -> Photographs:
    """The photographs with two marks of one of them exchanged."""
    points = {first: second.point, second: first.point}
    marks = tuple(replace(mark, point=points.get(mark, mark.point)) for mark in photograph.marks)
    return tuple(replace(each, marks=marks) if each is photograph else each for each in photographs)
