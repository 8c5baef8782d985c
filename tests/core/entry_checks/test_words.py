import pytest

from core.entry_checks.check import check
from core.entry_checks.outcome import Accepted, Queried, Refused


def of(path, answer):
    return check(path, answer, {})


class TestTag:
    @pytest.mark.parametrize("tag", ["FG-3", " FG-3 ", "Truck 7", "a.b_c", "Förderer", "7"])
    def test_what_can_name_a_folder_is_accepted(self, tag):
        assert of("vehicle.tag", tag) == Accepted(tag.strip())

    @pytest.mark.parametrize(
        "tag",
        [
            *("", "   ", ".", "..", ".hidden", "a/b", "a\\b", "../a", "a:b", "a*", "-a", "a."),
            *("a\x1b[31m", "a\nb", "a\0", "\ud800", "a\u202eb", "x" * 33),
            *("shop", "Shop", "unfinished", "CON", "con.txt", "nul", "COM1", "lpt9"),
        ],
    )
    def test_what_cannot_is_refused_with_an_example(self, tag):
        outcome = of("vehicle.tag", tag)
        assert isinstance(outcome, Refused)
        assert "like FG-3" in outcome.message
        assert outcome.message.isprintable()

    def test_one_way_of_writing_accents(self):
        assert of("vehicle.tag", "Fo\u0308hn") == Accepted("F\u00f6hn")


class TestLinesAndNotes:
    def test_a_line_has_single_spaces(self):
        assert of("session.technician", "  A.  Example ") == Accepted("A. Example")

    def test_an_empty_line_is_refused_and_an_empty_note_is_not(self):
        assert isinstance(of("session.technician", " "), Refused)
        assert of("complaint.note", " ") == Accepted("")

    def test_a_note_keeps_its_lines(self):
        assert of("session.note", "one \n two\n") == Accepted("one\n two")

    @pytest.mark.parametrize("text", ["a\x1b[2Jb", "a\x00", "a\u202eb", "\udc80"])
    def test_control_characters_are_refused(self, text):
        for path in ("session.technician", "complaint.note"):
            outcome = of(path, text)
            assert isinstance(outcome, Refused)
            assert outcome.message.isprintable()

    def test_brackets_are_only_text(self):
        assert of("complaint.note", "[red]loose[/]") == Accepted("[red]loose[/]")

    def test_too_long(self):
        assert isinstance(of("session.technician", "x" * 201), Refused)
        assert isinstance(of("session.note", "x" * 4001), Refused)


class TestOdometer:
    @pytest.mark.parametrize("text", ["48210 km", "48,210 km", "30100 miles", "30100mi"])
    def test_a_distance(self, text):
        assert of("vehicle.odometer", text) == Accepted(text)

    def test_without_a_unit_it_is_queried(self):
        outcome = of("vehicle.odometer", "48210")
        assert isinstance(outcome, Queried)
        assert outcome.value == "48210"

    @pytest.mark.parametrize("text", ["", "many", "-5 km", "5 kg", "9" * 500])
    def test_anything_else_is_refused(self, text):
        assert isinstance(of("vehicle.odometer", text), Refused)


class TestChoices:
    def test_one_of_some_words(self):
        assert of("layout.arm", "Behind") == Accepted("behind")
        outcome = of("layout.arm", "sideways")
        assert isinstance(outcome, Refused)
        assert "ahead, behind" in outcome.message

    def test_a_profile_that_was_loaded(self, profile):
        assert check("session.profile", profile.name, {}, profile) == Accepted(profile.name)
        for outcome in (
            check("session.profile", "other", {}, profile),
            check("session.profile", "../other", {}, None),
        ):
            assert isinstance(outcome, Refused)
            assert "other" in outcome.message

    def test_any_of_some_words_once_and_in_their_order(self):
        assert of("complaint.reported", ["wanders", "steers-when-held", "wanders"]) == Accepted(
            ["steers-when-held", "wanders"]
        )
        assert of("complaint.reported", []) == Accepted([])
        assert isinstance(of("complaint.reported", ["wanders", "sings"]), Refused)

    @pytest.mark.parametrize(("answer", "value"), [("Yes", True), ("n", False), (True, True)])
    def test_yes_or_no(self, answer, value):
        assert of("readings.track_bar.bent", answer) == Accepted(value)

    def test_neither(self):
        assert isinstance(of("readings.track_bar.bent", "perhaps"), Refused)
