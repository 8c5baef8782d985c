"""The front view on paper: to scale, with a name at each link."""

import re
from dataclasses import replace
from xml.etree import ElementTree

import numpy as np
import pytest

from tests.geometries import LAYOUTS, random_linkage
from wizard.printed.front_svg import front_svg
from wizard.views.aims import AXIS
from wizard.views.picture_data import Aim, FrontPicture, Wheels
from wizard.views.verdict import joint_of, pivots_at_rest

WHEELS = Wheels(left=(780.0, 420.0), right=(-780.0, 420.0))


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
    assert {first.text, second.text} == {"track bar 2 deg", "drag link"}
    same_side = first.get("text-anchor") == second.get("text-anchor")
    assert not same_side or abs(float(first.get("y")) - float(second.get("y"))) > 12


def with_aims(seed, rise):
    """A picture whose drag link wants its frame end to be elsewhere, and has an axis beside it."""
    across, up = picture(seed=seed).pivots["drag_link.frame"]
    wanted = Aim((across, up + rise), "△", ("wants to be 1 in higher",), needed=True)
    axis = Aim((across + 60, up), AXIS, ("axis",))
    return picture(seed=seed, aims=(wanted, axis), wheels=WHEELS)


@pytest.mark.parametrize("seed", range(8))
def test_the_height_wanted_and_the_axis_are_to_scale(seed):
    rise = 40.0
    front = with_aims(seed, rise)
    svg = front_svg(front)
    frame = drawn(svg)[0][-1]
    level, *cross = [
        np.array(re.findall(r"([-\d.]+) ([-\d.]+)", path.get("d")), dtype=float)
        for path in ElementTree.fromstring(svg).iter("path")
        if path.get("class") == "aim"
    ]
    scale = (np.mean(cross, axis=(0, 1)) - frame)[0] / 60
    assert level[0][1] == level[1][1]
    np.testing.assert_allclose(level.mean(axis=0), frame - [0, scale * rise], atol=0.2)
    assert scale > 0


@pytest.mark.parametrize("seed", range(8))
@pytest.mark.parametrize("rise", [-60.0, 5.0, 60.0])
def test_names_of_marks_keep_clear_of_the_other_names(seed, rise):
    root = ElementTree.fromstring(front_svg(with_aims(seed, rise)))
    texts = list(root.iter("text"))
    assert {text.text for text in texts} >= {"wants to be 1 in higher", "axis"}
    for side in ("start", "end"):
        heights = sorted(float(t.get("y")) for t in texts if t.get("text-anchor") == side)
        assert np.all(np.diff(heights) > 12)


def test_an_axis_outside_the_drawing_is_left_out():
    front = picture(aims=(Aim((5000.0, 300.0), AXIS, ("axis",)),))
    assert "axis" not in [t.text for t in ElementTree.fromstring(front_svg(front)).iter("text")]


def test_a_vehicle_without_a_track_bar_is_drawn():
    front = picture()
    kept = {name: point for name, point in front.pivots.items() if "drag_link" in name}
    svg = front_svg(replace(front, pivots=kept))
    assert len(drawn(svg)[0]) == 1
    assert [text.text for text in ElementTree.fromstring(svg).iter("text")] == ["drag link"]


def test_wheels_stand_on_the_floor():
    root = ElementTree.fromstring(front_svg(picture(wheels=WHEELS)))
    floor = float(next(root.iter("path")).get("d").removeprefix("M0 ").partition("H")[0])
    tyres = [r for r in root.iter("rect") if r.get("class") == "tyre"]
    assert len(tyres) == 2
    for tyre in tyres:
        assert float(tyre.get("y")) + float(tyre.get("height")) == pytest.approx(floor, abs=0.2)
