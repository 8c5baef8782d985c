import pytest

from core.entry_checks.check import check
from core.entry_checks.outcome import Accepted, Queried, Refused


def checked(path, answer):
    return check(path, answer, {})


class TestTag:
    @pytest.mark.parametrize("tag", ["FG-3", " FG-3 ", "Truck 7", "a.b_c", "Förderer", "7"])
    def test_a_tag_that_can_name_a_folder_is_accepted(self, tag):
        assert checked("vehicle.tag", tag) == Accepted(tag.strip())

    @pytest.mark.parametrize(
        "tag",
        [
            *("", "   ", ".", "..", ".hidden", "a/b", "a\\b", "../a", "a:b", "a*", "-a", "a."),
            *("a\x1b[31m", "a\nb", "a\0", "\ud800", "a\u202eb", "x" * 33),
            *("shop", "Shop", "unfinished", "CON", "con.txt", "nul", "COM1", "lpt9"),
        ],
    )
    def test_any_other_tag_is_refused_with_an_example(self, tag):
        outcome = checked("vehicle.tag", tag)
        assert isinstance(outcome, Refused)
        assert "like FG-3" in outcome.message
        assert outcome.message.isprintable()

    def test_accents_have_one_unicode_form(self):
        assert checked("vehicle.tag", "Fo\u0308hn") == Accepted("F\u00f6hn")


class TestLinesAndNotes:
    def test_a_line_gets_single_spaces(self):
        assert checked("session.technician", "  A.  Example ") == Accepted("A. Example")

    def test_an_empty_line_is_refused_and_an_empty_note_is_not(self):
        assert isinstance(checked("session.technician", " "), Refused)
        assert checked("complaint.note", " ") == Accepted("")

    def test_a_note_keeps_its_lines(self):
        assert checked("session.note", "one \n two\n") == Accepted("one\n two")

    @pytest.mark.parametrize("text", ["a\x1b[2Jb", "a\x00", "a\u202eb", "\udc80"])
    def test_control_characters_are_refused(self, text):
        for path in ("session.technician", "complaint.note"):
            outcome = checked(path, text)
            assert isinstance(outcome, Refused)
            assert outcome.message.isprintable()

    def test_brackets_are_plain_text(self):
        assert checked("complaint.note", "[red]loose[/]") == Accepted("[red]loose[/]")

    def test_a_text_that_is_too_long_is_refused(self):
        assert isinstance(checked("session.technician", "x" * 201), Refused)
        assert isinstance(checked("session.note", "x" * 4001), Refused)


class TestOdometer:
    @pytest.mark.parametrize("text", ["48210 km", "48,210 km", "30100 miles", "30100mi"])
    def test_a_distance_is_accepted(self, text):
        assert checked("vehicle.odometer", text) == Accepted(text)

    def test_a_distance_without_a_unit_is_queried(self):
        outcome = checked("vehicle.odometer", "48210")
        assert isinstance(outcome, Queried)
        assert outcome.value == "48210"

    @pytest.mark.parametrize("text", ["", "many", "-5 km", "5 kg", "9" * 500])
    def test_anything_else_is_refused(self, text):
        assert isinstance(checked("vehicle.odometer", text), Refused)


class TestChoices:
    def test_one_of_some_words_whatever_its_case(self):
        assert checked("layout.arm", "Behind") == Accepted("behind")
        outcome = checked("layout.arm", "sideways")
        assert isinstance(outcome, Refused)
        assert "ahead, behind" in outcome.message

    def test_any_of_some_words_once_and_in_the_order_of_the_choices(self):
        assert checked(
            "complaint.reported", ["wanders", "steers-when-held", "wanders"]
        ) == Accepted(["steers-when-held", "wanders"])
        assert checked("complaint.reported", []) == Accepted([])
        assert isinstance(checked("complaint.reported", ["wanders", "sings"]), Refused)

    @pytest.mark.parametrize(("answer", "value"), [("Yes", True), ("n", False), (True, True)])
    def test_yes_or_no(self, answer, value):
        assert checked("readings.track_bar.bent", answer) == Accepted(value)

    def test_an_answer_that_is_neither_yes_nor_no_is_refused(self):
        assert isinstance(checked("readings.track_bar.bent", "perhaps"), Refused)
