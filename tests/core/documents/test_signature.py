from datetime import UTC, datetime, timedelta, timezone

import pytest

from core.documents.digest import digest
from core.documents.document import with_value, without
from core.documents.seal import SealState, sealed
from core.documents.signature import filed_state, sign, signatures_of

AT = datetime(2026, 11, 26, 9, 0, tzinfo=UTC)
DOCUMENT = {"session": {"opened": AT, "units": "in"}, "readings": {"a": ["1/2 in"]}, "limit": 0.85}


RECORD = sealed({**DOCUMENT, "results": {"overall": "bump steer", "method_version": 2}})


def signed_twice(document=RECORD):
    """A record that was sent back, then signed a day later."""
    returned = sign(document, "returned", "A. Lead", AT, "take the heights again")
    return sign(returned, "signed", "A. Lead", AT + timedelta(days=1))


def with_signatures(document, signatures):
    return {**document, "signatures": signatures}


def test_a_decision_stands_while_the_record_does_not_change():
    signed = sign(RECORD, "signed", "A. Lead", AT, "well done")
    [signature] = signatures_of(signed)
    assert signature["decision"] == "signed"
    assert signature["by"] == "A. Lead"
    assert signature["at"] == AT
    assert signature["note"] == "well done"
    state = filed_state(signed)
    assert state.decisions[0].stands
    assert state.last_decision == "signed"
    assert not state.is_changed
    assert "signatures" not in RECORD


def test_a_decision_on_a_record_that_was_changed_does_not_stand():
    changed = with_value(sign(RECORD, "signed", "A. Lead", AT), "session.units", "mm")
    state = filed_state(changed)
    assert state.seal == SealState.BROKEN
    assert state.decisions[0].is_unchanged
    assert not state.decisions[0].fits_record
    assert state.last_decision == ""


def test_a_further_signature_leaves_the_first_one_valid():
    state = filed_state(signed_twice())
    assert [item.signature["decision"] for item in state.decisions] == ["returned", "signed"]
    assert all(item.stands for item in state.decisions)
    assert not state.is_changed


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("decision", "signed"),
        ("by", "B. Lead"),
        ("at", AT - timedelta(days=3)),
        ("note", ""),
        ("digest", "0" * 64),
    ],
)
def test_a_change_of_a_decision_is_noticed(key, value):
    signed = signed_twice()
    first, second = signatures_of(signed)
    state = filed_state(with_signatures(signed, [{**first, key: value}, second]))
    assert [item.is_unchanged for item in state.decisions] == [False, True]
    assert state.is_decision_changed
    assert not state.is_record_changed
    assert state.removed == 0


@pytest.mark.parametrize(("left", "last"), [([0], ""), ([1], ""), ([], "")])
def test_a_removed_decision_is_noticed_and_no_earlier_one_takes_its_place(left, last):
    signed = signed_twice()
    state = filed_state(with_signatures(signed, [signatures_of(signed)[index] for index in left]))
    assert state.removed == 2 - len(left)
    assert state.is_decision_changed
    assert state.last_decision == last
    assert all(item.is_unchanged for item in state.decisions)


def test_decisions_in_another_order_are_noticed():
    signed = signed_twice()
    swapped = with_signatures(signed, signatures_of(signed)[::-1])
    assert filed_state(swapped).is_decision_changed


def test_a_decision_that_was_added_by_hand_does_not_stand():
    forged = {"decision": "signed", "by": "A. Lead", "at": AT, "digest": digest(RECORD)}
    state = filed_state(with_signatures(RECORD, [forged]))
    assert state.is_decision_changed
    assert state.last_decision == ""


@pytest.mark.parametrize(
    "damage",
    [
        lambda signed: without(signed, "seal"),
        lambda signed: without(signed, "seal.decisions"),
        lambda signed: with_value(signed, "seal.decisions", "none"),
        lambda signed: {**signed, "seal": "none"},
    ],
)
def test_no_decision_stands_without_its_link(damage):
    state = filed_state(damage(signed_twice()))
    assert state.is_changed
    assert state.last_decision == ""


def test_a_new_decision_does_not_cover_an_earlier_change():
    signed = signed_twice()
    first, second = signatures_of(signed)
    removed = with_signatures(signed, [second])
    edited = with_signatures(signed, [{**first, "by": "B. Lead"}, second])
    for changed in (removed, edited):
        state = filed_state(sign(changed, "signed", "C. Lead", AT))
        assert state.is_decision_changed
        assert state.decisions[-1].stands


def test_a_new_decision_does_not_seal_a_changed_record():
    changed = with_value(RECORD, "results.overall", "steers true")
    assert filed_state(sign(changed, "signed", "A. Lead", AT)).seal == SealState.BROKEN


def test_decisions_from_before_the_seal_are_taken_as_they_are_and_then_linked():
    old = {"decision": "returned", "by": "A. Lead", "at": AT, "digest": digest(DOCUMENT)}
    state = filed_state(with_signatures(DOCUMENT, [old]))
    assert state.seal == SealState.NONE
    assert state.last_decision == "returned"
    signed = sign(with_signatures(DOCUMENT, [old]), "signed", "A. Lead", AT)
    assert not filed_state(signed).is_changed
    assert filed_state(signed).seal == SealState.NONE
    assert filed_state(with_signatures(signed, signatures_of(signed)[1:])).removed == 1


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
