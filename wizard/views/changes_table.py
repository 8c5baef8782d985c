"""Before beside after as a table: each value with its verdict, the change, its uncertainty."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import degrees, isfinite
from typing import Literal

from rich.console import Console, ConsoleOptions, RenderResult
from rich.table import Table
from rich.text import Text

from core.fix.comparison import Comparison
from core.kinematics.pivots import Layout
from core.text.quantity import LengthUnit
from core.verdict.verdict import READINGS, Verdict, rulings_of
from wizard.phrases.verdict_reasons import GRADIENT_TRAVEL
from wizard.phrases.verdict_words import NOT_KNOWN, VALUE_NAMES, mark_of, tone_of
from wizard.views.styles import Styled, StyleOf

GRADIENT = "gradient"
"""The change of the steer gradient, which no rule limits."""

NAMES = VALUE_NAMES | {GRADIENT: "steer"}
"""Name of each change, in the order of the table."""

ANGLES = ("effective", "parallel", "track_bar_slope", "drag_link_slope")

HEADS: tuple[tuple[str, Literal["left", "right"]], ...] = (
    ("", "left"),
    ("before", "left"),
    ("after", "left"),
    ("change", "right"),
    ("give or take", "right"),
    ("", "left"),
)
"""Head of each column, and the side its cells are aligned to."""

CHANGED, SAME = "changed", "no change shown"


@dataclass(frozen=True)
class ChangeRow:
    """One value before and after.

    Attributes
    ----------
    name : str
    unit : "deg" or ""
    before, after : float
        deg, deg for a length of travel, or a ratio.
    expanded_uncertainty : float
        U of the change (coverage factor 2), in the same unit.
    verdicts : (str, str)
        Verdict of the value before and after; empty where no rule limits it.
    decimals : int
    changed : bool
        True if the change is larger than its uncertainty explains.
    """

    name: str
    unit: Literal["deg", ""]
    before: float
    after: float
    expanded_uncertainty: float
    verdicts: tuple[str, str]
    decimals: int
    changed: bool


def change_rows(
    before: Verdict, after: Verdict, comparison: Comparison, unit: LengthUnit
) -> tuple[ChangeRow, ...]:
    """Rows of the table; toe only where a layout can change it."""
    length, per_length = GRADIENT_TRAVEL[unit]
    changes = {change.name: change for change in comparison.changes}
    if Layout.INVERTED_Y not in (before.session.layout, after.session.layout):
        del changes["peak_toe_change"]
    # Readings that were proved wrong decide nothing, so no mark stands beside their values.
    rulings = [
        {} if READINGS in verdict.held_back_by else rulings_of(verdict)
        for verdict in (before, after)
    ]
    rows = []
    for key, name in NAMES.items():
        if key not in changes:
            continue
        change = changes[key]
        scale = {"length_ratio": 1.0, GRADIENT: degrees(length)}.get(key, degrees(1.0))
        # An angle counts as positive on its side before, so a minus means the other side.
        sign = -1.0 if key in ANGLES and change.before < 0 else 1.0
        verdict_before, verdict_after = (
            ruling[key].verdict if key in ruling else "" for ruling in rulings
        )
        rows.append(
            ChangeRow(
                f"{name} {per_length}" if key == GRADIENT else name,
                "" if key == "length_ratio" else "deg",
                sign * scale * change.before,
                sign * scale * change.after,
                2 * scale * change.u,
                (verdict_before, verdict_after),
                1 if key in ANGLES else 2,
                change.changed,
            )
        )
    return tuple(rows)


class ChangesGrid(Styled):
    """The table of changes."""

    def __init__(self, rows: Iterable[ChangeRow], style_of: StyleOf) -> None:
        super().__init__(style_of)
        self.rows = tuple(rows)

    def __rich_console__(self, console: Console, options: ConsoleOptions) -> RenderResult:
        table = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0))
        for head, side in HEADS:
            table.add_column(self.text(head, "head"), justify=side)
        for row in self.rows:
            uncertainty = unsigned_figure(row.expanded_uncertainty, row.decimals)
            table.add_row(
                self.text(f"{row.name}, {row.unit}" if row.unit else row.name, "rule"),
                self.value(row.before, row.verdicts[0], row.decimals),
                self.value(row.after, row.verdicts[1], row.decimals),
                self.text(figure(row.after - row.before, row.decimals), "rule"),
                self.text(uncertainty, "quiet"),
                self.text(CHANGED if row.changed else SAME, "rule" if row.changed else "quiet"),
            )
        yield table

    def value(self, value: float, verdict: str, decimals: int) -> Text:
        """A value with the mark of its verdict."""
        mark = f"{mark_of(verdict)} " if verdict else "  "
        number = unsigned_figure(value, decimals)
        return Text.assemble(self.text(mark, tone_of(verdict)), self.text(number, "rule"))


def figure(value: float, decimals: int) -> str:
    """A number with its sign; 0 has no sign."""
    if isfinite(value) and round(value, decimals) > 0:
        return f"{value:+.{decimals}f}"
    return unsigned_figure(value, decimals)


def unsigned_figure(value: float, decimals: int) -> str:
    """A number with a minus where it is negative, and without a plus."""
    if not isfinite(value):
        return NOT_KNOWN
    return f"{value if round(value, decimals) else 0.0:.{decimals}f}"
