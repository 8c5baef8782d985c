"""Slips of marks that are mended: the document has the marks where they belong."""

import numpy as np
import pytest

from core.adjustment.slips import SlipKind
from tests.core.verdict.test_photographs_decide import judged, record
from tests.photographed import photographed
from wizard.flow.mending import mended
from wizard.phrases.open_questions import mended_facts

ENDS = ("track_bar.frame", "drag_link.frame")


@pytest.fixture
def exchanged():
    _, pictures = photographed(np.random.default_rng(8), 3)
    document = record(pictures)
    marks = document["photographs"][1]["marks"]
    marks[ENDS[0]], marks[ENDS[1]] = marks[ENDS[1]], marks[ENDS[0]]
    return document


def test_exchanged_marks_are_put_back_and_what_was_marked_is_kept(exchanged):
    before = exchanged["photographs"][1]["marks"]
    document = mended(exchanged, judged(exchanged).slips[0])
    after = document["photographs"][1]["marks"]
    assert after[ENDS[0]] == before[ENDS[1]]
    assert after[ENDS[1]] == before[ENDS[0]]
    assert judged(document).adjustment.closes
    (entry,) = document["mended"]
    assert entry["slip"] == "exchanged"
    assert all(len(places) == 1 for places in entry["was"] + entry["now"])
    assert list(mended_facts(document))


def test_a_mark_that_is_left_out_is_taken_out(exchanged):
    slips = judged(exchanged).slips
    aside = [slip for slip in slips if slip.slip == SlipKind.SET_ASIDE]
    for slip in aside[:1]:
        document = mended(exchanged, slip)
        number, _, point = slip.readings[0].removeprefix("photographs.").partition(".")
        assert point not in document["photographs"][int(number) - 1]["marks"]
        assert document["mended"][0]["now"] == [[]]
