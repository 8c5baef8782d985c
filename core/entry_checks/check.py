"""The check of an answer at entry: it is accepted, queried or refused.

>>> from core.entry_checks import check
>>> check("single_reading.track_bar.frame.height", "24 1/2", document, profile)
Accepted(value=['24 1/2 in'])

Each module knows one kind of answer: `words`, `standing` (walk-round, stance, layout),
`instruments`, `readings` (one quantity by itself), and `placing`, `closing` and `steering`
(readings against each other).
"""

from collections.abc import Mapping, Sequence
from typing import Any

from core.documents.document import value_at
from core.entry_checks import all_rules, instruments, single_reading, walk_round_and_stance, words
from core.entry_checks.known import KnownAnswers
from core.entry_checks.outcome import Accepted, Outcome, Queried, Refused, outcome_of
from core.entry_checks.single_reading import AskedQuantity, TypedQuantity
from core.kinematics.pivots import Layout, Side
from core.profiles.corrections import MOVABLE
from core.profiles.profile import Profile
from core.readings.survey import LINKS
from core.readings.walk_round import JOINTS
from core.text.plain_text import plain
from core.text.quantity import QuantityError

__all__ = ["Accepted", "Outcome", "Queried", "Refused", "check"]

CHOICES: dict[str, tuple[str, ...]] = {
    "layout.steering": tuple(Layout),
    "layout.arm": tuple(Side),
    "layout.pitman": tuple(Side),
    "session.units": ("in", "mm"),
    "session.kind": ("first", "re-measure"),
}
"""Answers that are one of some words, by path."""

REPORTS = ("steers-when-held", "wheel-turns-when-released", "pulls-under-braking", "wanders")

SEVERAL: dict[str, tuple[str, ...]] = {
    "complaint.reported": REPORTS,
    "session.altered": (*MOVABLE, "lengths"),
}
"""Answers that are any of some words, by path."""

NOTES = ("vehicle.description", "complaint.note", "session.note")
BENT = {f"readings.{link}.bent": link for link in LINKS}


def check(
    path: str,
    answer: str | bool | Sequence[str],
    document: Mapping[str, Any],
    profile: Profile | None = None,
) -> Outcome:
    """Check an answer against everything that is known so far.

    Parameters
    ----------
    path : str
        Where the answer goes in the document, "single_reading.track_bar.frame.height".
    answer : str, bool or sequence of str
        As typed or chosen; repeats are separated by ";" or given as a sequence. A bare number
        takes the unit of the session ("in" until the unit was asked).
    document : mapping
        The answers so far. A check that needs another answer is made only where the document
        holds that answer. An earlier answer at the same path is ignored.
    profile : Profile or None
        Gives the usual ranges; without a profile nothing is queried for being unusual. Where the
        answer is the name of a profile, this is that profile, already loaded.

    Returns
    -------
    Accepted, Queried or Refused
    """
    known = KnownAnswers(document, profile)
    if path in walk_round_and_stance.STATEMENTS or path in BENT:
        return _yes_or_no(path, answer, known)
    parts = ("yes" if answer else "no",) if isinstance(answer, bool) else answer
    parts = (parts,) if isinstance(parts, str) else tuple(parts)
    if path in single_reading.QUANTITIES:
        return _reading(path, parts, known)
    if path in instruments.QUANTITIES:
        return _instrument(path, parts, known)
    if path in walk_round_and_stance.LENGTHS:
        return _free_play(path, parts, known)
    if path in SEVERAL:
        return words.any_of(parts, SEVERAL[path])
    text = " ".join(parts)
    if path in CHOICES or path.startswith("walk_round.joints."):
        return _choice(path, text, known)
    if path == "session.profile":
        return _profile(text.strip(), profile)
    return _words(path, text)


def _yes_or_no(path: str, answer: str | bool | Sequence[str], known: KnownAnswers) -> Outcome:
    is_so = words.yes_or_no(answer)
    if is_so is None:
        return Refused("neither yes nor no was answered")
    if path in BENT:
        return outcome_of(is_so, walk_round_and_stance.of_bent(BENT[path], is_so, known))
    return outcome_of(is_so, walk_round_and_stance.of_statement(path, is_so))


def _reading(path: str, parts: Sequence[str], known: KnownAnswers) -> Outcome:
    asked = single_reading.QUANTITIES[path]
    link = asked.name.split(".")[0]
    if asked.kind == "slope" and value_at(known.document, f"readings.{link}.bent") is True:
        return Refused(
            "a bent bar takes no angle finder: only the straight line between its centres counts; "
            "skip this, or say that the bar is straight"
        )
    typed = _typed(asked, parts, known)
    if isinstance(typed, Refused):
        return typed
    value = typed.kept(asked)
    after = known.with_answer(path, value)
    found = [
        *single_reading.objections(typed, asked, after),
        *all_rules.objections(after, asked.name),
    ]
    if asked.name == "ride_height":
        found += walk_round_and_stance.of_ride_height(after)
    return outcome_of(value, found)


def _instrument(path: str, parts: Sequence[str], known: KnownAnswers) -> Outcome:
    asked = instruments.QUANTITIES[path]
    typed = _typed(asked, parts, known)
    if isinstance(typed, Refused):
        return typed
    found = instruments.objections(typed.values[0], asked, known.units)
    return outcome_of(typed.kept(asked), found)


def _free_play(path: str, parts: Sequence[str], known: KnownAnswers) -> Outcome:
    asked = AskedQuantity(path, "length", repeats=False)
    typed = _typed(asked, parts, known)
    if isinstance(typed, Refused):
        return typed
    value = typed.kept(asked)
    found = walk_round_and_stance.of_free_play(
        path, typed.values[0], known.with_answer(path, value)
    )
    return outcome_of(value, found)


def _typed(
    asked: AskedQuantity, parts: Sequence[str], known: KnownAnswers
) -> TypedQuantity | Refused:
    try:
        return single_reading.parse_answer(parts, asked, known.units)
    except QuantityError as error:
        return Refused(str(error))


def _choice(path: str, text: str, known: KnownAnswers) -> Outcome:
    choice = words.one_of(text, CHOICES.get(path, JOINTS))
    if isinstance(choice, Refused):
        return choice
    if path not in CHOICES:
        return outcome_of(choice, walk_round_and_stance.of_joint(choice))
    after = known.with_answer(path, choice)
    found = (
        *walk_round_and_stance.of_layout(path, choice, known),
        *all_rules.objections(after, path),
    )
    return outcome_of(choice, found)


def _profile(name: str, profile: Profile | None) -> Outcome:
    if profile is None or name != profile.name:
        return Refused(f"no profile “{plain(name)}”: choose one of those that are listed")
    return Accepted(name)


def _words(path: str, text: str) -> Outcome:
    if path == "vehicle.tag":
        return words.tag(text)
    if path == "vehicle.odometer":
        return words.odometer(text)
    return words.note(text) if path in NOTES else words.line(text)
