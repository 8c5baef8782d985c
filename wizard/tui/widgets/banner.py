"""A verdict in letters that a person under the vehicle can read."""

from textual.content import Content
from textual.reactive import reactive
from textual.widget import Widget

from wizard.phrases.verdict_words import mark_of, tone_of

TONES = ("good", "bad", "open", "held", "unknown")

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
"""Letters and marks as rows of dots."""

ROWS = 5
"""Rows of dots of a letter."""

BLANK = "—"
"""Letter for a character that has none."""

AFTER_MARK = "..."
"""Columns of dots between the mark and the word."""

HALVES = {"..": " ", "#.": "▀", ".#": "▄", "##": "█"}
"""Character of two dots, one above the other."""


class Banner(Widget):
    """Mark and word of a verdict, three rows high; in plain text where there is no room.

    A remark stands in plain letters below them.

    Attributes
    ----------
    verdict : str
        The word; "" for none.
    remark : str
        What was not checked; "" for nothing.
    """

    verdict: reactive[str] = reactive("")
    remark: reactive[str] = reactive("", layout=True)

    def show(self, verdict: str, remark: str = "") -> None:
        """Show a verdict, with a remark such as ", joints not checked"."""
        self.verdict, self.remark = verdict, remark.removeprefix(", ")

    def watch_verdict(self, verdict: str) -> None:
        """Take the colour of the verdict; mark and word say the same without it."""
        for tone in TONES:
            self.set_class(tone == tone_of(verdict), f"-{tone}")

    def render(self) -> Content:
        """The letters, or the plain words."""
        if not self.verdict:
            return Content()
        lines = lettered(self.verdict)
        if len(lines[0]) > self.size.width:
            lines = ["", f"{mark_of(self.verdict)}  {self.verdict.upper()}"]
        return Content("\n".join([*lines, self.remark] if self.remark else lines))


def lettered(verdict: str) -> list[str]:
    """Mark and word drawn in half blocks, three lines of one width."""
    words = [LETTERS.get(letter, LETTERS[BLANK]).split() for letter in verdict.casefold()]
    shapes = [LETTERS[mark_of(verdict)].split(), [AFTER_MARK] * ROWS, *words]
    rows = [".".join(shape[row] for shape in shapes) for row in range(ROWS)]
    rows.append("." * len(rows[0]))
    return [
        "".join(HALVES[above + below] for above, below in zip(upper, lower, strict=True))
        for upper, lower in zip(rows[0::2], rows[1::2], strict=True)
    ]
