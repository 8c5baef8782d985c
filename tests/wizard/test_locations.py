"""Places of files: options, variables and defaults."""

from pathlib import Path

from wizard import locations


def test_the_option_comes_before_the_variable(tmp_path, monkeypatch):
    monkeypatch.setenv("EVENARC_FILES", str(tmp_path / "variable"))
    assert locations.files_folder(tmp_path / "option") == tmp_path / "option"
    assert locations.files_folder(None) == tmp_path / "variable"
    assert locations.files_folder(" ") == tmp_path / "variable"


def test_a_relative_path_and_a_home_folder_become_absolute(tmp_path, monkeypatch):
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.chdir(tmp_path)
    assert locations.files_folder("~/records") == tmp_path / "records"
    assert locations.files_folder("records") == tmp_path / "records"


def test_the_default_is_the_data_folder_of_the_system(tmp_path, monkeypatch):
    monkeypatch.setenv("EVENARC_FILES", "")
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    folder = locations.files_folder()
    assert folder.name == "evenarc"
    assert folder.is_absolute()
    assert not folder.exists()


def test_profiles_and_demo_sessions_exist():
    assert list(locations.PROFILES.glob("*.toml"))
    assert locations.DEMO_SESSIONS.is_dir()


def test_the_shops_own_profiles_come_first():
    files = Path("files")
    assert locations.profile_folders(files) == (files / "shop" / "profiles", locations.PROFILES)
    assert locations.parts_shelf(files) == files / "shop" / "parts_shelf.toml"
