"""A section of the help: text, keys, words with their meanings, or facts."""

from dataclasses import dataclass

from wizard.phrases.cautions import CAUTION_LINES
from wizard.phrases.fact import Fact

Keys = tuple[tuple[str, str], ...]
"""Keys, each with what it does."""

Glossary = tuple[tuple[str, str], ...]
"""Words, each with its meaning."""


@dataclass(frozen=True)
class HelpSection:
    """One section under its title; the parts that it has stand in this order.

    Attributes
    ----------
    title : str
    text, why : str
    keys : Keys
    glossary : Glossary
    facts : tuple of Fact
    """

    title: str
    text: str = ""
    why: str = ""
    keys: Keys = ()
    glossary: Glossary = ()
    facts: tuple[Fact, ...] = ()


CAUTIONS_SECTION = HelpSection("Cautions", CAUTION_LINES)
