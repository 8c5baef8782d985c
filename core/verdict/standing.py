"""The verdict as it stands while readings are still to come, and what the rest is worth.

The verdict itself is that of `core.verdict.verdict`, with the same draws, so that nothing is called
decided here that would not be decided there.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from math import sqrt
from typing import Any

import numpy as np

from core.adjustment.least_squares import Adjustment, MissingReading, NoSolution
from core.documents.entries import EntryError
from core.kinematics.ball_path import effective_angle
from core.kinematics.vectors import Array
from core.profiles.profile import Profile
from core.readings.survey import LINKS, SURVEY
from core.sessions.session import Session, session_from
from core.statistics.conformity import Conformity, Ruling, magnitude_ruling
from core.uncertainty.measured_linkage import adjusted, measured_linkage
from core.uncertainty.worth import hidden_mistake, is_checked, readings_left, variances_taken
from core.verdict.rules import rules_of
from core.verdict.verdict import DRAWS, Overall, RuleKey, deciding_peaks, overall

DECIDING: tuple[RuleKey, ...] = ("effective", "peak_steer", "peak_toe_change")
"""Rules that decide, in the order of the arrays here."""

LEAST_SHARE = 0.02
"""Share of a rule's variance below which a reading is not worth its time (common practice)."""

MOST = 0.95
"""Largest share of a variance that all readings that are left could take away together."""

FIRM = 0.98
"""Probability from which on a decision needs no confirmation.

Simulated beside the long way (`tests.test_short_way_against_long`): of 200 vehicles 1 was decided
that the long way left too close to call, instead of 5 without any confirmation.
"""

LABOUR = {"guide.pitch_gain": 6.0}
"""Labour of a reading in single readings: castor at two heights needs the axle on a jack (common
practice, no source). Readings that are not named count as one."""

LEAST_CHECK = 0.01
"""Redundancy number from which on a reading counts as checked by others."""


@dataclass(frozen=True, eq=False)
class Worth:
    """A reading that was not taken, with the share of the doubt that it would take away.

    Attributes
    ----------
    reading : str
        "steering.arm"
    shares : array (3,)
        Share of the variance of each deciding rule, 0 to 1.
    checks : str
        Link that no reading checks yet and that this reading would check best; else "".
    """

    reading: str
    shares: Array
    checks: str = ""

    def of(self, rule: RuleKey) -> float:
        """Share of the variance of a deciding rule that the reading would take away."""
        return float(self.shares[DECIDING.index(rule)])


@dataclass(frozen=True, eq=False)
class Standing:
    """The verdict on the readings so far.

    Attributes
    ----------
    geometry : Overall
        The verdict by the readings so far.
    rulings : tuple of Ruling
        Of the deciding rules.
    closes : bool
        True if the readings agree.
    unchecked : tuple of str
        Links that no reading checks.
    worths : tuple of Worth
        Readings that were not taken, the one to take next first.
    can_change : bool
        True if all readings that are left could together change the decision on a rule that is
        not firm.
    held_back_by : tuple of str
        Failures of the walk-round and the stance, which no reading puts right.
    """

    geometry: Overall
    rulings: tuple[Ruling, ...]
    closes: bool
    unchecked: tuple[str, ...]
    worths: tuple[Worth, ...]
    can_change: bool
    held_back_by: tuple[str, ...] = ()

    @property
    def chance(self) -> float:
        """Probability that the vehicle steers true, by the rule that it meets least."""
        return min(ruling.p_within for ruling in self.rulings)

    @property
    def open_rules(self) -> tuple[RuleKey, ...]:
        """Deciding rules that are too close to call."""
        return tuple(
            rule
            for rule, ruling in zip(DECIDING, self.rulings, strict=True)
            if ruling.verdict == Conformity.TOO_CLOSE
        )

    @property
    def is_decided(self) -> bool:
        """True if every deciding rule is decided, and nothing that is left would change that.

        The readings then agree, and each link is checked.
        """
        is_sound = self.closes and not self.unchecked
        return is_sound and not self.open_rules and not self.can_change

    def is_worth_taking(self, worth: Worth) -> bool:
        """True if a reading would check a link, or take doubt out of a rule that can change."""
        if not self.can_change:
            return bool(worth.checks)
        rules = self.open_rules or DECIDING
        return bool(worth.checks) or any(worth.of(rule) >= LEAST_SHARE for rule in rules)

    def worth_of(self, reading: str) -> Worth | None:
        """Worth of a reading; None where it was taken."""
        return next((worth for worth in self.worths if worth.reading == reading), None)

    @property
    def left(self) -> tuple[Worth, ...]:
        """Readings that are worth taking, the one to take next first."""
        return tuple(filter(self.is_worth_taking, self.worths))


def standing_of(
    document: Mapping[str, Any], profile_of: Callable[[str], Profile], draws: int = DRAWS
) -> Standing | None:
    """The verdict as it stands; None until every pivot has a place.

    Parameters
    ----------
    document : mapping
    profile_of : callable
        Loads a profile by its name; called only where the document leaves something out.
    draws : int
        Number of draws, as in `core.verdict.verdict.evaluate`.

    Raises
    ------
    core.profiles.profile.ProfileError
        The profile is needed and cannot be loaded.
    """
    try:
        session = session_from(document, profile_of)
        return standing_of_session(session, draws)
    except (EntryError, MissingReading, NoSolution):
        return None


def standing_of_session(session: Session, draws: int = DRAWS) -> Standing:
    """The verdict on a session as it stands. Raises as `core.verdict.verdict.evaluate` does."""
    adjustment = adjusted(session)
    measured = measured_linkage(session, adjustment)
    steer, toe, _ = deciding_peaks(session, measured, draws)
    rulings = (rules_of(measured, session.limits).effective, steer.ruling, toe.ruling)
    gradients = np.stack(
        [measured.gradient(effective_angle), steer.gradient, toe.gradient], axis=-1
    )
    total = measured.variances(gradients).sum(axis=0)
    names = readings_left(adjustment, measured)
    taken = {
        name: variances_taken(adjustment, measured, session.instruments, gradients, name)
        for name in names
    }
    links = tuple(link for link in LINKS if f"{link}.frame" in adjustment.pivots)
    unchecked = tuple(link for link in links if not is_checked(adjustment, link, LEAST_CHECK))
    limits = np.array([ruling.limit for ruling in rulings])
    u_model = np.array([0.0, steer.u_model, toe.u_model])
    linear = tuple(
        magnitude_ruling(ruling.value, sqrt(variance), ruling.limit)
        for ruling, variance in zip(rulings, (total + u_model**2).tolist(), strict=True)
    )
    checks = {
        check: link
        for link in unchecked
        if (check := _best_check(adjustment, session, gradients / limits, names, link))
    }
    worths = [
        Worth(
            name,
            np.divide(variance, total, out=np.zeros(len(total)), where=total > 0),
            checks.get(name, ""),
        )
        for name, variance in taken.items()
    ]
    together = np.minimum(np.sum(list(taken.values()), axis=0), MOST * total)
    decisions = [ruling.verdict for ruling in rulings]
    open_rules = [i for i, verdict in enumerate(decisions) if verdict == Conformity.TOO_CLOSE]
    counting = open_rules or range(len(rulings))

    def first(worth: Worth) -> tuple[bool, float]:
        share = float(worth.shares[list(counting)].sum())
        return not worth.checks, -share / LABOUR.get(worth.reading, 1.0)

    return Standing(
        geometry=overall(*decisions),
        rulings=rulings,
        closes=adjustment.closes,
        unchecked=unchecked,
        worths=tuple(sorted(worths, key=first)),
        can_change=_can_change(
            [each for each, ruling in zip(linear, rulings, strict=True) if not _is_firm(ruling)],
            together[[not _is_firm(ruling) for ruling in rulings]],
        ),
        held_back_by=session.held_back_by,
    )


def _best_check(
    adjustment: Adjustment, session: Session, gradients: Array, names: tuple[str, ...], link: str
) -> str:
    """Reading that leaves the smallest mistake hidden on a link; "" where none checks it."""
    hidden = {
        name: hidden_mistake(adjustment, session.instruments, gradients, name, link)
        for name in names
        if SURVEY.get(name) in ("length", "slope", "brace")
    }
    return min(hidden, key=lambda name: hidden[name], default="")


def _is_firm(ruling: Ruling) -> bool:
    """True if a decision is so sure that no reading is asked for to confirm it."""
    return ruling.p_within >= FIRM or ruling.p_within <= 1 - FIRM


def _can_change(rulings: Sequence[Ruling], variance: Array) -> bool:
    """True if readings could change the decision on a rule, within two of their own shifts.

    They shift a value by as much as they take out of its variance.

    Parameters
    ----------
    rulings : tuple of Ruling
        By linear propagation.
    variance : array (R,)
        Part of the variance of each value that the readings take away.
    """
    for ruling, part in zip(rulings, variance.tolist(), strict=True):
        if part < LEAST_SHARE * ruling.u**2:
            continue
        u = sqrt(max(ruling.u**2 - part, 0.0))
        for shift in (-2 * sqrt(part), 0.0, 2 * sqrt(part)):
            changed = magnitude_ruling(ruling.value + shift, u, ruling.limit).verdict
            if changed != ruling.verdict:
                return True
    return False
