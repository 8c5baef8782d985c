"""A frame of the travel view: 30 a second at 120 columns by 40 rows."""

from itertools import cycle

from tests.wizard.tui.picture_app import LARGE, PictureApp
from tests.wizard.tui.test_front_view import ARCS, PIVOTS, WHEELS_ON_THE_FLOOR, pose
from wizard.tui.pictures.front_view import FrontView
from wizard.views.picture_data import FrontPicture


async def test_a_frame_is_drawn_thirty_times_a_second(benchmark):
    view = FrontView(FrontPicture(PIVOTS, wheels=WHEELS_ON_THE_FLOOR, arcs=ARCS))
    poses = cycle([pose(float(heave)) for heave in range(-120, 101, 5)])

    def frame() -> None:
        view.move(next(poses))
        view.render_lines(view.size.region)

    async with PictureApp(view).run_test(size=LARGE):
        benchmark(frame)
    assert benchmark.stats["median"] < 1 / 30
