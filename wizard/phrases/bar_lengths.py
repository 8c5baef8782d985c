"""Lengths to set for the two bars, and the turns of their adjusters."""

from collections.abc import Iterator, Mapping
from math import isfinite

from core.fix.plan import Plan
from core.profiles.adjuster import Adjuster
from core.readings.survey import LINKS
from core.text.quantity import INCH, LengthUnit, format_length
from wizard.phrases.fact import Fact
from wizard.phrases.reading_names import name_of_pivot
from wizard.phrases.rises import is_unchanged

QUARTER = 0.25
"""Turns are said to the nearest quarter."""


ADJUSTER_NAMES = {"sleeve": "sleeve with two threads", "one-end": "threaded end"}
"""What an adjuster is called."""


FREE_ENDS = {
    "track_bar": "Let one end of the track bar free first; this length centres the axle.",
    "drag_link": "Set it last, with the axle centred and the road wheels straight: this "
    "length sets the steering wheel straight.",
}
"""What each bar's length is for (common practice, no source)."""


def bar_length_facts(
    plan: Plan, adjusters: Mapping[str, Adjuster], unit: LengthUnit
) -> Iterator[Fact]:
    """The length to set for each bar, and the turns of its adjuster that give it."""
    after = plan.after
    for link, length, change in zip(LINKS, after.lengths, after.length_changes, strict=True):
        if not isfinite(length):  # there is no such bar
            continue
        text = f"{format_length(length, unit)} from centre to centre, "
        if is_unchanged(change, unit):
            text += "as it is now"
        else:
            way = "longer" if change > 0 else "shorter"
            text += f"{format_length(abs(change), unit)} {way} than now"
            if link in adjusters:
                text += f": {turns_words(adjusters[link], change, unit)}"
        yield Fact(name_of_pivot(link), f"{text}. {FREE_ENDS[link]}")


def turns_words(adjuster: Adjuster, change: float, unit: LengthUnit) -> str:
    """Turns of an adjuster, to the nearest quarter."""
    quarters = round(abs(adjuster.turns(change)) / QUARTER)
    whole, rest = divmod(quarters, 4)
    parts = str(whole) if whole or not rest else "", ("", "1/4", "1/2", "3/4")[rest]
    turns = "turn" if 0 < quarters <= 4 else "turns"
    return f"about {' '.join(filter(None, parts))} {turns} of its {adjuster_words(adjuster, unit)}"


def adjuster_words(adjuster: Adjuster, unit: LengthUnit) -> str:
    """Kind of an adjuster, with its thread."""
    return f"{ADJUSTER_NAMES[adjuster.kind]}, {thread_words(adjuster.pitch, unit)}"


def thread_words(pitch: float, unit: LengthUnit) -> str:
    """A thread as it is typed."""
    return f"{INCH / pitch:.3g} per in" if unit == "in" else f"{pitch:.3g} mm"
