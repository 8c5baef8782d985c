import errno
import os
import subprocess
import sys
import time
from datetime import UTC, datetime
from pathlib import Path

import pytest

from core.documents import atomic_write, file_lock, record
from core.documents.document import value_at, with_value, without
from core.documents.file_lock import locked
from core.documents.record import NotConfirmed, RecordError
from core.documents.record_list import list_drafts, list_records, remove_leftovers
from core.documents.seal import sealed
from core.documents.signature import sign
from tests.core.documents.late_errors import refuse_to_force_folders

OPENED = datetime(2026, 11, 25, 14, 12, 5, tzinfo=UTC)


def session(name="FG-3_20261125-141205_first_k3f9", tag="FG-3"):
    return {
        "format": "evenarc session",
        "format_version": 1,
        "program_version": "0.1.0",
        "session": {"id": name, "kind": "first", "opened": OPENED, "closed": OPENED},
        "vehicle": {"tag": tag, "description": "crew truck ½ “tall”\nsecond line"},
        "readings": {"track_bar": {"bent": False, "frame": {"height": ["24 1/2 in"]}}},
        "kept": [
            {"reading": "track_bar.frame.height", "reason": "seen"},
            {"note": {"deeper": True}},
        ],
        "results": {"overall": "bump steer", "peak": 0.1},
        "unknown table": {"of a later program": [1, 2.5, True]},
    }


def everything_in(folder: Path) -> list[str]:
    return sorted(str(path.relative_to(folder)) for path in folder.rglob("*") if path.is_file())


def fail(patch, owner, name, number):
    """Make a call of the system fail with an error number."""

    def failing(*_arguments, **_options):
        raise OSError(number, os.strerror(number))

    patch.setattr(owner, name, failing)


def make_old(folder: Path) -> None:
    """Set the time of half-written files back by an hour."""
    for path in folder.rglob("*.part"):
        os.utime(path, (time.time() - 3600,) * 2)


@pytest.fixture
def files(tmp_path):
    return tmp_path / "files"


class TestNames:
    def test_an_id_says_vehicle_time_and_kind(self):
        name = record.new_id("FG-3", "first", OPENED)
        assert name.startswith("FG-3_20261125-141205_first_")
        assert len(name) == len("FG-3_20261125-141205_first_k3f9")
        assert name != record.new_id("FG-3", "first", OPENED)

    @pytest.mark.parametrize("tag", ["FG-3", "7", "KA 12", "Löschzug_2", "v1.2"])
    def test_tags_that_can_name_a_folder(self, tag):
        assert record.tag_fault(tag) == ""

    @pytest.mark.parametrize(
        "tag",
        [
            *("", "../x", ".", "..", "a/b", "a\\b", "-a", ".a", "a.", " a", "a "),
            *("a\nb", "a\x1b[2J", "a\0", "shop", "Shop", "unfinished", "CON", "nul.x", "x" * 33),
            *("COM¹", "lpt³.x", "Com0", "con .x", "PRN", "aux.a.b"),
        ],
    )
    def test_tags_that_cannot_name_a_folder_are_refused_in_one_line(self, tag):
        fault = record.tag_fault(tag)
        assert "like FG-3" in fault
        assert fault.isprintable()
        with pytest.raises(RecordError, match=r"\[vehicle\] tag"):
            record.new_id(tag, "first", OPENED)

    @pytest.mark.parametrize(
        ("path", "value", "reason"),
        [
            ("vehicle.tag", "../x", r"\[vehicle\] tag: “../x” cannot name a folder"),
            ("vehicle.tag", 3, r"\[vehicle\] tag: is"),
            ("session.id", "../../x", r"\[session\] id: “../../x” cannot name a file"),
            ("session.id", "x" * 101, r"\[session\] id"),
            ("session.id", "NUL", r"\[session\] id: “NUL” cannot name a file"),
            ("session.id", None, r"\[session\] id: is missing"),
        ],
    )
    def test_nothing_is_written_outside_the_files_folder(self, files, path, value, reason):
        document = without(session(), path) if value is None else None
        document = document or with_value(session(), path, value)
        with pytest.raises(RecordError, match=reason):
            record.file_record(files, document)
        assert not files.exists()


class TestReading:
    @pytest.mark.parametrize(
        ("content", "reason"),
        [
            (b"", "format: is no Evenarc record; it should be “evenarc session”"),
            (b'format = "other"', "format: is no Evenarc record"),
            (b'format = "evenarc session"', "format_version: None is no version"),
            (b'format = "evenarc session"\nformat_version = true', "True is no version"),
            (b'format = "evenarc session"\nformat_version = 0', "0 is no version"),
            (b'format = "evenarc session"\nformat_version = 2', "2 is newer than this program"),
            (b"format = ", "is not TOML"),
            (b"\xff\xfe", "is not UTF-8"),
            (b"a = " + b"[" * 100_000, "nested too deeply"),
            (b"a = " + b"9" * 5_000, "is not TOML"),
            (b"#" * 1_000_001, "larger than 1 MB"),
        ],
    )
    def test_a_file_that_is_no_record_is_refused_in_one_line(self, tmp_path, content, reason):
        path = tmp_path / "x.toml"
        path.write_bytes(content)
        with pytest.raises(RecordError) as refusal:
            record.read_document(path)
        assert str(refusal.value).startswith(f"{path}: ")
        assert reason in str(refusal.value)
        assert str(refusal.value).isprintable()

    def test_a_missing_file_and_a_folder_are_refused(self, tmp_path):
        with pytest.raises(RecordError, match="No such file"):
            record.read_document(tmp_path / "none.toml")
        with pytest.raises(RecordError, match="it is not a file"):
            record.read_document(tmp_path)
        with pytest.raises(RecordError, match="cannot be opened"):
            record.read_document(Path("a\0b"))

    def test_control_characters_of_a_name_are_escaped(self, tmp_path):
        path = tmp_path / "x\x1b[31m.toml"
        path.write_text("format = ")
        with pytest.raises(RecordError, match=r"x\\x1b\[31m\.toml"):
            record.read_document(path)


class TestDrafts:
    def test_a_draft_is_the_session_without_results_and_without_an_end(self, files):
        path = record.save_draft(files, session())
        assert path == files / "unfinished" / "FG-3_20261125-141205_first_k3f9.toml"
        kept = record.read_document(path)
        assert kept == without(without(session(), "results"), "session.closed")
        assert everything_in(files) == [str(path.relative_to(files))]

    def test_the_next_answer_replaces_the_draft(self, files):
        record.save_draft(files, session())
        path = record.save_draft(files, with_value(session(), "complaint.note", "wanders"))
        assert value_at(record.read_document(path), "complaint.note") == "wanders"
        assert len(everything_in(files)) == 1

    def test_a_draft_can_be_discarded(self, files):
        record.save_draft(files, session())
        record.discard_draft(files, session())
        record.discard_draft(files, session())
        assert everything_in(files) == []

    def test_a_draft_and_its_name_are_forced_to_the_disk(self, files, monkeypatch):
        forced = []
        monkeypatch.setattr(os, "fsync", lambda handle: forced.append(os.fstat(handle).st_ino))
        path = record.save_draft(files, session())
        assert forced[-2:] == [path.stat().st_ino, path.parent.stat().st_ino]

    def test_a_failed_write_leaves_the_earlier_draft(self, files, monkeypatch):
        path = record.save_draft(files, session())
        fail(monkeypatch, os, "fsync", errno.ENOSPC)
        with pytest.raises(RecordError, match="cannot be kept: the disk is full; make room"):
            record.save_draft(files, with_value(session(), "complaint.note", "wanders"))
        assert value_at(record.read_document(path), "complaint") is None
        assert len(everything_in(files)) == 1

    @pytest.mark.parametrize("value", [None, "half a character \udc9b", object(), {1, 2}])
    def test_a_value_that_toml_cannot_keep_is_refused(self, files, value):
        with pytest.raises(RecordError, match="holds a value that TOML cannot keep"):
            record.save_draft(files, with_value(session(), "complaint.note", value))
        assert not files.exists()

    def test_a_draft_that_could_not_be_read_again_is_refused(self, files):
        with pytest.raises(RecordError, match="would be larger than 1 MB"):
            record.save_draft(files, with_value(session(), "complaint.note", "x" * 1_000_000))
        with pytest.raises(RecordError, match="format_version: 2 is newer"):
            record.save_draft(files, with_value(session(), "format_version", 2))
        assert not files.exists()


class TestFiling:
    def test_a_record_is_filed_in_its_vehicles_folder_and_its_draft_is_removed(self, files):
        record.save_draft(files, session())
        path = record.file_record(files, session())
        assert path == files / "FG-3" / "FG-3_20261125-141205_first_k3f9.toml"
        assert record.read_document(path) == sealed(session())
        assert everything_in(files) == [str(path.relative_to(files))]

    def test_the_tables_have_the_order_of_the_format(self, files):
        signed = sign(session(), "signed", "A. Lead", OPENED)
        path = record.file_record(files, dict(reversed(signed.items())))
        headers = [line for line in path.read_text().splitlines() if line.startswith("[")]
        assert headers == [
            *("[session]", "[vehicle]", '["unknown table"]', "[readings.track_bar]"),
            *("[readings.track_bar.frame]", "[[kept]]", "[[kept]]", "[kept.note]", "[results]"),
            *("[seal]", "[[signatures]]"),
        ]

    def test_unknown_keys_and_tables_are_kept(self, files):
        unusual = {
            **session(),
            "an answer": 42,
            "lists": [[1, [2.5]], [{"a": [{"b": 1}]}], {}],
            "tables": [{}, {"c": {"d": [{"e": 1}, {"f.g": {}}]}}],
            "nothing": {},
            "times": [OPENED, OPENED.date(), OPENED.time()],
            "numbers": [float("inf"), -0.0, 1e300, 2**60],
        }
        assert record.read_document(record.file_record(files, unusual)) == sealed(unusual)

    @pytest.mark.parametrize("links", [True, False])
    def test_a_record_is_never_overwritten(self, files, monkeypatch, links):
        if not links:
            fail(monkeypatch, os, "link", errno.EOPNOTSUPP)
        path = record.file_record(files, session())
        before = path.read_bytes()
        with pytest.raises(RecordError, match="is filed already and stays as it is"):
            record.file_record(files, with_value(session(), "vehicle.odometer", "1 km"))
        assert path.read_bytes() == before
        assert len(everything_in(files)) == 1

    def test_a_record_is_filed_without_hard_links(self, files, monkeypatch):
        fail(monkeypatch, os, "link", errno.EPERM)
        path = record.file_record(files, session())
        assert record.read_document(path) == sealed(session())
        assert len(everything_in(files)) == 1

    @pytest.mark.parametrize(
        ("module", "name", "number", "reason"),
        [
            (os, "fsync", errno.ENOSPC, "the disk is full; make room and try again"),
            (os, "fsync", errno.EIO, "Input/output error"),
            (Path, "open", errno.EACCES, "not allowed there; choose another folder with --files"),
            (Path, "open", errno.EROFS, "read-only; choose another folder with --files"),
            (Path, "mkdir", errno.EACCES, "not allowed there"),
        ],
    )
    def test_a_refusal_of_the_system_leaves_no_file(
        self, files, monkeypatch, module, name, number, reason
    ):
        with monkeypatch.context() as patch:
            fail(patch, module, name, number)
            with pytest.raises(RecordError) as refusal:
                record.file_record(files, session())
        assert "cannot be filed: " in str(refusal.value)
        assert reason in str(refusal.value)
        assert everything_in(files) == []
        record.file_record(files, session())  # the next attempt succeeds

    def test_a_file_in_the_place_of_a_folder_is_refused(self, files):
        files.write_text("")
        with pytest.raises(RecordError, match="a file is where a folder should be"):
            record.file_record(files, session())
        files.unlink()
        files.mkdir()
        (files / "FG-3").write_text("")
        with pytest.raises(RecordError, match="a file is where a folder should be"):
            record.file_record(files, session())

    def test_a_record_that_reads_back_differently_is_not_filed(self, files, monkeypatch):
        record.save_draft(files, session())
        monkeypatch.setattr(Path, "read_bytes", lambda _: b"something else")
        with pytest.raises(RecordError, match="read back differently"):
            record.file_record(files, session())
        assert everything_in(files) == ["unfinished/FG-3_20261125-141205_first_k3f9.toml"]

    def test_a_record_is_filed_though_its_draft_cannot_be_removed(self, files, monkeypatch):
        record.save_draft(files, session())
        remove = Path.unlink

        def refuse_in_unfinished(path, missing_ok=False):
            if path.parent.name == "unfinished":
                raise PermissionError(errno.EACCES, "Permission denied")
            remove(path, missing_ok)

        monkeypatch.setattr(Path, "unlink", refuse_in_unfinished)
        assert record.read_document(record.file_record(files, session())) == sealed(session())


class TestSigning:
    def test_a_signature_is_added_and_nothing_else_changes(self, files):
        path = record.file_record(files, session())
        record.replace_signed(
            path, sign(record.read_document(path), "returned", "A. Lead", OPENED, "why?")
        )
        record.replace_signed(path, sign(record.read_document(path), "signed", "A. Lead", OPENED))
        after = record.read_document(path)
        assert without(without(after, "signatures"), "seal") == session()
        assert [item["decision"] for item in after["signatures"]] == ["returned", "signed"]
        assert list(after)[-1] == "signatures"
        assert len(everything_in(files)) == 1

    def test_a_record_that_has_changed_is_not_rewritten(self, files):
        path = record.file_record(files, session())
        opened = record.read_document(path)
        path.write_text(path.read_text().replace("crew truck", "water truck"))
        before = path.read_bytes()
        with pytest.raises(RecordError, match="has changed since it was opened"):
            record.replace_signed(path, sign(opened, "signed", "A. Lead", OPENED))
        assert path.read_bytes() == before

    def test_another_signature_is_not_lost(self, files):
        path = record.file_record(files, session())
        opened = record.read_document(path)
        record.replace_signed(path, sign(opened, "returned", "A. Lead", OPENED))
        with pytest.raises(RecordError, match="has changed since it was opened"):
            record.replace_signed(path, sign(opened, "signed", "B. Lead", OPENED))

    def test_only_signatures_can_be_rewritten(self, files):
        path = record.file_record(files, session())
        with pytest.raises(RecordError, match="has changed"):
            record.replace_signed(path, with_value(session(), "results.overall", "steers true"))

    def test_of_two_programs_that_sign_at_once_none_loses_a_signature(self, files, monkeypatch):
        path = record.file_record(files, session())
        opened = record.read_document(path)
        replace = atomic_write.replace_file

        def sign_meanwhile(target, content):
            """Another program signs between the look at the record and its replacement."""
            monkeypatch.undo()
            monkeypatch.setattr(file_lock, "PATIENCE", 0.0)
            with pytest.raises(RecordError, match="cannot be signed: another program is writing"):
                record.replace_signed(path, sign(opened, "returned", "B. Lead", OPENED))
            replace(target, content)

        monkeypatch.setattr(atomic_write, "replace_file", sign_meanwhile)
        record.replace_signed(path, sign(opened, "signed", "A. Lead", OPENED))
        assert [item["by"] for item in record.read_document(path)["signatures"]] == ["A. Lead"]
        assert everything_in(files) == [str(path.relative_to(files))]

    def test_a_record_under_another_name_has_the_same_lock(self, files, monkeypatch):
        path = record.file_record(files, session())
        link = files / "link.toml"
        link.symlink_to(path)
        monkeypatch.setattr(file_lock, "PATIENCE", 0.0)
        with locked(path), pytest.raises(RecordError, match="another program is writing"):
            record.replace_signed(link, sign(session(), "signed", "A. Lead", OPENED))

    def test_a_full_disk_leaves_the_record_as_it_was(self, files, monkeypatch):
        path = record.file_record(files, session())
        before = path.read_bytes()
        fail(monkeypatch, os, "fsync", errno.ENOSPC)
        with pytest.raises(RecordError, match="cannot be signed: the disk is full"):
            record.replace_signed(path, sign(sealed(session()), "signed", "A. Lead", OPENED))
        assert path.read_bytes() == before
        assert len(everything_in(files)) == 1


class TestLateErrors:
    """A folder is not confirmed after the file has its name: the message says what is true."""

    @pytest.fixture(autouse=True)
    def unconfirmed_folders(self, files, monkeypatch):
        (files / "FG-3").mkdir(parents=True)
        (files / "unfinished").mkdir()
        refuse_to_force_folders(monkeypatch)

    def test_a_draft_is_kept(self, files):
        with pytest.raises(NotConfirmed, match="is kept and can be read back"):
            record.save_draft(files, session())
        assert record.read_document(record.draft_path(files, session()))

    def test_a_record_is_filed_and_its_draft_stays(self, files):
        with pytest.raises(NotConfirmed):
            record.save_draft(files, session())
        with pytest.raises(NotConfirmed, match="is filed and can be read back"):
            record.file_record(files, session())
        assert record.read_document(record.record_path(files, session())) == sealed(session())
        assert record.draft_path(files, session()).exists()
        assert list_drafts(files) == []

    def test_a_record_is_signed(self, files):
        with pytest.raises(NotConfirmed):
            record.file_record(files, session())
        path = record.record_path(files, session())
        signed = sign(record.read_document(path), "signed", "A. Lead", OPENED)
        with pytest.raises(NotConfirmed, match="is signed and can be read back"):
            record.replace_signed(path, signed)
        assert len(record.read_document(path)["signatures"]) == 1


def test_a_draft_that_is_gone_after_an_error_is_discarded(files, monkeypatch):
    record.save_draft(files, session())
    remove = Path.unlink

    def remove_late(path, missing_ok=False):
        remove(path, missing_ok)
        raise OSError(errno.EIO, "Input/output error")

    monkeypatch.setattr(Path, "unlink", remove_late)
    record.discard_draft(files, session())
    assert everything_in(files) == []


def test_a_program_killed_at_any_step_of_filing_loses_nothing(files):
    """A program that is killed between two steps leaves the whole draft or the whole record."""
    program = """
import os, sys
from pathlib import Path
from core.documents import atomic_write, record
from tests.core.documents.test_record import session
files, last = Path(sys.argv[1]), int(sys.argv[2])
record.save_draft(files, session())
steps = 0
def step(real):
    def stepping(*arguments, **options):
        global steps
        steps += 1
        if steps == last:
            os._exit(9)
        return real(*arguments, **options)
    return stepping
for owner, name in ((os, "fsync"), (os, "link"), (Path, "unlink"), (Path, "open"), (Path, "mkdir")):
    setattr(owner, name, step(getattr(owner, name)))
record.file_record(files, session())
"""
    killed = 0
    for last in range(1, 30):
        folder = files / str(last)
        ended = subprocess.run(
            [sys.executable, "-c", program, str(folder), str(last)], check=False, timeout=60
        )
        if ended.returncode == 0:
            break
        killed += 1
        assert ended.returncode == 9
        filed, unfinished = list_records(folder), list_drafts(folder)
        assert [entry.fault for entry in filed + unfinished] == [""]
        make_old(folder)
        remove_leftovers(folder)
        assert len(everything_in(folder)) == 1
        if unfinished:
            record.file_record(folder, session())
        assert [entry.fault for entry in list_records(folder)] == [""]
    assert killed >= 6
