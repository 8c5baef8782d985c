"""Layouts in words."""

from core.kinematics.pivots import Layout

LAYOUT_WORDS = {
    Layout.KNUCKLE: "the knuckle",
    Layout.TIE_ROD: "the tie rod",
    Layout.INVERTED_Y: "the far knuckle, with the tie rod on it",
    Layout.FORE_AFT: "the knuckle on its own side",
}
"""Place of the drag link's axle end, by layout."""
