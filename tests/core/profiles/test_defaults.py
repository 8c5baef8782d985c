"""Defaults: their paths, their bounds, and what knowing the kind of a guide is worth."""

from math import radians, sqrt
from pathlib import Path

import numpy as np
import pytest

from core.kinematics.pivots import GUIDE_PIVOTS, GuideKind
from core.profiles.defaults import CONDITIONS, MEASURED, default_path
from core.profiles.profile import load_profile, profile_names
from core.text.quantity import INCH

SHIPPED = Path(__file__).parents[3] / "profiles"
NAMES = profile_names([SHIPPED])


def defaults_of(name):
    return load_profile(name, [SHIPPED]).defaults


class TestByTheNameOfTheReading:
    def test_dimensions_of_every_vehicle(self):
        defaults = defaults_of("coil-crossover")
        for name, value, within in (
            ("steering.arm", 6.5 * INCH, 1.25 * INCH),
            ("steering.pitman_arm", 6 * INCH, INCH),
            ("tie_rod.near_arm", 6.5 * INCH, 1.25 * INCH),
            ("tie_rod.joint_from_far_ball", 8 * INCH, 4 * INCH),
            ("wheels.hub_height", 16 * INCH, INCH),
            ("steering.ratio", 16, 3),
            ("kingpin.castor", radians(5), radians(3)),
            ("kingpin.inclination", radians(9), radians(4)),
            ("guide.span", 34 * INCH, 6 * INCH),
        ):
            for guide in GuideKind:
                assert defaults.value(name, guide) == pytest.approx(value)
                assert defaults.within(name, guide) == pytest.approx(within)

    def test_a_leaf_spring_has_a_pitch_gain_of_its_own_in_every_profile(self):
        for name in NAMES:
            gain = defaults_of(name).value("guide.pitch_gain", GuideKind.LEAF)
            within = defaults_of(name).within("guide.pitch_gain", GuideKind.LEAF)
            assert (gain, within) == (0.0, pytest.approx(radians(0.4) / INCH))
        coil = defaults_of("coil-crossover")
        gain = coil.value("guide.pitch_gain", GuideKind.UNMEASURED)
        within = coil.within("guide.pitch_gain", GuideKind.UNMEASURED)
        assert (gain, within) == pytest.approx((radians(-0.7) / INCH, radians(1.1) / INCH))

    def test_the_equivalent_arm_of_a_leaf_spring(self):
        for name in NAMES:
            defaults = defaults_of(name)
            assert defaults.value("guide.effective_length", GuideKind.LEAF) == 0.75
            assert defaults.within("guide.effective_length", GuideKind.LEAF) == 0.08

    def test_a_condition_has_no_half_width(self):
        defaults = defaults_of("coil-crossover")
        assert defaults.value("travel.bump", GuideKind.LEAF) == pytest.approx(4 * INCH)
        for name in ("travel.bump", "travel.droop", "vehicle.wheelbase"):
            with pytest.raises(KeyError):
                defaults.within(name, GuideKind.LEAF)

    def test_a_guide_has_only_its_own_pivots(self):
        assert default_path("guide.eye.height", GuideKind.LEAF) == "guide.leaf.eye.height"
        with pytest.raises(KeyError):
            default_path("guide.eye.height", GuideKind.RADIUS_ARMS)

    @pytest.mark.parametrize("path", [*CONDITIONS, *MEASURED])
    def test_an_example_lies_within_its_bounds(self, path):
        bounds = (CONDITIONS | MEASURED)[path]
        assert bounds.holds(bounds.parse(bounds.example))


def pitch_gain(guide, place):
    """Pitch for heave of an axle whose arms stand at these places, rad/mm.

    The axle turns about the point where its arms meet (instant centre of a four-bar chain).

    Parameters
    ----------
    guide : GuideKind
    place : dict of float
        Height and station by the names of the readings, mm.
    """
    if guide == GuideKind.RADIUS_ARMS:
        return 1 / place["guide.frame.station"]
    slopes, at_axle = [], []
    for arm in ("lower", "upper"):
        x, z, x_axle, z_axle = (
            place[f"guide.{arm}_{end}.{key}"]
            for end in ("frame", "axle")
            for key in ("station", "height")
        )
        slopes.append((z_axle - z) / (x_axle - x))
        at_axle.append(z_axle - slopes[-1] * x_axle)
    # Both arms have the same height at the instant centre; far behind counts as no pitch at all.
    return (slopes[0] - slopes[1]) / (at_axle[1] - at_axle[0])


@pytest.mark.parametrize("guide", [GuideKind.RADIUS_ARMS, GuideKind.TWO_ARMS])
@pytest.mark.parametrize("name", NAMES)
def test_the_kind_of_the_guide_alone_narrows_the_doubt_of_the_pitch_gain(name, guide):
    defaults = load_profile("coil-crossover", [SHIPPED]).defaults
    unmeasured = defaults.within("guide.pitch_gain", GuideKind.UNMEASURED)
    usual = defaults.value("guide.pitch_gain", GuideKind.UNMEASURED)
    own = defaults_of(name)
    readings = [f"{pivot}.{key}" for pivot in GUIDE_PIVOTS[guide] for key in ("height", "station")]
    generator = np.random.default_rng(5)
    drawn = {
        reading: own.value(reading, guide)
        + own.within(reading, guide) * generator.uniform(-1, 1, 20_000)
        for reading in readings
    }
    gains = pitch_gain(guide, drawn)
    assert gains.std() < 0.75 * unmeasured / sqrt(3)
    inside = np.abs(gains - usual) < unmeasured
    assert inside.mean() > 0.9, "the kind leads out of what an unknown guide allows"
    per_inch = np.degrees(np.median(gains)) * INCH
    expected = -1.6 if guide == GuideKind.RADIUS_ARMS else -0.2  # common practice, no source
    assert per_inch == pytest.approx(expected, abs=0.2)
