"""Simulated workshops: rates of wrong verdicts and of wrongly named readings.

Each workshop measures a vehicle with a known true geometry. Errors are drawn from rectangular
distributions as wide as the instruments claim. Every reading is rounded to a mark of the tape or
the angle finder. True parallel angles are uniform over three times the limit on either side.
Steer and toe follow from them. Stations, lengths, slopes and braces are taken.
"""

from collections import Counter
from dataclasses import dataclass

import numpy as np
import pytest

from core.adjustment.least_squares import Adjustment
from core.adjustment.outliers import suspect_groups
from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at
from core.profiles.limits import Limits
from core.uncertainty.measured_linkage import adjusted, measured_linkage
from core.verdict.curves import working_heaves
from core.verdict.peak import peaks_of
from core.verdict.rules import length_ratio, parallel_angle, rules_of, slopes
from core.verdict.verdict import Overall, overall
from tests.geometries import (
    INCH,
    LAYOUTS,
    as_read,
    document_of,
    random_linkage,
    session_of,
    true_readings,
)

pytestmark = pytest.mark.slow

VEHICLES = 1200
DRAWS = 1000
"""Draws of each Monte Carlo. The program takes 2,000, which scatter less."""

HEIGHTS = tuple(
    f"{link}.{end}.height" for link in ("track_bar", "drag_link") for end in ("frame", "axle")
)


@dataclass(frozen=True)
class Workshop:
    """One vehicle, measured once without a mistake and once with one."""

    truth: dict[str, bool]  # by rule: truly within
    called: dict[str, str]  # by rule: the verdict
    named_when_clean: bool  # a reading was named though none is wrong
    height: str  # the reading that was made 2 in wrong
    groups: tuple[tuple[str, ...], ...]  # readings named because of it


@pytest.fixture(scope="module")
def workshops() -> list[Workshop]:
    rng = np.random.default_rng(2000)
    return [measure(rng, LAYOUTS[i % 3], HEIGHTS[i % 4]) for i in range(VEHICLES)]


def measure(rng, layout, height) -> Workshop:
    angle = np.radians(rng.uniform(-4.5, 4.5))
    linkage = random_linkage(rng, layout, parallel=angle, same_side=True)
    readings = as_read(true_readings(linkage, datum=900.0), rng)
    session = session_of(document_of(linkage, readings))
    clean = adjusted(session)
    mistaken_readings = {**readings, height: readings[height] + rng.choice([-2, 2]) * INCH}
    mistaken = session_of(document_of(linkage, mistaken_readings))
    return Workshop(
        truth=truly_within(linkage, session.limits),
        called=verdicts(session, clean),
        named_when_clean=bool(suspect_groups(clean)),
        height=height,
        groups=tuple(group.readings for group in suspect_groups(adjusted(mistaken))),
    )


def truly_within(linkage: Linkage, limits: Limits) -> dict[str, bool]:
    motion = motion_at(linkage, working_heaves(limits))
    within = {
        "parallel": abs(parallel_angle(linkage)) <= limits.parallel,
        "steer": np.abs(motion.steer).max() <= limits.steer,
        "toe": np.abs(motion.toe_in_change).max() <= limits.toe_change,
        "flat track bar": abs(slopes(linkage)[0]) <= limits.flat,
        "flat drag link": abs(slopes(linkage)[1]) <= limits.flat,
        "length": length_ratio(linkage) >= limits.length_ratio,
    }
    within["overall"] = within["parallel"] and within["steer"] and within["toe"]
    return {name: bool(value) for name, value in within.items()}


def verdicts(session, adjustment: Adjustment) -> dict[str, str]:
    subject = measured_linkage(session, adjustment)
    rules = rules_of(subject, session.limits)
    steer, toe = (peak.ruling.verdict for peak in peaks_of(subject, session.limits, DRAWS))
    decided = overall(rules.parallel.verdict, steer, toe)
    return {
        "parallel": rules.parallel.verdict,
        "steer": steer,
        "toe": toe,
        "flat track bar": rules.flat_track_bar.verdict,
        "flat drag link": rules.flat_drag_link.verdict,
        "length": rules.length.verdict,
        "overall": {Overall.STEERS_TRUE: "within", Overall.BUMP_STEER: "out"}.get(decided, decided),
    }


def test_false_within_and_false_out_are_under_5_percent(workshops, capsys):
    lines = []
    for name in workshops[0].truth:
        called, false = Counter(), Counter()
        for workshop in workshops:
            verdict = workshop.called[name]
            called[verdict] += 1
            false[verdict] += workshop.truth[name] != (verdict == "within")
        rates = {verdict: false[verdict] / called[verdict] for verdict in ("within", "out")}
        lines.append(
            f"  {name}: {called['within']} within ({rates['within']:.2%} falsely), "
            f"{called['out']} out ({rates['out']:.2%} falsely), "
            f"{called['too close to call']} too close to call"
        )
        assert max(rates.values()) < 0.05, lines[-1]
    with capsys.disabled():
        print(f"\n{VEHICLES} simulated workshops", *lines, sep="\n")


def test_a_height_2_in_wrong_is_named(workshops, capsys):
    lines = []
    for height in HEIGHTS:
        among = [workshop.groups for workshop in workshops if workshop.height == height]
        named = np.mean([any(height in group for group in groups) for groups in among])
        first = np.mean([bool(groups) and groups[0][0] == height for groups in among])
        readings = np.mean([sum(len(group) for group in groups) for groups in among])
        lines.append(
            f"  {height}: named in {named:.1%}, first of all in {first:.1%}, "
            f"among {readings:.1f} readings"
        )
        assert named >= 0.95, lines[-1]
    with capsys.disabled():
        print("\nA height 2 in wrong, with braces", *lines, sep="\n")


def test_no_reading_is_named_in_a_clean_set(workshops, capsys):
    named = np.mean([workshop.named_when_clean for workshop in workshops])
    with capsys.disabled():
        print(f"\nClean sets with a reading named: {named:.2%}")
    assert named <= 0.01


def test_a_vehicle_at_the_limit_is_called_within_or_out_in_5_percent():
    """Guarded acceptance of JCGM 106:2012: at the limit the risk of a wrong call is 5 %.

    Among 1,000 vehicles the standard deviation of that rate is 0.7 %; three times that is allowed.
    """
    vehicles = 1000
    rng = np.random.default_rng(106)
    called = Counter()
    for i in range(vehicles):
        limit = np.radians(1.5 if i % 2 else -1.5)
        linkage = random_linkage(rng, LAYOUTS[i % 3], parallel=limit, same_side=True)
        session = session_of(document_of(linkage, as_read(true_readings(linkage), rng)))
        adjustment = adjusted(session)
        called[
            rules_of(measured_linkage(session, adjustment), session.limits).parallel.verdict
        ] += 1
    assert 0.029 < called["within"] / vehicles < 0.071
    assert 0.029 < called["out"] / vehicles < 0.071
