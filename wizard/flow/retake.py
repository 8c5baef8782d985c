"""A reading that is to be taken again."""

from typing import NamedTuple

from wizard.flow.flow import Flow


class Retake(NamedTuple):
    """Where to go on, and how.

    Attributes
    ----------
    flow : Flow
        At the reading.
    adds : bool
        What was read stays and a repeat is added to it; otherwise it is typed over.
    """

    flow: Flow
    adds: bool
