import pytest

from core.profiles.adjuster import Adjuster, thread_pitch
from core.text.quantity import QuantityError


@pytest.mark.parametrize(
    ("text", "pitch"),
    [
        ("16 per in", 25.4 / 16),
        ("16 turns per inch", 25.4 / 16),
        ("16 threads/in", 25.4 / 16),
        ("18 TPI", 25.4 / 18),
        ("1.5 mm", 1.5),
        ("2", 2.0),
        ("1/16 in", 25.4 / 16),
    ],
)
def test_thread_pitch_in_turns_to_the_inch_or_as_a_length(text, pitch):
    assert thread_pitch(text) == pytest.approx(pitch)


@pytest.mark.parametrize("text", ["", "0", "-2 mm", "coarse", "per in", "0 per in", "2 deg", "\0"])
def test_anything_else_is_refused(text):
    with pytest.raises(QuantityError, match="16 per in"):
        thread_pitch(text)


def test_a_sleeve_moves_both_ends_with_one_turn():
    # corrections: change / (2 x pitch) for a sleeve, change / pitch for one threaded end
    assert Adjuster("sleeve", 1.5).turns(6.0) == pytest.approx(2.0)
    assert Adjuster("one-end", 1.5).turns(-6.0) == pytest.approx(-4.0)
