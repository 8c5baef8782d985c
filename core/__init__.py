"""What is true about readings, links and motion. Knows no screen, no terminal, no prompts.

Inside the core lengths are millimetres, angles radians and times seconds; axes follow
ISO 8855:2011 (x ahead, y to the left, z up), fixed in the frame.
"""
