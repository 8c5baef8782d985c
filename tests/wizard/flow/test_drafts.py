"""Sessions that are not filed yet: begun, measured again, named, kept, resumed."""

from datetime import UTC, datetime

import pytest

from core.documents.document import value_at, with_value
from core.documents.record import RecordError, read_document, save_draft
from core.documents.record_list import list_drafts
from wizard.flow import drafts, opening
from wizard.flow.draft_store import DraftStore
from wizard.flow.flow import Flow
from wizard.locations import PROFILES

OPENED = datetime(2026, 11, 25, 14, 12, 5, tzinfo=UTC)

EARLIER = {
    **drafts.new_session(OPENED),
    "session": {
        "id": "FG-3_20261101-100000_first_aaaa",
        "kind": "first",
        "opened": OPENED,
        "technician": "T. Invented",
        "profile": "coil-crossover",
        "units": "mm",
    },
    "vehicle": {"tag": "FG-3", "odometer": "48210 km", "wheelbase": "118 in"},
    "complaint": {"reported": ["wanders"]},
    "walk_round": {"rim_play": "1 in"},
    "stance": {"level_floor": True},
    "layout": {"steering": "knuckle", "arm": "ahead", "pitman": "ahead"},
    "instruments": {"tape": "1/16 in"},
    "readings": {
        "track_bar": {"frame": {"height": ["24 in"]}, "bent": False},
        "steering": {"arm": ["6 1/2 in"], "pitman_arm": ["6 in"]},
        "travel": {"bump": "4 in"},
    },
}


class TestReMeasure:
    def test_values_that_do_not_change_are_copied(self):
        document = drafts.new_re_measure(EARLIER, OPENED)
        for path in ("vehicle.tag", "vehicle.wheelbase", "layout", "instruments", "session.units"):
            assert value_at(document, path) == value_at(EARLIER, path)
        assert value_at(document, "readings.steering") == {
            "arm": ["6 1/2 in"],
            "pitman_arm": ["6 in"],
        }
        assert value_at(document, "session.kind") == "re-measure"
        assert value_at(document, "session.follows") == EARLIER["session"]["id"]

    def test_values_that_may_have_changed_are_asked_again(self):
        document = drafts.new_re_measure(EARLIER, OPENED)
        for path in (
            *("walk_round", "stance", "complaint", "vehicle.odometer"),
            "readings.track_bar.frame",
        ):
            assert value_at(document, path) is None

    def test_a_re_measure_has_its_own_id(self):
        name = value_at(drafts.new_re_measure(EARLIER, OPENED), "session.id")
        assert name.startswith("FG-3_20261125-141205_re-measure_")

    def test_an_altered_part_is_measured_again(self):
        document = drafts.new_re_measure(EARLIER, OPENED)
        altered = with_value(document, "session.altered", ["drag_link.frame", "track_bar.axle"])
        steering = value_at(
            drafts.without_altered(altered, ["drag_link.frame", "track_bar.axle"]),
            "readings.steering",
        )
        assert steering == {"arm": ["6 1/2 in"]}


class TestId:
    def test_without_a_tag_there_is_no_id(self):
        assert value_at(drafts.with_id(drafts.new_session(OPENED)), "session.id") is None

    def test_the_id_changes_only_with_the_tag(self):
        document = drafts.with_id(with_value(drafts.new_session(OPENED), "vehicle.tag", "FG-3"))
        assert drafts.with_id(document) == document
        other = drafts.with_id(with_value(document, "vehicle.tag", "FG-4"))
        assert value_at(other, "session.id").startswith("FG-4_")

    def test_a_draft_under_an_earlier_tag_is_removed(self, tmp_path):
        first = drafts.with_id(with_value(drafts.new_session(OPENED), "vehicle.tag", "FG-3"))
        DraftStore(tmp_path).keep(first)
        second = drafts.with_id(with_value(first, "vehicle.tag", "FG-4"))
        DraftStore(tmp_path).keep(second, first)
        assert [entry.tag for entry in list_drafts(tmp_path)] == ["FG-4"]

    def test_no_draft_is_kept_without_a_tag(self, tmp_path):
        DraftStore(tmp_path).keep(drafts.new_session(OPENED))
        assert list(tmp_path.iterdir()) == []


class TestOpening:
    def draft(self, files, **changes):
        document = drafts.with_id(with_value(drafts.new_session(OPENED), "vehicle.tag", "FG-3"))
        document = with_value(document, "session.profile", "coil-crossover")
        return save_draft(files, {**document, **changes})

    def test_a_draft_is_resumed_at_its_place(self, tmp_path):
        path = self.draft(tmp_path, draft={"at": "stance.settled", "passed": []})
        opened = opening.open_draft(path, tmp_path, [PROFILES])
        assert opened.flow.question.path == "stance.settled"
        assert opened.flow.profile.name == "coil-crossover"

    def test_a_missing_profile_is_asked_for_again(self, tmp_path):
        path = self.draft(tmp_path)
        opened = opening.open_draft(path, tmp_path, [tmp_path])
        assert opened.flow.question.path == "session.profile"
        assert "coil-crossover" in opened.remark

    @pytest.mark.parametrize(
        "change",
        [
            {"draft": 5},
            {"draft": {"passed": 5}},
            {"draft": {"taken": [3]}},
            {"kept": "no"},
            {"kept": ["no"]},
            {"readings": 7},
            {"readings": {"track_bar": {"frame": "high"}}},
            {"stance": {"ride_height": "level"}},
        ],
        ids=str,
    )
    def test_a_faulty_draft_is_refused_in_one_line(self, tmp_path, change):
        path = self.draft(tmp_path, **change)
        with pytest.raises(RecordError) as refusal:
            opening.open_draft(path, tmp_path, [PROFILES])
        assert str(path) in str(refusal.value)
        assert "\n" not in str(refusal.value)

    def test_a_draft_of_a_newer_version_is_not_changed(self, tmp_path):
        path = self.draft(tmp_path)
        path.write_text(path.read_text().replace("format_version = 1", "format_version = 2"))
        before = path.read_bytes()
        with pytest.raises(RecordError, match="newer"):
            opening.open_draft(path, tmp_path, [PROFILES])
        assert path.read_bytes() == before

    def test_a_re_measure_finds_the_session_it_follows(self, tmp_path):
        save_draft(tmp_path, EARLIER)
        (tmp_path / "FG-3").mkdir()
        filed = tmp_path / "FG-3" / "FG-3_20261101-100000_first_aaaa.toml"
        next((tmp_path / "unfinished").iterdir()).rename(filed)
        again = opening.open_re_measure(filed, [PROFILES])
        DraftStore(tmp_path).keep(again.flow.document)
        (entry,) = list_drafts(tmp_path)
        opened = opening.open_draft(entry.path, tmp_path, [PROFILES])
        assert opened.earlier == read_document(filed)
        assert isinstance(opened.flow, Flow)
