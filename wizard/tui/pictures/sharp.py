"""Sharp pictures, in terminals that can show them: by their graphics protocol, or as sixels."""

from typing import Any

from textual.app import App, SuspendNotSupported
from textual.widget import Widget

SHARP_CELL = (10, 20)
"""Pixels that a sharp picture has in a cell, across and down; it is scaled to the cell's own."""


def sharp_picture_of(app: App[Any]) -> type[Widget] | None:
    """Widget for sharp pictures in the terminal of a program; None where it has half-blocks alone.

    The widget shows the picture in its attribute `image`. The library asks the terminal as it is
    imported. The program is suspended meanwhile: the answers would count as keys.
    """
    if app.is_headless or app.is_web:
        return None
    try:
        with app.suspend():
            from textual_image.renderable import Image as Best
            from textual_image.renderable import SixelImage, TGPImage
            from textual_image.widget import Image
    except SuspendNotSupported:
        return None
    return Image if Best in (SixelImage, TGPImage) else None
