"""What is said of verdicts: meaning, doubt, gaps."""

from core.adjustment.outliers import SuspectGroup
from core.documents.document import with_value, without
from core.documents.record import read_document
from core.profiles.profile import load_profile
from core.uncertainty.next_reading import Advice
from core.verdict.assess import assess
from tests.wizard.tui.looking import DEMO
from wizard.locations import DEMO_SESSIONS, PROFILES
from wizard.phrases.closure import suspect_group_words
from wizard.phrases.fact import LOOK
from wizard.phrases.next_reading import advice_words
from wizard.phrases.open_questions import open_question_facts
from wizard.phrases.reading_names import name_of_reading, names_of_readings
from wizard.phrases.readings import readings_facts, warning_facts
from wizard.phrases.verdict_meaning import verdict_facts
from wizard.phrases.verdict_reasons import binding_facts, road_facts, steer_reason_facts


def record(name):
    """A demo session as it was filed."""
    return read_document(DEMO[name].path_in(DEMO_SESSIONS))


def verdict_on(document):
    return assess(document, lambda name: load_profile(name, [PROFILES]), draws=0)


def said(facts):
    """Names and texts of facts as one text."""
    return "\n".join(f"{fact.mark} {fact.name}: {fact.text}" for fact in facts)


class TestSuspicions:
    def test_a_group_is_named_together_with_what_it_differs_by(self):
        readings = ("track_bar.frame.height", "track_bar.axle.height", "track_bar.slope")
        words = suspect_group_words(SuspectGroup(readings, (25.4, -25.4, 0.05)), "in")
        assert words.startswith("These three differ by about 1 in.")
        assert "height of the track bar's frame end (1 in too high)" in words
        assert "height of the track bar's axle end (1 in too low)" in words
        assert "slope of the track bar (2.9 deg too much)" in words

    def test_a_reading_that_would_be_wrong_by_far_more_is_not_named(self):
        readings = ("drag_link.frame.offset", "drag_link.frame.station", "drag_link.length")
        words = suspect_group_words(SuspectGroup(readings, (1016.0, 60_000.0, -1016.0)), "in")
        assert words.startswith("These two differ by about 40 in.")
        assert "station" not in words

    def test_one_by_itself(self):
        words = suspect_group_words(SuspectGroup(("drag_link.length",), (-50.8,)), "mm")
        assert words == (
            "One reading does not fit the others: length of the drag link (51 mm too short)."
        )

    def test_slopes_alone_are_not_said_in_tape_terms(self):
        readings = ("track_bar.slope", "drag_link.slope")
        words = suspect_group_words(SuspectGroup(readings, (0.05, 0.05)), "in")
        assert words.startswith("These two differ. It")


class TestAdvice:
    def test_one_reading(self):
        assert advice_words(Advice(("drag_link.frame.height",), 2)) == (
            "Take the height of the drag link's frame end twice more and it will be settled."
        )

    def test_several(self):
        words = advice_words(Advice(("drag_link.frame.height", "drag_link.axle.height"), 1))
        assert words.startswith("Take each once more and it will be settled: height of")

    def test_none_will_do(self):
        assert advice_words(Advice((), 0)).startswith("No number of repeats will settle it")


class TestScatter:
    def test_repeats_that_disagree_are_noticed(self):
        document = with_value(
            record("lifted"), "readings.drag_link.frame.height", ["24 in", "25 in", "24 1/2 in"]
        )
        words = said(warning_facts(verdict_on(document), "in"))
        assert "! repeats scatter: height of the drag link's frame end: by 1/2 in" in words


class TestMeaning:
    def test_the_sentence_names_travel_steer_and_swing(self):
        fact, apart = verdict_facts(verdict_on(record("lifted")), "in")
        assert fact.mark == "✗"
        assert fact.text.startswith("bump steer: with the wheel held, 2 in of")
        assert fact.text.endswith("by itself.")
        assert apart.text.startswith("The links look 0.2 deg apart. As the axle moves it is 1.4")

    def test_links_that_look_as_they_work_are_said_once(self):
        facts = verdict_facts(verdict_on(record("toe")), "in")
        assert "apart" not in said(facts)

    def test_toe_is_said_where_it_decides(self):
        (fact,) = verdict_facts(verdict_on(record("toe")), "in")
        assert "The toe changes by up to" in fact.text

    def test_held_back_says_why_first_and_what_the_geometry_says_after_it(self):
        first, second = verdict_facts(verdict_on(record("worn joint")), "in")
        assert first.text.startswith("held back: ")
        assert "loose" in first.text
        assert "with the wheel held" in second.text


class TestWhy:
    def test_both_ends_of_the_working_travel_are_split(self):
        words = said(steer_reason_facts(verdict_on(record("lifted")), "in"))
        assert words.count("not parallel") == 2
        assert "2 in of bump" in words
        assert "2 in of droop" in words
        assert "for each inch of bump, give or take" in words

    def test_the_road_says_what_the_estimate_leaves_out(self):
        words = said(road_facts(verdict_on(record("lifted")), "mm"))
        assert "km/h" in words
        assert "Tyre slip" in words

    def test_a_link_that_binds_is_said_with_the_heave(self):
        facts = tuple(binding_facts((-90.0, None), "mm"))
        assert [fact.mark for fact in facts] == [LOOK]
        assert "at 90 mm of droop" in facts[0].text


class TestGaps:
    def test_what_was_not_measured_is_assumed_with_its_value(self):
        document = without(record("lifted"), "readings.steering.arm")
        words = said(open_question_facts(verdict_on(document), document, "in"))
        assert "assumed: " in words
        assert "steering arm 6 1/2 in" in words

    def test_without_wheels_flexing_and_roll_centre_are_left_open(self):
        document = without(record("lifted"), "readings.wheels")
        words = said(open_question_facts(verdict_on(document), document, "in"))
        assert "how it steers while the axle rolls" in words
        assert "offset of the left wheel and offset of the right wheel" in words

    def test_a_vehicle_without_a_track_bar_is_not_asked_for_readings_of_it(self):
        (path,) = (DEMO_SESSIONS / "FG-7").glob("*.toml")
        document = read_document(path)
        for reading in ("wheels", "drag_link.length", "drag_link.slope"):
            document = without(document, f"readings.{reading}")
        words = said(open_question_facts(verdict_on(document), document, "in"))
        assert "it needs the slope of the drag link, or the lengths" in words
        assert "roll centre" not in words
        assert "track bar's" not in words

    def test_what_was_not_looked_at_is_said(self):
        document = without(record("lifted"), "walk_round")
        words = said(open_question_facts(verdict_on(document), document, "in"))
        assert "! not looked at: " in words
        assert "track bar at the axle" in words

    def test_kept_readings_are_listed_with_their_reason_as_plain_text(self):
        kept = [{"reading": "track_bar.frame.height", "reason": "seen\x1b[31m"}]
        document = with_value(record("lifted"), "kept", kept)
        words = said(open_question_facts(verdict_on(document), document, "in"))
        assert "height of the track bar's frame end: seen\\x1b[31m" in words


class TestTrust:
    def test_shares_are_listed_with_the_largest_first(self):
        facts = readings_facts(verdict_on(record("lifted")), "in")
        shares = [int(fact.text.split("%")[0]) for fact in facts if "█" in fact.text]
        assert shares == sorted(shares, reverse=True)
        assert len(shares) == 5


class TestNames:
    def test_readings_of_one_kind_are_named_together(self):
        names = ("track_bar.frame.station", "drag_link.axle.station", "braces.axle_ends")
        assert names_of_readings(names) == (
            "stations of the track bar's frame end and drag link's axle end and distance between "
            "the two axle ends"
        )

    def test_a_name_that_is_not_known_stands_as_it_is(self):
        assert name_of_reading("made_up.height") == "made_up.height"
