"""Text whose parts do something when the mouse presses them, as their keys do."""

from textual.content import Content
from textual.events import Click
from textual.style import Style
from textual.widget import Widget


def does(content: Content, action: str) -> Content:
    """The same text, which runs an action of its screen when it is pressed."""
    return content.stylize(Style.from_meta({"does": action}))


class Pressable(Widget):
    """Runs the action under the mouse; unlike a link it keeps the colours of its text."""

    async def on_click(self, event: Click) -> None:
        """Do what the pressed part says."""
        action = event.style.meta.get("does")
        if action is not None:
            event.stop()
            await self.app.run_action(action, self.screen)
