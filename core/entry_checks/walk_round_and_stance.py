"""Checks of the walk-round, the stance and the layout.

A message says at once if an answer will hold the verdict back.
"""

from collections.abc import Iterator

from core.documents.document import value_at
from core.documents.entries import EntryError
from core.entry_checks.known import KnownAnswers
from core.entry_checks.outcome import Objection
from core.entry_checks.rule import ROUNDING, format_tape
from core.readings import stance, walk_round
from core.text.quantity import INCH

HELD_BACK = "This will hold the verdict back until it is put right."

LENGTHS = {
    "walk_round.steering_wheel_diameter": (12 * INCH, 24 * INCH),
    "walk_round.rim_play": (0.0, 8 * INCH),
    "walk_round.rim_size": (12 * INCH, 26 * INCH),
    "walk_round.linkage_play": (0.0, 3 * INCH),
}
"""Usual smallest and largest length by path, mm (common practice, no source)."""

_PLAY_OF = {
    "walk_round.steering_wheel_diameter": "walk_round.rim_play",
    "walk_round.rim_play": "walk_round.rim_play",
    "walk_round.rim_size": "walk_round.linkage_play",
    "walk_round.linkage_play": "walk_round.linkage_play",
}
"""The free play that each length decides about."""

SIDE_TO_SIDE = INCH / 2
"""Largest usual difference of ride height from left to right, mm (common practice, no source)."""

_MEANING_OF_NO = {
    "stance.level_floor": "Heights taken from a floor that is not level are wrong on one side.",
    "stance.tyres_set": "A soft tyre lowers its side and changes the angles of both links.",
    "stance.usual_load": "Another load changes the ride height and the angles of both links.",
    "stance.settled": "An axle that has not settled stands to one side. "
    "Roll the vehicle its own length and bounce it.",
    "stance.straight_ahead": "With the wheels turned the drag link is not where it is straight "
    "ahead.",
    "walk_round.bolts_torqued": "A bolt that slips in its bracket feels like bump steer.",
    "walk_round.tyres_alike": "Tyres that differ or are damaged pull by themselves.",
}

STATEMENTS = (
    *(f"stance.{name}" for name in stance.STATEMENTS),
    *(f"walk_round.{name}" for name in walk_round.SEEN_TO),
)
"""Paths of the statements that are answered with yes or no."""


def statement_objections(path: str, is_so: bool) -> Iterator[Objection]:
    """Objections to a statement that was answered with no.

    Parameters
    ----------
    path : str
        One of STATEMENTS.
    is_so : bool
        The answer, True for yes.
    """
    if is_so:
        return
    if path == "stance.wheels_on_ground":
        yield Objection(
            "A vehicle that hangs on a two-post lift cannot be measured: the links must carry "
            "their ride-height angles. Put it on its wheels, on the floor or on a drive-on lift.",
            impossible=True,
        )
    else:
        yield Objection(f"{_MEANING_OF_NO[path]} {HELD_BACK}")


def joint_objections(state: str) -> Iterator[Objection]:
    """Objections to the state of a joint, one of core.readings.walk_round.JOINTS."""
    if state == "loose":
        yield Objection(
            f"A loose joint feels like bump steer and spoils every reading taken at it. {HELD_BACK}"
        )


def length_objections(path: str, length: float, known: KnownAnswers) -> Iterator[Objection]:
    """Objections to a length of the walk-round, by itself and under 49 CFR 570.7 and 570.60.

    Parameters
    ----------
    path : str
        One of LENGTHS.
    length : float
        mm
    known : KnownAnswers
        The answers, with this length.
    """
    smallest, largest = LENGTHS[path]
    failures = _failures(known)
    entered = format_tape(length, known)
    usual = f"{format_tape(smallest, known)} to {format_tape(largest, known)} is usual."
    if length < 0:
        yield Objection(f"{entered} is not possible: it cannot be negative.", impossible=True)
    elif length == 0 and smallest > 0:
        yield Objection(f"{entered} is not possible: it has to be more than 0.", impossible=True)
    elif length > 4 * largest:
        yield Objection(f"{entered} is too large to be true: {usual}", impossible=True)
    elif not smallest - ROUNDING <= length <= largest + ROUNDING and path not in failures:
        yield Objection(f"{entered} is unusual: {usual} Look at the tape and at the unit.")
    if (play := _PLAY_OF[path]) in failures:
        yield Objection(f"{_over_limit(play, known)} {HELD_BACK}")


def _is_heavy(known: KnownAnswers) -> bool:
    """True if the profile is for vehicles over 10,000 lb."""
    return known.profile is not None and known.profile.over_10000_lb


def _failures(known: KnownAnswers) -> tuple[str, ...]:
    """Failures of the walk-round; none where an answer cannot be read."""
    try:
        return walk_round.failures(known.document, _is_heavy(known))
    except EntryError:
        return ()


def _over_limit(play: str, known: KnownAnswers) -> str:
    """Sentence with a free play that is too large, its limit, and the rule with this limit."""
    entered = format_tape(known.length(play) or 0.0, known)
    is_heavy = walk_round.is_over_10000_lb(known.document, _is_heavy(known))
    section = "570.60" if is_heavy else "570.7"
    if play == "walk_round.rim_play":
        diameter = known.length("walk_round.steering_wheel_diameter")
        limit = format_tape(walk_round.rim_play_limit(diameter), known)
        wheel = format_tape(diameter, known) if diameter else "unknown"
        return (
            f"Play of {entered} at the rim is over the {limit} of 49 CFR {section}(a) (steering "
            f"wheel {wheel})."
        )
    rim_size = known.length("walk_round.rim_size")
    limit = format_tape(walk_round.linkage_play_limit(is_heavy, rim_size), known)
    return f"Play of {entered} at the tyre is over the {limit} of 49 CFR {section}(b)."


def ride_height_objections(known: KnownAnswers) -> Iterator[Objection]:
    """Objections to ride heights that differ from left to right."""
    left, right = (known.length(f"stance.ride_height.{side}") for side in ("left", "right"))
    if left is not None and right is not None and abs(left - right) > SIDE_TO_SIDE + ROUNDING:
        low = "left" if left < right else "right"
        yield Objection(
            f"The {low} side stands {format_tape(abs(left - right), known)} lower: up to "
            f"{format_tape(SIDE_TO_SIDE, known)} is usual. Look for a soft tyre, a tired spring, "
            "a load to one side, or two different points measured."
        )


def layout_objections(layout: str, known: KnownAnswers) -> Iterator[Objection]:
    """Objections to a layout that differs from the profile's."""
    profile = known.profile
    if profile is not None and layout != profile.steering:
        yield Objection(
            f"The profile {profile.name} is for {profile.steering}, not {layout}: usual ranges and "
            "corrections may not fit. Look where the drag link ends, or choose another profile."
        )


def bent_bar_objections(link: str, is_bent: bool, known: KnownAnswers) -> Iterator[Objection]:
    """Objections to a bent bar that an angle finder was read on."""
    if is_bent and value_at(known.document, f"readings.{link}.slope"):
        yield Objection(
            "An angle finder was read on this bar. "
            "On a bent bar it does not read the line from centre to centre. "
            "The slope that was read will not count."
        )
