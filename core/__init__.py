"""Facts about readings, links and motion. Core knows no screen, no terminal and no prompt.

Inside the core lengths are millimetres, angles radians and times seconds; axes follow
ISO 8855:2011 (x ahead, y to the left, z up), fixed in the frame.
"""
