"""The bench in words: its nudges and their outcome."""

from collections.abc import Iterator
from typing import NamedTuple

from core.fix.bench import Bench
from core.fix.moves import ARMS
from core.fix.plan import Plan
from core.kinematics.linkage import scalars_of
from core.kinematics.pivots import RIDE_HEIGHT
from core.text.quantity import LengthUnit
from core.verdict.direct_check import DecidedBy
from core.verdict.verdict import READINGS, Verdict, decided_by
from wizard.phrases.plan_outcomes import plan_outcome_words
from wizard.phrases.rises import format_setting, is_unchanged, rise_words
from wizard.phrases.verdict_words import mark_and_word

MOVABLE_NAMES = {
    "track_bar.frame": "track bar frame end",
    "track_bar.axle": "track bar axle end",
    "drag_link.frame": "drag link frame end",
    "drag_link.axle": "drag link axle end",
    RIDE_HEIGHT: "ride height",
    "steering.arm": "steering arm",
    "steering.pitman_arm": "pitman arm",
    "guide.frame": "arms' frame pivot",
    "guide.lower_frame": "lower arm frame end",
    "guide.lower_axle": "lower arm axle end",
    "guide.upper_frame": "upper arm frame end",
    "guide.upper_axle": "upper arm axle end",
    "guide.eye": "spring's fixed eye",
    "guide.seat": "spring's seat",
}
"""Everything that can be moved, in short."""

AS_MEASURED = "as measured"


NOT_ON_WRONG_READINGS = (
    "nothing is tried on readings that were proved wrong: put the readings right first"
)
NOT_ON_CONTRADICTED_PIVOTS = (
    "nothing is tried on pivots that the measured steer contradicts: find out why first"
)


def no_bench_words(verdict: Verdict) -> str:
    """The reason why nothing is tried on a vehicle; empty where its pivots can be trusted."""
    if READINGS in verdict.held_back_by:
        return NOT_ON_WRONG_READINGS
    return NOT_ON_CONTRADICTED_PIVOTS if decided_by(verdict) == DecidedBy.DIRECT else ""


class Movable(NamedTuple):
    """A part on the bench: its name, its change, and its place now."""

    name: str
    change: str
    now: str


def movables(bench: Bench, plan: Plan, unit: LengthUnit) -> Iterator[Movable]:
    """All parts on the bench; `plan` has the outcome of the nudges."""
    linkage = plan.after.linkage
    for name in bench.names:
        change = bench.change(name)
        if name in ARMS:
            now = f"{format_setting(float(getattr(linkage, ARMS[name])), unit)} long"
        elif name == RIDE_HEIGHT:
            now = "the whole frame"
        elif name.startswith("guide."):
            now = f"{format_setting(float(scalars_of(linkage)[f'{name}.height']), unit)} high"
        else:
            now = f"{format_setting(float(linkage.pivot(name)[2]), unit)} high"
        yield Movable(MOVABLE_NAMES[name], change_words(name, change, unit), now)


def change_words(name: str, change: float, unit: LengthUnit) -> str:
    """Change of a part; empty where it was not moved."""
    if is_unchanged(change, unit):
        return ""
    if name in ARMS:
        return f"{format_setting(abs(change), unit)} {'more' if change > 0 else 'less'}"
    return rise_words(change, unit)


def bench_outcome_words(bench: Bench, plan: Plan) -> str:
    """The outcome of the nudges, or "as measured"."""
    if not plan.moves and not plan.arms:
        return f"{AS_MEASURED}: {mark_and_word(bench.verdict.overall)}"
    return f"tried: {plan_outcome_words(bench.verdict, plan)}"
