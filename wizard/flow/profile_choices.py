"""Choices of the question for the profile."""

from collections.abc import Sequence
from pathlib import Path

from core.profiles.profile import ProfileError, load_profile, profile_names
from core.text.plain_text import plain
from wizard.questions.question import Choice


def profile_choices(folders: Sequence[Path]) -> tuple[Choice, ...]:
    """One choice for each profile. A faulty profile is listed too, and refused when chosen."""
    return tuple(_choice(name, folders) for name in profile_names(folders))


def _choice(name: str, folders: Sequence[Path]) -> Choice:
    try:
        profile = load_profile(name, folders)
    except ProfileError:
        return Choice(name, plain(name), "cannot be used")
    return Choice(name, plain(profile.title, 100), "the shop's own" if profile.shop_own else "")
