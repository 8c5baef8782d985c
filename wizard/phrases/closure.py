"""Closure of the readings: groups that do not fit, and repeats that scatter."""

from collections.abc import Iterator

from core.adjustment.least_squares import Adjustment
from core.adjustment.outliers import SuspectGroup
from core.readings.photograph import is_mark
from core.text.quantity import LengthUnit, format_angle, format_length
from wizard.phrases.amounts import count_words, listed, rounded_length_words
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.reading_names import name_of_reading

TOO_MUCH = {
    "height": ("too high", "too low"),
    "offset": ("too far right", "too far left"),
    "station": ("too far ahead", "too far back"),
    "length": ("too long", "too short"),
    "slope": ("too much", "too little"),
}
"""How a reading is wrong that is larger, or smaller, than it should be."""

FAR_MORE = 5.0
"""Multiple of a group's smallest mistake, in length, beyond which a reading is not named."""


def closing_facts(
    adjustment: Adjustment, suspect_groups: tuple[SuspectGroup, ...], unit: LengthUnit
) -> Iterator[Fact]:
    """Closure of the readings, and every suspect group."""
    if adjustment.redundancy == 0:
        yield Fact("cross-checks", "Nothing was taken that checks the readings.", LOOK)
        return
    misfit = f"misfit {adjustment.chi_square:.1f}, limit {adjustment.chi_square_limit:.1f}"
    if adjustment.closes and not suspect_groups:
        yield Fact("cross-checks", f"They agree with each other ({misfit}).", "✓")
        return
    for group in suspect_groups:
        yield Fact("do not close", suspect_group_words(group, unit), LOOK)
    if not suspect_groups:
        yield Fact(
            "do not close",
            f"Together they disagree more than tape and angle finder explain ({misfit}). No "
            "single reading stands out: look at floor, datum line and instruments.",
            LOOK,
        )
    else:
        is_over = adjustment.chi_square > adjustment.chi_square_limit
        yield Fact("all together", f"{'over' if is_over else 'within'} the limit ({misfit})")


def suspect_group_words(group: SuspectGroup, unit: LengthUnit) -> str:
    """Readings that cannot be told apart, named together with what they differ by.

    Readings that would have to be wrong by far more than another one are left out.
    """
    mistakes = dict(zip(group.readings, group.mistakes, strict=True))
    lengths = [
        abs(mistake)
        for name, mistake in mistakes.items()
        if not (name.endswith(".slope") or is_mark(name))
    ]
    wrong = [
        mistake_words(name, mistake, unit)
        for name, mistake in mistakes.items()
        if name.endswith(".slope") or is_mark(name) or abs(mistake) <= FAR_MORE * min(lengths)
    ]
    if len(wrong) == 1:
        return f"One reading does not fit the others: {wrong[0]}."
    by = f" by about {rounded_length_words(min(lengths), unit)}" if lengths else ""
    return (
        f"These {count_words(len(wrong))} differ{by}. It cannot be told which of them is wrong: "
        f"{listed(wrong)}."
    )


def mistake_words(name: str, mistake: float, unit: LengthUnit) -> str:
    """A reading, and how it is wrong if it is the one."""
    if is_mark(name):
        return f"{name_of_reading(name)} (off by about {mistake:.0f} pixels)"
    kind = name.rpartition(".")[2]
    more, less = TOO_MUCH.get(kind, TOO_MUCH["length"])
    amount = format_angle(abs(mistake)) if kind == "slope" else rounded_length_words(mistake, unit)
    return f"{name_of_reading(name)} ({amount} {more if mistake > 0 else less})"


def scatter_facts(adjustment: Adjustment, unit: LengthUnit) -> Iterator[Fact]:
    """Repeats that disagree by more than the instruments claim."""
    for item in adjustment.items:
        if item.scatters:
            scatter = item.reading.scatter
            amount = (
                format_angle(scatter)
                if item.reading.kind == "slope"
                else format_length(scatter, unit, decimals=1)
            )
            yield Fact(
                "repeats scatter",
                f"{name_of_reading(item.reading.name)}: by {amount}, "
                f"more than the instruments claim. "
                "The scatter is what counts for it.",
                LOOK,
            )
