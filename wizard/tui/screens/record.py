"""A filed session: its verdict, computed afresh from the record."""

from collections.abc import Callable
from pathlib import Path

from core.documents.document import Document, value_at
from core.documents.record import RecordError
from core.profiles.profile import Profile, ProfileError
from core.text.plain_text import plain
from core.verdict.verdict import Overall
from wizard.tui.screens.decision import DecisionScreen
from wizard.tui.screens.filed_plans import FiledPlansScreen
from wizard.tui.screens.verdict import VerdictScreen
from wizard.tui.widgets.keys import Key


class RecordScreen(VerdictScreen[None]):
    """The verdict on a record.

    Parameters
    ----------
    path : Path
    document : mapping
        The contents of the record.
    profile_of : callable
    """

    BINDINGS = [
        ("c,C", "compare", "compare"),
        ("p,P", "plans", "plans"),
        ("d,D", "decide", "decide"),
        ("w,W", "page", "page"),
        ("f6", "again", "again"),
    ]

    def __init__(
        self, path: Path, document: Document, profile_of: Callable[[str], Profile]
    ) -> None:
        super().__init__(document, profile_of)
        self.path = path

    def keys(self) -> tuple[Key, ...]:
        """Keys that do something with the record."""
        return (
            Key("Esc", "back", "back"),
            *([Key("C", "before and after", "compare")] if self.verdict else []),
            *([Key("P", "plans", "plans")] if self.has_bump_steer else []),
            Key("D", "sign or send back", "decide"),
            *([Key("W", "page to print", "page")] if self.verdict else []),
            Key("F6", "measure again", "again"),
            *super().keys(),
        )

    @property
    def folder(self) -> Path:
        """The folder of the record, which holds its photographs too."""
        return self.path.parent

    @property
    def has_bump_steer(self) -> bool:
        """True if the verdict is bump steer."""
        return self.verdict is not None and self.verdict.overall == Overall.BUMP_STEER

    def action_plans(self) -> None:
        """Show plans for the vehicle as it was measured."""
        if not self.has_bump_steer:
            return
        try:
            profile = self.profile_of(str(value_at(self.document, "session.profile", "")))
        except ProfileError as error:
            self.app.warn(str(error))
        else:
            self.app.push_screen(FiledPlansScreen(self.path, self.document, profile))

    def action_compare(self) -> None:
        """Compare with the session it follows, or with another one."""
        if self.verdict:
            self.app.compare(self.path)

    def action_decide(self) -> None:
        """Ask for the lead's decision."""

        def show_decision(document: Document | None) -> None:
            if document is not None:
                self.document = document
                self.show()

        self.app.push_screen(DecisionScreen(self.path, self.document), show_decision)

    def action_page(self) -> None:
        """Write the owner's page beside the record."""
        if self.verdict is None:
            return
        write = self.app.surroundings.write_page
        try:
            path = write(self.path, self.document, self.verdict, self.unit)
        except (RecordError, ProfileError) as error:
            self.app.warn(str(error))
        else:
            self.notify(f"the page is made: {plain(path, 300)}", markup=False)

    def action_again(self) -> None:
        """Measure this vehicle again."""
        self.dismiss(None)
        self.app.measure_again(self.path)

    def action_back(self) -> None:
        """Go back to the screen that opened this one."""
        self.dismiss(None)
