"""All rules that compare several answers with each other."""

from collections.abc import Iterator

from core.entry_checks import closure, guide, placement, steering
from core.entry_checks.known import KnownAnswers
from core.entry_checks.outcome import Objection

RULES = (*placement.RULES, *closure.RULES, *steering.RULES, *guide.RULES)


def objections(known: KnownAnswers, name: str) -> Iterator[Objection]:
    """Objections of every rule that has the answer of this name among its inputs."""
    for rule in RULES:
        if name in rule.inputs:
            yield from rule.find_objections(known)
