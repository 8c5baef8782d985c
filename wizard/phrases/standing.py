"""The verdict as it stands, and the worth of a further reading, in words."""

from math import degrees, sqrt

from core.readings.survey import LINKS
from core.verdict.standing import DECIDING, Standing, Worth
from core.verdict.verdict import Overall, RuleKey
from wizard.phrases.amounts import listed
from wizard.phrases.reading_names import LINK_NAMES
from wizard.phrases.verdict_words import mark_and_word

DOUBTS: dict[RuleKey, str] = {
    "effective": "the angle",
    "peak_steer": "the peak steer",
    "peak_toe_change": "the toe change",
}
"""Values of the deciding rules, as a sentence on their doubt names them."""

READINGS_LEFT = {0: "no reading left could change it", 1: "1 reading left could change it"}


NOT_CLOSING = "no verdict: the readings do not close"


def strip_words(standing: Standing) -> str:
    """The verdict as it stands, with its chance and the readings that could change it.

    Readings that do not close get neither verdict nor chance.
    """
    if not standing.closes:
        return f"so far {NOT_CLOSING}; one of them is wrong"
    verdict = f"so far {_verdict_words(standing)}"
    if standing.is_decided:
        return f"{verdict}; decided, the rest refines only"
    count = len(standing.left)
    left = READINGS_LEFT.get(count, f"{count} readings left could change it")
    return f"{verdict}; {left}"


def _verdict_words(standing: Standing) -> str:
    """The verdict with its chance; what holds it back comes first."""
    held = ""
    if standing.held_back_by:
        held = f"{mark_and_word(Overall.HELD_BACK)}; by its geometry "
    return f"{held}{mark_and_word(standing.geometry)}, {chance_words(standing)}"


def chance_words(standing: Standing) -> str:
    """Chance of the verdict as it stands; of steering true where it is too close to call."""
    if standing.geometry == Overall.BUMP_STEER:
        return f"chance {_chance(1 - standing.chance)}"
    if standing.geometry == Overall.STEERS_TRUE:
        return f"chance {_chance(standing.chance)}"
    return f"chance that it steers true {_chance(standing.chance)}"


def _chance(probability: float) -> str:
    """A probability with two figures, never a full certainty."""
    if probability > 0.995:
        return "over 0.99"
    return f"{max(probability, 0.01):.2f}"


def worth_words(standing: Standing, worth: Worth) -> str:
    """Worth of a reading: the doubt that it would take away, or the check that it would be."""
    if worth.checks:
        return f"would be the first check of the {LINK_NAMES[worth.checks]}"
    counting = standing.open_rules or DECIDING
    rule = max(counting, key=worth.of)
    words = _doubt_words(sqrt(1 - worth.of(rule)))
    refines = (
        "" if standing.is_worth_taking(worth) and not standing.is_decided else "refines only: "
    )
    return f"{refines}would {words} of {DOUBTS[rule]}"


def skip_words(standing: Standing, worth: Worth) -> str:
    """Doubt of the peak steer without a reading and with it, give or take (U = 2u)."""
    u = degrees(standing.rulings[DECIDING.index("peak_steer")].u)
    skipped = f"{2 * u:.2f}"
    taken = f"{2 * u * sqrt(1 - worth.of('peak_steer')):.2f}"
    if skipped == taken:
        return f"skipped or not, the peak steer has a doubt of {skipped} deg"
    return f"skipped, the peak steer has a doubt of {skipped} deg, else of {taken} deg"


def _doubt_words(left: float) -> str:
    """Words for a doubt of which a share `left` remains."""
    if left > 0.99:
        return "leave the doubt"
    if left > 0.95:
        return "take little of the doubt"
    if left > 0.72:
        return f"take {round((1 - left) * 20) * 5} % of the doubt"
    if left > 0.6:
        return "take a third of the doubt"
    if left > 0.4:
        return "halve the doubt"
    return f"take {round((1 - left) * 20) * 5} % of the doubt"


def enough_ask(standing: Standing | None) -> str:
    """The question whether the readings are enough."""
    if standing is None:
        return "The verdict cannot be said yet."
    if not standing.closes:
        return f"So far {NOT_CLOSING}."
    if standing.is_decided:
        return f"It is decided: {_verdict_words(standing)}."
    if standing.geometry == Overall.TOO_CLOSE:
        return f"What is left would hardly settle it: {mark_and_word(standing.geometry)}."
    return f"{_verdict_words(standing)}; one rule stays open."


def enough_guidance(standing: Standing | None) -> str:
    """Guidance on what to do next."""
    if standing is None:
        return (
            "Every end of the links needs its height and its offset, and the readings have to fit "
            "a vehicle. F3 shows which step is not finished."
        )
    if standing.is_decided:
        return (
            "Every deciding rule is decided, the readings agree, and each link is checked. Enter "
            "shows the verdict. Further readings refine it only; key 2 offers them."
        )
    parts = []
    if not standing.closes:
        parts.append("One of them is wrong. Enter shows the verdict, which names the suspects.")
    if standing.unchecked:
        links = listed([LINK_NAMES[link] for link in LINKS if link in standing.unchecked])
        parts.append(
            f"No reading checks the {links}. Key 2 offers a length or a slope, which would show a "
            "mistake."
        )
    if standing.open_rules:
        parts.append(
            "Enter shows the verdict, which says what to take again, and how often. Key 2 offers "
            "what is left."
        )
    return " ".join(parts)
