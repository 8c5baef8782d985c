"""Outcomes of plans in rows, each with the value now."""

from collections.abc import Iterator, Sequence
from math import degrees, isfinite
from typing import NamedTuple

from core.fix.answers import marks_of
from core.fix.plan import Plan
from core.statistics.conformity import decide
from core.text.quantity import LengthUnit
from core.verdict.rules import slopes
from core.verdict.verdict import Verdict
from wizard.phrases.costs import hours_words, prices_words, stock_words
from wizard.phrases.rises import is_unchanged, rise_words
from wizard.phrases.verdict_words import chance_words, mark_and_word, mark_of

CANNOT_REACH = "cannot reach"


class Cell(NamedTuple):
    """A figure, or a verdict itself, and the verdict that its mark and tone follow."""

    text: str
    verdict: str = ""

    @property
    def words(self) -> str:
        """The text with the mark of its verdict before it."""
        return f"{mark_of(self.verdict)} {self.text}" if self.verdict else self.text


MARKED = "among these"
"""Row of the marks that tell plans apart."""

NONE = "none"
"""Roll centre of an axle without a track bar, which gives it none."""

SUMMED_UP = ("verdict", "chance of that")
"""Rows that a sentence above the table says already."""


class Row(NamedTuple):
    """One thing that counts: as it is now, and as each plan leaves it."""

    name: str
    now: Cell
    plans: tuple[Cell, ...]


def outcome_rows(verdict: Verdict, plans: Sequence[Plan], unit: LengthUnit) -> tuple[Row, ...]:
    """Rows of the comparison of plans."""
    now = present_cells(verdict)
    after = [plan_cells(verdict, plan, unit) for plan in plans]
    rows = [Row(name, cell, tuple(cells[name] for cells in after)) for name, cell in now.items()]
    # The answer and its marks stand at the top, what it costs at the foot.
    marks = [", ".join(of_plan) for of_plan in marks_of(plans)]
    if any(marks):
        rows.insert(2, Row(MARKED, Cell(""), tuple(map(Cell, marks))))
    return (*rows, *cost_rows(plans))


def cost_rows(plans: Sequence[Plan]) -> Iterator[Row]:
    """Price, hours and stock, where the parts shelf says them for any plan."""
    costs = [plan.cost for plan in plans]
    if any(cost.prices for cost in costs):
        yield Row("price", Cell(""), tuple(Cell(prices_words(cost)) for cost in costs))
    if any(cost.hours is not None for cost in costs):
        yield Row("work", Cell(""), tuple(Cell(hours_words(cost.hours)) for cost in costs))
    if any(cost.in_stock is not None for cost in costs):
        yield Row("stock", Cell(""), tuple(Cell(stock_words(cost.in_stock)) for cost in costs))


def present_cells(verdict: Verdict) -> dict[str, Cell]:
    """Values of the vehicle now."""
    rules, limits = verdict.rules, verdict.session.limits
    cells = {
        "verdict": Cell(verdict.overall, verdict.overall),
        "chance of that": Cell(""),
        "parallel": Cell(
            angle_in_degrees(abs(rules.effective.value), limits.parallel), rules.effective.verdict
        ),
        "peak steer": Cell(
            angle_in_degrees(verdict.steer.ruling.value, limits.steer), verdict.steer.ruling.verdict
        ),
    }
    if verdict.measured.linkage.near_ball is not None:
        toe = verdict.toe.ruling
        cells["toe change"] = Cell(angle_in_degrees(toe.value, limits.toe_change), toe.verdict)
    cells |= link_cells(slopes(verdict.measured.linkage).tolist(), verdict)
    if rules.length is not None:
        cells["near in length"] = Cell(f"{rules.length.value:.2f}")
    return cells | {
        "castor": Cell(castor_words(float(verdict.measured.linkage.castor))),
        "roll steer": Cell(roll_steer_words(verdict.roll_steer.value)),
        "roll centre": Cell(""),
    }


def link_cells(both_slopes: Sequence[float], verdict: Verdict) -> dict[str, Cell]:
    """Slopes of the links that the vehicle has."""
    limit = verdict.session.limits.flat
    names = ("track bar slope", "drag link slope")
    return {
        name: Cell(angle_in_degrees(slope, limit))
        for name, slope in zip(names, both_slopes, strict=True)
        if isfinite(slope)
    }


def castor_words(rad: float) -> str:
    """A castor, to a tenth of a degree."""
    return f"{degrees(rad):.1f} deg"


def roll_steer_words(rate: float) -> str:
    """Steer for each degree of roll."""
    return f"{abs(rate):.2f} {'left' if rate > 0 else 'right'}"


def plan_cells(verdict: Verdict, plan: Plan, unit: LengthUnit) -> dict[str, Cell]:
    """Values after a plan; the deciding rules with their decision."""
    after, limits = plan.after, verdict.session.limits
    chances = after.chances
    has_track_bar = after.linkage.has_track_bar
    roll_centre = roll_centre_words(after.roll_centre_rise, unit) if has_track_bar else NONE
    return {
        "verdict": Cell(plan.answer, after.overall),
        "chance of that": Cell(chance_in_short(after.p_true)),
        "parallel": Cell(
            angle_in_degrees(abs(after.effective), limits.parallel), decide(chances.effective)
        ),
        "peak steer": Cell(angle_in_degrees(after.peak_steer, limits.steer), decide(chances.steer)),
        "toe change": Cell(
            angle_in_degrees(after.peak_toe_change, limits.toe_change), decide(chances.toe)
        ),
        **link_cells(after.slopes, verdict),
        "near in length": Cell(f"{after.length_ratio:.2f}"),
        "castor": Cell(castor_words(after.castor)),
        "roll steer": Cell(roll_steer_words(after.roll_steer)),
        "roll centre": Cell(roll_centre),
    }


def plan_outcome_words(verdict: Verdict, plan: Plan) -> str:
    """Outcome of a plan in one line."""
    after, limits = plan.after, verdict.session.limits
    figures = [
        f"parallel {angle_in_degrees(abs(after.effective), limits.parallel)}",
        f"peak steer {angle_in_degrees(after.peak_steer, limits.steer)}",
    ]
    if verdict.measured.linkage.near_ball is not None:
        figures.append(f"toe change {angle_in_degrees(after.peak_toe_change, limits.toe_change)}")
    return (
        f"{mark_and_word(after.overall)}: {', '.join(figures)}; chance of steering true: "
        f"{chance_words(after.p_true)}"
    )


def chance_in_short(p_true: float) -> str:
    """A probability that fits a column: "> 99 in 100", "98 in 100", "9 in 10"."""
    words = chance_words(p_true).removeprefix("about ")
    return words.replace("more than", ">").replace("less than", "<")


def roll_centre_words(rise: float | None, unit: LengthUnit) -> str:
    """Change of the roll centre."""
    if rise is None:
        return "not known"
    return "stays" if is_unchanged(rise, unit) else rise_words(rise, unit)


def angle_in_degrees(rad: float, limit: float) -> str:
    """An angle, to hundredths where its limit is below one degree."""
    return f"{degrees_figure(rad, limit)} deg" if isfinite(rad) else CANNOT_REACH


def degrees_figure(rad: float, limit: float) -> str:
    """The same without its unit."""
    text = f"{degrees(rad):.{2 if degrees(limit) < 1 else 1}f}"
    return text.lstrip("-") if float(text) == 0 else text
