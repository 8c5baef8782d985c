"""The results of core as plain numbers, with the field names of the specification.

In: A verdict, a comparison or a search result.
Out: Nested dicts of text, lists and numbers in mm and deg; None for a number that does not exist.
"""
