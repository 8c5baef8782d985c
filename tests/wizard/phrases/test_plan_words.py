"""What a plan is told in: tape terms, turns, and one sentence a rule."""

from dataclasses import replace

import pytest

from core.documents.record import read_document
from core.fix.moves import Move
from core.fix.plan import plan_of
from core.fix.search import SearchResult, search
from core.kinematics.raising import raised
from core.profiles.adjuster import Adjuster
from core.profiles.corrections import Correction
from core.profiles.profile import load_profile
from core.profiles.profile_tables import USUAL_CLEARANCE
from core.verdict.assess import assess
from core.verdict.verdict import Overall
from tests.demo import fg_3, fg_7
from tests.geometries import INCH, parallel_pair
from tests.plans import COARSE, verdict_on
from wizard.locations import DEMO_SESSIONS, PROFILES
from wizard.phrases.bar_lengths import bar_length_facts, turns_words
from wizard.phrases.plan_cautions import CLEARANCE, clearance_facts
from wizard.phrases.plan_effects import WORSE, plan_effect_facts
from wizard.phrases.plan_outcomes import chance_in_short, outcome_rows, plan_outcome_words
from wizard.phrases.plan_reasons import failing_rules_words, plan_reason_facts
from wizard.phrases.rises import rise_range_words, rise_words
from wizard.phrases.search_result import search_result_words
from wizard.phrases.work_steps import move_facts, plan_move_words, re_measure_facts

NOT_CLOSING = fg_3.NOT_CLOSING.path_in(DEMO_SESSIONS)
CROSSED = raised(parallel_pair(), "drag_link.frame", 3 * INCH)


@pytest.fixture(scope="module")
def verdict():
    found = verdict_on(CROSSED)
    assert found.overall == Overall.BUMP_STEER
    return found


@pytest.fixture(scope="module")
def cure(verdict):
    return plan_of(verdict, (Move(COARSE[1], -3 * INCH),))


def text_of(facts):
    """All that facts say, in one line each."""
    return "\n".join(f"{fact.mark} {fact.name}: {fact.text}" for fact in facts)


@pytest.mark.parametrize(
    ("rise", "unit", "words"),
    [
        (44.45, "in", "up 1 3/4 in"),
        (-44.45, "in", "down 1 3/4 in"),
        (44.45, "mm", "up 44.5 mm"),
        (-45.0, "mm", "down 45 mm"),
    ],
)
def test_rises_in_tape_terms(rise, unit, words):
    assert rise_words(rise, unit) == words


@pytest.mark.parametrize(
    ("rises", "words"),
    [
        ((12.7, 25.4, 101.6), "up 1/2 in to 4 in"),
        ((-12.7, -101.6), "down 1/2 in to 4 in"),
        ((57.15,), "up 2 1/4 in"),
        ((-50.8, 50.8), "down 2 in to up 2 in"),
    ],
)
def test_what_a_correction_offers(rises, words):
    assert rise_range_words(rises, "in") == words


@pytest.mark.parametrize(
    ("adjuster", "change", "words"),
    [
        # corrections: change / (2 x pitch) for a sleeve, change / pitch for one threaded end
        (Adjuster("sleeve", 2.0), 6.0, "about 1 1/2 turns of its sleeve with two threads, 2 mm"),
        (Adjuster("one-end", 2.0), -6.0, "about 3 turns of its threaded end, 2 mm"),
        (Adjuster("one-end", 2.0), 2.0, "about 1 turn of its threaded end, 2 mm"),
        (Adjuster("one-end", 2.0), 0.5, "about 1/4 turn of its threaded end, 2 mm"),
        (Adjuster("one-end", 2.0), 0.1, "about 0 turns of its threaded end, 2 mm"),
    ],
)
def test_turns_of_an_adjuster(adjuster, change, words):
    assert turns_words(adjuster, change, "mm") == words


def test_the_work_says_where_from_and_where_to(verdict, cure):
    (fact,) = move_facts(verdict, cure, "mm")
    now = verdict.measured.linkage.drag_link_frame[2]
    assert fact.name == "down 76.2 mm"
    assert f"from {now:.0f} mm to {now - 76.2:.0f} mm above the floor" in fact.text


def test_lengths_say_longer_or_shorter_and_the_turns(cure):
    adjusters = {link: Adjuster("sleeve", 1.5) for link in ("track_bar", "drag_link")}
    bar, link = bar_length_facts(cure, adjusters, "mm")
    assert "as it is now" in bar.text
    assert "turns" not in bar.text
    change = cure.after.length_changes[1]
    assert f"{abs(change):.0f} mm shorter than now: about" in link.text


def test_the_ride_height_is_said_once(verdict):
    plan = plan_of(verdict, (Move(COARSE[5], -2 * INCH),))
    (fact,) = move_facts(verdict, plan, "in")
    assert (
        fact.text
        == "ride height: the ride height, and with it all that hangs on the frame, down 2 in."
    )
    assert "heights of the track bar's frame end and drag link's frame end" in text_of(
        re_measure_facts(plan)
    )


def test_names_from_a_shelf_are_only_text(verdict):
    nasty = Correction("[b]x[/b]\x1b[2J", "track_bar.axle", (25.4,), caution="\x07[i]y[/i]")
    plan = plan_of(verdict, (Move(nasty, 25.4),))
    said = " ".join(plan_move_words(plan, "in")) + text_of(clearance_facts(plan))
    assert "[b]x[/b]" in said
    assert "[i]y[/i]" in said
    assert all(character.isprintable() or character == "\n" for character in said)


def test_every_rule_has_its_sentence(verdict, cure):
    facts = plan_reason_facts(verdict, cure, "in")
    assert [fact.name for fact in facts] == ["parallel", "steer", "toe", "flat", "near in length"]
    parallel, steer, toe, *_ = facts
    assert "The track bar stays at 8.0 deg. The drag link goes from" in parallel.text
    assert "leaves 0.0 deg out of square" in parallel.text
    assert "to 0.00 deg; at most 0.5 is allowed" in steer.text
    assert toe.text == "This layout cannot change the toe with travel."
    assert [fact.mark for fact in (parallel, steer, toe)] == ["✓"] * 3


def test_what_gets_worse_is_said_for_every_rule(verdict):
    plan = plan_of(verdict, (Move(COARSE[0], 2 * INCH),))
    said = text_of(plan_effect_facts(verdict, plan, USUAL_CLEARANCE, "in")).casefold()
    assert plan.after.worse
    for name in plan.after.worse:
        assert WORSE[name] in said
    assert "steeper than now" in said


def test_the_clearance_of_a_shop_counts(verdict, cure):
    smallest = cure.after.clearance.smallest
    assert "the two links" not in text_of(plan_effect_facts(verdict, cure, smallest - 1, "in"))
    assert "They come within" in text_of(plan_effect_facts(verdict, cure, smallest + 1, "in"))


def test_an_axle_without_a_track_bar_has_no_roll_centre():
    record = read_document(fg_7.FORE_AFT.path_in(DEMO_SESSIONS))
    lengthwise = assess(record, lambda name: load_profile(name, [PROFILES]))
    plan = plan_of(lengthwise, (Move(COARSE[1], -INCH),))
    rows = {row.name: row for row in outcome_rows(lengthwise, [plan], "in")}
    assert rows["roll centre"].plans[0].words == "none"


def test_every_moved_pivot_has_its_clearance(verdict):
    plan = plan_of(verdict, (Move(COARSE[2], INCH), Move(COARSE[5], INCH)))
    said = text_of(clearance_facts(plan))
    for pivot in ("track_bar.axle", "track_bar.frame", "drag_link.frame"):
        assert CLEARANCE[pivot] in said


def test_what_stops_a_plan_is_named_worst_first(verdict):
    plan = plan_of(verdict, (Move(COARSE[1], -1.8 * INCH),))
    chances = plan.after.chances
    said = failing_rules_words(plan)
    assert chances.effective != chances.steer
    first = "parallel" if chances.effective < chances.steer else "peak steer"
    assert said.startswith(first)
    assert "toe" not in said


@pytest.mark.parametrize(
    ("p_true", "words"),
    [(0.999, "> 99 in 100"), (0.97, "97 in 100"), (0.6, "6 in 10"), (0.001, "< 1 in 100")],
)
def test_a_chance_fits_a_column(p_true, words):
    assert chance_in_short(p_true) == words


def test_rows_have_the_mark_of_their_verdict(verdict, cure):
    rows = {row.name: row for row in outcome_rows(verdict, [cure], "in")}
    assert rows["verdict"].now.words == "✗ bump steer"
    assert rows["verdict"].plans[0].words == "✓ cures"
    assert rows["parallel"].plans[0].words == "✓ 0.0 deg"
    assert "toe change" not in rows
    assert plan_outcome_words(verdict, cure).startswith(
        "✓ steers true: parallel 0.0 deg, peak steer"
    )


@pytest.mark.parametrize(("count", "words"), [(1, "one plan cures"), (3, "three plans cure")])
def test_the_answer_counts_the_plans(verdict, cure, count, words):
    headline = "✗ bump steer, walk-round and stance not checked"
    assert f"{headline}: {words} it, of 1,234 combinations" in search_result_words(
        verdict, SearchResult(1234, (cure,) * count)
    )


def test_plans_on_readings_that_do_not_close_carry_a_warning(verdict, cure):
    profile = load_profile("coil-tie-rod", [PROFILES])
    doubtful = replace(
        assess(read_document(NOT_CLOSING), lambda _: profile), overall=Overall.BUMP_STEER
    )
    warning = "The readings do not fit each other. Find the mistaken reading first"
    assert warning in search_result_words(doubtful, search(doubtful, profile.corrections))
    assert warning not in search_result_words(verdict, SearchResult(10, (cure,)))
