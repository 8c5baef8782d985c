"""Pages to print: HTML files that need no other file.

In: A record and its verdict.
Out: One HTML file on the disk, never in the place of another file.
"""
