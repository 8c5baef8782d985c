"""Typed text: quantities and plain text.

In: Text from a keyboard or a file.
Out: Millimetres, radians, seconds and plain numbers; text that is safe to show.
"""
