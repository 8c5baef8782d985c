import pytest

from core.documents.entries import EntryError
from core.profiles.correction_tables import corrections_at, refuse_unknown_names
from core.profiles.profile_tables import event_from, events_at
from core.text.quantity import INCH

LESS_DROP = {
    "name": "less drop",
    "pivot": "drag_link.frame",
    "rises": ["1 in", "20 mm"],
    "caution": "Torque its nut.",
    "not_with": ["more drop"],
}
DIP = {
    "name": "dip",
    "rise": "0.25 s",
    "hold": "0 s",
    "returns": True,
    "travel": "-2 in",
    "speed": "36 km/h",
    "deceleration": "0 m/s2",
}


class TestCorrections:
    def test_a_correction_is_in_mm(self):
        (correction,) = corrections_at({"corrections": [LESS_DROP]})
        assert correction.pivot == "drag_link.frame"
        assert correction.rises == pytest.approx((INCH, 20.0))
        assert correction.not_with == ("more drop",)

    def test_a_file_without_corrections_has_none(self):
        assert corrections_at({}) == ()

    @pytest.mark.parametrize(
        ("key", "value", "words"),
        [
            ("pivot", "steering.arm", "ride_height"),
            ("rises", [], "different rises"),
            ("rises", ["1 in", "25.4 mm"], "different rises"),
            ("rises", ["0 in"], "none of them 0"),
            ("rises", ["1 in", "-1001 mm"], "at most 1 m"),
            ("ball", "beside", "below, above"),
            ("caution", "", "a line of text"),
            ("cost", "1", "is not known"),
        ],
    )
    def test_a_faulty_correction_is_refused_with_its_number(self, key, value, words):
        second = LESS_DROP | {"name": "second", key: value}
        with pytest.raises(EntryError) as refused:
            corrections_at({"corrections": [LESS_DROP, second]})
        assert str(refused.value).startswith(f"[corrections 2] {key}: ")
        assert words in str(refused.value)

    def test_a_name_that_is_used_twice_is_refused(self):
        with pytest.raises(EntryError, match=r"^\[corrections 2\] name: .*written twice"):
            corrections_at({"corrections": [LESS_DROP, LESS_DROP]})

    @pytest.mark.parametrize(
        ("pivot", "of_file", "own", "tried"),
        [
            ("drag_link.frame", {}, {}, (10.0, 20.0, -30.0)),
            ("ride_height", {}, {}, (20.0, -30.0)),
            ("ride_height", {"least_rise": "25 mm"}, {}, (-30.0,)),
            ("ride_height", {"least_rise": "25 mm"}, {"least_rise": "10 mm"}, (10.0, 20.0, -30.0)),
            ("drag_link.frame", {"least_rise": "40 mm"}, {}, (-30.0,)),
        ],
    )
    def test_small_rises_are_not_tried(self, pivot, of_file, own, tried):
        rises = {"rises": ["10 mm", "20 mm", "-30 mm"], "pivot": pivot}
        (correction,) = corrections_at({"corrections": [LESS_DROP | rises | own], **of_file})
        assert correction.rises_tried == tried

    def test_a_least_rise_above_every_rise_is_refused(self):
        with pytest.raises(EntryError, match=r"^\[corrections 1\] least_rise: is more than every"):
            corrections_at({"corrections": [LESS_DROP | {"least_rise": "2 in"}]})

    @pytest.mark.parametrize("known", [["less drop"], ["less drop", "more lift"]])
    def test_an_unknown_exclusion_is_refused(self, known):
        corrections = corrections_at({"corrections": [LESS_DROP]})
        refuse_unknown_names(corrections, ["less drop", "more drop"])
        with pytest.raises(EntryError, match=r"^\[corrections 1\] not_with: “more drop”"):
            refuse_unknown_names(corrections, known)

    def test_a_correction_cannot_exclude_itself(self):
        corrections = corrections_at({"corrections": [LESS_DROP | {"not_with": ["less drop"]}]})
        with pytest.raises(EntryError, match="another correction"):
            refuse_unknown_names(corrections, ["less drop"])


class TestEvents:
    def test_an_event_is_in_mm_and_seconds(self):
        event = event_from(DIP, "events 1")
        assert (event.rise, event.hold, event.deceleration) == (0.25, 0.0, 0.0)
        assert event.travel == pytest.approx(-2 * INCH)
        assert event.speed == pytest.approx(10_000.0)

    @pytest.mark.parametrize(
        ("key", "value"), [("rise", "0 s"), ("hold", "-1 s"), ("travel", "0 in"), ("returns", "no")]
    )
    def test_a_faulty_event_is_refused_with_its_number(self, key, value):
        with pytest.raises(EntryError, match=rf"^\[events 2\] {key}: "):
            events_at({"events": [DIP, DIP | {key: value}]})
