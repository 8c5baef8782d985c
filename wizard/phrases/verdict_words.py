"""Verdicts in words: the mark that goes with each, how sure it is, and what it reads like.

A mark and its word always stand together; a colour only says the same once more.
"""

from math import isfinite

MARKS = {
    "steers true": "✓",
    "within": "✓",
    "shown": "✓",
    "bump steer": "✗",
    "out": "✗",
    "not shown": "✗",
    "too close to call": "≈",
    "not settled": "≈",
    "held back": "■",
}
"""The mark of every verdict, overall, of a rule, and of a fix."""

TONES = {"✓": "good", "✗": "bad", "≈": "open", "■": "held"}
"""What a style class calls them."""

NOT_KNOWN = "not known"


def mark_of(verdict: str) -> str:
    """The mark of a verdict; a dash for one that is not known."""
    return MARKS.get(verdict, "—")


def mark_and_word(verdict: str) -> str:
    """A verdict with its mark before it."""
    return f"{mark_of(verdict)} {verdict}"


def tone_of(verdict: str) -> str:
    """The name of a verdict's tone, for a style class: good, bad, open, held or unknown."""
    return TONES.get(mark_of(verdict), "unknown")


def probability_words(probability: float | None) -> str:
    """Probability that a value is within its limit, in words.

    The words never say more than the verdict: below 0.95 they stop at 9 in 10, above 0.05 at
    1 in 10.

    Parameters
    ----------
    probability : float or None
        Between 0 and 1; None or nan where it is not known.

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


def give_or_take(value: float, give: float | None, unit: str = "deg", decimals: int = 1) -> str:
    """A value with its doubt: "1.9 deg, give or take 0.5", or "0.97, give or take 0.02".

    A doubt too small for the decimals gets one more; one that is not known or none is not said.
    """
    if not isfinite(value):
        return NOT_KNOWN
    doubt = give if give is not None and isfinite(give) else 0.0
    if 0 < doubt < 0.5 * 10**-decimals:
        decimals += 1
    text = f"{value:.{decimals}f}"
    shown = f"{text.lstrip('-') if float(text) == 0 else text} {unit}".rstrip()
    return f"{shown}, give or take {doubt:.{decimals}f}" if doubt > 0 else shown


def limit_words(limit: float, unit: str = "deg", at_least: bool = False) -> str:
    """A limit: "at most 1.5 deg", "at least 0.85"."""
    return f"{'at least' if at_least else 'at most'} {limit:g} {unit}".rstrip()
