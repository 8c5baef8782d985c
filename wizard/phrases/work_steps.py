"""Work of a plan: the moves of its pivots, and the readings to take again."""

from collections.abc import Iterator
from math import degrees

from core.fix.bench import BY_HAND
from core.fix.moves import Move
from core.fix.plan import Plan
from core.kinematics.linkage import scalars_of
from core.kinematics.pivots import RIDE_HEIGHT
from core.profiles.conversions import Conversion
from core.profiles.corrections import PivotStep
from core.readings.survey import LINKS
from core.text.plain_text import plain
from core.text.quantity import LengthUnit, format_length
from core.verdict.verdict import Verdict
from wizard.phrases.amounts import listed
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.layouts import LAYOUT_WORDS
from wizard.phrases.reading_names import name_of_pivot, name_of_reading
from wizard.phrases.rises import format_setting, rise_words


def move_words(move: Move, unit: LengthUnit) -> str:
    """A move in words: "pitman arm with less drop, up 1 1/2 in"."""
    if isinstance(move.correction, Conversion):
        return plain(move.correction.name)
    name = move.correction.name
    named = name_of_pivot(move.correction.pivot) if name == BY_HAND else plain(name)
    return f"{named}, {rise_words(move.rise, unit)}"


def plan_move_words(plan: Plan, unit: LengthUnit) -> tuple[str, ...]:
    """All moves of a plan, and all arms of another length."""
    return (
        *(move_words(move, unit) for move in plan.moves),
        *(
            f"{name_of_reading(name)} {format_setting(length, unit)}"
            for name, length in plan.arms.items()
        ),
    )


def move_facts(verdict: Verdict, plan: Plan, unit: LengthUnit) -> Iterator[Fact]:
    """Each move with the pivot it moves and the height that has to be reached."""
    for move in plan.moves:
        name = plain(move.correction.name)
        if isinstance(move.correction, Conversion):
            yield Fact("converted", f"{name}. {layout_words(verdict, move.correction)}".strip())
        for step in move.steps:
            place = destination_words(verdict, step, unit)
            yield Fact(rise_words(step.rise, unit) if step.rise else "set to", f"{name}: {place}")
    linkage = verdict.measured.linkage
    now = {"steering.arm": linkage.arm, "steering.pitman_arm": linkage.pitman_arm}
    for name, length in plan.arms.items():
        text = (
            f"{name_of_reading(name)} of this length, {format_setting(float(now[name]), unit)} now"
        )
        yield Fact(format_setting(length, unit), text)


def layout_words(verdict: Verdict, conversion: Conversion) -> str:
    """Layout and readings that a conversion changes."""
    words = []
    if conversion.steering is not None:
        now, then = (
            LAYOUT_WORDS[layout] for layout in (verdict.session.layout, conversion.steering)
        )
        words.append(f"The drag link went to {now}; it goes to {then}.")
    unit = verdict.session.units
    for name, value in conversion.readings.items():
        words.append(f"The {name_of_reading(name)} is then {value_words(name, value, unit)}.")
    return " ".join(words)


def value_words(name: str, value: float, unit: LengthUnit) -> str:
    """Value of a reading that a conversion sets."""
    if name == "kingpin.castor":
        return f"{degrees(value):.1f} deg"
    return f"{value:g}" if name == "steering.ratio" else format_setting(value, unit)


def destination_words(verdict: Verdict, move: PivotStep, unit: LengthUnit) -> str:
    """The pivot of a step, with its height above the floor before and after."""
    pivot = move.pivot
    if pivot == RIDE_HEIGHT:
        rise = rise_words(move.rise, unit)
        return f"the ride height, and with it all that hangs on the frame, {rise}."
    linkage = verdict.measured.linkage
    if pivot.startswith("guide."):
        now = float(scalars_of(linkage)[f"{pivot}.height"])
        stays = " The axle keeps its attitude: its arm is set to length."
    else:
        now, stays = float(linkage.pivot(pivot)[2]), ""
    heights = f"from {format_length(now, unit)} to {format_length(now + move.rise, unit)}"
    if not move.rise:
        heights = f"stays {format_length(now, unit)}"
    return f"the {name_of_pivot(pivot)} {heights} above the floor{place_words(move, unit)}.{stays}"


def place_words(step: PivotStep, unit: LengthUnit) -> str:
    """Station and offset that a pivot is set to; "" where both stay."""
    words = ""
    if step.to_station is not None:
        way = "ahead of" if step.to_station >= 0 else "behind"
        words += f", {format_setting(abs(step.to_station), unit)} {way} the axle's middle"
    if step.to_offset is not None:
        words += f", at an offset of {format_setting(step.to_offset, unit)}"
    return words


def re_measure_facts(plan: Plan) -> Iterator[Fact]:
    """Readings to take again after the work, and pivots to find unchanged."""
    pivots = plan.moved
    if not pivots:
        return
    heights = "height" if len(pivots) == 1 else "heights"
    named = listed([name_of_pivot(pivot) for pivot in pivots])
    yield Fact("moved", f"{heights} of the {named}", LOOK)
    links = [link for link in LINKS if any(pivot.startswith(link) for pivot in pivots)]
    named = listed([f"the {name_of_pivot(link)}" for link in links])
    of_links = f"length and slope of {named}; and " if links else ""
    yield Fact("with that", f"{of_links}the ride height, left and right")
    yield Fact(
        "the rest",
        "Take the pivots that nobody moved as well. They show that nothing else moved, and that "
        "the datum line lies as it did.",
    )
