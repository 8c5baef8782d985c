"""The place where the drag link's frame end wants to be, and the axle's own movement."""

from collections.abc import Iterator
from math import degrees

from core.profiles.profile_tables import USUAL_CLEARANCE
from core.text.quantity import LengthUnit
from core.verdict.verdict import Value, Verdict
from wizard.phrases.amounts import rounded_length_words, side_words, travel_words
from wizard.phrases.fact import LOOK, Fact

COVERAGE = 2.0
"""Coverage factor of the doubt that people read (GUM, JCGM 100:2008, 6.2.1)."""


def frame_end_fact(verdict: Verdict, unit: LengthUnit) -> Fact:
    """Rise of the drag link's frame end that sets the link square to its ball's path."""
    doubt = rounded_length_words(COVERAGE * verdict.rise_to_square.u, unit)
    advice = "This advises; it does not decide."
    rise = way_to_square(verdict.rise_to_square, unit)
    if not rise:
        return Fact(
            "wants to be", f"The drag link's frame end is where it wants to be, within {doubt}."
        )
    return Fact(
        "wants to be",
        f"The drag link's frame end wants to be {rise}, give or take {doubt}. {advice}",
    )


def way_to_square(rise_to_square: Value, unit: LengthUnit) -> str:
    """The way to the height where the drag link is square to its path: "1 1/8 in lower".

    Empty where the frame end is there already, within its doubt.
    """
    rise, u = rise_to_square
    if abs(rise) <= COVERAGE * u:
        return ""
    return f"{rounded_length_words(rise, unit)} {'higher' if rise > 0 else 'lower'}"


def guide_facts(verdict: Verdict, unit: LengthUnit) -> Iterator[Fact]:
    """Pitch of the axle, castor, roll steer, and the clearance between the two links."""
    sweep, linkage = verdict.sweep, verdict.measured.linkage
    ends = [
        f"{degrees(abs(float(sweep.axle_pitch[end]))):.1f} deg "
        f"{'ahead' if sweep.axle_pitch[end] > 0 else 'back'} at "
        f"{travel_words(float(sweep.heave[end]), unit)}"
        for end in (-1, 0)
        if abs(degrees(float(sweep.axle_pitch[end]))) >= 0.05
    ]
    if ends:
        yield Fact("its top pitches", ", ".join(ends))
    assumed = "" if "kingpin.castor" not in verdict.session.assumed else ", assumed"
    yield Fact("castor", f"{degrees(float(linkage.castor)):.1f} deg{assumed}")
    steer, u = verdict.roll_steer
    way = f" {side_words(steer)}" if abs(steer) >= 0.005 else ""
    yield Fact(
        "roll steer",
        f"Left wheel up by 1 deg of roll steers {abs(steer):.2f} deg{way}, give or take "
        f"{COVERAGE * u:.2f}.",
    )
    if verdict.clearance is not None:
        smallest, at_heave = verdict.clearance
        yield Fact(
            "clearance",
            f"Track bar and drag link come within {rounded_length_words(smallest, unit)} at "
            f"{travel_words(at_heave, unit)}, centre line to centre line.",
            LOOK if smallest < USUAL_CLEARANCE else "",
        )
