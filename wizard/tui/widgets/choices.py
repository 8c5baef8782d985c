"""A list to choose from: one line of it, or as many as are ticked."""

from collections.abc import Sequence
from typing import Any

from textual.binding import Binding
from textual.content import Content
from textual.events import Key
from textual.message import Message
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from wizard.questions.question import Choice


class Choices(OptionList, inherit_bindings=False):
    """Arrows, the number of a line or the first letter of yes and no mark a line; Enter takes it.

    Where several lines can be ticked, space or a number ticks and Enter goes on. The mouse takes a
    line at once.
    """

    BINDINGS = [
        Binding("enter", "hand_in", show=False),
        Binding("space", "select", show=False),
        Binding("up", "cursor_up", show=False),
        Binding("down", "cursor_down", show=False),
        Binding("home", "first", show=False),
        Binding("end", "last", show=False),
    ]

    class Chosen(Message):
        """The value of the line that is marked, or a list of those ticked; None without a mark."""

        def __init__(self, value: Any) -> None:
            super().__init__()
            self.value = value

    def __init__(self, *, id: str | None = None) -> None:
        super().__init__(id=id, markup=False)
        self.choices: tuple[Choice, ...] = ()
        self.several = False
        self.ticked: set[int] = set()
        self.has_answered = False  # what is pressed now was not meant for this question

    def begin(
        self,
        choices: Sequence[Choice],
        chosen: Any = None,
        several: bool = False,
        unmarked: bool = False,
    ) -> None:
        """Begin with other choices; `chosen` is the first value, or the list of values.

        Without one the first line is marked, or none where `unmarked`.
        """
        self.highlighted = None
        self.has_answered = False
        self.choices, self.several = tuple(choices), several
        values = [choice.value for choice in choices]
        already = chosen if several and isinstance(chosen, list) else [chosen]
        self.ticked = {index for index, value in enumerate(values) if value in already}
        self.set_options([Option(self._words(index)) for index in range(len(choices))])
        first = None if unmarked and not several else 0
        self.highlighted = first if several else min(self.ticked, default=first)

    def _words(self, index: int) -> Content:
        choice = self.choices[index]
        box = ("[x] " if index in self.ticked else "[ ] ") if self.several else ""
        here = "▸" if index == self.highlighted else " "
        number = f"{index + 1:>{len(str(len(self.choices)))}}"
        note = f"  {choice.note}" if choice.note else ""
        return Content.assemble(
            f"{here} {number}  {box}",
            (choice.words, "bold"),
            (note, "italic"),
        )

    def watch_highlighted(self, highlighted: int | None) -> None:
        """Carry the arrow along: colour alone would not do."""
        super().watch_highlighted(highlighted)
        self._write()

    def _write(self) -> None:
        for index in range(min(len(self.choices), self.option_count)):
            self.replace_option_prompt_at_index(index, self._words(index))

    def on_key(self, event: Key) -> None:
        """A number, or the first letter of yes and no."""
        if self.has_answered:
            event.stop()
            event.prevent_default()
            return
        letters = [str(choice.words)[0] for choice in self.choices]
        if event.character and event.character.isdigit():
            index = (int(event.character) or 10) - 1
        elif letters == ["y", "n"] and event.character in letters:
            index = letters.index(event.character)
        else:
            return
        if 0 <= index < len(self.choices):
            event.stop()
            self.highlighted = index
            if self.several:
                self.action_select()

    def action_select(self) -> None:
        """Tick the line at hand, or choose it where only one can be chosen."""
        if self.highlighted is None:
            return
        if not self.several:
            self.action_hand_in()
            return
        self.ticked ^= {self.highlighted}
        self._write()

    def action_hand_in(self) -> None:
        """Go on with what is chosen; once, however fast Enter is pressed again."""
        if self.has_answered:
            return
        self.has_answered = self.given is not None
        self.post_message(self.Chosen(self.given))

    def stay(self) -> None:
        """The question is still the same one."""
        self.has_answered = False

    @property
    def given(self) -> Any:
        """Answer that Enter hands in: the marked value or None, or the ticked values."""
        if self.several:
            return [self.choices[index].value for index in sorted(self.ticked)]
        return None if self.highlighted is None else self.choices[self.highlighted].value
