"""Places of words: inside the drawing, and clear of each other."""

from hypothesis import given
from hypothesis import strategies as st

from wizard.tui.pictures.labels import Label, Placed, place

SIZE = (38, 14)
cells = st.tuples(st.integers(0, SIZE[0] - 1), st.integers(0, SIZE[1] - 1))


@given(st.lists(cells, min_size=1, max_size=9, unique=True))
def test_no_two_labels_meet_and_none_is_cut(spots):
    labels = [Label((f"label number {n}", f"{n}"), (spot,), "") for n, spot in enumerate(spots)]
    placed = place(labels, SIZE, marks=spots)
    for number, spot in enumerate(placed):
        assert spot.column >= 0
        assert spot.cells.stop <= SIZE[0]
        assert 0 <= spot.row < SIZE[1]
        assert not any(spot.touches(other) for other in placed[number + 1 :])
        assert not any(row == spot.row and column in spot.cells for column, row in spots)


def test_the_long_text_is_taken_where_it_fits():
    (wide,) = place([Label(("track bar frame end", "frame end"), ((5, 5),), "")], (40, 10))
    (narrow,) = place([Label(("track bar frame end", "frame end"), ((5, 5),), "")], (14, 10))
    assert wide.text == "track bar frame end"
    assert narrow.text == "frame end"


def test_a_label_avoids_lines():
    line = {(column, 5) for column in range(40)}
    (label,) = place([Label(("drag link",), ((20, 5),), "")], (40, 10), drawn=line)
    assert label.row != 5


def test_a_label_is_nearer_to_its_own_point_than_to_another():
    labels = [Label(("frame end",), ((20, 5),), ""), Label(("axle end",), ((20, 6),), "")]
    upper, lower = place(labels, (40, 12), marks=[(20, 5), (20, 6)])
    assert upper.row <= 5
    assert lower.row >= 6


def test_a_label_without_a_place_is_left_out_unless_it_is_needed():
    taken = [Placed(0, row, "x" * 20, "") for row in range(8)]
    assert place([Label(("words",), ((5, 2),), "")], (20, 9), taken=taken) == ()
    (label,) = place([Label(("words",), ((5, 2),), "", needed=True)], (20, 9), taken=taken)
    assert label.row == 8
