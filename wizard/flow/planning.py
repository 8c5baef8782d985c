"""Plans while one of them is chosen: those the search found, and those that were made by hand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from core.documents.document import Document, value_at, with_value, without
from core.documents.entries import EntryError, units_of
from core.fix.plan import Plan
from core.fix.plan_record import plan_of_document, plan_table
from core.fix.search import SearchResult
from core.profiles.adjuster import Adjuster, adjusters_of
from core.profiles.corrections import Correction
from core.profiles.parts_shelf import load_shelf, with_shelf
from core.profiles.profile import Profile, ProfileError
from core.verdict.verdict import Verdict
from wizard.flow.flow import Flow

SWITCHED_OFF = "draft.switched_off"
"""Where a draft keeps the corrections that the shop cannot make; it does not go into the record."""

KEPT, CHANGED, BENCH = "kept plan", "changed plan", "bench plan"
"""What plans by hand are called; there is one of each at most."""

SAME = 0.1
"""mm; rises that differ by less are the same."""

Titled = tuple[str, Plan]


@dataclass(frozen=True, eq=False)
class Planning:
    """What was found for a vehicle, and the plan at hand.

    Attributes
    ----------
    verdict : Verdict
    fix : Fix
    own : tuple of (str, Plan)
        Plans by hand, under their titles.
    at : int
        Which of `plans` is at hand.
    """

    verdict: Verdict
    fix: SearchResult
    own: tuple[Titled, ...] = ()
    at: int = 0

    @property
    def plans(self) -> tuple[Titled, ...]:
        """Every plan with its title, those of the search first."""
        found = ((f"plan {number}", plan) for number, plan in enumerate(self.fix.plans, 1))
        return (*found, *self.own)

    @property
    def plan(self) -> Plan | None:
        """The plan at hand."""
        return self.plans[self.at][1] if self.plans else None

    def stepped(self, by: int) -> Planning:
        """At another plan, so many further on."""
        return self.at_plan(self.at + by)

    def at_plan(self, index: int) -> Planning:
        """At a plan by its place."""
        return replace(self, at=min(max(index, 0), max(len(self.plans) - 1, 0)))

    def with_own(self, title: str, plan: Plan) -> Planning:
        """At a plan by hand, in the place of an earlier one of the same title."""
        others = tuple(one for one in self.own if one[0] != title)
        return replace(self, own=(*others, (title, plan)), at=len(self.fix.plans) + len(others))

    def with_kept(self, plan: Plan | None) -> Planning:
        """At the plan that was chosen before, if there is one."""
        if plan is None:
            return self
        for index, (_, found) in enumerate(self.plans):
            if are_same(found, plan):
                return self.at_plan(index)
        return self.with_own(KEPT, plan)


def are_same(one: Plan, other: Plan) -> bool:
    """Whether two plans do the same."""

    def done(plan: Plan) -> dict[str, float]:
        return {move.correction.name: move.rise for move in plan.moves} | dict(plan.arms)

    first, second = done(one), done(other)
    return first.keys() == second.keys() and all(
        abs(first[name] - second[name]) < SAME for name in first
    )


def offered(
    profile: Profile, shelf: Path, folders: Sequence[Path]
) -> tuple[tuple[Correction, ...], str]:
    """Every correction of the profile and of the parts shelf, and a line if that is faulty."""
    try:
        return with_shelf(profile, load_shelf(shelf, folders)).corrections, ""
    except ProfileError as error:
        return profile.corrections, f"The parts shelf is left out: {error}"


def switched_on(document: Document, corrections: Sequence[Correction]) -> tuple[Correction, ...]:
    """The corrections that the shop can make."""
    off = value_at(document, SWITCHED_OFF, ())
    return tuple(correction for correction in corrections if correction.name not in off)


def with_only(
    document: Document, corrections: Sequence[Correction], names: Sequence[str]
) -> Document:
    """With all but some corrections switched off."""
    off = [correction.name for correction in corrections if correction.name not in names]
    return with_value(document, SWITCHED_OFF, off) if off else without(document, SWITCHED_OFF)


def with_filed_plan(document: Document, plan: Plan | None) -> Document:
    """The document with a plan, or without one."""
    if plan is None:
        return without(document, "plan")
    return with_value(document, "plan", plan_table(plan, units_of(document)))


def with_plan(flow: Flow, plan: Plan | None) -> Flow:
    """The flow past the fix, with a plan in its document or without one."""
    chosen = flow.with_document(with_filed_plan(flow.document, plan)).skipped()
    return replace(chosen, past=(*flow.past, flow))  # undo takes the choice back as well


def kept_plan(
    document: Document, verdict: Verdict, corrections: Sequence[Correction]
) -> Plan | None:
    """The plan in a document; None where there is none, or one that cannot be read."""
    try:
        return plan_of_document(document, verdict, corrections)
    except EntryError:
        return None


def adjusters_in(document: Document, profile: Profile) -> dict[str, Adjuster]:
    """The adjusters of a vehicle, as typed or else as the profile has them."""
    try:
        return adjusters_of(document, profile.adjusters)
    except EntryError:
        return profile.adjusters
