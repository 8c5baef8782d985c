"""What a picture or a table shows, as data.

In: Verdicts, plans, comparisons, documents.
Out: Plain numbers in mm and deg with their words, for any medium to draw.
"""
