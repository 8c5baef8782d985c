"""Steer against suspension travel: droop on the left, bump on the right, left turns upward.

The limit is drawn over the working travel; dotted edges bound the uncertainty of the curve.
"""

from collections.abc import Sequence
from itertools import groupby
from math import isfinite, nan

import numpy as np

from wizard.tui.pictures.curve_words import axle_readout, curve_words
from wizard.tui.pictures.drawing import DASHED, DOTTED, SOLID, SPARSE, Dashes, Drawing
from wizard.tui.pictures.plot import Plot, plot_of
from wizard.views.picture_data import CurvePicture, MeasuredPoint, Trace


class Curve(Drawing):
    """Draws a CurvePicture."""

    COMPONENT_CLASSES = {
        "curve--line",
        "curve--compared",
        "curve--uncertainty",
        "curve--limit",
        "curve--axis",
        "curve--heave",
        "curve--word",
    }

    def __init__(
        self,
        picture: CurvePicture | None = None,
        *,
        id: str | None = None,
        classes: str | None = None,
    ) -> None:
        super().__init__(id=id, classes=classes)
        self.picture = picture

    def show(self, picture: CurvePicture | None) -> None:
        """Show another curve, or none."""
        self.picture = picture
        self.redraw()

    def draw(self) -> None:
        """Draw from the back of the picture to its front."""
        picture = self.picture
        if picture is None:
            return
        plot = plot_of(picture, self.sheet)
        self.line(plot.line([(plot.low, 0.0), (plot.high, 0.0)]), "curve--axis")
        self.line(plot.line([(0.0, plot.bottom), (0.0, plot.top)]), "curve--axis", SPARSE)
        if picture.limit is not None:
            self.draw_limit(plot, (picture.lowest_allowed, picture.limit), picture.working)
        trace, compared = picture.trace, picture.compared
        if trace.expanded_uncertainty is not None:
            for edge in zip(*trace.edges(), strict=True):
                self.draw_trace(plot, trace.heave, edge, "curve--uncertainty", DOTTED)
        if compared:
            self.draw_trace(plot, compared.heave, compared.value, "curve--compared", DASHED)
        self.draw_trace(plot, trace.heave, trace.value, "curve--line", SOLID)
        self.draw_points(plot, picture.points)
        now = value_at(trace, picture.axle_heave)
        words = curve_words(picture, plot, self.sheet, self.drawn_cells())
        if picture.axle_heave is not None:
            ends = [(picture.axle_heave, plot.bottom), (picture.axle_heave, plot.top)]
            self.line(plot.line(ends), "curve--heave", DOTTED)
        for word in (*words, *axle_readout(picture, now, self.sheet)):
            self.write(word.column, word.row, word.text, word.style)
        if isfinite(now):
            self.mark(plot.dot((picture.axle_heave or 0.0, now)), "●", "curve--heave")

    def draw_trace(
        self,
        plot: Plot,
        heave: Sequence[float],
        value: Sequence[float],
        style: str,
        dashes: Dashes,
    ) -> None:
        """Draw a curve, with a gap where the linkage cannot reach."""
        pairs = zip(heave, value, strict=True)
        for reaches, run in groupby(pairs, key=lambda pair: isfinite(pair[1])):
            if reaches:
                self.line(plot.line(list(run)), style, dashes, thick=dashes == SOLID)

    def draw_points(self, plot: Plot, points: Sequence[MeasuredPoint]) -> None:
        """Draw measured steer, each point with the bar of its uncertainty."""
        for point in points:
            if plot.low <= point.heave <= plot.high:
                self.line(plot.line([(point.heave, end) for end in point.ends]), "curve--heave")
                self.mark(plot.dot((point.heave, point.value)), "+", "curve--heave")

    def draw_limit(
        self, plot: Plot, limits: tuple[float, float], working: tuple[float, float]
    ) -> None:
        """Draw the box that the curve must stay in over the working travel."""
        droop, bump = working
        for level in limits:
            self.line(plot.line([(-droop, level), (bump, level)]), "curve--limit", DASHED)
        for end in (-droop, bump):
            self.line(plot.line([(end, level) for level in limits]), "curve--limit", SPARSE)


def value_at(trace: Trace, heave: float | None) -> float:
    """Value of a curve at a heave (mm), interpolated, deg; nan where it has none."""
    if heave is None or not trace.heave[0] <= heave <= trace.heave[-1]:
        return nan
    return float(np.interp(heave, trace.heave, trace.value))
