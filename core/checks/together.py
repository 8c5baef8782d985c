"""Readings against each other: what two or more of them say together."""

from collections.abc import Iterator

from core.checks import closing, placing, steering
from core.checks.known import Known
from core.checks.outcome import Objection

RULES = (*placing.RULES, *closing.RULES, *steering.RULES)


def objections(known: Known, name: str) -> Iterator[Objection]:
    """Everything that speaks against the answer of this name, beside the other answers."""
    for rule in RULES:
        if name in rule.inputs:
            yield from rule.find(known)
