from core.entry_checks.outcome import Accepted, Objection, Queried, Refused, outcome_of

UNUSUAL = [Objection(f"Unusual {number}.") for number in (1, 2, 3)]


def test_a_value_without_objections_is_accepted():
    assert outcome_of("8 in", []) == Accepted("8 in")


def test_a_value_is_queried_with_at_most_two_objections():
    assert outcome_of("8 in", UNUSUAL[:1]) == Queried("8 in", "Unusual 1.")
    assert outcome_of("8 in", iter(UNUSUAL)) == Queried("8 in", "Unusual 1. Unusual 2.")


def test_an_impossible_value_is_refused_whatever_else_is_unusual():
    objections = [*UNUSUAL, Objection("Impossible.", True), Objection("Impossible too.", True)]
    assert outcome_of("8 in", objections) == Refused("Impossible.")
