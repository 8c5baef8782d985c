"""The walk-round before all geometry: free play, joints, bolts and tyres.

Limits of free play are those of 49 CFR 570.7 (vehicles of 10,000 lb gross vehicle weight rating
or less) and 49 CFR 570.60 (over 10,000 lb). Local inspection codes differ and come first.
The alignment bench checks 49 CFR 570.7(d), toe against the maker's figure; Evenarc takes no static
toe.
"""

from collections.abc import Mapping
from functools import partial
from typing import Any

from core.documents.document import value_at
from core.documents.entries import EntryError, choice_at, flag_at, quantity_at, units_of
from core.readings.survey import LINKS
from core.text import quantity
from core.text.quantity import INCH

ROUNDING = 1e-6
"""mm; so that 17 5/8 in and 17.625 in land on the same side of a limit."""

LARGEST = 60 * INCH
"""mm; no steering wheel, no rim and no play is larger."""

RIM_PLAY = ((16 * INCH, 2 * INCH), (18 * INCH, 2.25 * INCH), (20 * INCH, 2.5 * INCH))
RIM_PLAY_FROM_22_IN = 2.75 * INCH

JOINTS = ("tight", "loose", "not checked")
OVER_10000_LB = "walk_round.over_10000_lb"
SEEN_TO = ("bolts_torqued", "tyres_alike")


def rim_play_limit(wheel_diameter: float | None) -> float:
    """Largest free play at the steering-wheel rim, mm.

    49 CFR 570.7(a), the same table in 570.60(a): 2 in up to a diameter of 16 in, 2 1/4 in at
    18 in, 2 1/2 in at 20 in, 2 3/4 in at 22 in. Between the diameters listed the smaller one's
    limit counts. Where the diameter is not known, the smallest limit counts.

    Parameters
    ----------
    wheel_diameter : float or None
        Diameter of the steering wheel, mm.
    """
    diameter = (wheel_diameter or 0.0) + ROUNDING
    if diameter >= 22 * INCH:
        return RIM_PLAY_FROM_22_IN
    listed = [limit for smallest, limit in RIM_PLAY if diameter >= smallest]
    return listed[-1] if listed else RIM_PLAY[0][1]


def linkage_play_limit(over_10000_lb: bool, rim_size: float | None = None) -> float:
    """Largest play of the steering linkage at the tyre, mm.

    49 CFR 570.7(b): 1/4 in. 49 CFR 570.60(b), by the size of the rim: 1/4 in up to 16 in, 3/8 in
    up to 18 in, 1/2 in beyond; where the size is not known, 1/4 in.

    Parameters
    ----------
    over_10000_lb : bool
        Gross vehicle weight rating over 10,000 lb.
    rim_size : float or None
        Nominal diameter of the road wheel's rim, mm.
    """
    size = (rim_size or 0.0) - ROUNDING
    if not over_10000_lb or size <= 16 * INCH:
        return INCH / 4
    return INCH * 3 / 8 if size <= 18 * INCH else INCH / 2


def is_over_10000_lb(document: Mapping[str, Any], usual: bool) -> bool:
    """True if the vehicle is over 10,000 lb: as the document says, else as its profile says."""
    said = flag_at(document, OVER_10000_LB)
    return usual if said is None else said


def failures(document: Mapping[str, Any], is_heavy: bool) -> tuple[str, ...]:
    """Paths of the failures of the walk-round, each of which holds the verdict back.

    Parameters
    ----------
    document : mapping
        A part without an answer is no failure.
    is_heavy : bool
        Gross vehicle weight rating over 10,000 lb, which decides between the two regulations
        where the document does not say it (a record does).

    Returns
    -------
    tuple of str
        Dotted paths, such as "walk_round.rim_play" or "walk_round.joints.track_bar_axle".

    Raises
    ------
    core.documents.entries.EntryError
        An entry is faulty.
    """
    heavy = is_over_10000_lb(document, is_heavy)
    rim_limit = rim_play_limit(_length(document, "steering_wheel_diameter"))
    linkage_limit = linkage_play_limit(heavy, _length(document, "rim_size"))
    failed = []
    if (_length(document, "rim_play") or 0.0) > rim_limit + ROUNDING:
        failed.append("walk_round.rim_play")
    if (_length(document, "linkage_play") or 0.0) > linkage_limit + ROUNDING:
        failed.append("walk_round.linkage_play")
    failed += [path for path in _joints(document) if choice_at(document, path, JOINTS) == "loose"]
    seen_to = (f"walk_round.{key}" for key in SEEN_TO)
    return (*failed, *(path for path in seen_to if flag_at(document, path) is False))


def not_checked(document: Mapping[str, Any], has_track_bar: bool) -> tuple[str, ...]:
    """Paths of the parts of the walk-round that nobody has looked at."""
    links = LINKS if has_track_bar else LINKS[1:]
    joints = (f"joints.{link}_{end}" for link in links for end in ("frame", "axle"))
    paths = (f"walk_round.{key}" for key in ("rim_play", "linkage_play", *joints, *SEEN_TO))
    return tuple(path for path in paths if value_at(document, path) in (None, "not checked"))


def _length(document: Mapping[str, Any], key: str) -> float | None:
    parse = partial(quantity.parse_length, unit=units_of(document))
    path = f"walk_round.{key}"
    length = quantity_at(document, path, parse, "1 1/4 in")
    if length is not None and not 0 <= length <= LARGEST:
        raise EntryError(path, 'should lie between 0 and 60 in, such as "1 1/4 in"')
    return length


def joints_checked(document: Mapping[str, Any]) -> bool:
    """True if a joint was found tight or loose. Raises EntryError for a faulty table."""
    return any(choice_at(document, path, JOINTS) != "not checked" for path in _joints(document))


def _joints(document: Mapping[str, Any]) -> tuple[str, ...]:
    joints = value_at(document, "walk_round.joints", {})
    if not isinstance(joints, Mapping):
        raise EntryError("walk_round.joints", f"should be a table of {', '.join(JOINTS)}")
    return tuple(f"walk_round.joints.{joint}" for joint in joints)
