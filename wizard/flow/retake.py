"""A request to take a reading again."""

from dataclasses import dataclass

from wizard.flow.flow import Flow


@dataclass(frozen=True)
class Retake:
    """A request to take a reading again.

    Attributes
    ----------
    flow : Flow
        The session, at the reading.
    adds_repeat : bool
        True: the new value is added to the reading as a repeat. False: it replaces the reading.
    """

    flow: Flow
    adds_repeat: bool
