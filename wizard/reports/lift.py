"""`evenarc lift`: how far a lift works, and what has to go with it; in words or as JSON."""

import json
import sys
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from core.as_json.lift import lift_as_json
from core.documents.entries import EntryError
from core.fix.lift_plan import LiftPlan
from core.profiles.profile import ProfileError
from core.text.quantity import QuantityError
from core.verdict.verdict import Overall
from wizard.flow.filed_records import Unreadable
from wizard.flow.lifting import LiftRequest, lifts_of, parsed_lift
from wizard.reports.ending import Ending
from wizard.reports.fix import progress_on


def print_lifts(
    lift: str,
    request: LiftRequest,
    profile_folders: Sequence[Path],
    files: Path,
    shelf: Path,
    as_json: bool,
) -> Ending:
    """Print planned lifts.

    Parameters
    ----------
    lift : str
        As typed; "" where none was given.
    request : LiftRequest
        Without a lift.
    profile_folders : sequence of Path
        Folders of profiles, the shop's own first.
    files : Path
        Folder of the records that a tag is looked up in.
    shelf : Path
        File of the shop's own changes, which need not exist.
    as_json : bool
        Print one JSON object.
    """
    try:
        request = replace(request, lift=parsed_lift(lift))
        lifts = lifts_of(request, profile_folders, files, shelf, progress_on(sys.stderr))
    except QuantityError as error:
        print(f"evenarc: LIFT: {error}", file=sys.stderr)
        return Ending.UNREADABLE
    except (Unreadable, ProfileError, EntryError) as error:
        print(f"evenarc: {error}", file=sys.stderr)
        return Ending.UNREADABLE
    if as_json:
        listed = [lift_as_json(each.plan) for each in lifts]
        report = {"lift_mm": request.lift, "with": request.change or None, "vehicles": listed}
        print(json.dumps(report, allow_nan=False))
    else:
        from wizard.reports.lift_in_words import print_lift_words  # loads Rich

        print_lift_words(lifts, request.lift, request.change)
    return Ending.GOOD if all(steers_true(each.plan) for each in lifts) else Ending.NOT_GOOD


def steers_true(plan: LiftPlan) -> bool:
    """True if a vehicle steers true after its lift, alone or with a plan.

    Without a lift it is true where there is any ride height at which the vehicle steers true.
    """
    if plan.lifted is None or plan.result is None:
        return bool((plan.with_change or plan.now).ranges)
    return plan.lifted.overall == Overall.STEERS_TRUE or any(
        each.steers_true for each in plan.result.plans
    )
