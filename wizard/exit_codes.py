"""What the exit codes of the commands mean."""

ALL_TRUE = 0
"""Every record steers true; the fix is shown; a plan steers true."""

AT_LEAST_ONE_NOT = 1
"""At least one record does not; the fix is not shown, or not settled; no plan does."""

CANNOT_READ = 2
"""A record, profile or argument is not what it should be; nothing was written."""
