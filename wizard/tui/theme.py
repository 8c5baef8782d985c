"""Colours: dark, high in contrast, one accent. A colour never carries a meaning alone."""

from textual.theme import Theme

EVENARC = Theme(
    name="evenarc",
    primary="#8ecbff",
    accent="#8ecbff",
    foreground="#f3f1ea",
    background="#0d1013",
    surface="#191e24",
    panel="#232a32",
    success="#93dd8f",
    warning="#ffd05e",
    error="#ff8e7a",
    dark=True,
    variables={
        "border": "#8ecbff",
        "border-blurred": "#3a444f",
        "block-cursor-background": "#8ecbff",
        "block-cursor-foreground": "#0d1013",
        "block-cursor-text-style": "bold",
        "block-cursor-blurred-background": "#3a444f",
        "input-cursor-background": "#f3f1ea",
        "input-cursor-foreground": "#0d1013",
        "input-selection-background": "#3f6a8f",
        "quiet": "#a7b1bb",
    },
)
