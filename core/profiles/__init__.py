"""Kinds of axle and steering, and what a workshop can change on them.

In: TOML files of profiles and of a shop's parts shelf.
Out: Profiles with usual ranges, defaults, limits, corrections, adjusters and events.
"""
