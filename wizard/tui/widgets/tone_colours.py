"""Colours of the tones of a verdict, for widgets that draw their own text."""

TONE_COLOURS = {"good": "$success", "bad": "$error", "open": "$warning", "held": "$warning"}
