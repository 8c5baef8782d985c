"""Reports of the command line, in words and as JSON.

Knows: The order in which a report says its parts, and how it is printed.
In: Records named on the command line.
Out: Printed text, and the ending of the report.
"""
