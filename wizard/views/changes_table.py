"""Before beside after as a table: each value with its verdict, the change, its doubt."""

from collections.abc import Callable, Iterable
from math import degrees, isfinite
from typing import NamedTuple

from rich.console import Console, ConsoleOptions, RenderResult
from rich.style import Style
from rich.table import Table
from rich.text import Text

from core.fix.comparison import Comparison
from core.statistics.conformity import Ruling
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard.phrases.verdict_reasons import GRADIENT_TRAVEL
from wizard.phrases.verdict_words import NOT_KNOWN, mark_of, tone_of

NAMES = {
    "parallel": "parallel",
    "peak_steer": "peak steer",
    "peak_toe_change": "toe change",
    "track_bar_slope": "track bar slope",
    "drag_link_slope": "drag link slope",
    "length_ratio": "equal length",
    "gradient": "steer",
}
"""What each change is called, in the order of the table."""

ANGLES = ("parallel", "track_bar_slope", "drag_link_slope")

HEADS = ("", "before", "after", "change", "give or take", "")
CHANGED, SAME = "changed", "no change shown"

Styles = Callable[[str], Style]
"""The style of good, bad, open, held, unknown, head, rule and quiet."""


class ChangeRow(NamedTuple):
    """One value before and after; deg, deg for a length of travel, or a plain number.

    Attributes
    ----------
    name : str
    unit : "deg" or ""
    before, after, give : float
        `give` is the expanded uncertainty U of the change.
    verdicts : (str, str)
        On the value before and after; empty where there is none.
    decimals : int
    changed : bool
    """

    name: str
    unit: str
    before: float
    after: float
    give: float
    verdicts: tuple[str, str]
    decimals: int
    changed: bool


def change_rows(
    before: Verdict, after: Verdict, comparison: Comparison, unit: LengthUnit
) -> tuple[ChangeRow, ...]:
    """Rows of the table; toe only where a layout can change it."""
    mm, each = GRADIENT_TRAVEL[unit]
    changes = {change.name: change for change in comparison.changes}
    if "inverted-y" not in (before.session.layout, after.session.layout):
        del changes["peak_toe_change"]
    rows = []
    for key, name in NAMES.items():
        if key not in changes:
            continue
        change = changes[key]
        scale = {"length_ratio": 1.0, "gradient": degrees(mm)}.get(key, degrees(1.0))
        # An angle is said as it was before, so that a minus means that it went past nothing.
        way = -1.0 if key in ANGLES and change.before < 0 else 1.0
        rulings = _ruling(before, key), _ruling(after, key)
        rows.append(
            ChangeRow(
                f"{name} {each}" if key == "gradient" else name,
                "" if key == "length_ratio" else "deg",
                way * scale * change.before,
                way * scale * change.after,
                2 * scale * change.u,
                tuple(ruling.verdict if ruling else "" for ruling in rulings),  # type: ignore[arg-type]
                1 if key in ANGLES else 2,
                change.changed,
            )
        )
    return tuple(rows)


def _ruling(verdict: Verdict, key: str) -> Ruling | None:
    rules = verdict.rules
    return {
        "parallel": rules.parallel,
        "track_bar_slope": rules.flat_track_bar,
        "drag_link_slope": rules.flat_drag_link,
        "length_ratio": rules.length,
        "peak_steer": verdict.steer.ruling,
        "peak_toe_change": verdict.toe.ruling,
    }.get(key)


class ChangesGrid:
    """The table."""

    def __init__(self, rows: Iterable[ChangeRow], style: Styles) -> None:
        self.rows, self.style = tuple(rows), style

    def __rich_console__(self, console: Console, options: ConsoleOptions) -> RenderResult:
        table = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0))
        for index, head in enumerate(HEADS):
            table.add_column(
                self.text(head, "head"), justify="right" if index in (3, 4) else "left"
            )
        for row in self.rows:
            table.add_row(
                self.text(f"{row.name}, {row.unit}" if row.unit else row.name, "rule"),
                self.value(row.before, row.verdicts[0], row.decimals),
                self.value(row.after, row.verdicts[1], row.decimals),
                self.text(figure(row.after - row.before, row.decimals), "rule"),
                self.text(figure(row.give, row.decimals).lstrip("+"), "quiet"),
                self.text(CHANGED if row.changed else SAME, "rule" if row.changed else "quiet"),
            )
        yield table

    def value(self, value: float, verdict: str, decimals: int) -> Text:
        """A value with the mark of its verdict."""
        mark = f"{mark_of(verdict)} " if verdict else "  "
        shown = figure(value, decimals).lstrip("+")
        return Text.assemble(self.text(mark, tone_of(verdict)), self.text(shown, "rule"))

    def text(self, words: str, name: str) -> Text:
        """Words in a style by its name."""
        return Text(words, style=self.style(name))


def figure(value: float, decimals: int) -> str:
    """A number with its sign; no minus before nothing."""
    if not isfinite(value):
        return NOT_KNOWN
    text = f"{value:+.{decimals}f}"
    return text.replace("-", "").replace("+", "") if float(text) == 0 else text
