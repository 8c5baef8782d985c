"""Verdicts of the short way beside those of the long way, on vehicles of the full axle.

The vehicles are bodies on bushes (`tests.full_axle`), which use nothing of core. The long way takes
every reading. The short way takes heights and offsets, then what helps most, until it is enough.
`python -m tests.test_short_way_against_long SEED` prints the figures of other vehicles.
"""

import sys
from collections import Counter
from dataclasses import dataclass

import numpy as np
import pytest

from core.documents.document import value_at, with_value, without
from core.profiles.profile import load_profile
from core.readings.survey import PIVOTS
from core.verdict.standing import standing_of
from core.verdict.verdict import Overall
from tests.conftest import ROOT
from tests.full_axle.records import documents
from tests.full_axle.vehicles import drawn
from wizard.flow.short_way import wanted_paths

VEHICLES, SEED = 200, 7

TAKEN_FIRST = (
    *(f"readings.{pivot}.{kind}" for pivot in PIVOTS for kind in ("height", "offset")),
    "readings.wheels.left_offset",
    "readings.wheels.right_offset",
)


@dataclass(frozen=True)
class Judged:
    """One vehicle judged on both ways.

    Attributes
    ----------
    short, long : Overall
    is_decided : bool
        True if the short way said that it is decided.
    further : int
        Number of readings beyond the pivots that the short way asked for.
    left : int
        Number of readings that it did not ask for.
    """

    short: Overall
    long: Overall
    is_decided: bool
    further: int
    left: int


def judged(document):
    """One vehicle judged on both ways; each reading is taken once."""
    profile = load_profile(document["session"]["profile"], [ROOT / "profiles"])
    complete = standing_of(document, lambda _: profile)
    answers = without(document, "readings")
    for path in (*TAKEN_FIRST, "readings.track_bar.bent", "readings.drag_link.bent"):
        answers = with_value(answers, path, value_at(document, path))
    passed, further = set(), 0
    while True:
        standing = standing_of(answers, lambda _: profile)
        wanted = [path for path in wanted_paths(standing) if path not in passed]
        if not wanted:
            return Judged(
                standing.geometry,
                complete.geometry,
                standing.is_decided,
                further,
                len(standing.worths),
            )
        reading = value_at(document, wanted[0])
        if reading is None:  # castor at two heights: the vehicle has no such reading
            passed.add(wanted[0])
        else:
            answers, further = with_value(answers, wanted[0], reading), further + 1


def simulated(count, seed=SEED):
    """Vehicles judged on both ways, half of them with each layout."""
    rng = np.random.default_rng(seed)
    for layout in ("knuckle", "tie-rod"):
        for document in documents(drawn(rng, "radius-arms", layout, count // 2), rng):
            yield judged(document)


def described(vehicles):
    """Lines that say how the verdicts of both ways compare."""
    pairs = Counter((each.is_decided, str(each.short), str(each.long)) for each in vehicles)
    for (is_decided, short, long), number in sorted(pairs.items()):
        ends = "decided" if is_decided else "passed on"
        yield f"{number:4}  {ends:10} short: {short:18} long: {long}"
    further = [each.further for each in vehicles]
    yield f"readings beyond the pivots: {np.bincount(further)}, mean {np.mean(further):.2f}"
    yield f"readings that were not asked for: {np.mean([each.left for each in vehicles]):.1f}"


@pytest.mark.slow
def test_the_short_way_decides_nothing_that_the_long_way_decides_otherwise():
    vehicles = list(simulated(VEHICLES))
    print("\n".join(described(vehicles)))
    decided = [each for each in vehicles if each.is_decided]
    assert len(decided) > VEHICLES / 2
    otherwise = [each for each in decided if each.long not in (each.short, Overall.TOO_CLOSE)]
    assert otherwise == []
    left_open = [each for each in decided if each.long == Overall.TOO_CLOSE]
    assert len(left_open) <= VEHICLES / 50
    assert np.mean([each.further for each in vehicles]) < 6


def main(seed):
    """Print the figures of some vehicles."""
    print("\n".join(described(list(simulated(VEHICLES, seed)))))


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else SEED)
