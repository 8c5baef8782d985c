"""Contents of pictures and tables, as data.

In: Verdicts, plans, comparisons, documents.
Out: Plain numbers in mm and deg with their words, for any medium to draw.

RulesGrid, ChangesGrid and FactSheet are Rich renderables: the screens and the reports share them,
and both may import this room.
"""
