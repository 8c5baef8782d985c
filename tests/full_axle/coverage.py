"""Coverage: how often the doubt that core states covers the truth, and how often it is wrong.

`python -m tests.full_axle.coverage` prints the figures of every survey.
"""

import sys
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from core.profiles.profile import Profile, load_profile
from core.verdict.assess import assess
from core.verdict.verdict import READINGS
from tests.conftest import ROOT
from tests.full_axle.records import STEER_LIMIT, documents
from tests.full_axle.steering import peak_steer
from tests.full_axle.tape import (
    AS_CLAIMED,
    Survey,
    Workshop,
    everything,
    heights_and_offsets,
    without_arm_and_stations,
    without_guide_and_kingpin,
)
from tests.full_axle.vehicle import GuideKind, LayoutName, Vehicle
from tests.full_axle.vehicles import drawn

LAYOUTS: tuple[LayoutName, ...] = ("knuckle", "tie-rod")
GUIDES: tuple[GuideKind, ...] = ("radius-arms", "two-arms")
SURVEYS: tuple[Survey, ...] = (
    everything,
    heights_and_offsets,
    without_arm_and_stations,
    without_guide_and_kingpin,
)

DRAWS = 2_000
"""Draws of each Monte Carlo of core, as many as the program takes."""

WORKSHOPS = {
    "errors as claimed": AS_CLAIMED,
    "errors twice as large": Workshop(errors=2.0),
    "floor sloping 0.5 deg": Workshop(floor=np.radians(0.5)),
    "angle finder 0.3 deg off": Workshop(finder=np.radians(0.3)),
}
"""Workshops by what is wrong in them."""


@dataclass(frozen=True)
class Outcome:
    """A vehicle's true peak steer beside what core says of it, rad."""

    true: float
    value: float
    u: float
    called: str

    @property
    def is_covered(self) -> bool:
        """True if the expanded uncertainty U = 2u reaches the truth."""
        return abs(self.value - self.true) <= 2 * self.u

    @property
    def is_false(self) -> bool:
        """True if core decides and the truth is on the other side of the limit."""
        is_within = self.true <= STEER_LIMIT
        return self.called in ("within", "out") and is_within != (self.called == "within")


@dataclass(frozen=True)
class Figures:
    """Figures of some vehicles; shares are 0 to 1.

    Attributes
    ----------
    covered : float
        Share of the vehicles whose true peak U covers.
    called : Counter
        Vehicles by what core calls their peak steer.
    false_within, false_out : float
        Share of those called so that are not.
    median_u : float
        rad
    """

    covered: float
    called: Counter[str]
    false_within: float
    false_out: float
    median_u: float

    def __str__(self) -> str:
        return (
            f"{self.covered:.1%} covered; U {np.degrees(2 * self.median_u):.2f} deg (median); "
            f"{self.called['within']} within ({self.false_within:.1%} falsely), "
            f"{self.called['out']} out ({self.false_out:.1%} falsely), "
            f"{self.called['too close to call']} too close to call, "
            f"{self.called['held back']} held back"
        )


def shipped_profile(name: str) -> Profile:
    """A profile of the program."""
    return load_profile(name, [ROOT / "profiles"])


def fleets(guide: GuideKind, count: int, seed: int) -> list[Vehicle]:
    """Vehicles of one guide, half of each layout."""
    rng = np.random.default_rng(seed)
    return [drawn(rng, guide, layout, count // 2) for layout in LAYOUTS]


def outcomes(
    guide: GuideKind,
    count: int = 300,
    survey: Survey = everything,
    seed: int = 1,
    stated: str | None = None,
    workshop: Workshop = AS_CLAIMED,
) -> list[Outcome]:
    """Outcomes of drawn vehicles that are measured with drawn errors.

    Parameters
    ----------
    guide : str
    count : int
    survey : callable
        The readings that are taken.
    seed : int
    stated : str
        Kind of guide in the record, where it is not the true one: "unmeasured".
    workshop : Workshop
        What is wrong where the readings are taken.
    """
    rng = np.random.default_rng([seed, 1])
    results = []
    for vehicle in fleets(guide, count, seed):
        peaks = peak_steer(vehicle)
        read = documents(vehicle, rng, survey, stated, workshop)
        for document, true in zip(read, peaks, strict=True):
            verdict = assess(document, shipped_profile, DRAWS)
            ruling = verdict.steer.ruling
            called = "held back" if READINGS in verdict.held_back_by else str(ruling.verdict)
            results.append(Outcome(float(true), ruling.value, ruling.u, called))
    return results


def figures(results: Sequence[Outcome]) -> Figures:
    """Figures of some outcomes."""
    called = Counter(outcome.called for outcome in results)
    false = Counter(outcome.called for outcome in results if outcome.is_false)
    return Figures(
        covered=float(np.mean([outcome.is_covered for outcome in results])),
        called=called,
        false_within=false["within"] / max(called["within"], 1),
        false_out=false["out"] / max(called["out"], 1),
        median_u=float(np.median([outcome.u for outcome in results])),
    )


def main(count: int) -> None:
    """Print the figures of every guide and survey."""
    for guide in GUIDES:
        for survey in SURVEYS:
            print(f"{guide}, {survey.__name__}: {figures(outcomes(guide, count, survey))}")
        for name, workshop in WORKSHOPS.items():
            print(f"{guide}, {name}: {figures(outcomes(guide, count, workshop=workshop))}")
        unmeasured = outcomes(guide, count, without_guide_and_kingpin, stated="unmeasured")
        print(f"{guide}, kind of guide not known: {figures(unmeasured)}", flush=True)


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 300)
