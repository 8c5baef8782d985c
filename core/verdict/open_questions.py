"""Questions that a verdict leaves open, and the readings that would answer them."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from core.readings.survey import LINKS
from core.uncertainty.measured_linkage import has_centre_plane
from core.verdict.verdict import Verdict


class Topic(StrEnum):
    """Subject of an open question.

    ARTICULATION and ROLL_CENTRE need the vehicle's centre plane. FORE_AND_AFT needs the stations
    of both ends of a link; without them the ends stand about their usual places. CHECKED asks if
    the readings agree, where no reading checks another. SLIPS asks if unchecked readings are free
    of mistakes. ROAD needs the events of the profile.
    """

    ARTICULATION = "articulation"
    ROLL_CENTRE = "roll centre"
    FORE_AND_AFT = "fore and aft"
    CHECKED = "checked"
    SLIPS = "slips"
    ROAD = "road"


@dataclass(frozen=True)
class OpenQuestion:
    """One question that a verdict leaves open.

    Attributes
    ----------
    topic : Topic
    readings : tuple of str
        Names of the missing readings; for SLIPS, of the unchecked readings.
    """

    topic: Topic
    readings: tuple[str, ...] = ()


def open_questions_of(verdict: Verdict) -> tuple[OpenQuestion, ...]:
    """The questions that a verdict leaves open."""
    return (
        *_centre_plane(verdict),
        *_stations(verdict),
        *_unchecked(verdict),
        *_road(verdict),
    )


def _links(verdict: Verdict) -> tuple[str, ...]:
    """The links that the vehicle has."""
    return tuple(link for link in LINKS if f"{link}.frame" in verdict.adjustment.pivots)


def _centre_plane(verdict: Verdict) -> Iterator[OpenQuestion]:
    if not has_centre_plane(verdict.session):
        offsets = ("left_offset", "right_offset")
        missing = tuple(f"wheels.{name}" for name in offsets if name not in verdict.session.wheels)
        yield OpenQuestion(Topic.ARTICULATION, missing)
        if "track_bar" in _links(verdict):
            yield OpenQuestion(Topic.ROLL_CENTRE, missing)


def _stations(verdict: Verdict) -> Iterator[OpenQuestion]:
    taken = {reading.name for reading in verdict.session.readings}
    missing = tuple(
        name
        for link in _links(verdict)
        for name in (f"{link}.frame.station", f"{link}.axle.station")
        if name not in taken
    )
    if missing:
        yield OpenQuestion(Topic.FORE_AND_AFT, missing)


def _unchecked(verdict: Verdict) -> Iterator[OpenQuestion]:
    adjustment = verdict.adjustment
    if adjustment.redundancy == 0:
        yield OpenQuestion(Topic.CHECKED, tuple(f"{link}.slope" for link in _links(verdict)))
    elif unchecked := tuple(item.reading.name for item in adjustment.items if item.w is None):
        yield OpenQuestion(Topic.SLIPS, unchecked)


def _road(verdict: Verdict) -> Iterator[OpenQuestion]:
    if not verdict.session.events:
        yield OpenQuestion(Topic.ROAD)
