"""The version of the method that computes a verdict."""

METHOD_VERSION = 2
"""Raised whenever the same record gets other numbers than before.

A record keeps the version that its results were computed by. Results of another version are not
shown; the verdict is computed afresh.
"""
