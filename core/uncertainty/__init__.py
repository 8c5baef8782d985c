"""Uncertainty of the results, propagated from the uncertainty of the readings.

In: A session and its adjusted pivots.
Out: A measured linkage with its covariance, the budget, and the next reading to take.
"""
