import pytest

from core.text.plain_text import plain, with_full_stop


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ("FG-3, Müller ⅝", "FG-3, Müller ⅝"),
        ("\x1b[31mred\x07", r"\x1b[31mred\x07"),
        ("two\nlines", r"two\nlines"),
        ("\u202eright to left", r"\u202eright to left"),
        ("\udc9b", r"\udc9b"),
        ("17\u00a05/8", "17 5/8"),
        ("a" * 61, "a" * 60 + "…"),
        ([1, 2], "[1, 2]"),
    ],
)
def test_text_is_made_safe_to_display(text, line):
    assert plain(text) == line


@pytest.mark.parametrize(
    ("text", "sentence"),
    [("a bent bracket", "a bent bracket."), ("a bent bracket.", "a bent bracket."), ("a…", "a…")],
)
def test_a_sentence_has_one_full_stop(text, sentence):
    assert with_full_stop(text) == sentence
