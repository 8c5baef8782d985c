"""The plan of a record in words, with its expected values."""

from collections.abc import Iterator
from math import degrees

from core.documents.document import Document, value_at
from core.documents.entries import EntryError
from core.fix.plan_record import FiledPlan, filed_plan
from core.kinematics.pivots import RIDE_HEIGHT
from core.profiles.conversions import Conversion
from core.text.plain_text import plain
from core.text.quantity import LengthUnit
from wizard.phrases.amounts import listed
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.layouts import LAYOUT_WORDS
from wizard.phrases.reading_names import name_of_pivot, name_of_reading
from wizard.phrases.rises import format_setting, rise_words
from wizard.phrases.verdict_words import VALUE_NAMES, chance_words

DECIMALS = {"effective": 1, "parallel": 1, "track_bar_slope": 1, "drag_link_slope": 1}

EXPECTED = {
    key: (name, "" if key == "length_ratio" else "deg", DECIMALS.get(key, 2))
    for key, name in VALUE_NAMES.items()
}
"""Name, unit and decimals of each value that a plan expects."""


def planned_facts(document: Document, unit: LengthUnit) -> Iterator[Fact]:
    """Every move, every arm of another length, and the figures expected; () without a plan."""
    try:
        planned = filed_plan(document)
    except EntryError as error:
        yield Fact("", f"the plan cannot be read: {plain(error, 200)}", LOOK)
        return
    if planned is None:
        return
    for correction, pivot, rise in planned.moves:
        named = correction and plain(correction) not in _moved(pivot)
        name = f"{plain(correction)}: " if named else ""
        if rise:
            yield Fact(rise_words(rise, unit), f"{name}{_moved(pivot)}")
        elif correction not in planned.conversions:
            yield Fact("stays", f"{name}{_moved(pivot)}")
    for name, conversion in planned.conversions.items():
        yield Fact("converted", f"{plain(name)}.{_layout_words(conversion)}")
    for name, length in planned.arms.items():
        yield Fact(format_setting(length, unit), f"{name_of_reading(name)} of this length")
    figures = [
        f"{name} {_figure(key, degrees(value) if deg else value, decimals)} {deg}".strip()
        for key, (name, deg, decimals) in EXPECTED.items()
        if (value := planned.expected.get(key)) is not None and (key != "peak_toe_change" or value)
    ]
    if figures:
        yield Fact("expected", f"{', '.join(figures)}{_chance(document)}")


def planned_words(planned: FiledPlan, unit: LengthUnit) -> str:
    """Every move and arm of a plan in one line."""
    moves = [
        f"{_moved(pivot)} {rise_words(rise, unit)}"
        for name, pivot, rise in planned.moves
        if name not in planned.conversions
    ]
    moves = [*map(plain, planned.conversions), *moves]
    arms = [
        f"{name_of_reading(name)} {format_setting(length, unit)}"
        for name, length in planned.arms.items()
    ]
    return listed([*moves, *arms])


def _layout_words(conversion: Conversion) -> str:
    """Layout that a conversion leads to; "" where it stays."""
    if conversion.steering is None:
        return ""
    return f" The drag link then goes to {LAYOUT_WORDS[conversion.steering]}."


def _figure(key: str, value: float, decimals: int) -> str:
    """A figure; slopes alone have a sign, as they have beside the plan."""
    text = f"{value if key.endswith('_slope') else abs(value):.{decimals}f}"
    return text.lstrip("-") if float(text) == 0 else text


def _moved(pivot: str) -> str:
    return "the ride height" if pivot == RIDE_HEIGHT else f"the {name_of_pivot(pivot)}"


def _chance(document: Document) -> str:
    p_true = value_at(document, "plan.expected.p_true")
    is_chance = isinstance(p_true, float | int) and 0 <= p_true <= 1
    return f"; chance of steering true: {chance_words(float(p_true))}" if is_chance else ""
