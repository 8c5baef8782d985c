"""Faults in the program: one line, and the details in a file."""

from wizard.crash_log import log_fault
from wizard.locations import crash_log_file


def fault():
    """Exception with its traceback."""
    try:
        raise ZeroDivisionError("by\x1b[31mnothing")
    except ZeroDivisionError as error:
        return error


def test_the_line_names_the_fault_and_the_file(tmp_path):
    line = log_fault(fault(), tmp_path / "files")
    assert "\n" not in line
    assert "ZeroDivisionError" in line
    assert str(crash_log_file(tmp_path / "files")) in line
    assert "Traceback" in crash_log_file(tmp_path / "files").read_text()


def test_a_second_fault_is_appended(tmp_path):
    log_fault(fault(), tmp_path)
    log_fault(fault(), tmp_path)
    assert crash_log_file(tmp_path).read_text().count("Traceback") == 2


def test_the_line_is_returned_even_if_the_file_cannot_be_written(tmp_path):
    (tmp_path / "files").write_text("in the way")
    line = log_fault(fault(), tmp_path / "files")
    assert "kept" in line
    assert "details" not in line
