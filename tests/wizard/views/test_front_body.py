"""Parts of the vehicle that nobody measures, in the front view."""

from wizard.views.front_body import ABOVE_PIVOTS, front_body
from wizard.views.picture_data import FrontPicture, Wheels

PIVOTS = {
    "track_bar.frame": (-400.0, 640.0),
    "track_bar.axle": (-1250.0, 520.0),
    "drag_link.frame": (-500.0, 560.0),
    "drag_link.axle": (-1400.0, 440.0),
}
WHEELS = Wheels((0.0, 420.0), (-1600.0, 420.0))


def test_both_rails_are_above_the_frame_ends_and_mirror_each_other():
    body = front_body(FrontPicture(PIVOTS, wheels=WHEELS))
    (first, second) = body.rails
    assert min(up for _, up in first) == 640.0 + ABOVE_PIVOTS
    middles = [sum(across for across, _ in rail[:4]) / 4 for rail in (first, second)]
    assert sum(middles) / 2 == -800.0


def test_a_bracket_goes_up_from_each_frame_end():
    body = front_body(FrontPicture(PIVOTS, wheels=WHEELS))
    assert [line[0] for line in body.brackets] == [
        PIVOTS["track_bar.frame"],
        PIVOTS["drag_link.frame"],
    ]


def test_the_arm_goes_from_the_kingpin_to_a_ball_that_is_near():
    body = front_body(FrontPicture(PIVOTS, wheels=WHEELS))
    assert body.arms[0][1] == PIVOTS["drag_link.axle"]
    on_the_tie_rod = {**PIVOTS, "drag_link.axle": (-900.0, 440.0)}
    assert not front_body(FrontPicture(on_the_tie_rod, wheels=WHEELS)).arms


def test_without_wheels_there_is_nothing_to_hang_it_on():
    assert not front_body(FrontPicture(PIVOTS)).lines
