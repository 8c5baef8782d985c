"""Meaning of a verdict for the driver, and the reasons that hold it back."""

from collections.abc import Iterator, Sequence
from math import degrees

from core.statistics.conformity import Conformity
from core.text.quantity import LengthUnit
from core.verdict.driver_effect import driver_effect
from core.verdict.verdict import READINGS, Overall, Verdict
from wizard.phrases.amounts import angle_words, listed, travel_words
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.verdict_words import mark_of

HELD_BACK_REASONS = {
    "walk_round.rim_play": "there is more play at the steering-wheel rim than is allowed",
    "walk_round.linkage_play": "there is more play at the tyre than is allowed",
    "walk_round.joints.track_bar_frame": "the track bar's joint at the frame is loose",
    "walk_round.joints.track_bar_axle": "the track bar's joint at the axle is loose",
    "walk_round.joints.drag_link_frame": "the drag link's joint at the pitman arm is loose",
    "walk_round.joints.drag_link_axle": "the drag link's joint at the axle is loose",
    "walk_round.bolts_torqued": "the torque of the steering and track bar bolts was not seen to",
    "walk_round.tyres_alike": "the front tyres are not alike and sound",
    "stance.level_floor": "the floor was not level",
    "stance.tyres_set": "the tyre pressures were not set",
    "stance.usual_load": "the vehicle did not carry its usual load",
    "stance.settled": "the suspension had not settled",
    "stance.wheels_on_ground": "the wheels did not carry the vehicle",
    "stance.straight_ahead": "the wheels were not straight ahead",
    READINGS: "the readings do not agree, and which of them is wrong decides",
}
"""Reasons by the failure of the walk-round, the stance or the readings."""


SAME_ANGLE = 0.15
"""deg; two angles that differ by less are one angle to people."""

WHICHEVER = (
    "The readings do not close, and the numbers below carry the mistake. The verdict is the same "
    "whichever of the readings is wrong."
)


def verdict_facts(verdict: Verdict, unit: LengthUnit) -> tuple[Fact, ...]:
    """The answer in a sentence or two; why it is held back comes first."""
    geometry = verdict.geometry
    effect = driver_sentence(verdict, unit)
    if verdict.overall != Overall.HELD_BACK:
        facts: tuple[Fact, ...] = (
            Fact("", f"{verdict.overall}: {effect}", mark_of(verdict.overall)),
            *apart_facts(verdict),
        )
        return facts if verdict.adjustment.closes else (*facts, Fact("", WHICHEVER, LOOK))
    reason = held_back_sentence(verdict.held_back_by)
    held = Fact("", f"{Overall.HELD_BACK}: {reason}", mark_of(Overall.HELD_BACK))
    if READINGS in verdict.held_back_by:  # no verdict on readings that were proved wrong
        return (held,)
    return (
        held,
        Fact("", f"by its geometry alone, {geometry}: {effect}", mark_of(geometry)),
    )


def apart_facts(verdict: Verdict) -> Iterator[Fact]:
    """The angle between the links, where it is another than the axle's movement makes of it."""
    parallel, effective = verdict.rules.parallel, verdict.rules.effective
    if parallel is None:
        return
    between, moving = (abs(degrees(ruling.value)) for ruling in (parallel, effective))
    if abs(between - moving) >= SAME_ANGLE:
        turned = "its arms turn it" if verdict.sweep.axle_pitch.any() else "the links lie slanted"
        yield Fact(
            "",
            f"The links look {between:.1f} deg apart. As the axle moves it is {moving:.1f} deg, "
            f"because {turned}.",
        )


def driver_sentence(verdict: Verdict, unit: LengthUnit) -> str:
    """Effect on the driver, in a sentence."""
    had = driver_effect(verdict)
    return (
        f"with the wheel held, {travel_words(had.heave, unit)} steers the road wheels "
        f"{angle_words(had.steer)}. Let go, the steering wheel turns "
        f"{angle_words(had.steering_wheel)} by itself.{toe_sentence(verdict)}"
    )


def toe_sentence(verdict: Verdict) -> str:
    """The toe change, where it is not within its limit."""
    if verdict.toe.ruling.verdict == Conformity.WITHIN:
        return ""
    change = degrees(verdict.toe.ruling.value)
    return f" The toe changes by up to {change:.2f} deg on the way, which wears the tyres."


def held_back_sentence(failures: Sequence[str]) -> str:
    """Reason that a verdict is held back, in a sentence."""
    reasons = listed([HELD_BACK_REASONS.get(path, path) for path in failures])
    return (
        f"{reasons}. Nothing below is to be trusted until that is put right and "
        "the vehicle is measured again."
    )
