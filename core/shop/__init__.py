"""Many records together.

Knows: Which verdict and which decision of a record stand, and how many records are read quickly.
In: A files folder.
Out: Its sessions as lists show them.
"""
