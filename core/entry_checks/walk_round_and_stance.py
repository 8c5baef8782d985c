"""Checks of the walk-round and the stance: a failure that will hold the verdict back."""

from collections.abc import Iterator

from core.documents.document import value_at
from core.documents.entries import EntryError
from core.entry_checks.known import KnownAnswers
from core.entry_checks.outcome import Objection
from core.entry_checks.rule import ROUNDING
from core.readings import stance, walk_round
from core.text.quantity import INCH

HELD_BACK = "This will hold the verdict back until it is put right."

LENGTHS = {
    "walk_round.steering_wheel_diameter": (12 * INCH, 24 * INCH),
    "walk_round.rim_play": (0.0, 8 * INCH),
    "walk_round.rim_size": (12 * INCH, 26 * INCH),
    "walk_round.linkage_play": (0.0, 3 * INCH),
}
"""Usual smallest and largest length, mm (common practice, no source)."""

_PLAY_OF = {
    "walk_round.steering_wheel_diameter": "walk_round.rim_play",
    "walk_round.rim_play": "walk_round.rim_play",
    "walk_round.rim_size": "walk_round.linkage_play",
    "walk_round.linkage_play": "walk_round.linkage_play",
}
"""Paths of the free play that each length belongs to."""

SIDE_TO_SIDE = INCH / 2
"""mm; a larger difference of ride height left to right is unusual (common practice, no source)."""

_NOT_SO = {
    "stance.level_floor": "Heights taken from a floor that is not level are wrong on one side.",
    "stance.tyres_set": "A soft tyre lowers its side and with it the angles of both links.",
    "stance.usual_load": "With another load the springs and the links stand elsewhere.",
    "stance.settled": "Roll it a length and bounce it: an axle that has not settled stands aside.",
    "stance.straight_ahead": "Off straight ahead the drag link is not where it is measured to be.",
    "walk_round.bolts_torqued": "A bolt that slips in its bracket feels like bump steer.",
    "walk_round.tyres_alike": "Tyres that are not alike or not sound pull by themselves.",
}
STATEMENTS = {f"stance.{name}" for name in stance.STATEMENTS} | {
    f"walk_round.{name}" for name in walk_round.SEEN_TO
}
"""Paths of the statements that are answered with yes or no."""


def of_statement(path: str, is_so: bool) -> Iterator[Objection]:
    """Objection to a statement that was answered with no."""
    if is_so:
        return
    if path == "stance.wheels_on_ground":
        yield Objection(
            "A vehicle that hangs on a two-post lift cannot be measured: the links must carry "
            "their ride-height angles. Put it on its wheels, on the floor or on a drive-on lift.",
            impossible=True,
        )
    else:
        yield Objection(f"{_NOT_SO[path]} {HELD_BACK}")


def of_joint(state: str) -> Iterator[Objection]:
    """Objection to a loose joint."""
    if state == "loose":
        yield Objection(
            f"A loose joint feels like bump steer and spoils every reading taken at it. {HELD_BACK}"
        )


def of_free_play(path: str, value: float, known: KnownAnswers) -> Iterator[Objection]:
    """Objections to a length of the walk-round: by itself, then by 49 CFR 570.7 and 570.60."""
    smallest, largest = LENGTHS[path]
    if value < 0 or (value == 0 and smallest > 0):
        yield Objection("It has to be more than 0.", impossible=True)
    elif value > 4 * largest:
        yield Objection(f"{known.tape(value)} cannot be that large.", impossible=True)
    elif not smallest - ROUNDING <= value <= largest + ROUNDING and path not in _failures(known):
        yield Objection(
            f"{known.tape(value)} is unusual: {known.tape(smallest)} to {known.tape(largest)} "
            "is usual. Look at the tape and at the unit."
        )
    play = _PLAY_OF[path]
    if play in _failures(known):
        yield Objection(f"{_limit(play, known)} {HELD_BACK}")


def _is_heavy(known: KnownAnswers) -> bool:
    """True if the profile is for vehicles over 10,000 lb."""
    return known.profile is not None and known.profile.over_10000_lb


def _failures(known: KnownAnswers) -> tuple[str, ...]:
    try:
        return walk_round.failures(known.document, _is_heavy(known))
    except EntryError:
        return ()


def _limit(play: str, known: KnownAnswers) -> str:
    """The free play with the limit that it exceeds, and the section of 49 CFR."""
    play_words = known.tape(known.length(play) or 0.0)
    heavy = _is_heavy(known)
    section = "570.60" if heavy else "570.7"
    if play == "walk_round.rim_play":
        diameter = known.length("walk_round.steering_wheel_diameter")
        limit = known.tape(walk_round.rim_play_limit(diameter))
        wheel = known.tape(diameter) if diameter else "unknown"
        return (
            f"Play of {play_words} at the rim is over the {limit} of 49 CFR {section}(a) (steering "
            f"wheel {wheel})."
        )
    rim_size = known.length("walk_round.rim_size")
    limit = known.tape(walk_round.linkage_play_limit(heavy, rim_size))
    return f"Play of {play_words} at the tyre is over the {limit} of 49 CFR {section}(b)."


def of_ride_height(known: KnownAnswers) -> Iterator[Objection]:
    """Objection to a difference of ride height between left and right."""
    left, right = (known.length(f"stance.ride_height.{side}") for side in ("left", "right"))
    if left is not None and right is not None and abs(left - right) > SIDE_TO_SIDE + ROUNDING:
        low = "left" if left < right else "right"
        yield Objection(
            f"The {low} side stands {known.tape(abs(left - right))} lower; up to "
            f"{known.tape(SIDE_TO_SIDE)} is usual. Look for a soft tyre, a tired spring, a load "
            "to one side, or two different points measured."
        )


def of_layout(path: str, choice: str, known: KnownAnswers) -> Iterator[Objection]:
    """Objection to a layout that is not the profile's."""
    profile = known.profile
    if path == "layout.steering" and profile is not None and choice != profile.steering:
        yield Objection(
            f"The profile {profile.name} is for {profile.steering}, not {choice}: usual ranges and "
            "corrections may not fit. Look where the drag link ends, or choose another profile."
        )


def of_bent(link: str, is_bent: bool, known: KnownAnswers) -> Iterator[Objection]:
    """Objection to a bent bar whose slope was read: an angle finder needs a straight bar."""
    if is_bent and value_at(known.document, f"readings.{link}.slope"):
        yield Objection(
            "An angle finder was read on this bar; on a bent one it reads something else, so that "
            "slope will not count."
        )
