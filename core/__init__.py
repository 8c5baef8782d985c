"""Facts about readings, links and motion. Nothing here knows a screen, a terminal or a prompt.

Inside the core lengths are millimetres, angles radians and times seconds. Axes follow
ISO 8855:2011 (x ahead, y to the left, z up) and are fixed in the frame.
"""
