"""A line with the verdict as it stands, while readings are still to come."""

from textual.content import Content
from textual.widgets import Static

from core.verdict.standing import Standing
from wizard.phrases.standing import strip_words


class Strip(Static):
    """The verdict as it stands, its chance, and the readings that could still change it."""

    def show(self, standing: Standing | None) -> None:
        """Show where the verdict stands; hide the line before it can be said."""
        self.display = standing is not None
        if standing is not None:
            style = "bold $accent" if standing.is_decided else "bold"
            self.update(Content.styled(strip_words(standing), style))
