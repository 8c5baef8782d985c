"""The work order in words."""

from collections.abc import Iterator

from rich.console import Group, RenderableType
from rich.table import Table
from rich.text import Text

from wizard.phrases.cautions import CAUTION_IN_SHORT
from wizard.phrases.fact import Fact
from wizard.reports.console import fact_sheet, print_report, style_of
from wizard.views.work_order import WorkOrder

BOX, BLANK = "[ ]", "____________"


def print_order(order: WorkOrder) -> None:
    """Print a work order."""
    print_report(order_parts(order))


def order_parts(order: WorkOrder) -> Iterator[RenderableType]:
    """Parts of the work order, from the top."""
    yield Text.assemble(
        (f"Work order: {order.session}", style_of("title")), "\n", order.title, "\n", order.outcome
    )
    parts = [Fact(BOX, f"{name}: {words or f'number {BLANK}'}") for name, words in order.parts]
    if order.cost:
        parts.append(Fact("together", f"{order.cost}."))
    yield fact_sheet("Parts", parts)
    if order.pivots:
        yield table_of(
            "Pivot centres, from now to then",
            ("pivot", "move", "height now", "then", "offset now", "then"),
            [(row.name, row.move, *row.height, *row.offset) for row in order.pivots],
        )
    yield table_of(
        "Bars, centre to centre",
        ("bar", "now", "then", "change"),
        [(row.name, row.now, row.then, row.change) for row in order.bars],
    )
    yield fact_sheet("The work, in order", [Fact(BOX, step) for step in order.steps])
    yield table_of(
        "Torque, to the maker's figure",
        ("fastener", "maker's figure", "initials"),
        [(fastener, BLANK, BLANK) for fastener in order.fasteners],
    )
    yield fact_sheet("What gets worse, and what changes besides", order.effects)
    yield fact_sheet("Check for clearance, and with care", order.cautions)
    yield fact_sheet("Measure again afterwards", order.again)
    yield Text(CAUTION_IN_SHORT, style_of("quiet"))


def table_of(title: str, heads: tuple[str, ...], rows: list[tuple[str, ...]]) -> Group:
    """A table under a title."""
    table = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0))
    for head in heads:
        table.add_column(Text(head, style_of("head")), overflow="fold")
    for row in rows:
        table.add_row(*map(Text, row))
    return Group(Text(title, style_of("head")), table)
