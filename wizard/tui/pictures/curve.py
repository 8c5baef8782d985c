"""Steer against suspension travel: droop on the left, bump on the right, left turns upward.

The limit is drawn over the working travel; dotted edges show the expanded uncertainty.
"""

from collections.abc import Sequence
from itertools import groupby
from math import isfinite, nan

import numpy as np

from wizard.tui.pictures.curve_words import curve_words, readout
from wizard.tui.pictures.drawing import DASHED, DOTTED, SOLID, SPARSE, Dashes, Drawing
from wizard.tui.pictures.plot import Plot, plot_of
from wizard.views.picture_data import CurvePicture, Trace


class Curve(Drawing):
    """A curve as a CurvePicture describes it."""

    COMPONENT_CLASSES = {
        "curve--line",
        "curve--other",
        "curve--give",
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
        """Draw the parts of the picture, the rearmost first."""
        picture = self.picture
        if picture is None:
            return
        plot = plot_of(picture, self.sheet)
        self.line(plot.line([(plot.low, 0.0), (plot.high, 0.0)]), "curve--axis")
        self.line(plot.line([(0.0, plot.bottom), (0.0, plot.top)]), "curve--axis", SPARSE)
        if picture.limit is not None:
            self.draw_limit(plot, picture.limit, picture.working)
        if picture.trace.expanded_uncertainty is not None:
            for edge in zip(*picture.trace.edges(), strict=True):
                self.draw_trace(plot, picture.trace.heave, edge, "curve--give", DOTTED)
        if picture.compared:
            compared = picture.compared
            self.draw_trace(plot, compared.heave, compared.value, "curve--other", DASHED)
        self.draw_trace(plot, picture.trace.heave, picture.trace.value, "curve--line", SOLID)
        now = value_at(picture.trace, picture.axle_heave)
        words = curve_words(picture, plot, self.sheet, self.drawn_cells())
        if picture.axle_heave is not None:
            heave = picture.axle_heave
            upright = plot.line([(heave, plot.bottom), (heave, plot.top)])
            self.line(upright, "curve--heave", DOTTED)
        for word in (*words, *readout(picture, now, self.sheet)):
            self.write(word.column, word.row, word.text, word.style)
        if isfinite(now):
            self.mark(plot.dot((picture.axle_heave or 0.0, now)), "●", "curve--heave")

    def draw_trace(
        self,
        plot: Plot,
        heave: Sequence[float],
        value: Sequence[float],
        name: str,
        dashes: Dashes,
    ) -> None:
        """Draw a curve, with a gap where the linkage cannot reach."""
        pairs = zip(heave, value, strict=True)
        for reaches, run in groupby(pairs, key=lambda pair: isfinite(pair[1])):
            if reaches:
                self.line(plot.line(list(run)), name, dashes, thick=dashes == SOLID)

    def draw_limit(self, plot: Plot, limit: float, working: tuple[float, float]) -> None:
        """Draw the box of the limit over the working travel."""
        droop, bump = working
        for level in (-limit, limit):
            self.line(plot.line([(-droop, level), (bump, level)]), "curve--limit", DASHED)
        for end in (-droop, bump):
            self.line(plot.line([(end, -limit), (end, limit)]), "curve--limit", SPARSE)


def value_at(trace: Trace, heave: float | None) -> float:
    """Value of a curve at a heave, interpolated, deg; nan outside its points."""
    if heave is None or not trace.heave[0] <= heave <= trace.heave[-1]:
        return nan
    return float(np.interp(heave, trace.heave, trace.value))
