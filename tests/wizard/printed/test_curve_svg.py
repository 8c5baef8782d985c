"""The curve on paper: places of its values, and the limit over the working travel."""

import math
import re
from itertools import pairwise
from xml.etree import ElementTree

import pytest

from wizard.printed.curve_svg import curve_svg
from wizard.views.picture_data import CurvePicture, Trace

HEAVES = [-100.0, -50.0, 0.0, 50.0, 100.0]


def path(root, css_class):
    """Points of the path of a class."""
    (data,) = (p.get("d") for p in root.iter("path") if p.get("class") == css_class)
    return [tuple(map(float, pair.split())) for pair in re.findall(r"[\d.]+ [\d.]+", data)]


def picture(value, unit="mm", **others):
    return CurvePicture(Trace("steer", HEAVES, value), working=(50.0, 50.0), unit=unit, **others)


def texts(root):
    return [text.text for text in root.iter("text")]


def test_the_trace_goes_through_its_values():
    root = ElementTree.fromstring(curve_svg(picture([-2.0, -1.0, 0.0, 1.0, 2.0], limit=0.5)))
    points = path(root, "trace")
    steps = [after[1] - before[1] for before, after in pairwise(points)]
    assert steps == pytest.approx([steps[0]] * 4, abs=0.2)
    assert steps[0] < 0  # to the left is up
    (zero,) = (p.get("d") for p in root.iter("path") if p.get("class") == "zero")
    assert f" {points[2][1]:.1f}H" in zero


def test_the_limit_lies_over_the_working_travel():
    root = ElementTree.fromstring(curve_svg(picture([-2.0, -1.0, 0.0, 1.0, 2.0], limit=1.0)))
    points = path(root, "trace")
    (allowed,) = (r for r in root.iter("rect") if r.get("class") == "allowed")
    left, top = float(allowed.get("x")), float(allowed.get("y"))
    assert left == pytest.approx(points[1][0], abs=0.1)
    assert left + float(allowed.get("width")) == pytest.approx(points[3][0], abs=0.2)
    assert top == pytest.approx(points[3][1], abs=0.1)
    assert "limit 1 deg" in texts(root)


def test_the_curve_ends_where_the_linkage_cannot_reach():
    root = ElementTree.fromstring(curve_svg(picture([math.nan, -1.0, 0.0, 1.0, math.nan])))
    assert len(path(root, "trace")) == 3
    assert "nan" not in curve_svg(picture([math.nan, -1.0, 0.0, 1.0, math.nan]))


@pytest.mark.parametrize("value", [[0.0] * 5, [1e-6] * 5, [80.0, 40.0, 0.0, -40.0, -80.0]])
def test_flat_and_steep_curves_have_a_frame(value):
    root = ElementTree.fromstring(curve_svg(picture(value, limit=0.5)))
    assert all(0 <= y <= 190 for _, y in path(root, "trace"))


@pytest.mark.parametrize(("unit", "name"), [("mm", "50 mm"), ("in", "2 in")])
def test_travel_is_in_the_chosen_unit(unit, name):
    root = ElementTree.fromstring(curve_svg(picture([0.0] * 5, unit=unit, limit=0.5)))
    assert texts(root).count(name) == 2
    assert "ride height" in texts(root)


def test_a_long_travel_has_few_lines():
    heaves = [-1e6, 0.0, 1e6]
    svg = curve_svg(CurvePicture(Trace("steer", heaves, [-9e5, 0.0, 9e5]), unit="mm"))
    root = ElementTree.fromstring(svg)
    lines = [line for line in root.iter("path") if line.get("class") in ("grid", "zero")]
    assert len(lines) < 30
