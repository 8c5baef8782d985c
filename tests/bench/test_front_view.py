"""Speed of a frame of the front view: python -m pytest tests/bench/test_front_view.py -s

The test prints its time beside the bound. It asserts no time, because times depend on the machine
and on its load.
"""

from itertools import cycle

from tests.wizard.tui.picture_app import LARGE, PictureApp
from tests.wizard.tui.test_front_view import ARCS, PIVOTS, WHEELS_ON_THE_FLOOR, pose
from wizard.tui.pictures.front_view import FrontView
from wizard.views.picture_data import FrontPicture

FRAME_BOUND = 33
"""Longest time of a frame at 120 columns by 40 rows, ms: thirty frames a second."""


async def test_time_of_a_frame(benchmark):
    view = FrontView(FrontPicture(PIVOTS, wheels=WHEELS_ON_THE_FLOOR, arcs=ARCS))
    poses = cycle([pose(float(heave)) for heave in range(-120, 101, 5)])

    def frame() -> None:
        view.move(next(poses))
        view.render_lines(view.size.region)

    async with PictureApp(view).run_test(size=LARGE):
        benchmark(frame)
    median = 1e3 * benchmark.stats["median"]
    print(f"\na frame of the front view: {median:.0f} ms (bound: {FRAME_BOUND} ms)")
