"""Advice on the next reading, for a verdict that is too close to call."""

from collections.abc import Iterator

from core.text.quantity import INCH
from core.uncertainty.next_reading import Advice
from wizard.phrases.amounts import listed, repeat_count_words
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.reading_names import name_of_reading

FOOT = 12 * INCH
"""mm"""

READ_AS = {"guide.pitch_gain": "guide.castor"}
"""Reading that gives a value which is not read itself."""


def advice_facts(advice: Advice | None) -> Iterator[Fact]:
    """Advice that would settle a verdict that is too close to call."""
    if advice is not None:
        yield Fact("to settle it", advice_words(advice), LOOK)


def _photograph_words(advice: Advice) -> str:
    """One more photograph, or the tape."""
    does = "and it will be settled" if advice.settles else "which takes away most of the doubt"
    view = advice.photograph
    if view is None:
        return f"Take heights, lengths and slopes with the tape, {does}."
    feet = max(abs(view.right), abs(view.up)) / FOOT
    way = ("right" if view.right > 0 else "left") if view.right else ""
    way = f"further {way}" if way else ("higher up" if view.up > 0 else "lower down")
    return (
        f"Take one more photograph, from {feet:.0f} ft {way} than photograph {view.beside}, {does}."
    )


def advice_words(advice: Advice) -> str:
    """The readings to take again, and how often, or what else would help."""
    if advice.photograph is not None or advice.tape:
        return _photograph_words(advice)
    names = [name_of_reading(name) for name in advice.readings]
    more = repeat_count_words(advice.repeats)
    skipped = [name_of_reading(READ_AS.get(name, name)) for name in advice.skipped]
    if skipped and advice.settles:
        few = "Take this reading" if len(skipped) == 1 else "Take these readings"
        return f"{few}, which nobody took, and it will be settled: {listed(skipped)}."
    if skipped:
        return (
            f"No number of repeats will settle it. Of the readings that nobody took, the "
            f"{skipped[0]} takes away most of the doubt."
        )
    if not names:
        return (
            "No number of repeats will settle it: the values lie too near their limits for tape "
            "and angle finder."
        )
    if len(names) == 1:
        return f"Take the {names[0]} {more} and it will be settled."
    return f"Take each {more} and it will be settled: {listed(names)}."
