"""Closure of the readings while the survey goes on."""

from textual.content import Content
from textual.widgets import Static

from core.text.quantity import LengthUnit
from core.verdict.closure import Closure
from wizard.phrases.closure import closing_facts
from wizard.phrases.fact import LOOK, Fact
from wizard.views.fact_sheet import needs_a_look

IN_SHORT = Content.assemble(
    (f"{LOOK} do not close: ", "bold $warning"), "some readings cannot be right; F1 says which."
)


class Closing(Static):
    """A few lines under the picture: the readings agree, or some of them cannot be right.

    A low screen has room for one line; the help shows `facts` in full.
    """

    facts: tuple[Fact, ...] = ()

    def show(self, closure: Closure | None, unit: LengthUnit) -> None:
        """Show the closure of the readings so far; nothing while a pivot has no place."""
        self.facts = () if closure is None else closure_facts(closure, unit)
        fails = closure is not None and closure.is_checked and not closure.closes
        is_low = self.screen.has_class("-low")
        lines = Content("\n").join(fact_content(fact) for fact in self.facts)
        self.update(IN_SHORT if is_low and fails else lines)


def closure_facts(closure: Closure, unit: LengthUnit) -> tuple[Fact, ...]:
    """Facts on the closure of the readings."""
    if not closure.is_checked:
        return (Fact("", "Nothing checks the readings yet; the cross-checks will."),)
    return tuple(closing_facts(closure.adjustment, closure.suspect_groups, unit))


def fact_content(fact: Fact) -> Content:
    """A fact in one line: mark and name, then its text."""
    if not fact.name:
        return Content.styled(fact.text, "$quiet")
    head = f"{fact.mark} {fact.name}: ".lstrip()
    return Content.assemble((head, "bold $warning" if needs_a_look(fact) else "bold"), fact.text)
