"""Steps of the work in their order, each to be ticked off (common practice, no source)."""

from collections.abc import Iterator, Mapping

from core.fix.plan import Plan
from core.kinematics.pivots import RIDE_HEIGHT
from core.profiles.conversions import Conversion
from core.text.plain_text import plain
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard.phrases.reading_names import name_of_pivot, name_of_reading
from wizard.phrases.rises import format_setting
from wizard.phrases.work_steps import destination_words, layout_words

BEGIN = (
    "Level floor, rear wheels chocked, frame and axle on rated stands or on a drive-on lift, at "
    "ride height.",
    "Mark the straight-ahead place of the steering wheel, and note each bar's length.",
)
END = (
    "With the vehicle's weight on its wheels, torque every fastener of the list to the maker's "
    "figure. Fit new locking hardware.",
    "Full bump, full droop, lock to lock: nothing touches, no ball and no hose is at its end.",
    "Take the readings of the last list again, and file them.",
    "Have the alignment set. Road-test from low speed.",
)


def order_steps(
    verdict: Verdict, plan: Plan, changes: Mapping[str, str], unit: LengthUnit
) -> Iterator[str]:
    """Steps of the work.

    Parameters
    ----------
    verdict : Verdict
    plan : Plan
    changes : mapping of str
        Change of each bar in words, by the name of the bar.
    unit : "in" or "mm"
    """
    yield BEGIN[0]
    yield BEGIN[1]
    # The height comes first: it moves the pivots that the other parts are measured from.
    moves = sorted(plan.moves, key=lambda move: not move.raises(RIDE_HEIGHT))
    for move in moves:
        name = plain(move.correction.name)
        if isinstance(move.correction, Conversion):
            yield f"Fit {name}. {layout_words(verdict, move.correction)}".strip()
        for step in move.steps:
            yield f"{name}: {destination_words(verdict, step, unit)}"
    for name, length in plan.arms.items():
        yield f"Fit a {name_of_reading(name)} of {format_setting(length, unit)}."
    track_bar, drag_link = name_of_pivot("track_bar"), name_of_pivot("drag_link")
    if track_bar in changes:
        yield f"Centre the axle by the {track_bar}, {changes[track_bar]}."
    yield f"Wheels straight, then set the {drag_link} last, {changes[drag_link]}."
    yield from END
