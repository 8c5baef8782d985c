from fractions import Fraction
from math import radians

from hypothesis import given
from hypothesis import strategies as st

from core.text import quantity
from core.text.quantity import QuantityError

INCH = Fraction(254, 10)

lengths = st.floats(-10_000, 10_000)
sixteenths = st.integers(-(2**14), 2**14)


@given(sixteenths)
def test_a_tape_reading_is_written_and_read_without_loss(count):
    written = quantity.format_length(float(count * INCH / 16), "in")
    assert quantity.parse_length(written) == float(count * INCH / 16)


@given(lengths)
def test_a_written_length_is_right_to_half_a_sixteenth(mm):
    written = quantity.format_length(mm, "in")
    assert abs(quantity.parse_length(written) - mm) <= 25.4 / 32 * (1 + 1e-9)
    assert quantity.format_length(quantity.parse_length(written), "in") == written


@given(lengths, st.integers(0, 3))
def test_written_mm_are_right_to_half_the_last_decimal(mm, decimals):
    written = quantity.format_length(mm, "mm", decimals)
    assert abs(quantity.parse_length(written) - mm) <= 0.5 * 10.0**-decimals * (1 + 1e-6)
    assert quantity.format_length(quantity.parse_length(written), "mm", decimals) == written


@given(st.floats(-180, 180))
def test_a_written_angle_is_right_to_half_a_tenth_of_a_degree(degrees):
    written = quantity.format_angle(radians(degrees))
    assert abs(quantity.parse_angle(written) - radians(degrees)) <= radians(0.05) * (1 + 1e-6)


@given(
    sign=st.sampled_from(["", "-", "+", "- "]),
    whole=st.integers(0, 400),
    bottom=st.sampled_from([2, 4, 8, 16, 32, 64, 3, 10]),
    top=st.integers(0, 63),
    gap=st.sampled_from([" ", "-", " - ", "  "]),
    unit=st.sampled_from(["in", " in", '"', " inches", " IN."]),
)
def test_all_forms_of_a_mixed_number_are_the_same_length(sign, whole, bottom, top, gap, unit):
    top %= bottom
    value = (whole + Fraction(top, bottom)) * INCH * (-1 if "-" in sign else 1)
    text = f"{sign}{whole}{gap}{top}/{bottom}{unit}"
    assert quantity.parse_length(text) == float(value)
    assert quantity.parse_length(quantity.with_unit(text, "mm")) == float(value)


@given(feet=st.integers(0, 40), count=st.integers(0, 12 * 16 - 1))
def test_feet_and_inches_add_up(feet, count):
    inches = quantity.format_length(float(count * INCH / 16), "in").removesuffix(" in")
    assert quantity.parse_length(f"{feet}' {inches}\"") == float(
        (12 * feet + Fraction(count, 16)) * INCH
    )


# Digits, signs and marks of a tape give more near misses than random text. Letters are few,
# because each unit that is not in the table is a slow question to pint.
@given(st.one_of(st.text(), st.text("0123456789 /-.'\"°½,;+in")))
def test_any_text_is_a_finite_length_or_refused_in_one_line(text):
    try:
        mm = quantity.parse_length(text)
    except QuantityError as error:
        assert str(error).isprintable()
        assert len(str(error)) < 250
    else:
        assert abs(mm) < 1e64
