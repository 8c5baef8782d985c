"""What the command line prints, in words and as JSON.

In: Records named on the command line.
Out: Printed text, and how the command ended.
"""
