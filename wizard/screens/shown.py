"""Steps that are looked at instead of answered, each on a screen of its own.

Such a screen is given the flow, with its document and profile, and is left with the flow to go
on with: `flow.skipped()` to the next step, `flow.going_by(-1)` back, `flow.going_to(path)` to
take a reading again; None leaves the session unfinished.
"""

from collections.abc import Callable

from textual.screen import Screen

from wizard.flow import Flow

SHOWN: dict[str, Callable[[Flow], Screen[Flow | None]]] = {}
"""By the path of the question: "verdict", "fix". A step without a screen is passed by."""
