"""Changes of two programs to one document, put together."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.documents.merge import merged

BEFORE = {"vehicle": {"tag": "FG-3"}, "passed": ["a", "b"], "readings": {"height": ["24 in"]}}

tables = st.recursive(
    st.integers(0, 2),
    lambda values: st.dictionaries(st.sampled_from("abc"), values, min_size=1, max_size=3),
    max_leaves=6,
)
documents = st.dictionaries(st.sampled_from("abc"), tables, max_size=3)


def both(mine, theirs):
    return merged(BEFORE, BEFORE | mine, BEFORE | theirs, ["passed"])


def test_both_programs_keep_what_they_added():
    result = both({"vehicle": {"tag": "FG-3", "odometer": "1 km"}}, {"kept": ["seen"]})
    assert result.document == BEFORE | {
        "vehicle": {"tag": "FG-3", "odometer": "1 km"},
        "kept": ["seen"],
    }
    assert result.conflicts == ()


def test_values_in_one_table_are_put_together():
    added = {"readings": {"height": ["24 in"], "offset": ["18 in"]}}
    result = both(added, {"readings": {"height": ["25 in"]}})
    assert result.document["readings"] == {"height": ["25 in"], "offset": ["18 in"]}


def test_a_value_that_one_program_removed_stays_away():
    assert "vehicle" not in merged(BEFORE, {}, BEFORE).document
    assert "vehicle" not in merged(BEFORE, BEFORE, {}).document


def test_the_same_change_is_no_conflict():
    change = {"readings": {"height": ["25 in"]}}
    assert both(change, change).conflicts == ()


@pytest.mark.parametrize("mine", [{"readings": {"height": ["26 in"]}}, {"readings": {}}])
def test_two_answers_to_one_question_are_a_conflict_and_the_other_answer_stays(mine):
    result = both(mine, {"readings": {"height": ["25 in"]}})
    assert result.conflicts == ("readings.height",)
    assert result.document["readings"]["height"] == ["25 in"]


def test_items_of_a_list_are_added_and_removed_by_both():
    assert both({"passed": ["b", "c"]}, {"passed": ["a", "b", "d"]}).document["passed"] == [
        *("b", "d", "c")
    ]
    assert "passed" not in merged(BEFORE, {}, {"passed": ["a"]}, ["passed"]).document


@given(documents, documents)
def test_the_changes_of_one_program_alone_are_taken_whole(before, after):
    assert merged(before, after, before).document == after
    assert merged(before, before, after).document == after
    assert merged(before, after, after).conflicts == ()


@given(documents, documents, documents)
def test_no_value_of_the_other_program_is_lost(before, mine, theirs):
    result = merged(before, mine, theirs)

    def changed(before, after, path=()):
        for key, value in after.items():
            old = before.get(key) if isinstance(before, dict) else None
            if isinstance(value, dict):
                yield from changed(old, value, (*path, key))
            elif value != old:
                yield (*path, key), value

    for path, value in changed(before, theirs):
        reached = result.document
        for key in path:
            reached = reached[key]
        assert reached == value
