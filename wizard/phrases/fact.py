"""A fact: a name, a text, and a mark."""

from typing import NamedTuple

LOOK = "!"
"""Mark of a fact that somebody has to look at."""


class Fact(NamedTuple):
    """A name on the left, a text on the right, and a mark before both, or none."""

    name: str
    text: str
    mark: str = ""
