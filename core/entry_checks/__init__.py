"""Checks of an answer when it is entered: it is accepted, queried or refused.

In: The path of the question, the answer as typed, the answers before it, the profile.
Out: Accepted with the value to keep, Queried with its reason, or Refused with what would be right.
"""
