"""Kinds of axle and steering, and the corrections that a workshop can make.

In: TOML files of profiles and of a shop's parts shelf.
Out: Profiles with usual ranges, defaults, limits, corrections, adjusters and events.
"""
