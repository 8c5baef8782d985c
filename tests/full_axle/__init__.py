"""A mechanical model of a solid front axle that knows nothing of core.

In: Vehicles drawn at random, with arms on rubber bushes, leaning kingpins and a real tie rod.
Out: Their true steer over travel, what a tape reads of them, and how often core covers the truth.
"""
