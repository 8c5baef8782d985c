"""Exit codes of the commands."""

from wizard.reports.ending import Ending

DONE = 0
"""The command has done its work."""

CANNOT_READ = 2
"""A record, profile or argument is not what it should be; nothing was written."""

EXIT_CODES = {Ending.GOOD: DONE, Ending.NOT_GOOD: 1, Ending.UNREADABLE: CANNOT_READ}
"""By how a report ended."""
