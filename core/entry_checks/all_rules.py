"""Readings against each other: what two or more of them say together."""

from collections.abc import Iterator

from core.entry_checks import closure, placement, steering
from core.entry_checks.known import KnownAnswers
from core.entry_checks.outcome import Objection

RULES = (*placement.RULES, *closure.RULES, *steering.RULES)


def objections(known: KnownAnswers, name: str) -> Iterator[Objection]:
    """Everything that speaks against the answer of this name, beside the other answers."""
    for rule in RULES:
        if name in rule.inputs:
            yield from rule.find(known)
