"""Parts of a correction: the shop's own number, price, hours of work, and stock.

Nothing here is required. What a file does not say stays unknown, and no total guesses it.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from math import isfinite
from typing import Any, NamedTuple

from core.documents.document import value_at
from core.documents.entries import EntryError, text_at
from core.documents.tables import length_with_unit, line_at
from core.text.plain_text import plain
from core.text.quantity import QuantityError, parse_duration, parse_length, parse_number

PART_KEYS = ("part", "price", "currency", "hours", "in_stock", "lift", "needs")
"""Keys of the parts shelf beside those that say how a pivot moves."""

LARGEST_PRICE = Decimal(10_000_000)
MOST_HOURS = 1000.0
MOST_PIECES = 1_000_000
LARGEST_LIFT = parse_length("24 in")  # mm

_SYMBOL = r"[$€£¥₹₩₽₺₴₪฿]"
_CURRENCY = re.compile(rf"{_SYMBOL}|[^\W\d_]{{1,5}}\.?{_SYMBOL}?")
_WHOLE = r"(?P<whole>\d{1,3}(?:(?P<mark>[ ,.'’])\d{3})*|\d+)"
_AMOUNT = re.compile(rf"{_WHOLE}(?:(?P<point>[.,])\d{{1,2}})?")


class Price(NamedTuple):
    """An amount of money.

    Attributes
    ----------
    amount : Decimal
    currency : str
        Letters or a sign, as the file has them: "USD", "€". Different texts count as different
        currencies, and their amounts are never added.
    """

    amount: Decimal
    currency: str


@dataclass(frozen=True)
class Part:
    """Facts on the part of a correction, as far as a file says them.

    Attributes
    ----------
    number : str
        The shop's own part number; "" where the file does not say it.
    price : Price or None
    hours : float or None
        Hours of work.
    in_stock : bool, int or None
        True, False or the number of pieces; None where the file does not say it.
    lift : (float, float) or None
        Smallest and largest lift that the part is made for, mm.
    """

    number: str = ""
    price: Price | None = None
    hours: float | None = None
    in_stock: bool | int | None = None
    lift: tuple[float, float] | None = None

    def is_made_for(self, lift: float) -> bool:
        """True unless the file says that the part is made for other lifts, mm."""
        if self.lift is None:
            return True
        slack = 0.5  # mm; a lift is no closer than that
        return self.lift[0] - slack <= lift <= self.lift[1] + slack


NO_PART = Part()
"""The part of a correction of which the file says nothing."""


@dataclass(frozen=True)
class Cost:
    """Sum of the parts of a plan.

    Attributes
    ----------
    prices : tuple of Price
        One sum for each currency, in the order in which they appear.
    all_priced : bool
        True if every part has a price.
    hours : float or None
        Sum of the hours; None where a part does not say them.
    in_stock : bool or None
        True if every part is in stock, False if one is not; None where it is not known.
    """

    prices: tuple[Price, ...]
    all_priced: bool
    hours: float | None
    in_stock: bool | None

    @property
    def price(self) -> Price | None:
        """The whole price; None where a part has none, or where there are several currencies."""
        return self.prices[0] if self.all_priced and len(self.prices) == 1 else None


def cost_of(parts: Sequence[Part]) -> Cost:
    """Cost of some parts; amounts of different currencies stay apart."""
    sums: dict[str, Decimal] = {}
    for part in parts:
        if part.price is not None:
            amount, currency = part.price
            sums[currency] = sums.get(currency, Decimal(0)) + amount
    hours = [part.hours for part in parts if part.hours is not None]
    stock = [None if part.in_stock is None else bool(part.in_stock) for part in parts]
    known: bool | None = None
    if False in stock:
        known = False
    elif stock and None not in stock:
        known = True
    return Cost(
        tuple(Price(amount, currency) for currency, amount in sums.items()),
        bool(parts) and all(part.price is not None for part in parts),
        sum(hours) if parts and len(hours) == len(parts) else None,
        known,
    )


def part_at(tables: Mapping[str, Any], place: str) -> Part:
    """The part in a table of a file.

    Raises
    ------
    core.documents.entries.EntryError
        An entry is not what it should be.
    """
    number = line_at(tables, f"{place}.part") if _has(tables, f"{place}.part") else ""
    return Part(
        number,
        _price_at(tables, place),
        _hours_at(tables, f"{place}.hours"),
        _stock_at(tables, f"{place}.in_stock"),
        _lift_at(tables, f"{place}.lift"),
    )


def parse_price(text: str) -> Price:
    """Price from a text with its currency: "185 USD", "€ 42.50", "1,250.00 $".

    A comma or a point before the last two digits marks cents; before three digits it marks
    thousands.

    Raises
    ------
    QuantityError
        The text is no price, or has no currency.
    """
    trimmed = text.strip()
    numeral = re.search(r"\d(?:[\d ,.'’]*\d)?", trimmed)
    if numeral is None:
        raise QuantityError(_no_price(text))
    before, after = trimmed[: numeral.start()].strip(), trimmed[numeral.end() :].strip()
    if before and after:
        raise QuantityError(_no_price(text))
    return Price(_amount(numeral[0], text), _currency(before or after, text))


def _amount(numeral: str, text: str) -> Decimal:
    match = _AMOUNT.fullmatch(numeral)
    if match is None or (match["mark"] and match["mark"] == match["point"]):
        raise QuantityError(_no_price(text))
    whole = re.sub(r"\D", "", match["whole"])
    cents = numeral[match.end("whole") + 1 :]
    return Decimal(f"{whole}.{cents}" if cents else whole)


def _currency(word: str, text: str) -> str:
    if not _CURRENCY.fullmatch(word):
        raise QuantityError(_no_price(text))
    return word.upper() if len(word) == 3 and word.isalpha() else word


def _no_price(text: str) -> str:
    return f"“{plain(text)}” should be a price with its currency, such as “185 USD” or “€ 42.50”"


def _price_at(tables: Mapping[str, Any], place: str) -> Price | None:
    path, currency_path = f"{place}.price", f"{place}.currency"
    price = value_at(tables, path)
    currency = text_at(tables, currency_path, "").strip()
    if _has(tables, currency_path) and not _CURRENCY.fullmatch(currency):
        raise EntryError(currency_path, 'should be a currency, such as "USD" or "€"')
    if price is None:
        if currency:
            raise EntryError(currency_path, "stands without a price; it belongs to one")
        return None
    if isinstance(price, int | float) and not isinstance(price, bool):
        return _checked(path, _with_currency(path, price, currency))
    if not isinstance(price, str):
        raise EntryError(path, 'should be a price with its currency, such as "185 USD"')
    text = price
    if currency and re.fullmatch(r"[\d ,.'’]+", price.strip()):
        text = f"{price} {currency}"
    try:
        parsed = parse_price(text)
    except QuantityError as error:
        raise EntryError(path, str(error)) from None
    if currency and parsed.currency != _currency(currency, currency):
        raise EntryError(currency_path, f"is not the currency of the price, {parsed.currency}")
    return _checked(path, parsed)


def _with_currency(path: str, number: float, currency: str) -> Price:
    if not currency:
        raise EntryError(path, 'needs its currency: "185 USD", or currency = "USD" beside it')
    if not isfinite(number) or number < 0:
        raise EntryError(path, 'cannot be negative or endless; it should be such as "185 USD"')
    return Price(Decimal(str(number)), _currency(currency, currency))


def _checked(path: str, price: Price) -> Price:
    if price.amount > LARGEST_PRICE:
        raise EntryError(path, f"should be at most {LARGEST_PRICE:,}")
    return price


def _hours_at(tables: Mapping[str, Any], path: str) -> float | None:
    value = value_at(tables, path)
    if value is None:
        return None
    hours = -1.0
    if isinstance(value, int | float) and not isinstance(value, bool):
        hours = float(value)
    elif isinstance(value, str):
        try:
            hours = _hours(value)
        except QuantityError as error:
            raise EntryError(path, str(error)) from None
    if not 0 <= hours <= MOST_HOURS:
        raise EntryError(path, "should be hours of work, a number such as 1.5")
    return hours


def _hours(text: str) -> float:
    if any(character.isalpha() for character in text):
        return parse_duration(text) / 3600
    return parse_number(text)


def _stock_at(tables: Mapping[str, Any], path: str) -> bool | int | None:
    value = value_at(tables, path)
    if value is None or isinstance(value, bool):
        return value
    if isinstance(value, int) and 0 <= value <= MOST_PIECES:
        return value
    raise EntryError(path, "should be true, false, or the number of pieces")


def _lift_at(tables: Mapping[str, Any], path: str) -> tuple[float, float] | None:
    values = value_at(tables, path)
    if values is None:
        return None
    wanted = 'the smallest and the largest lift, such as ["2 in", "4 in"]'
    if isinstance(values, str):
        values = [values]
    if not isinstance(values, list) or not 1 <= len(values) <= 2:
        raise EntryError(path, f"should be {wanted}")
    lifts = []
    for value in values:
        if not isinstance(value, str):
            raise EntryError(path, f"should be {wanted}")
        try:
            lifts.append(length_with_unit(value))
        except QuantityError as error:
            raise EntryError(path, str(error)) from None
    if lifts[0] > lifts[-1]:
        raise EntryError(path, "is upside down: the smallest lift comes first")
    if max(map(abs, lifts)) > LARGEST_LIFT:
        raise EntryError(path, 'should be lifts of at most 24 in, such as ["2 in", "4 in"]')
    return lifts[0], lifts[-1]


def _has(tables: Mapping[str, Any], path: str) -> bool:
    return value_at(tables, path) is not None
