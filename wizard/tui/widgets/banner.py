"""A verdict in letters that can be read from under the vehicle."""

from __future__ import annotations

from textual.content import Content
from textual.reactive import reactive
from textual.widget import Widget

from wizard.phrases.verdict_words import mark_of, tone_of

LETTERS = {
    "a": ".#. #.# ### #.# #.#",
    "b": "##. #.# ##. #.# ##.",
    "c": "### #.. #.. #.. ###",
    "d": "##. #.# #.# #.# ##.",
    "e": "### #.. ##. #.. ###",
    "h": "#.# #.# ### #.# #.#",
    "i": "# # # # #",
    "k": "#.# #.# ##. #.# #.#",
    "l": "#.. #.. #.. #.. ###",
    "m": "#...# ##.## #.#.# #...# #...#",
    "n": "#..# ##.# #.## #..# #..#",
    "o": "### #.# #.# #.# ###",
    "p": "### #.# ### #.. #..",
    "r": "##. #.# ##. #.# #.#",
    "s": "### #.. ### ..# ###",
    "t": "### .#. .#. .#. .#.",
    "u": "#.# #.# #.# #.# ###",
    "v": "#.# #.# #.# #.# .#.",
    "w": "#...# #...# #.#.# ##.## #...#",
    " ": ". . . . .",
    "✓": "......# .....## #...##. ##.##.. .###...",
    "✗": "##...## .##.##. ..###.. .##.##. ##...##",
    "≈": ".##...# #..###. ....... .##...# #..###.",
    "■": "###### ###### ###### ###### ######",
    "—": "...... ...... ###### ...... ......",
}
"""Rows of dots each."""

ROWS = 5

AFTER_MARK = "..."
HALVES = {"..": " ", "#.": "▀", ".#": "▄", "##": "█"}
"""Two dots above one another as one character."""


class Banner(Widget):
    """Mark and word of a verdict, three rows high; in plain text where there is no room."""

    verdict: reactive[str] = reactive("")

    def watch_verdict(self, verdict: str) -> None:
        """Take the colour of the verdict; mark and word say it without one."""
        for tone in ("good", "bad", "open", "held", "unknown"):
            self.set_class(tone == tone_of(verdict), f"-{tone}")

    def render(self) -> Content:
        """The letters, or the plain words."""
        if not self.verdict:
            return Content()
        lines = lettered(self.verdict)
        if len(lines[0]) > self.size.width:
            return Content(f"\n{mark_of(self.verdict)}  {self.verdict.upper()}")
        return Content("\n".join(lines))


def lettered(verdict: str) -> list[str]:
    """Mark and word drawn in half blocks, three lines of one width."""
    words = [LETTERS.get(letter, LETTERS["—"]).split() for letter in verdict.casefold()]
    shapes = [LETTERS[mark_of(verdict)].split(), [AFTER_MARK] * ROWS, *words]
    rows = [".".join(shape[row] for shape in shapes) for row in range(ROWS)]
    rows.append("." * len(rows[0]))
    return [
        "".join(HALVES[above + below] for above, below in zip(upper, lower, strict=True))
        for upper, lower in zip(rows[0::2], rows[1::2], strict=True)
    ]
