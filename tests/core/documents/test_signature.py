from datetime import UTC, datetime, timedelta, timezone

from core.documents.document import with_value
from core.documents.signature import digest, sign, signature_is_valid, signatures_of

AT = datetime(2026, 11, 26, 9, 0, tzinfo=UTC)
DOCUMENT = {"session": {"opened": AT, "units": "in"}, "readings": {"a": ["1/2 in"]}, "limit": 0.85}


def test_a_signature_is_valid_while_the_document_does_not_change():
    signed = sign(DOCUMENT, "signed", "A. Lead", AT, "well done")
    [signature] = signatures_of(signed)
    assert signature["decision"] == "signed"
    assert signature["by"] == "A. Lead"
    assert signature["at"] == AT
    assert signature["note"] == "well done"
    assert signature_is_valid(signed, signature)
    assert not signature_is_valid(with_value(signed, "session.units", "mm"), signature)
    assert "signatures" not in DOCUMENT


def test_a_further_signature_leaves_the_first_one_valid():
    signed = sign(sign(DOCUMENT, "returned", "A. Lead", AT), "signed", "A. Lead", AT)
    assert [item["decision"] for item in signatures_of(signed)] == ["returned", "signed"]
    assert all(signature_is_valid(signed, item) for item in signatures_of(signed))


def test_the_digest_does_not_depend_on_the_order_of_keys():
    assert digest(DOCUMENT) == digest(dict(reversed(DOCUMENT.items())))
    assert digest(DOCUMENT) != digest(with_value(DOCUMENT, "limit", 0.86))


def test_the_digest_is_the_same_on_every_machine():
    """SHA-256 of sorted JSON without spaces; the figure was computed with sha256sum."""
    document = {"b": ["1/2 in", True, 0.5], "a": AT}
    text = '{"a":"2026-11-26T09:00:00+00:00","b":["1/2 in",true,0.5]}'
    assert digest(document) == (
        "d3a6afed2eabaa0474b8c3c3323d86c795def0b6a87f63aa29f55560d91cfbdd"
    ), text


def test_a_time_in_another_zone_is_another_value():
    elsewhere = AT.astimezone(timezone(timedelta(hours=1)))
    assert digest({"at": AT}) != digest({"at": elsewhere})


def test_a_value_that_is_no_table_is_no_signature():
    assert signatures_of({"signatures": "x"}) == []
    assert signatures_of({"signatures": ["x", {"by": "A. Lead"}]}) == [{"by": "A. Lead"}]
