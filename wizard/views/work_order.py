"""The work order of a plan, as data: what to move, set, check, and measure again."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import degrees, isfinite

from core.documents.document import Document
from core.fix.plan import Plan
from core.kinematics.linkage import scalars_of
from core.kinematics.pivots import GUIDE_PIVOTS, RIDE_HEIGHT
from core.profiles.adjuster import Adjuster
from core.readings.survey import LINKS
from core.text.plain_text import plain
from core.text.quantity import LengthUnit, format_length
from core.uncertainty.measured_linkage import has_centre_plane
from core.verdict.verdict import Verdict
from wizard.phrases.amounts import travel_words
from wizard.phrases.bar_lengths import turns_words
from wizard.phrases.costs import cost_words, part_words
from wizard.phrases.fact import Fact
from wizard.phrases.order_steps import order_steps
from wizard.phrases.plan_cautions import clearance_facts
from wizard.phrases.plan_effects import plan_effect_facts
from wizard.phrases.plan_outcomes import plan_outcome_words
from wizard.phrases.reading_names import name_of_pivot, name_of_reading
from wizard.phrases.rises import format_setting, is_unchanged, rise_words
from wizard.phrases.session_names import session_words
from wizard.phrases.work_steps import plan_move_words, re_measure_facts

CASTOR_STEP = 0.05
"""deg; a smaller change of castor is no effect of a plan."""


@dataclass(frozen=True)
class PivotRow:
    """A pivot that moves: its height above the floor, and its offset from the datum line."""

    name: str
    move: str
    height: tuple[str, str]
    offset: tuple[str, str]


@dataclass(frozen=True)
class BarRow:
    """A bar: its centre-to-centre length now and then, and the turns of its adjuster."""

    name: str
    now: str
    then: str
    change: str


@dataclass(frozen=True)
class WorkOrder:
    """The work order of a plan.

    Attributes
    ----------
    session : str
        The vehicle, and its session.
    title, outcome : str
        The moves of the plan, and what is expected of it.
    parts : tuple of (str, str)
        Each part with what the parts shelf says of it.
    cost : str
        Sums where the shelf says any; else "".
    pivots : tuple of PivotRow
    bars : tuple of BarRow
    steps : tuple of str
        In working order, each with a box to tick.
    fasteners : tuple of str
        Fasteners to torque to the maker's figure.
    effects, cautions, again : tuple of Fact
    """

    session: str
    title: str
    outcome: str
    parts: tuple[tuple[str, str], ...]
    cost: str
    pivots: tuple[PivotRow, ...]
    bars: tuple[BarRow, ...]
    steps: tuple[str, ...]
    fasteners: tuple[str, ...]
    effects: tuple[Fact, ...]
    cautions: tuple[Fact, ...]
    again: tuple[Fact, ...]


def work_order_of(
    document: Document,
    verdict: Verdict,
    plan: Plan,
    adjusters: Mapping[str, Adjuster],
    clearance: float,
    unit: LengthUnit,
) -> WorkOrder:
    """The work order of a plan.

    Parameters
    ----------
    document : mapping
        The record.
    verdict : Verdict
    plan : Plan
    adjusters : mapping of Adjuster
        By link.
    clearance : float
        Distance of both links that the profile asks for, mm.
    unit : "in" or "mm"
    """
    parts = tuple(
        (plain(change.name), part_words(change.part, unit))
        for change in dict.fromkeys(plan.corrections)
    )
    pivots, bars = tuple(pivot_rows(verdict, plan, unit)), tuple(bar_rows(plan, adjusters, unit))
    return WorkOrder(
        session=session_words(document),
        title="; ".join(plan_move_words(plan, unit)),
        outcome=plan_outcome_words(verdict, plan),
        parts=parts,
        cost=cost_words(plan.cost) if any(words for _, words in parts) else "",
        pivots=pivots,
        bars=bars,
        steps=steps_of(verdict, plan, bars, unit),
        fasteners=tuple(fasteners(plan, unit)),
        effects=(
            *outcome_facts(plan, clearance, unit),
            *plan_effect_facts(verdict, plan, clearance, unit),
        ),
        cautions=tuple(clearance_facts(plan)),
        again=tuple(re_measure_facts(plan)),
    )


def steps_of(
    verdict: Verdict, plan: Plan, bars: tuple[BarRow, ...], unit: LengthUnit
) -> tuple[str, ...]:
    """Steps of the work in their order."""
    return tuple(order_steps(verdict, plan, {row.name: row.change for row in bars}, unit))


def order_facts(
    verdict: Verdict, plan: Plan, adjusters: Mapping[str, Adjuster], unit: LengthUnit
) -> Iterator[Fact]:
    """Steps of the work and fasteners to torque, as facts with boxes."""
    bars = tuple(bar_rows(plan, adjusters, unit))
    for number, step in enumerate(steps_of(verdict, plan, bars, unit), 1):
        yield Fact(f"[ ] {number}", step)
    for fastener in fasteners(plan, unit):
        yield Fact("[ ] torque", f"{fastener}: to the maker's figure")


def outcome_facts(plan: Plan, wanted: float, unit: LengthUnit) -> Iterator[Fact]:
    """Castor and clearance of the two links that come of the plan, where no effect says them."""
    castor, clearance = plan.after.castor, plan.after.clearance
    if abs(degrees(castor - plan.after.castor_before)) < CASTOR_STEP:  # else an effect says it
        yield Fact("castor", f"It stays at {degrees(castor):.1f} deg.")
    if clearance is not None and clearance.smallest >= wanted:
        yield Fact(
            "two links",
            f"They come within {format_length(clearance.smallest, unit)} at "
            f"{travel_words(clearance.at_heave, unit)}, centre line to centre line.",
        )


def pivot_rows(verdict: Verdict, plan: Plan, unit: LengthUnit) -> Iterator[PivotRow]:
    """Every pivot whose height or offset changes, with both, now and then."""
    measured, planned = verdict.measured.linkage, plan.after.linkage
    middle = 0.0
    if has_centre_plane(verdict.session):
        offsets = verdict.session.wheels
        middle = (offsets["left_offset"].value + offsets["right_offset"].value) / 2
    for pivot in measured.pivots:
        if pivot not in planned.pivots:
            continue
        (_, y_now, z_now), (_, y_then, z_then) = measured.pivot(pivot), planned.pivot(pivot)
        rise, shift = float(z_then - z_now), float(y_then - y_now)
        if is_unchanged(rise, unit) and is_unchanged(shift, unit):
            continue
        yield PivotRow(
            name_of_pivot(pivot),
            "stays" if is_unchanged(rise, unit) else rise_words(rise, unit),
            (format_length(float(z_now), unit), format_length(float(z_then), unit)),
            (
                format_length(middle - float(y_now), unit),
                format_length(middle - float(y_then), unit),
            ),
        )
    now, then = scalars_of(measured), scalars_of(planned)
    for pivot in GUIDE_PIVOTS[verdict.session.guide]:
        name = f"{pivot}.height"
        rise = float(then[name]) - float(now[name])
        if not is_unchanged(rise, unit):
            heights = (
                format_length(float(now[name]), unit),
                format_length(float(then[name]), unit),
            )
            yield PivotRow(name_of_pivot(pivot), rise_words(rise, unit), heights, ("", ""))


def bar_rows(plan: Plan, adjusters: Mapping[str, Adjuster], unit: LengthUnit) -> Iterator[BarRow]:
    """Every bar with its length, and the turns and direction of its adjuster."""
    after = plan.after
    for link, length, change in zip(LINKS, after.lengths, after.length_changes, strict=True):
        if not isfinite(length):  # there is no such bar
            continue
        words = "as it is now"
        if not is_unchanged(change, unit):
            way = "longer" if change > 0 else "shorter"
            words = f"{format_length(abs(change), unit)} {way}"
            if link in adjusters:
                turns = turns_words(adjusters[link], change, unit)
                words += f": {turns}, in the direction that makes the bar {way}"
        yield BarRow(
            name_of_pivot(link),
            format_length(length - change, unit),
            format_length(length, unit),
            words,
        )
    for name, length in plan.arms.items():
        yield BarRow(name_of_reading(name), "", format_setting(length, unit), "of this length")


def fasteners(plan: Plan, unit: LengthUnit) -> Iterator[str]:
    """Fasteners that the work loosens (common practice, no source)."""
    moved = set(plan.moved)
    if any(move.raises(RIDE_HEIGHT) for move in plan.moves):
        yield "spring seats, U-bolts and shock absorbers"
    for pivot in plan.moved:
        yield f"{name_of_pivot(pivot)}: {FASTENERS.get(pivot, 'bolt and bracket')}"
    for link, length, change in zip(
        LINKS, plan.after.lengths, plan.after.length_changes, strict=True
    ):
        if isfinite(length) and not is_unchanged(change, unit):
            yield f"{name_of_pivot(link)}: clamps or lock nut of its adjuster"
            if f"{link}.frame" not in moved and f"{link}.axle" not in moved:
                yield f"{name_of_pivot(link)}: the end that was let free"


FASTENERS = {
    "track_bar.frame": "bolt or ball nut, and every bolt of the bracket",
    "track_bar.axle": "bolt, and every bolt of the bracket",
    "drag_link.frame": "pitman arm nut and ball nut",
    "drag_link.axle": "ball nut, and the studs of the steering arm",
}
"""Fasteners at each pivot."""
