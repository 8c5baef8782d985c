"""Choices of the question for the profile, and the profile nearest to a layout."""

from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path

from core.kinematics.pivots import GuideKind, Layout
from core.profiles.profile import Profile, ProfileError, load_profile, profile_names
from core.text.plain_text import plain
from wizard.questions.question import Choice


def profile_choices(folders: Sequence[Path]) -> tuple[Choice, ...]:
    """One choice for each profile. A faulty profile is listed too, and refused when chosen."""
    return tuple(_choice(name, folders) for name in profile_names(folders))


def nearest_profile(
    folders: Sequence[Path], steering: Layout | None, guide: GuideKind | None
) -> Profile:
    """First sound profile with a layout and a guide; with either of them; else the first one.

    Raises
    ------
    core.profiles.profile.ProfileError
        No profile can be used.
    """
    profiles = []
    for name in profile_names(folders):
        with suppress(ProfileError):
            profiles.append(load_profile(name, folders))
    if not profiles:
        raise ProfileError("no profile can be used")

    def unlike(profile: Profile) -> int:
        return 2 * (steering not in (None, profile.steering)) + (guide not in (None, profile.guide))

    return min(profiles, key=unlike)


def _choice(name: str, folders: Sequence[Path]) -> Choice:
    try:
        profile = load_profile(name, folders)
    except ProfileError:
        return Choice(name, plain(name), "cannot be used")
    return Choice(name, plain(profile.title, 100), "the shop's own" if profile.shop_own else "")
