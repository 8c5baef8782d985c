"""Plans from which the fix is chosen: plans of the search, and plans made by hand."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Self

from core.documents.document import Document, value_at, with_value, without
from core.documents.entries import EntryError, units_of
from core.fix.plan import Plan
from core.fix.plan_record import plan_of_document, plan_table
from core.fix.search import SearchResult
from core.profiles.adjuster import Adjuster, adjusters_of
from core.profiles.conversions import Change, fitting
from core.profiles.parts_shelf import load_shelf, with_shelf
from core.profiles.profile import Profile, ProfileError
from core.verdict.verdict import Verdict
from wizard.flow.flow import Flow

SWITCHED_OFF = "draft.switched_off"
"""Path of the names of the corrections that the shop cannot make; not part of the record."""

KEPT, CHANGED, BENCH = "kept plan", "changed plan", "bench plan"
"""Titles of plans made by hand; each is used at most once."""

SAME_RISE = 0.1
"""mm; rises that differ by less count as the same."""

TitledPlan = tuple[str, Plan]


@dataclass(frozen=True, eq=False)
class Planning:
    """The plans for a vehicle, one of them at hand.

    Attributes
    ----------
    verdict : Verdict
        The verdict on the vehicle as it is.
    search_result : SearchResult
        The plans that the search returned.
    made_by_hand : tuple of (str, Plan)
        Plans made by hand, with their titles.
    index : int
        Index in `plans` of the plan at hand.
    """

    verdict: Verdict
    search_result: SearchResult
    made_by_hand: tuple[TitledPlan, ...] = ()
    index: int = 0

    @property
    def plans(self) -> tuple[TitledPlan, ...]:
        """All plans with their titles, plans of the search first."""
        searched = (
            (f"plan {number}", plan) for number, plan in enumerate(self.search_result.plans, 1)
        )
        return (*searched, *self.made_by_hand)

    @property
    def plan(self) -> Plan | None:
        """Plan at hand; None without any plan."""
        return self.plans[self.index][1] if self.plans else None

    def stepped(self, count: int) -> Self:
        """Planning at the plan `count` places later, or earlier if negative."""
        return self.at_plan(self.index + count)

    def at_plan(self, index: int) -> Self:
        """Planning at the plan of this index, or at the nearest one."""
        return replace(self, index=min(max(index, 0), max(len(self.plans) - 1, 0)))

    def with_plan_by_hand(self, title: str, plan: Plan) -> Self:
        """Planning at a plan made by hand, which replaces an earlier one of the same title."""
        others = tuple(titled for titled in self.made_by_hand if titled[0] != title)
        return replace(
            self,
            made_by_hand=(*others, (title, plan)),
            index=len(self.search_result.plans) + len(others),
        )

    def with_kept(self, plan: Plan | None) -> Self:
        """Planning at the plan that was chosen before; the same planning if there was none."""
        if plan is None:
            return self
        for index, (_, candidate) in enumerate(self.plans):
            if are_same_plan(candidate, plan):
                return self.at_plan(index)
        return self.with_plan_by_hand(KEPT, plan)


def are_same_plan(first: Plan, second: Plan) -> bool:
    """True if two plans make the same changes."""
    changes, others = _changes(first), _changes(second)
    return changes.keys() == others.keys() and all(
        abs(changes[name] - others[name]) < SAME_RISE for name in changes
    )


def _changes(plan: Plan) -> dict[str, float]:
    """Rise of each correction and length of each arm, mm, by name."""
    return {move.correction.name: move.rise for move in plan.moves} | dict(plan.arms)


def offered_corrections(
    document: Document, profile: Profile, shelf: Path, profile_folders: Sequence[Path]
) -> tuple[tuple[Change, ...], str]:
    """Corrections of the profile and of the parts shelf that fit the vehicle of a document.

    Parameters
    ----------
    document : mapping
    profile : Profile
    shelf : Path
        File of the parts shelf, which need not exist.
    profile_folders : sequence of Path
        Folders of the profiles that the shelf may name.

    Returns
    -------
    corrections : tuple of Correction
    fault : str
        A line if the parts shelf is faulty and was left out; otherwise empty.
    """
    try:
        offered, fault = with_shelf(profile, load_shelf(shelf, profile_folders)).changes, ""
    except ProfileError as error:
        offered, fault = profile.changes, f"The parts shelf is left out: {error}"
    return fitting(offered, document), fault


def switched_on(document: Document, corrections: Sequence[Change]) -> tuple[Change, ...]:
    """Corrections that the shop can make."""
    switched_off = value_at(document, SWITCHED_OFF, ())
    return tuple(correction for correction in corrections if correction.name not in switched_off)


def with_switched_on(
    document: Document, corrections: Sequence[Change], names: Sequence[str]
) -> Document:
    """Document in which only the corrections of these names are switched on."""
    switched_off = [correction.name for correction in corrections if correction.name not in names]
    if not switched_off:
        return without(document, SWITCHED_OFF)
    return with_value(document, SWITCHED_OFF, switched_off)


def with_filed_plan(document: Document, plan: Plan | None) -> Document:
    """Document with this plan; without a plan if it is None."""
    if plan is None:
        return without(document, "plan")
    return with_value(document, "plan", plan_table(plan, units_of(document)))


def with_plan(flow: Flow, plan: Plan | None) -> Flow:
    """Flow past the step Fix, with this plan in its document."""
    chosen = flow.with_document(with_filed_plan(flow.document, plan)).skipped()
    return replace(chosen, past=(*flow.past, flow))  # undo takes the choice back as well


def kept_plan(document: Document, verdict: Verdict, corrections: Sequence[Change]) -> Plan | None:
    """Plan of a document; None if there is none or it is faulty."""
    try:
        return plan_of_document(document, verdict, corrections)
    except EntryError:
        return None


def adjusters_in(document: Document, profile: Profile) -> dict[str, Adjuster]:
    """Adjusters of a vehicle, by link; the profile's if the document's are faulty."""
    try:
        return adjusters_of(document, profile.adjusters)
    except EntryError:
        return profile.adjusters
