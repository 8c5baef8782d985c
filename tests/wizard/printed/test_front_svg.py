"""The front view on paper: to scale, with a name at each link."""

from xml.etree import ElementTree

import numpy as np
import pytest

from tests.geometries import LAYOUTS, random_linkage
from wizard.printed.front_svg import front_svg
from wizard.views.picture_data import FrontPicture, Wheels
from wizard.views.verdict import joint_of, pivots_at_rest


def picture(layout="knuckle", seed=3, **others):
    linkage = random_linkage(np.random.default_rng(seed), layout)
    return FrontPicture(pivots=pivots_at_rest(linkage), joint=joint_of(linkage), **others)


def drawn(svg):
    """Centres of the frame ends and of the axle ends, in the order drawn."""
    root = ElementTree.fromstring(svg)
    frame = [
        (float(r.get("x")) + 5, float(r.get("y")) + 5)
        for r in root.iter("rect")
        if r.get("class") == "frame-end"
    ]
    axle = [(float(c.get("cx")), float(c.get("cy"))) for c in root.iter("circle")]
    return np.array(frame), np.array(axle)


@pytest.mark.parametrize("layout", LAYOUTS)
def test_lengths_and_slopes_are_to_scale(layout):
    front = picture(layout)
    frame, axle = drawn(front_svg(front))
    axle = axle[-2:]  # the near ball of an inverted-Y comes before them
    measured = [
        np.subtract(front.pivots[f"{link}.frame"], front.pivots[f"{link}.axle"])
        for link in ("track_bar", "drag_link")
    ]
    on_paper = (frame - axle) * [1, -1]  # down the page is down
    scale = np.hypot(*on_paper.T) / np.hypot(*np.array(measured).T)
    assert scale[0] == pytest.approx(scale[1], rel=1e-3)
    np.testing.assert_allclose(on_paper, scale[0] * np.array(measured), atol=0.2)


def test_the_tie_rod_of_an_inverted_y_is_drawn():
    root = ElementTree.fromstring(front_svg(picture("inverted-y")))
    assert [path.get("class") for path in root.iter("path")].count("tie-rod") == 1
    assert len(list(root.iter("circle"))) == 3


@pytest.mark.parametrize("seed", range(8))
def test_names_do_not_touch(seed):
    root = ElementTree.fromstring(front_svg(picture(seed=seed, notes={"track_bar": "2 deg"})))
    first, second = root.iter("text")
    assert first.text == "track bar 2 deg"
    same_side = first.get("text-anchor") == second.get("text-anchor")
    assert not same_side or abs(float(first.get("y")) - float(second.get("y"))) > 12


def test_wheels_stand_on_the_floor():
    wheels = Wheels(left=(780.0, 420.0), right=(-780.0, 420.0))
    root = ElementTree.fromstring(front_svg(picture(wheels=wheels)))
    floor = float(next(root.iter("path")).get("d").removeprefix("M0 ").partition("H")[0])
    tyres = [r for r in root.iter("rect") if r.get("class") == "tyre"]
    assert len(tyres) == 2
    for tyre in tyres:
        assert float(tyre.get("y")) + float(tyre.get("height")) == pytest.approx(floor, abs=0.2)
