"""The order of keys that are typed fast into a field. Each test says when the next line begins."""

from textual.app import App, ComposeResult

from wizard.tui.widgets.field import Field


class OneField(App[None]):
    """Collects the submitted lines."""

    def __init__(self) -> None:
        super().__init__()
        self.lines: list[str] = []

    def compose(self) -> ComposeResult:
        yield Field(keeps_typing_ahead=True)

    def on_input_submitted(self, event: Field.Submitted) -> None:
        self.lines.append(event.value)


async def burst(pilot, *keys: str) -> Field:
    """Send all keys at once, like a tape that types its readings; returns the field."""
    for key in keys:
        pilot.app.simulate_key(key)
    await pilot.pause()
    return pilot.app.query_one(Field)


async def begin(pilot, text: str) -> None:
    """Begin the next line."""
    pilot.app.query_one(Field).begin(text)
    await pilot.pause()


async def test_lines_typed_at_once_do_not_run_into_each_other():
    async with OneField().run_test() as pilot:
        field = await burst(pilot, "1", "8", "enter", "2", "4", "enter", "7")
        assert pilot.app.lines == ["18"]
        await begin(pilot, "")
        assert pilot.app.lines == ["18", "24"]
        await begin(pilot, "")
        assert pilot.app.lines == ["18", "24"]
        assert field.value == "7"


async def test_an_edit_takes_effect_in_its_order():
    async with OneField().run_test() as pilot:
        await burst(pilot, "1", "7", "backspace", "8", "enter")
        assert pilot.app.lines == ["18"]


async def test_keys_after_a_cleared_line_are_kept():
    async with OneField().run_test() as pilot:
        field = await burst(pilot, "9", "9", "ctrl+u", "1", "8")
        assert field.value == "18"


async def test_keys_typed_ahead_of_an_older_text_are_dropped():
    async with OneField().run_test() as pilot:
        field = await burst(pilot, "1", "enter", "2")
        await begin(pilot, "20 in")
        assert field.value == "20 in"
