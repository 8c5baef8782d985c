"""The headline of a verdict: the verdict, what decided it, and what nobody has looked at."""

from core.verdict.direct_check import DecidedBy
from core.verdict.verdict import Verdict, decided_by
from wizard.phrases.amounts import listed
from wizard.phrases.verdict_words import mark_and_word

WALK_ROUND = "walk-round"

PARTS = {
    "walk_round.joints.": "joints",
    "walk_round.rim_play": "play",
    "walk_round.linkage_play": "play",
    "walk_round.bolts_torqued": "bolts",
    "walk_round.tyres_alike": "tyres",
}
"""Name of each part of the walk-round, by the beginning of its path."""


MEASURED = ", as the road wheels were measured"
"""Words beside a verdict that the direct check decides alone."""


def headline_words(verdict: Verdict) -> str:
    """The verdict with its mark, and words beside it: "✓ steers true, joints not checked"."""
    return mark_and_word(verdict.overall) + words_beside(verdict)


def words_beside(verdict: Verdict) -> str:
    """Words beside a verdict: the measured steer where it decides, and what was not checked."""
    measured = MEASURED if decided_by(verdict) == DecidedBy.DIRECT else ""
    return measured + not_checked_words(verdict)


def not_checked_words(verdict: Verdict) -> str:
    """Words for what was not checked, ", joints and stance not checked"; empty where all was."""
    paths = verdict.session.not_checked
    parts = dict.fromkeys(
        part for start, part in PARTS.items() if any(path.startswith(start) for path in paths)
    )
    names = list(parts) if set(parts) < set(PARTS.values()) else [WALK_ROUND]
    if any(path.startswith("stance.") for path in paths):
        names.append("stance")
    return f", {listed(names)} not checked" if names else ""
