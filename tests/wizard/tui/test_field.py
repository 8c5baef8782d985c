"""The order of keys that are typed fast into a field."""

from textual.app import App, ComposeResult

from wizard.tui.widgets.field import Field

SLOW = 0.05
"""Time that an answer takes here, s."""


class OneField(App[None]):
    """Collects the submitted lines; the next question comes some time later."""

    def __init__(self, asks_again: bool = True) -> None:
        super().__init__()
        self.asks_again = asks_again
        self.lines: list[str] = []

    def compose(self) -> ComposeResult:
        yield Field(keeps_typing_ahead=True)

    def on_input_submitted(self, event: Field.Submitted) -> None:
        self.lines.append(event.value)
        if self.asks_again:
            self.set_timer(SLOW, lambda: self.query_one(Field).begin(""))


def burst(app: App[None], *keys: str) -> None:
    """Send all keys at once, like a tape that types its readings."""
    for key in keys:
        app.simulate_key(key)


async def until(pilot, lines: int) -> None:
    for _ in range(100):
        if len(pilot.app.lines) >= lines:
            return
        await pilot.pause(SLOW)


async def test_lines_typed_at_once_do_not_run_into_each_other():
    async with OneField().run_test() as pilot:
        burst(pilot.app, "1", "8", "enter", "2", "4", "enter", "7")
        await until(pilot, 2)
        await pilot.pause(2 * SLOW)
        assert pilot.app.lines == ["18", "24"]
        assert pilot.app.query_one(Field).value == "7"


async def test_an_edit_takes_effect_in_its_order():
    async with OneField().run_test() as pilot:
        burst(pilot.app, "1", "7", "backspace", "8", "enter")
        await until(pilot, 1)
        assert pilot.app.lines == ["18"]


async def test_keys_after_a_cleared_line_are_kept():
    async with OneField().run_test() as pilot:
        burst(pilot.app, "9", "9", "ctrl+u", "1", "8")
        await pilot.pause(SLOW)
        assert pilot.app.query_one(Field).value == "18"


async def test_keys_typed_ahead_of_an_older_text_are_dropped():
    async with OneField(asks_again=False).run_test() as pilot:
        burst(pilot.app, "1", "enter", "2")
        await pilot.pause()
        pilot.app.query_one(Field).begin("20 in")
        await pilot.pause(SLOW / 2)
        assert pilot.app.query_one(Field).value == "20 in"
