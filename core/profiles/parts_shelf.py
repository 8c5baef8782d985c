"""A shop's own parts shelf: corrections that the shop can make besides those of the profiles.

The shelf is a TOML file with [[corrections]] alone, written as in a profile.
"""

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from core.documents.entries import EntryError
from core.documents.tables import refuse_unknown
from core.documents.toml_file import TomlFileError, read_toml
from core.profiles.corrections import Correction
from core.profiles.profile import Profile, ProfileError, load_profile, profile_names
from core.profiles.profile_tables import corrections_at, refuse_unknown_exclusions
from core.text.plain_text import plain


def load_shelf(path: Path, folders: Sequence[Path]) -> tuple[Correction, ...]:
    """Corrections on a parts shelf; () where the file does not exist.

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
        refuse_unknown(tables, ["corrections"])
        corrections = corrections_at(tables)
        known = {correction.name for correction in corrections}
        if any(set(correction.not_with) - known for correction in corrections):
            known |= _names_in_profiles(folders)
        refuse_unknown_exclusions(corrections, known)
    except TomlFileError as error:
        raise ProfileError(str(error)) from None
    except EntryError as error:
        raise ProfileError(f"{plain(path, 300)}: {error}") from None
    return corrections


def with_shelf(profile: Profile, shelf: Sequence[Correction]) -> Profile:
    """The profile with a shop's own corrections; they replace corrections of the same name."""
    own = {correction.name for correction in shelf}
    others = (correction for correction in profile.corrections if correction.name not in own)
    return replace(profile, corrections=(*others, *shelf))


def _names_in_profiles(folders: Sequence[Path]) -> set[str]:
    """Names of the corrections of every profile in some folders."""
    profiles = (load_profile(name, folders) for name in profile_names(folders))
    return {correction.name for profile in profiles for correction in profile.corrections}
