"""Finished sessions: complete records, from which the verdict can be computed again."""

from collections.abc import Collection
from datetime import datetime
from math import nan, sqrt
from typing import Any

from core.as_json.verdict import verdict_as_json
from core.documents.document import Document, value_at, with_value, without
from core.fix.plan_record import plan_of_document, plan_table
from core.profiles.defaults import USUAL, default_path
from core.profiles.profile import Profile
from core.readings.walk_round import OVER_10000_LB
from core.sessions.dimensions import PLAIN_NUMBERS, READ
from core.verdict.assess import assess
from core.verdict.method import METHOD_VERSION
from wizard.flow.answers import applicable_answers

SMALLEST = 1e-12
"""mm, deg or a share; smaller values come from rounding and are written as 0."""

NOT_IN_RESULTS = ("record", "id", "sweep", "readings", "photographs")
"""Keys of the verdict that [results] leaves out.

The record has its file name and its id already. The sweep and the residuals are long, and only
`evenarc check` needs them; it computes them again.
"""


def finished_record(document: Document, profile: Profile, closed: datetime) -> Document:
    """Record of a session: its answers, the profile's values at the time, and the results.

    Parameters
    ----------
    document : mapping
        The draft.
    profile : Profile
        The profile of the session.
    closed : datetime
        Time of filing, with its offset.

    Raises
    ------
    core.documents.entries.EntryError
        A reading is missing that the verdict cannot do without.
    """
    record = with_value(applicable_answers(document, profile), "session.closed", closed)
    if value_at(record, "session.units") is None:
        record = with_value(record, "session.units", "in")
    written = profile.as_written
    record = with_value(record, "limits", written["limits"])
    record = with_value(record, "events", written.get("events", []))
    record = with_value(record, "road", written["road"])
    for key, value in written["instruments"].items():
        if value_at(record, f"instruments.{key}") is None:
            record = with_value(record, f"instruments.{key}", value)
    if value_at(record, "walk_round.linkage_play") is not None:
        record = with_value(record, OVER_10000_LB, profile.over_10000_lb)
    verdict = assess(record, lambda _: profile)
    record = _without_measured(record, verdict.session.assumed)
    for name in verdict.session.assumed:
        if value_at(record, f"assumed.{name}") is not None:
            continue  # taken over from a vehicle of the same kind
        path = default_path(name, verdict.session.guide)
        usual, usual_within = USUAL.get(path, (None, None))
        value = value_at(written, f"defaults.{path}", usual)
        record = with_value(record, f"assumed.{name}", value)
        within = value_at(written, f"defaults_within.{path}", usual_within)
        if within is not None:  # the travel and the wheelbase are conditions and have none
            record = with_value(record, f"assumed_within.{name}", within)
    for name, place in verdict.session.usual.items():
        within = place.u * sqrt(3)
        record = with_value(record, f"assumed.{name}", f"{place.value:.6g} mm")
        record = with_value(record, f"assumed_within.{name}", f"{within:.6g} mm")
    # A reading may have changed since the plan was chosen, so the plan is computed again.
    if plan := plan_of_document(record, verdict, ()):
        record = with_value(record, "plan", plan_table(plan, verdict.session.units))
    results = {
        key: value
        for key, value in verdict_as_json(verdict, "").items()
        if key not in NOT_IN_RESULTS
    }
    results = {"method_version": METHOD_VERSION, **results}
    return with_value(record, "results", _as_toml(results))


def _without_measured(record: dict[str, Any], assumed: Collection[str]) -> dict[str, Any]:
    """Record whose [assumed] tables have only values that nobody measured on this vehicle."""
    for table in ("assumed", "assumed_within"):
        for name in (*READ, *PLAIN_NUMBERS):
            if name not in assumed:
                record = without(record, f"{table}.{name}")
    return record


def _as_toml(value: Any) -> Any:
    """Value without null, which TOML does not have, and with numbers of nine figures.

    A null is left out of a table, and becomes nan in a list of numbers. No tape reads nine
    figures, and further figures differ from machine to machine.
    """
    if isinstance(value, dict):
        return {key: _as_toml(item) for key, item in value.items() if item is not None}
    if isinstance(value, list):
        return [nan if item is None else _as_toml(item) for item in value]
    if isinstance(value, float):
        return 0.0 if abs(value) < SMALLEST else float(f"{value:.9g}")
    return value
