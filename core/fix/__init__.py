"""Corrections that would cure a vehicle, and the evidence that a fix is shown.

In: A verdict and the corrections that a workshop can make.
Out: Plans with their predictions, the [plan] table of a record, comparisons of two sessions.
"""
