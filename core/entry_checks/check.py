"""Check of an entered answer: it is accepted, queried or refused.

>>> from core.entry_checks.check import check
>>> check("readings.track_bar.frame.height", "24 1/2", document, profile)
Accepted(value=['24 1/2 in'])

`single_reading`, `instruments`, `walk_round_and_stance` and `words` each check one kind of answer
by itself. `placement`, `closure`, `steering` and `guide` compare several readings, through
`all_rules`.
"""

from collections.abc import Mapping, Sequence
from typing import Any

from core.documents.document import value_at
from core.entry_checks import (
    all_rules,
    castor_rows,
    guide,
    instruments,
    single_reading,
    walk_round_and_stance,
    words,
)
from core.entry_checks.choices import ANY_OF, ONE_OF
from core.entry_checks.known import KnownAnswers
from core.entry_checks.outcome import Accepted, Objection, Outcome, Refused, outcome_of
from core.entry_checks.single_reading import AskedQuantity
from core.kinematics.pivots import ARM_DIRECTIONS, PITMAN_DIRECTIONS, Layout
from core.profiles.profile import Profile
from core.readings.survey import LINKS
from core.readings.walk_round import JOINTS
from core.text.plain_text import plain
from core.text.quantity import QuantityError

BENT = {f"readings.{link}.bent": link for link in LINKS}
"""Links by the path of the answer that the link is bent."""

DIRECTIONS = {"layout.arm": ARM_DIRECTIONS, "layout.pitman": PITMAN_DIRECTIONS}
"""Directions that an arm can point to by layout, by the path of the answer."""

TRACK_BAR = "layout.track_bar"
"""Path of the answer that there is a track bar."""

JOINT_TABLE = "walk_round.joints."
"""Beginning of the path of every joint."""

NOTES = ("vehicle.description", "complaint.note", "session.note")
"""Paths of the answers with several lines."""

QUANTITIES = frozenset(
    (*single_reading.QUANTITIES, *instruments.QUANTITIES, *walk_round_and_stance.LENGTHS)
)
"""Paths of the answers that are quantities."""

Answer = str | bool | Sequence[str]


def check(
    path: str, answer: Answer, document: Mapping[str, Any], profile: Profile | None = None
) -> Outcome:
    """Outcome of an answer to a question.

    Parameters
    ----------
    path : str
        Path of the answer in the document, "readings.track_bar.frame.height".
    answer : str, bool or sequence of str
        As typed or chosen; repeats separated by ";" or as a sequence. A bare number takes the
        unit of the session ("in" until the unit is answered).
    document : mapping
        The answers so far. A check that needs another answer is made only where the document has
        it. An earlier answer at the same path is ignored.
    profile : Profile or None
        Says what is usual; without a profile no answer is queried for being unusual. Where the
        answer is the name of a profile, this is the profile of that name, already loaded.

    Returns
    -------
    Accepted, Queried or Refused
    """
    known = KnownAnswers(document, profile)
    if path in walk_round_and_stance.STATEMENTS:
        return _statement(path, answer)
    if path in BENT:
        return _bent_bar(path, answer, known)
    if path == TRACK_BAR:
        has_bar = words.yes_or_no(answer)
        return NEITHER if has_bar is None else Accepted(has_bar)
    parts = _parts(answer)
    if path == castor_rows.PATH:
        return _castor(parts, known)
    if path in QUANTITIES:
        return _quantity(path, parts, known)
    if path in ANY_OF:
        return words.any_of(parts, ANY_OF[path])
    text = " ".join(parts)
    if path in ONE_OF:
        return _choice(path, text, known)
    if path.startswith(JOINT_TABLE):
        return _joint(text)
    if path == "session.profile":
        return _profile_name(text.strip(), profile)
    if path == "vehicle.tag":
        return words.tag(text)
    if path == "vehicle.odometer":
        return words.odometer(text)
    if path in NOTES:
        return words.note(text)
    return words.line(text)


def _parts(answer: Answer) -> tuple[str, ...]:
    """The answer as texts: one text, or one for each repeat or choice."""
    if isinstance(answer, bool):
        return ("yes" if answer else "no",)
    return (answer,) if isinstance(answer, str) else tuple(answer)


NEITHER = Refused("neither yes nor no was answered")


def _statement(path: str, answer: Answer) -> Outcome:
    is_so = words.yes_or_no(answer)
    if is_so is None:
        return NEITHER
    return outcome_of(is_so, walk_round_and_stance.statement_objections(path, is_so))


def _bent_bar(path: str, answer: Answer, known: KnownAnswers) -> Outcome:
    is_bent = words.yes_or_no(answer)
    if is_bent is None:
        return NEITHER
    objections = walk_round_and_stance.bent_bar_objections(BENT[path], is_bent, known)
    return outcome_of(is_bent, objections)


def _quantity(path: str, parts: Sequence[str], known: KnownAnswers) -> Outcome:
    try:
        if path in single_reading.QUANTITIES:
            return _reading(path, parts, known)
        if path in instruments.QUANTITIES:
            return _instrument(path, parts, known)
        return _walk_round_length(path, parts, known)
    except QuantityError as error:
        return Refused(str(error))


def _reading(path: str, parts: Sequence[str], known: KnownAnswers) -> Outcome:
    asked = single_reading.QUANTITIES[path]
    link = asked.name.split(".")[0]
    if asked.kind == "slope" and value_at(known.document, f"readings.{link}.bent") is True:
        return Refused(
            "An angle finder cannot be used on a bent bar: only the straight line between its "
            "centres counts. Skip this reading, or answer that the bar is straight."
        )
    typed = single_reading.parse_answer(parts, asked, known.units)
    value = typed.kept(asked)
    with_answer = known.with_answer(path, value)
    objections = [
        *single_reading.objections(typed, asked, with_answer),
        *all_rules.objections(with_answer, asked.name),
    ]
    if asked.name == "ride_height":
        objections += walk_round_and_stance.ride_height_objections(with_answer)
    return outcome_of(value, objections)


def _castor(parts: Sequence[str], known: KnownAnswers) -> Outcome:
    outcome = castor_rows.castor_rows(parts, known.units)
    if not isinstance(outcome, Accepted):
        return outcome
    with_answer = known.with_answer(castor_rows.PATH, outcome.value)
    return outcome_of(outcome.value, all_rules.objections(with_answer, guide.CASTOR))


def _instrument(path: str, parts: Sequence[str], known: KnownAnswers) -> Outcome:
    asked = instruments.QUANTITIES[path]
    typed = single_reading.parse_answer(parts, asked, known.units)
    objections = instruments.objections(typed.values[0], asked, known.units)
    return outcome_of(typed.kept(asked), objections)


def _walk_round_length(path: str, parts: Sequence[str], known: KnownAnswers) -> Outcome:
    asked = AskedQuantity(path, "length", repeats=False)
    typed = single_reading.parse_answer(parts, asked, known.units)
    value = typed.kept(asked)
    with_answer = known.with_answer(path, value)
    objections = walk_round_and_stance.length_objections(path, typed.values[0], with_answer)
    return outcome_of(value, objections)


def _choice(path: str, text: str, known: KnownAnswers) -> Outcome:
    choice = words.one_of(text, ONE_OF[path])
    if isinstance(choice, Refused):
        return choice
    objections = [*all_rules.objections(known.with_answer(path, choice), path)]
    objections += _impossible_direction(path, choice, known)
    if path == "layout.steering":
        objections += walk_round_and_stance.layout_objections(choice, known)
    return outcome_of(choice, objections)


def _impossible_direction(path: str, choice: str, known: KnownAnswers) -> list[Objection]:
    """Objection to an arm that points where it cannot in the layout."""
    steering = value_at(known.document, "layout.steering")
    directions = DIRECTIONS.get(path)
    if directions is None or steering not in tuple(Layout):
        return []
    possible = directions[Layout(steering)]
    if choice in possible:
        return []
    return [
        Objection(
            f"With this drag link the arm cannot point {choice}: it is {' or '.join(possible)}.",
            impossible=True,
        )
    ]


def _joint(text: str) -> Outcome:
    state = words.one_of(text, JOINTS)
    if isinstance(state, Refused):
        return state
    return outcome_of(state, walk_round_and_stance.joint_objections(state))


def _profile_name(name: str, profile: Profile | None) -> Outcome:
    if profile is None or name != profile.name:
        return Refused(f"no profile “{plain(name)}”: choose one of those that are listed")
    return Accepted(name)
