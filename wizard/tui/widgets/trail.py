"""The trail of steps: done, at hand, or to come."""

from rich.cells import cell_len
from textual.content import Content
from textual.reactive import reactive

from wizard.flow.progress import Progress
from wizard.tui.widgets.pressable import Pressable, with_action

MARKS = {"done": "✓", "open": "…", "here": "▸", "to come": "·"}
STYLES = {"done": "$quiet", "open": "$warning", "here": "bold $accent", "to come": "$quiet"}


class Trail(Pressable):
    """One line of steps around the step at hand; steps without room are left out."""

    progress: reactive[tuple[Progress, ...]] = reactive(())

    def render(self) -> Content:
        """The step at hand with its number, and as many steps around it as fit."""
        if not self.progress:
            return Content()
        states = [progress.state for progress in self.progress]
        words = [step_words(progress, number) for number, progress in enumerate(self.progress, 1)]
        first, last = self._fitting(words, states.index("here"))
        parts = [
            with_action(
                Content.styled(words[index], STYLES[states[index]]),
                f"go_to_step({self.progress[index].step.name!r})",
            )
            for index in range(first, last + 1)
        ]
        before = Content.styled("‹  " if first else "", "$quiet")
        after = Content.styled("  ›" if last < len(words) - 1 else "", "$quiet")
        return before + Content("  ").join(parts) + after

    def _fitting(self, words: list[str], here: int) -> tuple[int, int]:
        """First and last visible step.

        Around the step `here`, a later and an earlier step are added in turn while they fit.
        """
        first = last = here
        while True:
            fits = [
                (low, high)
                for low, high in ((first, last + 1), (first - 1, last))
                if low >= 0 and high < len(words) and self._has_room(words[low : high + 1])
            ]
            if not fits:
                return first, last
            first, last = fits[0] if last - here <= here - first else fits[-1]

    def _has_room(self, words: list[str]) -> bool:
        """True if the words fit into the line, with the signs for more steps beside them."""
        signs = 6
        return sum(map(cell_len, words)) + 2 * (len(words) - 1) <= self.size.width - signs


def step_words(progress: Progress, number: int) -> str:
    """Mark and name of a step; the step at hand has its number and its count of answers too."""
    mark = MARKS[progress.state]
    if progress.state != "here":
        return f"{mark} {progress.step.name}"
    count = f", {progress.done} of {progress.total} answered" if progress.total > 1 else ""
    return f"{mark} {number} {progress.step.name}{count}"
