"""A shop's own parts shelf: changes that the shop can make besides those of the profiles.

The shelf is a TOML file with [[corrections]] and [[conversions]], written as in a profile. It may
say more of each part: number, price, hours, stock, lift.
"""

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from core.documents.entries import EntryError
from core.documents.tables import refuse_unknown
from core.documents.toml_file import TomlFileError, read_toml
from core.profiles.conversions import Change, Conversion
from core.profiles.correction_tables import changes_at, refuse_unknown_names
from core.profiles.corrections import Correction
from core.profiles.profile import Profile, ProfileError, load_profile, profile_names
from core.text.plain_text import plain


def load_shelf(path: Path, folders: Sequence[Path]) -> tuple[Change, ...]:
    """Corrections and conversions on a parts shelf; () where the file does not exist.

    Parameters
    ----------
    path : Path
    folders : sequence of Path
        Folders of profiles: an entry can exclude any of their corrections by name.

    Raises
    ------
    ProfileError
        The file cannot be read, or an entry is faulty.
    """
    if not path.exists():
        return ()
    try:
        tables = read_toml(path)
        refuse_unknown(tables, ["corrections", "conversions"])
        changes = changes_at(tables)
        known = {change.name for change in changes}
        if any({*change.not_with, *change.needs} - known for change in changes):
            known |= _names_in_profiles(folders)
        refuse_unknown_names(changes, known)
    except TomlFileError as error:
        raise ProfileError(str(error)) from None
    except EntryError as error:
        raise ProfileError(f"{plain(path, 300)}: {error}") from None
    return changes


def with_shelf(profile: Profile, shelf: Sequence[Change]) -> Profile:
    """The profile with a shop's own changes; they replace changes of the same name."""
    own = {change.name for change in shelf}
    changes = (*(change for change in profile.changes if change.name not in own), *shelf)
    return replace(
        profile,
        corrections=tuple(change for change in changes if isinstance(change, Correction)),
        conversions=tuple(change for change in changes if isinstance(change, Conversion)),
    )


def _names_in_profiles(folders: Sequence[Path]) -> set[str]:
    """Names of the changes of every profile in some folders."""
    profiles = (load_profile(name, folders) for name in profile_names(folders))
    return {change.name for profile in profiles for change in profile.changes}
