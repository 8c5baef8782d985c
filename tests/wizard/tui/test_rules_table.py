"""The table of rules."""

from math import nan

import pytest

from tests.wizard.tui.picture_app import LARGE, SMALL, PictureApp, text_of
from wizard.tui.pictures.rules_table import RulesTable
from wizard.views.picture_data import RuleRow

# Invented readings; one of each verdict among those that decide.
RULES = [
    RuleRow("parallel", "parallel", -2.9, 0.5, 1.5, "out", 0.003),
    RuleRow("track_bar_slope", "flat, track bar", 12.4, 0.5, 10, "out", 0.0, decides=False),
    RuleRow(
        "drag_link_slope", "flat, drag link", 9.6, 0.5, 10, "too close to call", 0.93, decides=False
    ),
    RuleRow(
        "length_ratio",
        "near in length",
        0.97,
        0.004,
        0.85,
        "within",
        1.0,
        unit="",
        at_least=True,
        decides=False,
    ),
    RuleRow("peak_steer", "steer", 0.52, 0.31, 0.5, "too close to call", 0.44),
    RuleRow("peak_toe_change", "toe", 0.0, 0.0, 0.25, "within", 1.0),
]


async def said(rules: list[RuleRow], size: tuple[int, int]) -> list[str]:
    table = RulesTable(rules)
    async with PictureApp(table).run_test(size=size):
        return [line.rstrip() for line in text_of(table).splitlines()]


class TestWhatItSays:
    async def test_a_line_for_each_rule_where_there_is_room(self):
        lines = await said(RULES, LARGE)
        assert lines[1].split("  ")[0] == "✗ out"
        assert "-2.9 deg, give or take 0.5" in lines[1]
        assert "at most 1.5 deg" in lines[1]
        assert "less than 1 in 100" in lines[1]
        assert len(lines) == 1 + len(RULES) + 1

    async def test_two_lines_where_there_is_not(self):
        lines = await said(RULES, SMALL)
        assert lines[0] == "✗ out                parallel          -2.9 deg, give or take 0.5"
        assert lines[1].strip() == "at most 1.5 deg; less than 1 in 100 that it is within"
        assert len(lines) == 2 * len(RULES) + 1
        assert max(map(len, lines)) <= 78

    async def test_small_limits_are_read_to_hundredths(self):
        assert "0.52 deg, give or take 0.31" in "\n".join(await said(RULES, SMALL))

    async def test_what_decides_comes_first_and_the_rest_is_said_to_be_advice(self):
        lines = "\n".join(await said(RULES, LARGE))
        advice = lines.index("For advice")
        assert all(lines.index(name) < advice for name in ("parallel", "steer", "toe"))
        assert all(lines.index(name) > advice for name in ("flat, track bar", "near in length"))

    @pytest.mark.parametrize("size", [SMALL, LARGE])
    async def test_what_is_not_known_is_said(self, size):
        text = "\n".join(
            await said([RuleRow("peak_steer", "steer", nan, nan, 0.5, "unheard of", nan)], size)
        )
        assert "— unheard of" in text
        assert text.count("not known") == 2

    async def test_text_is_no_markup(self):
        rule = RuleRow("peak_steer", "[b]steer[/b]", 0.1, None, 0.5, "within")
        assert "[b]steer[/b]" in "\n".join(await said([rule], SMALL))

    async def test_other_rules_take_their_place(self):
        table = RulesTable(RULES)
        async with PictureApp(table).run_test(size=SMALL) as pilot:
            table.show(RULES[:1])
            await pilot.pause()
            assert table.size.height == 2


class TestLooks:
    @pytest.mark.parametrize("size", [SMALL, LARGE], ids=["80x24", "120x40"])
    def test_table(self, snap_compare, size):
        assert snap_compare(PictureApp(RulesTable(RULES)), terminal_size=size)
