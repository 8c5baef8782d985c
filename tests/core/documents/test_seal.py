import pytest

from core.documents.digest import digest
from core.documents.document import with_value, without
from core.documents.seal import SealState, seal_state, sealed

DOCUMENT = {"session": {"units": "in"}, "results": {"overall": "bump steer", "method_version": 2}}


def state_of(document):
    return seal_state(document, digest(document))


def test_a_seal_holds_while_the_record_does_not_change():
    record = sealed(DOCUMENT)
    assert state_of(record) == SealState.HOLDS
    assert state_of({**record, "signatures": [{"by": "A. Lead"}]}) == SealState.HOLDS
    assert state_of(dict(reversed(record.items()))) == SealState.HOLDS


@pytest.mark.parametrize(
    "change",
    [
        lambda record: with_value(record, "results.overall", "steers true"),
        lambda record: with_value(record, "session.units", "mm"),
        lambda record: without(record, "session.units"),
        lambda record: with_value(record, "walk_round.rim_play", "0 in"),
        lambda record: with_value(record, "seal.record", "0" * 64),
        lambda record: with_value(record, "seal.record", 3),
        lambda record: without(record, "seal"),
        lambda record: {**record, "seal": "x"},
        lambda record: with_value(without(record, "results.method_version"), "plan.note", "x"),
    ],
)
def test_a_change_breaks_the_seal(change):
    assert state_of(change(sealed(DOCUMENT))) == SealState.BROKEN


def test_a_record_from_before_the_seal_has_none():
    assert state_of(without(DOCUMENT, "results.method_version")) == SealState.NONE
    assert state_of({}) == SealState.NONE


def test_a_session_that_is_filed_gets_a_seal_of_its_own():
    copied = with_value(sealed(DOCUMENT), "session.units", "mm")
    assert state_of(sealed(copied)) == SealState.HOLDS
