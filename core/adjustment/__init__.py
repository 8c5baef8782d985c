"""Least-squares adjustment: pivot centres out of readings that check each other.

In: Readings and the resolution of the instruments.
Out: Pivot centres with their covariance, residuals, and the readings that cannot be right.
"""
