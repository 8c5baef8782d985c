"""Exit codes of the commands."""

from wizard.reports.ending import Ending

DONE = 0
"""The command did its work."""

CANNOT_READ = 2
"""A record, a profile or an argument is faulty; nothing was written."""

EXIT_CODES = {Ending.GOOD: DONE, Ending.NOT_GOOD: 1, Ending.UNREADABLE: CANNOT_READ}
"""Exit code of each ending of a report."""
