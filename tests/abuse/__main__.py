"""Run the whole campaign at full size, and print its table."""

import sys
import tempfile
import time
from pathlib import Path

from tests.abuse.campaign import CAMPAIGN

MOST_FAULTS = 5
"""Faults of one kind that are printed."""


def main() -> int:
    """Print a line for each kind of abuse, with its faults below; 1 if there was one."""
    is_sound = True
    print(f"{'abuse':34}{'trials':>8}{'faults':>8}{'time':>8}")
    for abuse in CAMPAIGN:
        begun = time.monotonic()
        with tempfile.TemporaryDirectory(prefix="evenarc-abuse-") as folder:
            tally = abuse.attack(abuse.full, Path(folder))
        taken = time.monotonic() - begun
        print(f"{abuse.name:34}{tally.tried:8}{len(tally.faults):8}{taken:6.0f} s", flush=True)
        for fault in tally.faults[:MOST_FAULTS]:
            print(f"    {fault[:300]}")
        is_sound = is_sound and not tally.faults
    return 0 if is_sound else 1


if __name__ == "__main__":
    sys.exit(main())
