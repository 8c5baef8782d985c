"""Sentences with their figures and names filled in: none that a person reads is too long."""

import re

import pytest

from core.documents.record import read_document
from core.fix.search import search
from core.profiles.profile import load_profile
from core.profiles.profile_tables import USUAL_CLEARANCE
from core.verdict.assess import assess
from core.verdict.verdict import Overall
from tests.test_plain_words import LONGEST, sentences, words
from wizard.locations import DEMO_SESSIONS, PROFILES
from wizard.phrases.bar_lengths import bar_length_facts
from wizard.phrases.open_questions import open_question_facts
from wizard.phrases.plan_cautions import clearance_facts
from wizard.phrases.plan_effects import plan_effect_facts
from wizard.phrases.plan_reasons import plan_reason_facts
from wizard.phrases.readings import readings_facts, warning_facts
from wizard.phrases.verdict_meaning import verdict_facts
from wizard.phrases.verdict_reasons import axle_facts, binding_facts, road_facts, steer_reason_facts
from wizard.phrases.work_steps import move_facts, re_measure_facts

LIST = re.compile(r": [^.:]*,[^.:]* and [^.:]*")
"""An enumeration after a colon, which is read as a list."""

RECORDS = sorted(DEMO_SESSIONS.glob("*/*.toml"))


def profile_of(name):
    """A profile of the program."""
    return load_profile(name, [PROFILES])


def facts_of(document, verdict, unit):
    """Facts beside a verdict, and beside the first plan where the vehicle has bump steer."""
    yield from verdict_facts(verdict, unit)
    yield from warning_facts(verdict, unit)
    yield from binding_facts(verdict.travel_limits, unit)
    yield from steer_reason_facts(verdict, unit)
    yield from road_facts(verdict, unit)
    yield from axle_facts(verdict, unit)
    yield from readings_facts(verdict, unit)
    yield from open_question_facts(verdict, document, unit)
    if verdict.overall == Overall.BUMP_STEER:
        profile = profile_of(document["session"]["profile"])
        for plan in search(verdict, profile.corrections).plans[:1]:
            yield from move_facts(verdict, plan, unit)
            yield from bar_length_facts(plan, profile.adjusters, unit)
            yield from plan_effect_facts(verdict, plan, USUAL_CLEARANCE, unit)
            yield from plan_reason_facts(verdict, plan, unit)
            yield from clearance_facts(plan)
            yield from re_measure_facts(plan)


@pytest.mark.parametrize("unit", ["in", "mm"])
@pytest.mark.parametrize("record", RECORDS, ids=lambda path: path.stem)
def test_every_sentence_of_a_fact_is_short(record, unit):
    document = read_document(record)
    facts = tuple(facts_of(document, assess(document, profile_of, draws=0), unit))
    assert len(facts) > 5
    long = [
        f"{len(words(sentence))} words: {sentence}"
        for fact in facts
        for sentence in sentences(LIST.sub("", fact.text))
        if len(words(sentence)) > LONGEST
    ]
    assert not long, "\n".join(long)
