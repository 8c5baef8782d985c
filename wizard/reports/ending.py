"""Endings of reports. The command line gives each ending its exit code."""

from enum import Enum


class Ending(Enum):
    """Ending of a report.

    GOOD: every record steers true; the fix is shown; a plan steers true. NOT_GOOD: at least one
    record does not steer true; the fix is not shown, or not settled; no plan steers true.
    UNREADABLE: a record or a profile is faulty.
    """

    GOOD = "good"
    NOT_GOOD = "not good"
    UNREADABLE = "unreadable"
