"""Pages to print: HTML files that need no other file.

Knows: The parts of a page and their order. `templates` holds the layout, for Jinja2.
In: A record and its verdict.
Out: One HTML file on the disk, never in the place of another file.
"""
