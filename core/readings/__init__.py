"""Readings of the vehicle, and the uncertainty of the instruments.

In: A document.
Out: Readings with their standard uncertainty; what the walk-round and the stance failed on.
"""
