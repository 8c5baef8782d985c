"""Text whose parts run an action when the mouse presses them, as their keys do."""

from textual.content import Content
from textual.events import Click
from textual.style import Style
from textual.widget import Widget

ACTION = "pressed_action"
"""Key of an action in the style of a text."""


def with_action(content: Content, action: str) -> Content:
    """The same text, which runs an action of its screen when it is pressed."""
    return content.stylize(Style.from_meta({ACTION: action}))


class Pressable(Widget):
    """Runs the action under the mouse; unlike a link it keeps the colours of its text."""

    async def on_click(self, event: Click) -> None:
        """Run the action of the pressed part."""
        action = event.style.meta.get(ACTION)
        if action is not None:
            event.stop()
            await self.app.run_action(action, self.screen)
