"""A list of choices: one line is chosen, or several are ticked."""

from collections.abc import Sequence
from typing import Any

from textual.binding import Binding
from textual.content import Content
from textual.events import Key
from textual.message import Message
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from wizard.questions.question import YES_OR_NO, Choice

YES_OR_NO_KEYS = ("y", "n")
"""Keys that mark the lines of YES_OR_NO."""


class ChoiceList(OptionList, inherit_bindings=False):
    """A list whose lines are marked by arrows, by number, or by the letters y and n.

    Enter submits the marked line. Where several lines can be ticked, space or a number ticks a
    line, and Enter submits the ticked lines. The mouse submits a line at once.
    """

    BINDINGS = [
        Binding("enter", "submit", show=False),
        Binding("space", "select", show=False),
        Binding("up", "cursor_up", show=False),
        Binding("down", "cursor_down", show=False),
        Binding("home", "first", show=False),
        Binding("end", "last", show=False),
    ]

    class Chosen(Message):
        """A choice was submitted.

        Attributes
        ----------
        value : str, bool, list of str, or None
            Value of the marked line, or the values of the ticked lines; None without a mark.
        """

        def __init__(self, value: Any) -> None:
            super().__init__()
            self.value = value

    def __init__(self) -> None:
        super().__init__(markup=False)
        self.choices: tuple[Choice, ...] = ()
        self.several = False
        self.ticked: set[int] = set()
        self.has_answered = False
        """True after a choice was submitted; a key pressed then is meant for another question."""

    def begin(
        self,
        choices: Sequence[Choice],
        chosen: Any = None,
        several: bool = False,
        unmarked: bool = False,
    ) -> None:
        """Show other choices.

        Parameters
        ----------
        choices : sequence of Choice
        chosen
            The value, or the list of values, to begin with.
        several : bool
            True if several lines can be ticked.
        unmarked : bool
            True if no line is marked without a chosen value; otherwise the first line is marked.
        """
        self.highlighted = None
        self.has_answered = False
        self.choices, self.several = tuple(choices), several
        values = [choice.value for choice in choices]
        ticked = chosen if several and isinstance(chosen, list) else [chosen]
        self.ticked = {index for index, value in enumerate(values) if value in ticked}
        self.set_options([Option(self._words(index)) for index in range(len(choices))])
        first = None if unmarked and not several else 0
        self.highlighted = first if several else min(self.ticked, default=first)

    def _words(self, index: int) -> Content:
        choice = self.choices[index]
        box = ("[x] " if index in self.ticked else "[ ] ") if self.several else ""
        arrow = "▸" if index == self.highlighted else " "
        number = f"{index + 1:>{len(str(len(self.choices)))}}"
        note = f"  {choice.note}" if choice.note else ""
        return Content.assemble(
            f"{arrow} {number}  {box}",
            (choice.words, "bold"),
            (note, "italic"),
        )

    def watch_highlighted(self, highlighted: int | None) -> None:
        """Move the arrow with the mark, because a colour alone would say too little."""
        super().watch_highlighted(highlighted)
        self._write()

    def _write(self) -> None:
        for index in range(min(len(self.choices), self.option_count)):
            self.replace_option_prompt_at_index(index, self._words(index))

    def on_key(self, event: Key) -> None:
        """Mark a line by its number, or yes and no by their first letters."""
        if self.has_answered:
            event.stop()
            event.prevent_default()
            return
        if event.character and event.character.isdigit():
            index = (int(event.character) or 10) - 1
        elif self.choices == YES_OR_NO and event.character in YES_OR_NO_KEYS:
            index = YES_OR_NO_KEYS.index(event.character)
        else:
            return
        if 0 <= index < len(self.choices):
            event.stop()
            self.highlighted = index
            if self.several:
                self.action_select()

    def action_select(self) -> None:
        """Tick the line at hand, or submit it where only one line can be chosen."""
        if self.highlighted is None:
            return
        if not self.several:
            self.action_submit()
            return
        self.ticked ^= {self.highlighted}
        self._write()

    def action_submit(self) -> None:
        """Submit the choice once, however fast Enter is pressed again."""
        if self.has_answered:
            return
        self.has_answered = self.answer is not None
        self.post_message(self.Chosen(self.answer))

    def reopen(self) -> None:
        """Take another answer to the same question."""
        self.has_answered = False

    @property
    def answer(self) -> Any:
        """Value of the marked line, None without a mark, or the values of the ticked lines."""
        if self.several:
            return [self.choices[index].value for index in sorted(self.ticked)]
        return None if self.highlighted is None else self.choices[self.highlighted].value
