import numpy as np
import pytest

from core.adjustment.outliers import suspect_groups
from core.uncertainty.measured_linkage import adjusted
from tests.geometries import INCH, as_read, document_of, parallel_pair, session_of, true_readings

LINKAGE = parallel_pair(slope_deg=8.0, parallel_deg=1.0)
BRACES = ("frame_ends", "axle_ends", "frame_to_axle")


def suspects_in(read):
    session = session_of(document_of(LINKAGE, read))
    return suspect_groups(adjusted(session))


def test_true_readings_are_no_suspects():
    assert suspects_in(true_readings(LINKAGE)) == ()


def test_readings_within_their_uncertainty_are_no_suspects():
    assert suspects_in(as_read(true_readings(LINKAGE), np.random.default_rng(1))) == ()


@pytest.mark.parametrize("name", ["track_bar.frame.height", "drag_link.axle.height"])
@pytest.mark.parametrize("mistake", [-2 * INCH, 2 * INCH])
def test_a_wrong_height_is_named_with_its_mistake(name, mistake):
    read = true_readings(LINKAGE)
    read[name] += mistake
    first = suspects_in(read)[0]
    assert first.readings[0] == name
    assert first.mistakes[0] == pytest.approx(mistake, rel=0.1)


def test_a_wrong_slope_is_named_in_its_own_unit():
    read = true_readings(LINKAGE)
    read["track_bar.slope"] += np.radians(5.0)
    first = suspects_in(read)[0]
    assert first.readings[0] == "track_bar.slope"
    assert first.mistakes[0] == pytest.approx(np.radians(5.0), rel=0.1)


def test_readings_that_cannot_be_told_apart_are_named_together():
    """Without braces and lengths, five readings reveal a mistake in the same way."""
    read = {
        name: value
        for name, value in true_readings(LINKAGE).items()
        if not name.endswith(("length", *BRACES))
    }
    read["track_bar.frame.height"] += 2 * INCH
    (group,) = suspects_in(read)
    # The slope needs the smallest mistake for its uncertainty, then the heights. The offsets
    # would need a mistake of nearly a foot, so they come last.
    assert group.readings == (
        "track_bar.slope",
        "track_bar.frame.height",
        "track_bar.axle.height",
        "track_bar.frame.offset",
        "track_bar.axle.offset",
    )
    mistakes = dict(zip(group.readings, group.mistakes, strict=True))
    assert mistakes["track_bar.frame.height"] == pytest.approx(2 * INCH, rel=0.05)
    assert mistakes["track_bar.axle.height"] == pytest.approx(-2 * INCH, rel=0.05)
    assert np.degrees(mistakes["track_bar.slope"]) == pytest.approx(-3.3, abs=0.3)
    assert mistakes["track_bar.frame.offset"] > 10 * INCH


def test_two_mistakes_are_both_named():
    read = true_readings(LINKAGE)
    read["track_bar.frame.height"] += 3 * INCH
    read["drag_link.frame.height"] -= 4 * INCH
    named = {name for group in suspects_in(read) for name in group.readings}
    assert {"track_bar.frame.height", "drag_link.frame.height"} <= named


def test_without_redundancy_there_are_no_suspects():
    read = {
        name: value
        for name, value in true_readings(LINKAGE).items()
        if not name.endswith(("length", "slope", *BRACES))
    }
    read["track_bar.frame.height"] += 5 * INCH
    assert suspects_in(read) == ()
