"""The whole campaign: each kind of abuse, with its size in the tests and at full size."""

from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

from tests.abuse import answers, disk_errors, kills, races, records
from tests.abuse.tally import Tally


class Abuse(NamedTuple):
    """One kind of abuse.

    Attributes
    ----------
    name : str
    attack : callable
        Runs a number of trials in a folder.
    small, full : int
        Number of trials in the tests, and at full size.
    """

    name: str
    attack: Callable[[int, Path], Tally]
    small: int
    full: int


CAMPAIGN = (
    Abuse("kills while keeping and filing", kills.attack, 8, 400),
    Abuse("errors of the disk", disk_errors.attack, 150, 5_000),
    Abuse("races of windows and leads", races.attack, 6, 200),
    Abuse("nonsense answers", answers.attack, 400, 40_000),
    Abuse("damaged records", records.mutate, 50, 5_000),
    Abuse("markup and control codes", records.inject, 15, 500),
    Abuse("sizes", records.grow, 10, 200),
)
