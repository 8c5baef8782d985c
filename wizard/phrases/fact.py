"""One thing that is said, and a part of a page made of them."""

from typing import NamedTuple

LOOK = "!"
"""The mark of what somebody has to look at."""


class Fact(NamedTuple):
    """A name on the left, what is said on the right, and a mark before it where one is due."""

    name: str
    text: str
    mark: str = ""
