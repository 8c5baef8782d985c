"""Simulated sets of readings with one slip: how often it is named first.

Pivots, readings and slips are drawn here with plain numpy; none of core has a part in them. Errors
are rectangular and as wide as the instruments claim. Half of the variance of sighting and seating,
and the floor, are common to both repeats of a reading. Every set has lengths, slopes and braces.
Every other set has no stations.
"""

from collections import Counter

import numpy as np
import pytest

from core.adjustment.least_squares import adjust
from core.adjustment.prior import station_priors
from core.adjustment.slips import slips_of
from core.readings.reading import Reading
from core.readings.survey import SURVEY
from tests.geometries import INCH, INSTRUMENTS

PIVOTS = ("track_bar.frame", "track_bar.axle", "drag_link.frame", "drag_link.axle")
BRACES = {"braces.frame_ends": (0, 2), "braces.axle_ends": (1, 3), "braces.frame_to_axle": (0, 3)}
NEIGHBOURS = ((0, 2), (1, 3), (0, 1), (2, 3))
SETS = 160
CLEAN_SETS = 24

MISTAKES = ("exchanged heights", "exchanged slopes", "turned sign", "whole inches")


def drawn_pivots(rng):
    """Centres (4, 3), mm, and the signed length of the steering arm, mm."""
    side = rng.choice([-1, 1])
    slope_t = np.radians(rng.uniform(-3, 18))
    slope_d = slope_t + np.radians(rng.uniform(-6, 6))
    arm = rng.choice([-1, 1]) * rng.uniform(140, 200)
    run_t, run_d = rng.uniform(700, 950), rng.uniform(750, 1000)
    bar = np.array([rng.uniform(-100, 100), -side * rng.uniform(330, 420), rng.uniform(390, 470)])
    ball = np.array(
        [arm + rng.uniform(-25, 25), -side * rng.uniform(540, 620), rng.uniform(390, 520)]
    )
    of_bar = np.array([rng.uniform(-40, 40), side * run_t, run_t * np.tan(slope_t)])
    of_link = np.array([rng.uniform(-45, 45), side * run_d, run_d * np.tan(slope_d)])
    return np.array([bar + of_bar, bar, ball + of_link, ball]), arm


def true_values(points, datum):
    values = {}
    for pivot, (ahead, left, up) in zip(PIVOTS, points, strict=True):
        values |= {
            f"{pivot}.height": up,
            f"{pivot}.offset": datum - left,
            f"{pivot}.station": ahead,
        }
    for link, first in (("track_bar", 0), ("drag_link", 2)):
        ahead, left, up = points[first] - points[first + 1]
        values[f"{link}.length"] = np.sqrt(ahead**2 + left**2 + up**2)
        values[f"{link}.slope"] = np.arctan2(up, np.hypot(ahead, left))
    for brace, (i, j) in {
        "frame_ends": (0, 2),
        "axle_ends": (1, 3),
        "frame_to_axle": (0, 3),
    }.items():
        values[f"braces.{brace}"] = np.linalg.norm(points[i] - points[j])
    return values


def with_errors(rng, name, value, repeats):
    """Readings of one value, each rounded to a mark."""
    kind = name.rpartition(".")[2]
    if kind == "slope":
        widths, floor, mark = [INSTRUMENTS.seating], 0.0, INSTRUMENTS.angle_finder
    else:
        sightings = {"station": [2.0], "height": [1.0], "offset": [1.0]}.get(kind, [1.0, 1.0])
        widths = [share * INSTRUMENTS.sighting for share in sightings]
        floor = INSTRUMENTS.floor if kind == "height" else 0.0
        mark = INSTRUMENTS.tape

    def sighted():
        return sum(rng.uniform(-1, 1) * width / np.sqrt(2) for width in widths)

    common = value + sighted() + rng.uniform(-1, 1) * floor
    return tuple(round((common + sighted()) / mark) * mark for _ in range(repeats))


def drawn_set(rng, has_stations):
    """Repeats by the name of the reading, and the signed length of the steering arm."""
    points, arm = drawn_pivots(rng)
    values = true_values(points, rng.uniform(-900, 900))
    repeats = int(rng.integers(1, 3))
    return {
        name: with_errors(rng, name, value, repeats)
        for name, value in values.items()
        if has_stations or not name.endswith("station")
    }, arm


def with_slip(rng, read, mistake):
    """The readings with a slip, and the kind and the names by which it should be named."""
    if mistake.startswith("exchanged"):
        first, second = (PIVOTS[i] + ".height" for i in NEIGHBOURS[rng.integers(4)])
        if mistake == "exchanged slopes":
            first, second = "track_bar.slope", "drag_link.slope"
        return {**read, first: read[second], second: read[first]}, ("exchanged", {first, second})
    if mistake == "turned sign":
        name = str(rng.choice([n for n in read if n.endswith(("offset", "station", "slope"))]))
        return {**read, name: tuple(-repeat for repeat in read[name])}, ("sign", {name})
    name = PIVOTS[rng.integers(4)] + ".height"
    inches = rng.choice([-3, -2, -1, 1, 2, 3])
    wrong = tuple(repeat + inches * INCH for repeat in read[name])
    return {**read, name: wrong}, ("whole", {name})


def arguments(read, arm):
    """Readings and priors for the adjustment."""
    readings = tuple(
        Reading(name, kind, read[name]) for name, kind in SURVEY.items() if name in read
    )
    return readings, INSTRUMENTS, PIVOTS, station_priors(set(read), True, arm, False, False)


@pytest.mark.slow
def test_a_slip_is_named_first(capsys):
    """A slip counts as named first if it is among the likely slips, which are named together."""
    rng = np.random.default_rng(1905)
    counts = {mistake: Counter() for mistake in MISTAKES}
    for i in range(SETS):
        mistake = MISTAKES[i % 4]
        read, arm = drawn_set(rng, has_stations=i // 4 % 2 == 0)
        wrong, truth = with_slip(rng, read, mistake)
        set_of_readings = arguments(wrong, arm)
        if adjust(*set_of_readings).closes:
            continue
        slips = slips_of(*set_of_readings)
        named = [(slip.slip, set(slip.readings)) for slip in slips]
        likely = [name for name, slip in zip(named, slips, strict=True) if slip.is_likely]
        counts[mistake] += Counter(
            sets=1,
            likely=truth in likely,
            head=named[:1] == [truth],
            together=len(likely),
        )
    counts["all"] = sum(counts.values(), Counter())
    with capsys.disabled():
        print("\nSlips in simulated sets with braces that do not close")
        for mistake, count in counts.items():
            first, head, slips = (
                count[key] / count["sets"] for key in ("likely", "head", "together")
            )
            print(
                f"  {mistake}: {count['sets']} sets, named first in {first:.1%} among "
                f"{slips:.1f} slips, at the head of them in {head:.1%}"
            )
    assert counts["all"]["likely"] / counts["all"]["sets"] >= 0.95
    assert counts["all"]["head"] / counts["all"]["sets"] >= 0.85


def test_clean_sets_close():
    rng = np.random.default_rng(24)
    for i in range(CLEAN_SETS):
        readings = arguments(*drawn_set(rng, has_stations=i % 2 == 0))
        assert adjust(*readings).closes
        assert slips_of(*readings) == ()
