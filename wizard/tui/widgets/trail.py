"""The trail of steps: which are done, which one is at hand, which are to come."""

from rich.cells import cell_len
from textual.content import Content
from textual.reactive import reactive

from wizard.flow.flow import Progress
from wizard.tui.widgets.pressable import Pressable, does

MARKS = {"done": "✓", "open": "…", "here": "▸", "to come": "·"}
STYLES = {"done": "$quiet", "open": "$warning", "here": "bold $accent", "to come": "$quiet"}


class Trail(Pressable):
    """One line of steps; what has no room to the left and right of the one at hand is left out."""

    progress: reactive[tuple[Progress, ...]] = reactive(())

    def render(self) -> Content:
        """The steps around the present one as far as they fit, and its number."""
        if not self.progress:
            return Content()
        here = next(i for i, one in enumerate(self.progress) if one.state == "here")
        words = [step_words(one, number + 1) for number, one in enumerate(self.progress)]
        first, last = self._fitting(words, here)
        parts = [
            does(
                Content.styled(words[index], STYLES[self.progress[index].state]),
                f"go_to_step({self.progress[index].step.name!r})",
            )
            for index in range(first, last + 1)
        ]
        before = Content.styled("‹  " if first else "", "$quiet")
        after = Content.styled("  ›" if last < len(words) - 1 else "", "$quiet")
        return before + Content("  ").join(parts) + after

    def _fitting(self, words: list[str], here: int) -> tuple[int, int]:
        """First and last step shown: the one at hand, then a later and an earlier one in turn."""
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
        beside = 6  # the signs that there is more to the left and right
        return sum(map(cell_len, words)) + 2 * (len(words) - 1) <= self.size.width - beside


def step_words(progress: Progress, number: int) -> str:
    """Mark and name of a step; the one at hand with its number and how far it is."""
    mark = MARKS[progress.state]
    if progress.state != "here":
        return f"{mark} {progress.step.name}"
    far = f", {progress.done} of {progress.total} answered" if progress.total > 1 else ""
    return f"{mark} {number} {progress.step.name}{far}"
