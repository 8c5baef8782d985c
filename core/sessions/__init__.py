"""One session as typed values, without values that no vehicle can have.

In: A document, and its profile where the document leaves a value out.
Out: A Session, with the names of the values that were assumed.
"""
