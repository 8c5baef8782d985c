"""What would put a vehicle right, and whether a fix is shown.

In: A verdict and the corrections that a workshop can make.
Out: Plans with what they would bring, the [plan] table of a record, comparisons of two sessions.
"""
