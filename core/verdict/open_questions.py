"""What a verdict could not answer, and for want of which readings."""

from collections.abc import Iterator
from dataclasses import dataclass

from core.adjustment.least_squares import has_stations
from core.readings.survey import BRACES, LINKS
from core.uncertainty.measured_linkage import is_centred
from core.verdict.verdict import Verdict

ARTICULATION, ROLL_CENTRE, ROAD = "articulation", "roll centre", "road"
FORE_AND_AFT, LENGTHS, CHECKED, SLIPS = "fore and aft", "lengths", "checked", "slips"


@dataclass(frozen=True)
class Unanswered:
    """One question left open.

    Attributes
    ----------
    question : str
        "articulation" and "roll centre": they need the vehicle's centre plane.
        "fore and aft": how far ahead the ends of a link stand; they are taken to stand abreast.
        "lengths": lengths and braces that were taken and check nothing without stations.
        "checked": whether the readings agree; nothing was taken twice over.
        "slips": whether these readings are free of a slip; nothing checks them.
        "road": what it does on the road; the profile with its events is not known here.
    readings : tuple of str
        Names of the readings that are missing, or that nothing checks ("lengths", "slips").
    """

    question: str
    readings: tuple[str, ...] = ()


def unanswered(verdict: Verdict) -> tuple[Unanswered, ...]:
    """Everything that a verdict leaves open."""
    return tuple(_unanswered(verdict))


def _unanswered(verdict: Verdict) -> Iterator[Unanswered]:
    session, adjustment = verdict.session, verdict.adjustment
    taken = {reading.name for reading in session.readings}
    used = {item.reading.name for item in adjustment.items}
    if not is_centred(session):
        sides = ("left_offset", "right_offset")
        wheels = tuple(f"wheels.{side}" for side in sides if side not in session.wheels)
        yield Unanswered(ARTICULATION, wheels)
        yield Unanswered(ROLL_CENTRE, wheels)
    stations = (f"{link}.{end}.station" for link in LINKS for end in ("frame", "axle"))
    if missing := tuple(
        name for name in stations if name not in taken and not has_stations(_link(name), taken)
    ):
        yield Unanswered(FORE_AND_AFT, missing)
    lengths = (*(f"{link}.length" for link in LINKS), *BRACES)
    if idle := tuple(name for name in lengths if name in taken - used):
        yield Unanswered(LENGTHS, idle)
    if adjustment.redundancy == 0:
        yield Unanswered(CHECKED, tuple(f"{link}.slope" for link in LINKS))
    elif blind := tuple(item.reading.name for item in adjustment.items if item.w is None):
        yield Unanswered(SLIPS, blind)
    if not session.events:
        yield Unanswered(ROAD)


def _link(name: str) -> str:
    return name.partition(".")[0]
