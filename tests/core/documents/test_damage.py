"""Damaged entries are told from those that another program has added."""

import pytest

from core.documents.damage import is_close, refuse_damaged, tree_of, unknown_entries
from core.documents.entries import EntryError

KNOWN = tree_of(["session.id", "stance.level", "kept[].reading", "results.*", "title"])


@pytest.mark.parametrize(
    ("key", "is_damaged"),
    [
        ("stance", True),
        ("Stance", True),
        ("stanxe", True),
        ("stnace", True),
        ("stances2", True),
        ("stan", True),
        ("sta", False),
        ("STAnce", False),
        ("distance", True),
        ("weather", False),
    ],
)
def test_two_letters_make_a_name_close(key, is_damaged):
    assert is_close(key, "stance") == is_damaged


def test_a_short_name_is_not_close_to_every_short_name():
    assert not is_close("vn", "id")
    assert is_close("ids", "id")


@pytest.mark.parametrize(
    ("document", "message"),
    [
        ({"session": "x"}, "session: is a value; it should be a table, under [session]"),
        ({"sessoin": {}}, "sessoin: is not known, and is probably damaged: it should be session"),
        ({"stance": {"Level": 1}}, "[stance] Level: is not known, and is probably damaged"),
        ({"title": {}}, "title: is a table; it should be a value"),
        ({"kept": {}}, "kept: should be tables of their own, each under [[kept]]"),
        ({"kept": ["x"]}, "kept: should be tables of their own"),
        ({"kept": [{"reading": "x"}, {"raeding": "x"}]}, "[kept 2] raeding: is not known"),
        ({"sess\x1bion": {}}, "sess\\x1bion: is not known"),
    ],
)
def test_damage_is_refused_with_its_place(document, message):
    with pytest.raises(EntryError) as caught:
        refuse_damaged(document, KNOWN)
    assert message in str(caught.value)


def test_other_entries_are_named_and_whole_ones_are_not():
    document = {
        "title": "x",
        "results": {"anything": {"deep": 1}},
        "kept": [{"reading": "a", "weather": "rain"}],
        "stance": {"level": True},
        "seal.of": 1,
    }
    assert list(unknown_entries(document, KNOWN)) == ["kept 1.weather", '"seal.of"']
