"""What is measured at the vehicle, and how well an instrument reads it.

In: A document.
Out: Readings with their standard uncertainty; what the walk-round and the stance failed on.
"""
