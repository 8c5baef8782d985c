"""Sizes of paper."""

from typing import Literal, get_args

from core.text.quantity import LengthUnit

Paper = Literal["letter", "a4"]
"""A size of paper, as CSS names it."""

PAPERS: tuple[Paper, ...] = get_args(Paper)


def usual_paper(unit: LengthUnit) -> Paper:
    """Letter where a session is in inches, else A4."""
    return "letter" if unit == "in" else "a4"
