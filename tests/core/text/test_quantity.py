import subprocess
import sys
from math import inf, nan, pi

import pytest

from core.text import quantity
from core.text.quantity import QuantityError

INCH = 25.4  # mm, exact: NIST SP 811, appendix B.6


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("17 5/8", 17.625),
        ("17-5/8", 17.625),
        ("17 - 5/8", 17.625),
        ('17 5/8"', 17.625),
        ("17 5 / 8 IN", 17.625),
        ("  17   5/8  in. ", 17.625),
        ("17.625", 17.625),
        ("17.", 17),
        (".5", 0.5),
        ("5/8", 0.625),
        ("+5/8 in", 0.625),
        ("-1/8 in", -0.125),
        ("-17 5/8", -17.625),
        ("- 17-5/8", -17.625),
        ("1' 5 5/8\"", 17.625),
        ("1'-5 5/8\"", 17.625),
        ("1'5 5/8", 17.625),
        ("-1' 5 5/8\"", -17.625),
        ("1 ft 5 5/8 in", 17.625),
        ("1FT 5.625IN", 17.625),
        ("1 foot 5 inches", 17),
        ("2'", 24),
        ("1.5 ft", 18),
        ("0/16", 0),
    ],
)
def test_inches_are_read_as_a_tape_shows_them(text, inches):
    assert quantity.parse_length(text) == pytest.approx(inches * INCH, rel=1e-15)


@pytest.mark.parametrize(
    ("text", "mm"), [("448 mm", 448), ("44.8 cm", 448), ("0.448M", 448), ("448.5MM", 448.5)]
)
def test_metric_lengths_are_read(text, mm):
    assert quantity.parse_length(text) == mm


@pytest.mark.parametrize(
    ("text", "plain_text"),
    [
        ("−1/8 in", "-1/8 in"),  # a true minus sign
        ("17–5/8", "17-5/8"),  # a dash
        ("1′ 5 5/8″", "1' 5 5/8\""),  # primes
        ("1’ 5 5/8”", "1' 5 5/8\""),  # typographic quotes
        ("1' 5 5/8''", "1' 5 5/8\""),
        ("17⅝", "17 5/8"),
        ("17 ⅝ in", "17 5/8 in"),
        ("½", "1/2"),
        ("¼ in", "1/4 in"),
        ("-⅛ in", "-1/8 in"),
        ("17 5⁄8", "17 5/8"),  # a fraction slash
        ("17\u00a05/8\u202fin", "17 5/8 in"),
    ],
)
def test_typographic_signs_mean_the_same_as_plain_signs(text, plain_text):
    assert quantity.parse_length(text) == quantity.parse_length(plain_text)


def test_a_bare_number_takes_the_unit():
    assert quantity.parse_length("448", "mm") == 448
    assert quantity.parse_length("17 1/2", "mm") == 17.5
    assert quantity.parse_length("17 5/8 in", "mm") == quantity.parse_length("17 5/8", "in")


@pytest.mark.parametrize(
    ("text", "degrees"),
    [
        ("8 1/2 deg", 8.5),
        ("8 1/2°", 8.5),
        ("8½ °", 8.5),
        ("8.5", 8.5),
        ("-0.5 Degrees", -0.5),
        ("0.1 rad", 18 / pi),
    ],
)
def test_angles_are_read(text, degrees):
    assert quantity.parse_angle(text) == pytest.approx(degrees * pi / 180, rel=1e-15)


def test_durations_speeds_and_accelerations_are_read():
    assert quantity.parse_duration("0.4 s") == quantity.parse_duration("0.4") == 0.4
    assert quantity.parse_speed("36 km/h") == quantity.parse_speed("10 m / s") == 10_000
    assert (
        quantity.parse_speed("40 mph") == 17_881.6
    )  # 0.44704 m/s a mile an hour: NIST SP 811, B.8
    assert quantity.parse_acceleration("1 g") == 9806.65  # NIST SP 811, B.8
    assert quantity.parse_acceleration("2 m/s²") == quantity.parse_acceleration("2 m/s^2") == 2000


@pytest.mark.parametrize(
    ("text", "deg_per_mm"),
    [
        ("-0.7 deg/in", -0.7 / INCH),
        ("1/2 deg/in", 0.5 / INCH),
        ("1.2°/in", 1.2 / INCH),
        ("1.2 ° / in", 1.2 / INCH),
        ("0.05 deg/mm", 0.05),
        ("2 deg/ft", 2 / (12 * INCH)),
        ("0.001 rad/mm", 0.18 / pi),
    ],
)
def test_angles_for_a_travel_are_read(text, deg_per_mm):
    assert quantity.parse_angle_per_length(text) == pytest.approx(deg_per_mm * pi / 180)


@pytest.mark.parametrize("text", ["1 deg", "1 in", "5 percent/in", "1 deg/kg", "1 /in", ""])
def test_anything_else_is_no_angle_for_a_travel(text):
    with pytest.raises(QuantityError, match=r"-0\.7 deg/in"):
        quantity.parse_angle_per_length(text)


def test_masses_and_stiffnesses_are_read():
    assert quantity.parse_mass("2300 kg") == quantity.parse_mass("2.3 t") == 2300
    assert quantity.parse_mass("1 lb") == 0.45359237  # NIST SP 811, B.8
    assert quantity.parse_stiffness("90 kN/rad") == 90_000
    assert quantity.parse_stiffness("1570 N/deg") == pytest.approx(1570 * 180 / pi)
    for text in ("90 kN", "90 N/mm", "90"):
        with pytest.raises(QuantityError, match="90 kN/rad"):
            quantity.parse_stiffness(text)


@pytest.mark.parametrize(
    "read",
    [
        quantity.parse_speed,
        quantity.parse_acceleration,
        quantity.parse_angle_per_length,
        quantity.parse_mass,
        quantity.parse_stiffness,
    ],
)
def test_a_quantity_of_many_units_needs_its_unit(read):
    with pytest.raises(QuantityError, match="“60” has no unit: write"):
        read("60")


def test_plain_numbers_are_read():
    assert quantity.parse_number("16") == 16
    assert quantity.parse_number("16 1/2") == 16.5
    assert quantity.parse_number("16:1") == quantity.parse_number("16 : 1") == 16
    with pytest.raises(QuantityError, match="has a unit where a plain number is wanted"):
        quantity.parse_number("16 in")


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("", "nothing was typed"),
        (" \t ", "nothing was typed"),
        ("abc", "abc"),
        ("nan", "“nan” is not a length"),
        ("inf", "“inf” is not a length"),
        ("1e999", "“1e999” is not a length"),
        ("1/0", "divides by 0"),
        ("17 0/0 in", "divides by 0"),
        ("17 9/8", "9/8 after a whole number is less than 1"),
        ("1' 14\"", "the inches after whole feet are less than 12"),
        ("17 5 in", "“17 5 in” is not a length"),
        ("17.5 5/8", "“17.5 5/8” is not a length"),
        ("5 in 3 ft", "“5 in 3 ft” is not a length"),
        ("--5", "“--5” is not a length"),
        ("5 mm**9999", "“5 mm**9999” is not a length"),
        ("17,5 in", "has a comma: write 17.5 in with a point"),
        ("1,000 mm", "has a comma: write 1000 mm without it"),
        ("9" * 10_000, "too long for a length"),
        ("5 deg", "deg is a unit of angle, not of length"),
        ("5 g", "g is a unit of acceleration, not of length"),
        ("5 kg", "kg is a unit of mass, not of length"),
        ("5 cubit s", "cubit s is not a unit of length"),
        ("٣ in", "is not a length"),
    ],
)
def test_a_text_that_is_no_length_is_refused_in_one_line(text, reason):
    with pytest.raises(QuantityError) as refusal:
        quantity.parse_length(text)
    message = str(refusal.value)
    assert reason in message
    assert message.isprintable()
    assert len(message) < 160


@pytest.mark.parametrize("text", ["", "abc", "\x1b[2J17", "17 kg", "1e999", "5 in"])
def test_the_message_gives_a_right_example(text):
    with pytest.raises(QuantityError, match=r"8 1/2 deg"):
        quantity.parse_angle(text)


def test_control_characters_are_escaped_in_the_message():
    with pytest.raises(QuantityError) as refusal:
        quantity.parse_length("\x1b[31m17\n\u202e\udc9b")
    assert r"\x1b[31m17\n\u202e\udc9b" in str(refusal.value)


@pytest.mark.parametrize("text", ["50 percent", "5 mm", "1 dozen", "3 sr"])
def test_a_number_without_a_dimension_is_no_angle(text):
    with pytest.raises(QuantityError):
        quantity.parse_angle(text)


def test_pint_converts_other_units():
    assert quantity.parse_length("0.5 yd") == quantity.parse_length("0.5 YD") == 457.2
    assert quantity.parse_angle("1 turn") == pytest.approx(2 * pi)
    assert quantity.parse_duration("200 ms") == pytest.approx(0.2)
    assert quantity.parse_speed("30 ft/s") == pytest.approx(30 * 12 * INCH)
    assert quantity.parse_acceleration("10 ft/s2") == pytest.approx(10 * 12 * INCH)


def test_pint_is_imported_only_for_other_units():
    program = (
        "import sys; from core.text import quantity; quantity.parse_length('17 5/8 in')\n"
        "assert 'pint' not in sys.modules\n"
        "assert quantity.parse_length('0.5 yd') == 457.2\n"
        "assert 'pint' in sys.modules\n"
    )
    subprocess.run([sys.executable, "-c", program], check=True, timeout=60)


def test_repeats_are_separated_by_semicolons():
    assert quantity.split_repeats("17 5/8; 17 9/16 ;17.6") == ("17 5/8", "17 9/16", "17.6")
    assert quantity.split_repeats("17 5/8;") == ("17 5/8",)
    with pytest.raises(QuantityError, match="nothing was typed"):
        quantity.split_repeats(" ; ")


@pytest.mark.parametrize(
    ("text", "unit", "kept"),
    [
        ("17 5/8", "in", "17 5/8 in"),
        (" 17   5/8 ", "in", "17 5/8 in"),
        ("448", "mm", "448 mm"),
        ("448 mm", "in", "448 mm"),
        ('17 5/8"', "mm", '17 5/8"'),
        ("1' 5", "mm", "1' 5"),
        ("8½", "deg", "8½ deg"),
    ],
)
def test_a_bare_number_is_kept_with_its_unit(text, unit, kept):
    assert quantity.with_unit(text, unit) == kept


@pytest.mark.parametrize(("text", "unit"), [("5 mm", "deg"), ("x", "in"), ("1/0", "mm")])
def test_a_text_that_is_no_quantity_gets_no_unit(text, unit):
    with pytest.raises(QuantityError):
        quantity.with_unit(text, unit)


@pytest.mark.parametrize(
    ("inches", "written"),
    [
        (17.625, "17 5/8 in"),
        (17.64, "17 5/8 in"),
        (-0.125, "-1/8 in"),
        (-17.625, "-17 5/8 in"),
        (0, "0 in"),
        (-0.01, "0 in"),
        (24, "24 in"),
        (23.99, "24 in"),
        (1 / 16, "1/16 in"),
    ],
)
def test_inches_are_written_as_a_tape_reads(inches, written):
    assert quantity.format_length(inches * INCH, "in") == written


def test_mm_and_degrees_are_written():
    assert quantity.format_length(447.675, "mm") == "448 mm"
    assert quantity.format_length(447.675, "mm", decimals=1) == "447.7 mm"
    assert quantity.format_length(-0.2, "mm") == "0 mm"
    assert quantity.format_angle(8.5 * pi / 180) == "8.5 deg"
    assert quantity.format_angle(-0.0001) == "0.0 deg"
    assert quantity.format_angle(-0.01, decimals=2) == "-0.57 deg"


def test_angles_for_a_travel_are_written():
    gain = quantity.parse_angle_per_length("-0.7 deg/in")
    assert quantity.format_angle_per_length(gain, "in") == "-0.70 deg/in"
    assert quantity.format_angle_per_length(gain, "mm") == "-0.028 deg/mm"
    assert quantity.format_angle_per_length(-1e-9, "in") == "0.00 deg/in"


@pytest.mark.parametrize("value", [nan, inf, -inf])
def test_a_value_that_is_not_finite_is_written_as_a_dash(value):
    assert quantity.format_length(value, "in") == quantity.format_length(value, "mm") == "—"
    assert quantity.format_angle(value) == "—"
    assert quantity.format_angle_per_length(value, "in") == "—"


def test_a_fraction_above_one_is_a_length():
    assert quantity.parse_length("9/8 in") == pytest.approx(1.125 * 25.4)
