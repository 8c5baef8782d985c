"""How the uncertainty of the readings reaches the results.

In: A session and its adjusted pivots.
Out: A measured linkage with its covariance, the budget, and the next reading to take.
"""
