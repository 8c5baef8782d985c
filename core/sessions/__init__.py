"""One session as typed values, and which values no vehicle can have.

In: A document, and its profile where the document leaves something out.
Out: A Session, and the names of everything in it that was assumed.
"""
