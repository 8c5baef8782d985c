"""The list of the first page: unfinished sessions, then filed ones, newest first."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path

from rich.cells import cell_len, set_cell_size
from textual.content import Content
from textual.message import Message
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from core.documents.record import RecordError, read_document
from core.documents.record_list import ListedSession
from wizard.flow.flow import step_reached
from wizard.phrases.decisions import DECISIONS
from wizard.phrases.verdict_words import mark_and_word, tone_of

NEW = ListedSession(Path())
"""Stands for the line that begins a new session."""

WIDEST_TAG = 16
"""Columns a tag gets at most; the whole of it is seen when the session is opened."""

KIND_WIDTH = len("re-measure")

Line = tuple[ListedSession, bool]
"""A session, and whether it is unfinished."""

COLOURS = {"good": "$success", "bad": "$error", "open": "$warning", "held": "$warning"}


def reached(entry: ListedSession) -> str:
    """The step an unfinished session had reached, "at Pivots  "; empty where it does not say."""
    with suppress(RecordError):
        step = "" if entry.fault else step_reached(read_document(entry.path))
        return f"at {step}  " if step else ""
    return ""


class Sessions(OptionList):
    """One line a session; each says its verdict in mark and word, or why it cannot be read."""

    class Opened(Message):
        """A line was chosen."""

        def __init__(self, entry: ListedSession, is_unfinished: bool) -> None:
            super().__init__()
            self.entry, self.is_unfinished = entry, is_unfinished

    def __init__(self) -> None:
        super().__init__(markup=False)
        self.can_focus = False
        self.unfinished: Sequence[ListedSession] = ()
        self.filed: Sequence[ListedSession] = ()
        self.reached: dict[Path, str] = {}
        self.shown: list[Line] = []
        self.wanted = ""
        self.to_mark = ""  # the id of a session that is marked as soon as it is in the list
        self.tag_width, self.decision_width = 0, 0
        self.arrow_at: int | None = None

    def show(self, unfinished: Sequence[ListedSession], filed: Sequence[ListedSession]) -> None:
        """Show what the files folder holds; the line that is marked stays marked."""
        marked = self.at_hand
        self.highlighted = None  # the arrow leaves its line while that is still known
        self.unfinished, self.filed = unfinished, filed
        self.tag_width = min(max((cell_len(entry.tag) for entry in filed), default=0), WIDEST_TAG)
        self.decision_width = max((len(decided(entry)) for entry in filed), default=0)
        self.reached = {entry.path: reached(entry) for entry in unfinished}
        self.find(self.wanted)
        for place, (entry, _) in enumerate(self.shown):
            if marked and entry.path == marked[0].path:
                self.highlighted = place
        for place, (entry, _) in enumerate(self.shown):
            if self.to_mark and entry.id == self.to_mark:
                self.highlighted, self.to_mark = place, ""

    def find(self, wanted: str) -> None:
        """Show the lines that hold every word of `wanted`, the first one marked."""
        self.wanted = wanted
        words = wanted.casefold().split()
        lines: list[Line] = [(entry, True) for entry in self.unfinished]
        if not words:
            lines.append((NEW, False))
        lines += [(entry, False) for entry in self.filed]
        self.highlighted = None
        self.shown = [line for line in lines if self._holds(line, words)]
        self.set_options([Option(self._marked(line, False)) for line in self.shown])
        self.highlighted = 0 if self.shown else None

    def _holds(self, line: Line, words: Sequence[str]) -> bool:
        text = self._line(*line).plain.casefold()
        return all(word in text for word in words)

    def watch_highlighted(self, highlighted: int | None) -> None:
        """Carry the arrow along: colour alone would not do."""
        super().watch_highlighted(highlighted)
        for place in (self.arrow_at, highlighted):
            if place is not None and place < self.option_count:
                words = self._marked(self.shown[place], place == highlighted)
                self.replace_option_prompt_at_index(place, words)
        self.arrow_at = highlighted

    @property
    def at_hand(self) -> Line | None:
        """The line that is marked: its session, and whether that is unfinished."""
        return None if self.highlighted is None else self.shown[self.highlighted]

    @property
    def filed_at_hand(self) -> ListedSession | None:
        """The filed session that is marked."""
        entry, is_unfinished = self.at_hand or (NEW, False)
        return None if entry is NEW or is_unfinished or entry.fault else entry

    def action_select(self) -> None:
        """Open the line that is marked."""
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
            columns.insert(2, set_cell_size(decided(entry), self.decision_width))
        return Content.assemble(
            (f"{set_cell_size(entry.tag, self.tag_width)}  ", "bold"),
            (set_cell_size(verdict, 19), COLOURS.get(tone_of(entry.overall), "")),
            f"  {'  '.join(columns)}",
        )


def decided(entry: ListedSession) -> str:
    """The lead's last decision in a word or two."""
    return DECISIONS.get(entry.decision, entry.decision)
