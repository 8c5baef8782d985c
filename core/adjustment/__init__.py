"""Least-squares adjustment: pivot centres out of readings that check each other.

In: Readings and what the instruments resolve.
Out: Pivot centres with their covariance, residuals, and the readings that cannot be right.
"""
