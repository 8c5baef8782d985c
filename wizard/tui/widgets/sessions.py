"""The list of the home screen: unfinished sessions, then filed sessions, newest first."""

from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path

from rich.cells import cell_len, set_cell_size
from textual.content import Content
from textual.message import Message
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from core.documents.listed_session import ListedSession
from core.documents.record import RecordError, SessionKind, read_document
from wizard.flow.flow import step_reached
from wizard.phrases.decisions import DECISIONS
from wizard.phrases.verdict_words import mark_and_word, tone_of
from wizard.tui.widgets.tone_colours import TONE_COLOURS

NEW = ListedSession(Path())
"""The line that begins a new session."""

WIDEST_TAG = 16
"""Most columns of a tag; the opened session shows all of it."""

KIND_WIDTH = len(SessionKind.RE_MEASURE)

VERDICT_WIDTH = 19

Line = tuple[ListedSession, bool]
"""A session, and True if it is unfinished."""


def reached_words(entry: ListedSession) -> str:
    """The step that an unfinished session has reached, "at Pivots  "; empty where it has none."""
    with suppress(RecordError):
        step = "" if entry.fault else step_reached(read_document(entry.path))
        return f"at {step}  " if step else ""
    return ""


class Sessions(OptionList):
    """One line for each session, with its verdict in mark and word, or the reason of a fault."""

    class Opened(Message):
        """A line was chosen.

        Attributes
        ----------
        entry : ListedSession
        is_unfinished : bool
        """

        def __init__(self, entry: ListedSession, is_unfinished: bool) -> None:
            super().__init__()
            self.entry, self.is_unfinished = entry, is_unfinished

    def __init__(self) -> None:
        super().__init__(markup=False)
        self.can_focus = False
        self.unfinished: Sequence[ListedSession] = ()
        self.filed: Sequence[ListedSession] = ()
        self.reached: dict[Path, str] = {}
        self.lines: list[Line] = []
        self.sought = ""
        self.to_mark = ""
        """Id of a session that is marked when it comes into the list."""
        self.tag_width, self.decision_width = 0, 0
        self.arrow_at: int | None = None

    def show(self, unfinished: Sequence[ListedSession], filed: Sequence[ListedSession]) -> None:
        """List the sessions of the files folder; the marked line stays marked."""
        marked = self.at_hand
        self.highlighted = None  # the arrow leaves its line while the line is still in the list
        self.unfinished, self.filed = unfinished, filed
        self.tag_width = min(max((cell_len(entry.tag) for entry in filed), default=0), WIDEST_TAG)
        self.decision_width = max((len(decision_words(entry)) for entry in filed), default=0)
        self.reached = {entry.path: reached_words(entry) for entry in unfinished}
        self.find(self.sought)
        for index, (entry, _) in enumerate(self.lines):
            if marked and entry.path == marked[0].path:
                self.highlighted = index
        for index, (entry, _) in enumerate(self.lines):
            if self.to_mark and entry.id == self.to_mark:
                self.highlighted, self.to_mark = index, ""

    def find(self, sought: str) -> None:
        """List the lines that contain every word of a text; the first line is marked."""
        self.sought = sought
        words = sought.casefold().split()
        lines: list[Line] = [(entry, True) for entry in self.unfinished]
        if not words:
            lines.append((NEW, False))
        lines += [(entry, False) for entry in self.filed]
        self.highlighted = None
        self.lines = [line for line in lines if self._matches(line, words)]
        self.set_options([Option(self._marked(line, False)) for line in self.lines])
        self.highlighted = 0 if self.lines else None

    def _matches(self, line: Line, words: Sequence[str]) -> bool:
        text = self._line(*line).plain.casefold()
        return all(word in text for word in words)

    def watch_highlighted(self, highlighted: int | None) -> None:
        """Move the arrow with the mark, because a colour alone would say too little."""
        super().watch_highlighted(highlighted)
        for index in (self.arrow_at, highlighted):
            if index is not None and index < self.option_count:
                words = self._marked(self.lines[index], index == highlighted)
                self.replace_option_prompt_at_index(index, words)
        self.arrow_at = highlighted

    @property
    def at_hand(self) -> Line | None:
        """The marked line, None for an empty list."""
        return None if self.highlighted is None else self.lines[self.highlighted]

    @property
    def filed_at_hand(self) -> ListedSession | None:
        """The marked session, if it is filed and can be read."""
        entry, is_unfinished = self.at_hand or (NEW, False)
        return None if entry is NEW or is_unfinished or entry.fault else entry

    def action_select(self) -> None:
        """Open the marked line."""
        if self.at_hand is not None:
            self.post_message(self.Opened(*self.at_hand))

    def _marked(self, line: Line, is_at_hand: bool) -> Content:
        return Content("▸ " if is_at_hand else "  ") + self._line(*line)

    def _line(self, entry: ListedSession, is_unfinished: bool) -> Content:
        if entry is NEW:
            return Content.styled("+ measure a new vehicle", "bold")
        if entry.fault:
            return Content.assemble(("! cannot be read  ", "bold $error"), entry.fault)
        when = f"{entry.opened:%Y-%m-%d}" if entry.opened else ""
        if is_unfinished:
            return Content.assemble(
                ("… unfinished, go on  ", "bold $warning"),
                (f"{entry.tag}  ", "bold"),
                f"{self.reached[entry.path]}{when}  {entry.kind}  {entry.description}",
            )
        verdict = mark_and_word(entry.overall) if entry.overall else "— no verdict"
        columns = [when, set_cell_size(entry.kind, KIND_WIDTH), entry.description]
        if self.decision_width:
            columns.insert(2, set_cell_size(decision_words(entry), self.decision_width))
        return Content.assemble(
            (f"{set_cell_size(entry.tag, self.tag_width)}  ", "bold"),
            (set_cell_size(verdict, VERDICT_WIDTH), TONE_COLOURS.get(tone_of(entry.overall), "")),
            f"  {'  '.join(columns)}",
        )


def decision_words(entry: ListedSession) -> str:
    """The shop lead's last decision in a word or two."""
    return DECISIONS.get(entry.decision, entry.decision)
