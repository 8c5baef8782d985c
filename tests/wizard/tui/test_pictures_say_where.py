"""Every question's picture: no wheel is cut, and no word hides a line, a mark or another word."""

from collections import Counter

import pytest

from core.documents.document import with_value
from core.kinematics.pivots import GuideKind, Layout
from tests.wizard.tui.driving import TRUE_TRUCK, app_in, draft_at, measuring
from tests.wizard.tui.looking import DEMO, open_session, workshop_app
from wizard.flow.profile_choices import nearest_profile
from wizard.locations import PROFILES
from wizard.tui.pictures.drawing import ACROSS, DOWN, Drawing
from wizard.tui.pictures.front_view import FrontView

SIZES = [(80, 24), (120, 40)]
KINDS = [
    (Layout.KNUCKLE, GuideKind.RADIUS_ARMS),
    (Layout.TIE_ROD, GuideKind.UNMEASURED),
    (Layout.INVERTED_Y, GuideKind.TWO_ARMS),
    (Layout.FORE_AFT, GuideKind.LEAF),
]


@pytest.fixture
def hidden(monkeypatch):
    """Words that were written over something, with what they hide, since it was cleared."""
    found = []
    write = Drawing.write

    def recorded(drawing, column, row, text, name):
        under = [drawing.get_pixel(column + place, row)[0] for place in range(len(text))]
        covered = "".join(under).strip()
        if covered:
            found.append((type(drawing).__name__, text, covered))
        write(drawing, column, row, text, name)

    monkeypatch.setattr(Drawing, "write", recorded)
    return found


@pytest.fixture
def cut(monkeypatch):
    """Points of wheels that a front view has drawn beyond its edge."""
    found = []
    line = FrontView.line

    def recorded(view, points, name, *dashes, **thick):
        if name == "front-view--wheel":
            right, bottom = view.sheet.width * ACROSS, view.sheet.height * DOWN
            found.extend((x, y) for x, y in points if not (0 <= x < right and 0 <= y < bottom))
        line(view, points, name, *dashes, **thick)

    monkeypatch.setattr(FrontView, "line", recorded)
    return found


def with_kind(flow, layout, guide):
    """The same session with another layout and guide, and the profile nearest to them."""
    profile = nearest_profile([PROFILES], layout, guide)
    document = with_value(flow.document, "session.profile", profile.name)
    for key, value in (
        ("steering", layout.value),
        ("guide", guide.value),
        ("track_bar", profile.track_bar),
        ("arm", profile.arm.value),
        ("pitman", profile.pitman.value),
    ):
        document = with_value(document, f"layout.{key}", value)
    return flow.with_document(document).with_profile(profile)


@pytest.mark.parametrize("size", SIZES, ids=str)
@pytest.mark.parametrize(("layout", "guide"), KINDS)
@pytest.mark.parametrize("is_measured", [False, True])
async def test_words_of_every_question_hide_nothing(
    tmp_path, hidden, cut, layout, guide, size, is_measured
):
    draft_at(tmp_path, "readings.track_bar.frame.height")
    faults = Counter()
    async with app_in(tmp_path).run_test(size=size) as pilot:
        await pilot.press("enter")
        screen = measuring(pilot)
        flow = with_kind(screen.flow, layout, guide)
        if is_measured:
            for path, text in TRUE_TRUCK.items():
                if path.startswith("readings."):
                    flow = flow.with_document(with_value(flow.document, path, [f"{text} in"]))
        screen.flow = flow
        for question in flow.asked:
            if question.kind in ("show", "file", "profile"):
                continue
            hidden.clear()
            screen.flow = flow.going_to(question.path)
            screen.ask()
            await pilot.pause()
            assert not cut, question.path
            for fault in hidden:
                faults[question.path, *fault] += 1
    assert not faults


@pytest.mark.parametrize("size", SIZES, ids=str)
@pytest.mark.parametrize("name", DEMO)
async def test_no_wheel_of_a_filed_session_is_cut(tmp_path, cut, name, size):
    async with workshop_app(tmp_path).run_test(size=size) as pilot:
        await open_session(pilot, name)
        assert pilot.app.screen.query_one(FrontView).sheet.area
        assert not cut
