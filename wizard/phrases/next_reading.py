"""Advice on the next reading, for a verdict that is too close to call."""

from collections.abc import Iterator

from core.uncertainty.next_reading import Advice
from wizard.phrases.amounts import listed, repeat_count_words
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.reading_names import name_of_reading


def advice_facts(advice: Advice | None) -> Iterator[Fact]:
    """Advice that would settle a verdict that is too close to call."""
    if advice is not None:
        yield Fact("to settle it", advice_words(advice), LOOK)


def advice_words(advice: Advice) -> str:
    """The readings to take again, and how often."""
    names = [name_of_reading(name) for name in advice.readings]
    more = repeat_count_words(advice.repeats)
    if not names:
        return (
            "No number of repeats will settle it: the values lie too near their limits for tape "
            "and angle finder."
        )
    if len(names) == 1:
        return f"Take the {names[0]} {more} and it will be settled."
    return f"Take each of these {more} and it will be settled: {listed(names)}."
