"""A plan as work: moves of pivots, lengths of bars, readings to take again."""

from collections.abc import Iterator, Mapping, Sequence

from core.fix.bench import BY_HAND
from core.fix.moves import Move, moved_pivots
from core.fix.plan import Plan
from core.kinematics.pivots import RIDE_HEIGHT
from core.profiles.adjuster import Adjuster
from core.readings.survey import LINKS
from core.text.plain_text import plain
from core.text.quantity import LengthUnit, format_length
from core.verdict.verdict import Verdict
from wizard.phrases.amounts import listed
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.reading_names import name_of_pivot, name_of_reading

QUARTER = 0.25
"""Turns are said to the nearest quarter."""

ADJUSTER_NAMES = {"sleeve": "sleeve with two threads", "one-end": "threaded end"}
"""What an adjuster is called."""

FREE_ENDS = {
    "track_bar": "Let one end of the track bar free first; its length is what centres the axle.",
    "drag_link": "Set it last, with the axle centred and the road wheels straight: its length is "
    "what sets the steering wheel straight.",
}
"""What each bar's length is for (common practice, no source)."""


def move_words(move: Move, unit: LengthUnit) -> str:
    """A move in words: "pitman arm with less drop, up 1 1/2 in"."""
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


def rise_words(rise: float, unit: LengthUnit) -> str:
    """A rise in words: "up 1 in"."""
    return f"{'up' if rise >= 0 else 'down'} {format_setting(abs(rise), unit)}"


def rise_range_words(rises: Sequence[float], unit: LengthUnit) -> str:
    """Range of a correction: "up 1/2 in to 4 in", "down 2 1/4 in"."""
    low, high = min(rises), max(rises)
    if low == high:
        return rise_words(low, unit)
    if low < 0 < high:
        return f"{rise_words(low, unit)} to {rise_words(high, unit)}"
    least, most = sorted((low, high), key=abs)
    return f"{rise_words(least, unit)} to {format_setting(abs(most), unit)}"


def format_setting(mm: float, unit: LengthUnit) -> str:
    """A length to set: to a sixteenth, or to half a millimetre where it is not a whole one."""
    return format_length(mm, unit, decimals=0 if abs(mm - round(mm)) < 0.05 else 1)


def move_facts(verdict: Verdict, plan: Plan, unit: LengthUnit) -> Iterator[Fact]:
    """Each move with the pivot it moves and the height that has to be reached."""
    for move in plan.moves:
        yield Fact(
            rise_words(move.rise, unit),
            f"{plain(move.correction.name)}: {destination_words(verdict, move, unit)}",
        )
    linkage = verdict.measured.linkage
    now = {"steering.arm": linkage.arm, "steering.pitman_arm": linkage.pitman_arm}
    for name, length in plan.arms.items():
        text = (
            f"{name_of_reading(name)} of this length, {format_setting(float(now[name]), unit)} now"
        )
        yield Fact(format_setting(length, unit), text)


def destination_words(verdict: Verdict, move: Move, unit: LengthUnit) -> str:
    """The pivot of a move, with its height above the floor before and after."""
    pivot = move.correction.pivot
    if pivot == RIDE_HEIGHT:
        return f"the ride height, and with it both frame ends, {rise_words(move.rise, unit)}"
    now = float(verdict.measured.linkage.pivot(pivot)[2])
    return (
        f"the {name_of_pivot(pivot)} from {format_length(now, unit)} to "
        f"{format_length(now + move.rise, unit)} above the floor"
    )


def bar_length_facts(
    plan: Plan, adjusters: Mapping[str, Adjuster], unit: LengthUnit
) -> Iterator[Fact]:
    """The length to set for each bar, and the turns of its adjuster that give it."""
    after = plan.after
    for link, length, change in zip(LINKS, after.lengths, after.length_changes, strict=True):
        text = f"{format_length(length, unit)} from centre to centre, "
        if is_unchanged(change, unit):
            text += "as it is now"
        else:
            way = "longer" if change > 0 else "shorter"
            text += f"{format_length(abs(change), unit)} {way} than now"
            if link in adjusters:
                text += f": {turns_words(adjusters[link], change, unit)}"
        yield Fact(name_of_pivot(link), f"{text}. {FREE_ENDS[link]}")


def is_unchanged(change: float, unit: LengthUnit) -> bool:
    """True if a tape cannot show the change."""
    return format_length(abs(change), unit) == format_length(0.0, unit)


def turns_words(adjuster: Adjuster, change: float, unit: LengthUnit) -> str:
    """Turns of an adjuster, to the nearest quarter."""
    quarters = round(abs(adjuster.turns(change)) / QUARTER)
    whole, rest = divmod(quarters, 4)
    parts = str(whole) if whole or not rest else "", ("", "1/4", "1/2", "3/4")[rest]
    turns = "turn" if 0 < quarters <= 4 else "turns"
    return f"about {' '.join(filter(None, parts))} {turns} of its {adjuster_words(adjuster, unit)}"


def adjuster_words(adjuster: Adjuster, unit: LengthUnit) -> str:
    """Kind of an adjuster, with its thread."""
    return f"{ADJUSTER_NAMES[adjuster.kind]}, {thread_words(adjuster.pitch, unit)}"


def thread_words(pitch: float, unit: LengthUnit) -> str:
    """A thread as it is typed."""
    return f"{25.4 / pitch:.3g} per in" if unit == "in" else f"{pitch:.3g} mm"


def re_measure_facts(plan: Plan) -> Iterator[Fact]:
    """Readings to take again after the work, and pivots to find unchanged."""
    pivots = moved_pivots(plan.corrections)
    if not pivots:
        return
    heights = "height" if len(pivots) == 1 else "heights"
    named = listed([name_of_pivot(pivot) for pivot in pivots])
    yield Fact("moved", f"{heights} of the {named}", LOOK)
    links = [link for link in LINKS if any(pivot.startswith(link) for pivot in pivots)]
    named = listed([f"the {name_of_pivot(link)}" for link in links])
    yield Fact("with that", f"length and slope of {named}; and the ride height, left and right")
    yield Fact(
        "the rest",
        "Take the pivots that nobody moved as well. They show that nothing else moved, and that "
        "the datum line lies as it did.",
    )
