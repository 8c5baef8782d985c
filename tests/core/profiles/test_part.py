"""What a parts shelf says of a part, and what it costs together."""

from decimal import Decimal

import pytest

from core.documents.entries import EntryError
from core.profiles.correction_tables import changes_at, corrections_at, refuse_unknown_names
from core.profiles.part import NO_PART, Part, Price, cost_of, parse_price
from core.text.quantity import INCH, QuantityError

DROP = {"name": "drop", "pivot": "drag_link.frame", "rises": ["1 in"], "caution": "Torque it."}


def part_of(**entries):
    (correction,) = corrections_at({"corrections": [DROP | entries]})
    return correction.part


@pytest.mark.parametrize(
    ("text", "amount", "currency"),
    [
        ("185 USD", "185", "USD"),
        ("usd 185", "185", "USD"),
        ("€ 42.50", "42.50", "€"),
        ("42,5 €", "42.5", "€"),
        ("$1,250.00", "1250.00", "$"),
        ("1.250 EUR", "1250", "EUR"),
        ("1 250,75 kr", "1250.75", "kr"),
        ("0 USD", "0", "USD"),
    ],
)
def test_a_price_is_read_with_its_currency(text, amount, currency):
    assert parse_price(text) == Price(Decimal(amount), currency)


@pytest.mark.parametrize(
    "text", ["", "185", "USD", "-5 USD", "5 USD 6", "1,2,3 USD", "12.345.6 USD", "5 [red]"]
)
def test_what_is_no_price_is_refused(text):
    with pytest.raises(QuantityError, match="should be a price with its currency"):
        parse_price(text)


def test_a_part_has_what_the_file_says():
    part = part_of(
        part="A-17", price=185.5, currency="USD", hours=1.5, in_stock=3, lift=["2 in", "4 in"]
    )
    assert part == Part(
        "A-17",
        Price(Decimal("185.5"), "USD"),
        1.5,
        3,
        (pytest.approx(2 * INCH), pytest.approx(4 * INCH)),
    )
    assert part_of() == NO_PART


@pytest.mark.parametrize(("hours", "value"), [("1 1/2", 1.5), ("90 min", 1.5), (2, 2.0)])
def test_hours_are_a_number_or_a_time(hours, value):
    assert part_of(hours=hours).hours == pytest.approx(value)


@pytest.mark.parametrize(
    ("entries", "key"),
    [
        ({"price": 185}, "price"),
        ({"price": "185"}, "price"),
        ({"price": -1, "currency": "USD"}, "price"),
        ({"price": float("nan"), "currency": "USD"}, "price"),
        ({"price": True, "currency": "USD"}, "price"),
        ({"price": "1e9 USD"}, "price"),
        ({"price": 1e9, "currency": "USD"}, "price"),
        ({"price": "185 USD", "currency": "EUR"}, "currency"),
        ({"currency": "USD"}, "currency"),
        ({"price": 5, "currency": "12"}, "currency"),
        ({"hours": -1}, "hours"),
        ({"hours": "soon"}, "hours"),
        ({"hours": True}, "hours"),
        ({"in_stock": "yes"}, "in_stock"),
        ({"in_stock": -1}, "in_stock"),
        ({"lift": ["4 in", "2 in"]}, "lift"),
        ({"lift": ["2"]}, "lift"),
        ({"lift": []}, "lift"),
        ({"lift": ["4 ft"]}, "lift"),
        ({"part": ""}, "part"),
        ({"needs": "bracket"}, "needs"),
    ],
)
def test_a_faulty_entry_is_refused_with_table_and_key(entries, key):
    with pytest.raises(EntryError) as refused:
        part_of(**entries)
    assert str(refused.value).startswith(f"[corrections 1] {key}: ")


def test_a_need_has_to_be_known_and_not_excluded():
    changes = changes_at({"corrections": [DROP | {"needs": ["brace"]}]})
    with pytest.raises(EntryError, match=r"^\[corrections 1\] needs: “brace”"):
        refuse_unknown_names(changes, ["drop"])
    both = DROP | {"needs": ["brace"], "not_with": ["brace"]}
    with pytest.raises(EntryError, match=r"^\[corrections 1\] needs: .*excluded"):
        refuse_unknown_names(changes_at({"corrections": [both]}), ["drop", "brace"])


def priced(amount, currency, **facts):
    return Part(price=Price(Decimal(amount), currency), **facts)


def test_prices_of_one_currency_are_added_and_others_stay_apart():
    cost = cost_of([priced("10.10", "USD"), priced("0.20", "USD"), priced("5", "€")])
    assert cost.prices == (Price(Decimal("10.30"), "USD"), Price(Decimal("5"), "€"))
    assert cost.price is None
    assert cost_of([priced("10.10", "USD"), priced("0.20", "USD")]).price.amount == Decimal("10.30")


def test_nothing_is_invented_where_the_file_says_nothing():
    cost = cost_of([priced("10", "USD", hours=1.0, in_stock=True), NO_PART])
    assert not cost.all_priced
    assert (cost.price, cost.hours, cost.in_stock) == (None, None, None)
    assert cost_of([Part(in_stock=0), NO_PART]).in_stock is False


def test_a_part_is_made_for_its_lifts():
    part = Part(lift=(2 * INCH, 4 * INCH))
    assert [part.is_made_for(lift * INCH) for lift in (1, 2, 3, 4, 5)] == [
        *(False, True, True, True, False)
    ]
    assert NO_PART.is_made_for(99.0)
