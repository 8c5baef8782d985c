import subprocess
import sys
from pathlib import Path

from wizard import locations


def test_the_option_comes_before_the_variable(tmp_path, monkeypatch):
    monkeypatch.setenv("EVENARC_FILES", str(tmp_path / "variable"))
    assert locations.files_folder(tmp_path / "option") == tmp_path / "option"
    assert locations.files_folder(None) == tmp_path / "variable"
    assert locations.files_folder(" ") == tmp_path / "variable"


def test_a_path_is_made_whole(tmp_path, monkeypatch):
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.chdir(tmp_path)
    assert locations.files_folder("~/records") == tmp_path / "records"
    assert locations.files_folder("records") == tmp_path / "records"


def test_without_a_choice_the_system_says_where(tmp_path, monkeypatch):
    monkeypatch.setenv("EVENARC_FILES", "")
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    folder = locations.files_folder()
    assert folder.name == "evenarc"
    assert folder.is_absolute()
    assert not folder.exists()


def test_the_system_is_asked_only_when_nothing_was_chosen():
    program = (
        "import sys; from wizard import locations; locations.files_folder('x')\n"
        "assert 'platformdirs' not in sys.modules\n"
    )
    subprocess.run([sys.executable, "-c", program], check=True, timeout=60)


def test_what_is_delivered_is_there():
    assert list(locations.PROFILES.glob("*.toml"))
    assert locations.DEMO_SESSIONS.is_dir()


def test_a_workshops_own_profiles_come_first():
    files = Path("files")
    assert locations.profile_folders(files) == (files / "shop" / "profiles", locations.PROFILES)
    assert locations.parts_shelf(files) == files / "shop" / "parts_shelf.toml"
