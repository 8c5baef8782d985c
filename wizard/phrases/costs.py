"""Prices, hours and stock of parts in words, where the parts shelf says them."""

from collections.abc import Iterator

from core.fix.plan import Plan
from core.profiles.part import Cost, Part, Price
from core.text.plain_text import plain
from core.text.quantity import LengthUnit
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.rises import format_setting

NOT_KNOWN = "not known"


def price_words(price: Price) -> str:
    """A price with its currency: "185.00 USD"."""
    amount, currency = price
    return f"{amount:,.2f} {plain(currency)}".replace(".00 ", " ")


def prices_words(cost: Cost) -> str:
    """All prices of a plan; those of different currencies side by side, never added."""
    if not cost.prices:
        return NOT_KNOWN
    words = " and ".join(price_words(price) for price in cost.prices)
    return words if cost.all_priced else f"{words} and more"


def hours_words(hours: float | None) -> str:
    """Hours of work."""
    return NOT_KNOWN if hours is None else f"{hours:g} h"


def stock_words(in_stock: bool | int | None) -> str:
    """Stock of a part, or of all parts of a plan."""
    if in_stock is None:
        return NOT_KNOWN
    if in_stock is True or in_stock is False:
        return "in stock" if in_stock else "to be ordered"
    return f"{in_stock} in stock" if in_stock else "to be ordered"


def part_facts(plan: Plan, unit: LengthUnit) -> Iterator[Fact]:
    """Every part of which the shelf says something, and the sums where there are several."""
    told = [change for change in plan.corrections if part_words(change.part, unit)]
    for change in dict.fromkeys(told):
        yield Fact(
            "part",
            f"{plain(change.name)}: {part_words(change.part, unit)}.",
            LOOK if change.part.in_stock is not None and not change.part.in_stock else "",
        )
    if len(plan.corrections) > 1 and told:
        yield Fact("together", f"{cost_words(plan.cost)}.")


def part_words(part: Part, unit: LengthUnit) -> str:
    """Facts of the shelf on a part in one line; "" where it says nothing."""
    words = []
    if part.number:
        words.append(f"number {plain(part.number)}")
    if part.price is not None:
        words.append(price_words(part.price))
    if part.hours is not None:
        words.append(f"{hours_words(part.hours)} of work")
    if part.in_stock is not None:
        words.append(stock_words(part.in_stock))
    if part.lift is not None:
        words.append(f"made for {lift_range_words(part.lift, unit)} of lift")
    return ", ".join(words)


def cost_words(cost: Cost) -> str:
    """Sums of a plan: "price 310 USD, 3.5 h of work, in stock"."""
    words = [f"price {prices_words(cost)}"]
    words.append(f"work {hours_words(cost.hours)}")
    if cost.in_stock is not None:
        words.append("all in stock" if cost.in_stock else "not all in stock")
    return ", ".join(words)


def lift_range_words(lift: tuple[float, float], unit: LengthUnit) -> str:
    """Lifts that a part is made for."""
    smallest, largest = (format_setting(each, unit) for each in lift)
    return smallest if smallest == largest else f"{smallest} to {largest}"
