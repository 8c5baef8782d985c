"""A finished session as it is filed: complete by itself, so that it can be computed again."""

from __future__ import annotations

from datetime import datetime
from math import nan
from typing import TYPE_CHECKING, Any

from core.as_json.verdict import verdict_as_json
from core.documents.document import Document, value_at, with_value
from core.fix.plan_record import plan_of_document, plan_table
from core.readings.walk_round import OVER_10000_LB
from core.verdict.assess import assess
from wizard.flow.flow import applicable_answers

if TYPE_CHECKING:
    from core.profiles.profile import Profile

NOTHING = 1e-12
"""mm, deg or a share; what is smaller was left by rounding."""

NOT_FILED = ("record", "id", "sweep", "readings")
"""What [results] leaves out: the file's name and id it has already; the sweep and the residuals are
long, and only `evenarc check` asks for them, which computes them afresh."""


def finished_record(document: Document, profile: Profile, closed: datetime) -> Document:
    """The record of a session: its answers, what the profile said at the time, and the results.

    Parameters
    ----------
    document : mapping
        The draft.
    profile : Profile
    closed : datetime
        With its offset.

    Raises
    ------
    core.documents.entries.EntryError
        A reading that everything rests on is missing.
    """
    record = with_value(applicable_answers(document, profile), "session.closed", closed)
    if value_at(record, "session.units") is None:
        record = with_value(record, "session.units", "in")
    written = profile.as_written
    record = with_value(record, "limits", written["limits"])
    record = with_value(record, "events", written.get("events", []))
    for key, value in written["instruments"].items():
        if value_at(record, f"instruments.{key}") is None:
            record = with_value(record, f"instruments.{key}", value)
    if value_at(record, "walk_round.linkage_play") is not None:
        record = with_value(record, OVER_10000_LB, profile.over_10000_lb)
    verdict = assess(record, lambda _: profile)
    for name in verdict.session.assumed:
        value = written["defaults"][name.rpartition(".")[2]]
        record = with_value(record, f"assumed.{name}", value)
    if plan := plan_of_document(
        record, verdict, ()
    ):  # a reading may have changed since it was chosen
        record = with_value(record, "plan", plan_table(plan, verdict.session.units))
    results = {
        key: value for key, value in verdict_as_json(verdict, "").items() if key not in NOT_FILED
    }
    return with_value(record, "results", _as_toml(results))


def _as_toml(value: Any) -> Any:
    """TOML has no null: what cannot be is left out of a table, and is nan in a list of numbers.

    Nine figures are more than any tape carries; those after them differ from machine to machine.
    """
    if isinstance(value, dict):
        return {key: _as_toml(one) for key, one in value.items() if one is not None}
    if isinstance(value, list):
        return [nan if one is None else _as_toml(one) for one in value]
    if isinstance(value, float):
        return 0.0 if abs(value) < NOTHING else float(f"{value:.9g}")
    return value
