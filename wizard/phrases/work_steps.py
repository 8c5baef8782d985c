"""Work of a plan: the moves of its pivots, and the readings to take again."""

from collections.abc import Iterator

from core.fix.bench import BY_HAND
from core.fix.moves import Move
from core.fix.plan import Plan
from core.kinematics.linkage import scalars_of
from core.kinematics.pivots import RIDE_HEIGHT
from core.readings.survey import LINKS
from core.text.plain_text import plain
from core.text.quantity import LengthUnit, format_length
from core.verdict.verdict import Verdict
from wizard.phrases.amounts import listed
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.reading_names import name_of_pivot, name_of_reading
from wizard.phrases.rises import format_setting, rise_words


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
        rise = rise_words(move.rise, unit)
        return f"the ride height, and with it all that hangs on the frame, {rise}."
    linkage = verdict.measured.linkage
    if pivot.startswith("guide."):
        now = float(scalars_of(linkage)[f"{pivot}.height"])
        stays = " The axle keeps its attitude: its arm is set to length."
    else:
        now, stays = float(linkage.pivot(pivot)[2]), ""
    return (
        f"the {name_of_pivot(pivot)} from {format_length(now, unit)} to "
        f"{format_length(now + move.rise, unit)} above the floor.{stays}"
    )


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
