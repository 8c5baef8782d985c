"""Propagation of the uncertainty of the readings to the results.

In: A session and its adjusted pivots.
Out: A measured linkage with its covariance, the budget, and the next reading to take.
"""
