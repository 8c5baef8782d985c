"""How a report ended; the command line turns it into an exit code."""

from enum import Enum


class Ending(Enum):
    """How a report ended.

    GOOD: every record steers true; the fix is shown; a plan steers true. NOT_GOOD: at least one
    record does not steer true; the fix is not shown, or not settled; no plan steers true.
    UNREADABLE: a record or a profile is not what it should be.
    """

    GOOD = "good"
    NOT_GOOD = "not good"
    UNREADABLE = "unreadable"
