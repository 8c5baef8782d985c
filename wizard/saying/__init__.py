"""Verdicts and comparisons in words. Nothing here loads a screen, so that reports can say them too.

What is said comes as facts: a name, a text, and a mark where somebody has to look.
"""
