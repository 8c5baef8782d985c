"""Verdicts in words: the mark of each, its tone, and its probability.

A mark and its word always stand together. A colour repeats them.
"""

from math import isfinite

from core.fix.comparison import FixOutcome
from core.statistics.conformity import Conformity
from core.verdict.verdict import Overall, RuleKey

YES, NO, OPEN, HELD_BACK = "✓", "✗", "≈", "■"

MARKS: dict[str, str] = {
    Overall.STEERS_TRUE: YES,
    Conformity.WITHIN: YES,
    FixOutcome.SHOWN: YES,
    Overall.BUMP_STEER: NO,
    Conformity.OUT: NO,
    FixOutcome.NOT_SHOWN: NO,
    Overall.TOO_CLOSE: OPEN,
    FixOutcome.NOT_SETTLED: OPEN,
    Overall.HELD_BACK: HELD_BACK,
}
"""Mark of each verdict: overall, of a rule, and of a fix."""

TONES = {YES: "good", NO: "bad", OPEN: "open", HELD_BACK: "held"}
"""Tone of each mark; style classes have the names of tones."""

UNKNOWN_MARK, UNKNOWN_TONE = "—", "unknown"
"""Mark and tone of a verdict that this program does not know."""

VALUE_NAMES: dict[RuleKey, str] = {
    "effective": "square to its path",
    "parallel": "parallel",
    "peak_steer": "peak steer",
    "peak_toe_change": "toe change",
    "track_bar_slope": "track bar slope",
    "drag_link_slope": "drag link slope",
    "length_ratio": "near in length",
}
"""Name of the value that each rule limits, in the order of every table."""

NOT_KNOWN = "not known"


def mark_of(verdict: str) -> str:
    """The mark of a verdict; a dash if the verdict is not known."""
    return MARKS.get(verdict, UNKNOWN_MARK)


def mark_and_word(verdict: str) -> str:
    """A verdict with its mark before it."""
    return f"{mark_of(verdict)} {verdict}"


def tone_of(verdict: str) -> str:
    """The tone of a verdict, for a style class: good, bad, open, held or unknown."""
    return TONES.get(mark_of(verdict), UNKNOWN_TONE)


def probability_words(probability: float | None) -> str:
    """The probability that a value is within its limit, in words.

    The words never say more than the verdict: below 0.95 they stop at 9 in 10, above 0.05 at
    1 in 10.

    Parameters
    ----------
    probability : float or None
        Between 0 and 1; None or nan if it is not known.

    Returns
    -------
    str
        "about 9 in 10 that it is within".
    """
    words = chance_words(probability)
    return f"how sure is {NOT_KNOWN}" if words == NOT_KNOWN else f"{words} that it is within"


def chance_words(probability: float | None) -> str:
    """A probability as a count: "more than 99 in 100", "about 3 in 10", "an even chance"."""
    if probability is None or not isfinite(probability):
        return NOT_KNOWN
    if probability > 0.99:
        return "more than 99 in 100"
    if probability < 0.01:
        return "less than 1 in 100"
    if probability >= 0.95 or probability <= 0.05:
        return f"about {int(100 * probability + 1e-9) or 1} in 100"
    tenths = min(max(round(10 * probability), 1), 9)
    return "an even chance" if tenths == 5 else f"about {tenths} in 10"


def give_or_take(
    value: float, uncertainty: float | None, unit: str = "deg", decimals: int = 1
) -> str:
    """A value with its doubt: "1.9 deg, give or take 0.5", or "0.97, give or take 0.02".

    Parameters
    ----------
    value : float
        In `unit`; a value that is not finite is not known.
    uncertainty : float or None
        Expanded uncertainty, in `unit`. None, nan and 0 are left out.
    unit : str
    decimals : int
        Decimals of both. An uncertainty too small for them gets one more.
    """
    if not isfinite(value):
        return NOT_KNOWN
    doubt = uncertainty if uncertainty is not None and isfinite(uncertainty) else 0.0
    if 0 < doubt < 0.5 * 10**-decimals:
        decimals += 1
    text = f"{value:.{decimals}f}"
    amount = f"{text.lstrip('-') if float(text) == 0 else text} {unit}".rstrip()
    return f"{amount}, give or take {doubt:.{decimals}f}" if doubt > 0 else amount


def limit_words(limit: float, unit: str = "deg", at_least: bool = False) -> str:
    """A limit: "at most 1.5 deg", "at least 0.85"."""
    return f"{'at least' if at_least else 'at most'} {limit:g} {unit}".rstrip()
