"""Rules between readings: one reading checked against others."""

from collections.abc import Iterator

from core.entry_checks import closure, placement, steering
from core.entry_checks.known import KnownAnswers
from core.entry_checks.outcome import Objection

RULES = (*placement.RULES, *closure.RULES, *steering.RULES)


def objections(known: KnownAnswers, name: str) -> Iterator[Objection]:
    """Objections to the answer of this name in view of the other answers."""
    for rule in RULES:
        if name in rule.inputs:
            yield from rule.find(known)
