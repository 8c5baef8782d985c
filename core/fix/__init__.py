"""The work that would put a vehicle right, and the comparison that shows a fix.

In: A verdict and the corrections that a workshop can make.
Out: Plans with what they would bring, the [plan] table of a record, comparisons of two sessions.
"""
