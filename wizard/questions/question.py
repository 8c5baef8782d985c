"""A question of the wizard: the place of its answer in the record, and its words."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Literal

from core.documents.document import Document
from wizard.questions.means import is_photographed

if TYPE_CHECKING:
    from core.profiles.profile import Profile

Kind = Literal[
    "text",  # a line of words
    "length",
    "angle",
    "number",
    "castor",  # pairs of castor and height
    "one of",
    "any of",
    "yes or no",
    "profile",  # one of the profiles that are installed
    "read",  # something to read before going on
    "show",  # a screen of its own: the verdict, the fix
    "file",  # the end: file the session
]


SeenFrom = Literal["", "front", "side", "above"]
"""Side of the vehicle that a picture shows; "" for no picture."""


def always(_document: Document, _asked: object) -> bool:
    """True: the question is always asked, or the choice always offered."""
    return True


def never(_document: Document) -> bool:
    """False: an optional question can always be skipped."""
    return False


@dataclass(frozen=True)
class Choice:
    """An answer that a question offers: its value in the record, and its words."""

    value: str | bool
    words: str
    note: str = ""


YES_OR_NO = (Choice(True, "yes"), Choice(False, "no"))


@dataclass(frozen=True)
class Question:
    """One thing the wizard asks.

    Attributes
    ----------
    path : str
        Path of the answer in the record ("readings.track_bar.frame.height").
    kind : str
    name : str
        Name in the list of answers.
    ask : str
        The question.
    guidance : str
        The action, and the way of the tape.
    reason : str
        Reason for asking.
    choices : tuple of Choice
    optional : bool
        True if it can be skipped; the verdict then names the open question.
    is_needed : callable
        Returns True if an optional question has to be answered after all.
    repeats : bool
        True if it takes several readings, separated by ";".
    assumed : str
        Name of the reading whose default replaces a skipped answer ("steering.arm"), or of the
        instrument ("instruments.tape").
    usual : str
        Attribute of the profile with the choice to begin with ("steering").
    examples : (str, str)
        Examples of an answer, in inches and in millimetres.
    picture : "front", "side" or ""
        Picture beside the question; "" for that of its step.
    is_offered : callable
        Returns True if a choice fits the answers so far.
    is_asked : callable
        Returns True if the question applies to the answers so far.
    of_photographs : Question or None
        The question as it is asked of photographs; None where it is the same.
    skip : str
        Name of the key that skips it.
    """

    path: str
    kind: Kind
    name: str
    ask: str
    guidance: str
    reason: str = ""
    choices: tuple[Choice, ...] = ()
    optional: bool = False
    is_needed: Callable[[Document], bool] = never
    repeats: bool = False
    assumed: str = ""
    usual: str = ""
    examples: tuple[str, str] = ("17 5/8", "448")
    picture: SeenFrom = ""
    is_offered: Callable[[Document, Choice], bool] = always
    is_asked: Callable[[Document, Profile | None], bool] = always
    of_photographs: Question | None = None
    skip: str = "skip"

    @property
    def is_answered_by_a_value(self) -> bool:
        """True if its answer goes into the record; a text that is only read leaves none."""
        return self.kind not in ("read", "show", "file")

    def as_asked(self, document: Document) -> Question:
        """The question by the means of the session, and not optional where it is needed."""
        asked = self.of_photographs if is_photographed(document) else None
        question = asked or self
        is_needed = question.optional and question.is_needed(document)
        return replace(question, optional=False) if is_needed else question

    def choices_for(self, document: Document) -> tuple[Choice, ...]:
        """The choices that fit the answers so far."""
        return tuple(choice for choice in self.choices if self.is_offered(document, choice))

    @property
    def is_chosen(self) -> bool:
        """True if it is answered from a list; the list of profiles is made when it is asked."""
        return bool(self.choices) or self.kind == "profile"


@dataclass(frozen=True)
class Step:
    """A step of the wizard.

    Attributes
    ----------
    name : str
    aim : str
        Aim of the step, in one line.
    questions : tuple of Question
    picture : "front", "side" or ""
        Picture beside its questions.
    shows_closing : bool
        True if the closure of the readings stands under the picture.
    is_sheet : bool
        True if its questions stand on one screen, each with a key of its own.
    """

    name: str
    aim: str
    questions: tuple[Question, ...]
    picture: SeenFrom = ""
    shows_closing: bool = False
    is_sheet: bool = False
