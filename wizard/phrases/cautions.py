"""Cautions: they stand before the walk-round, with verdicts and plans, and in reports."""

from collections.abc import Iterator

from wizard.phrases.fact import Fact

CAUTIONS = (
    "Steering and suspension work can kill. Support the vehicle on rated stands or on a drive-on "
    "lift; never trust a jack.",
    "Torque steering fasteners to the vehicle maker's figures and fit new locking hardware. Never "
    "heat or weld a steering arm, pitman arm or link.",
    "After any move check the clearance at full bump, at full droop and lock to lock.",
    "Have the alignment set afterwards, and road-test from low speed.",
    "Local inspection codes and licensed practice come first. Evenarc measures geometry and "
    "approves nothing.",
    "A vehicle that fails the walk-round is not driven until it is put right.",
)

CAUTION_LINES = "\n".join(f"• {caution}" for caution in CAUTIONS)
"""The cautions as one text, a line each."""

CAUTION_IN_SHORT = (
    "Steering and suspension work can kill: local codes and licensed practice come first. Evenarc "
    "measures geometry and approves nothing."
)
"""The cautions in one line."""


def caution_facts() -> Iterator[Fact]:
    """The cautions, one fact each."""
    for caution in CAUTIONS:
        yield Fact("", caution, "▪")
