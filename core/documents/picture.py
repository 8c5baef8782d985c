"""Pictures kept with a vehicle: upright, not too large, and without what a camera writes into them.

The copy has no metadata, because a camera writes the place and time of a customer's home into a
picture. The original is not touched.
"""

import hashlib
import io
import warnings
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from core.documents.atomic_write import UnconfirmedError, create_file, make_folder
from core.text.plain_text import plain

if TYPE_CHECKING:
    from PIL.Image import Image

LONGEST_SIDE = 4096
"""Pixels of the longer side of a copy at most."""

MOST_PIXELS = 100_000_000
LARGEST_FILE = 200_000_000
"""Pixels and bytes of an original at most."""

SMALLEST_SIDE = 100
"""Pixels of the shorter side at least."""

F35 = (5.0, 2_000.0)
"""Shortest and longest focal length as on 35 mm film that is believed, mm."""

QUALITY = 92
"""Quality of a copy as JPEG."""

FORMATS = ("JPEG", "MPO", "PNG", "HEIF")
FOLDER = "photographs"
"""Folder of the pictures inside a vehicle's folder."""

_EXIF, _F35 = 0x8769, 0xA405
"""Tags of the Exif directory and of the focal length as on 35 mm film (Exif 2.32, 4.6.5)."""


class PictureError(ValueError):
    """A picture cannot be taken; the message is one line with the file and the reason."""


@dataclass(frozen=True)
class KeptPicture:
    """A copy in the vehicle's folder.

    Attributes
    ----------
    file : str
        Its path inside the vehicle's folder, "photographs/FG-2_1.jpg".
    sha256 : str
    width, height : int
        Pixels.
    f35 : str
        Focal length as on 35 mm film, mm, as the camera wrote it; "" where it did not.
    """

    file: str
    sha256: str
    width: int
    height: int
    f35: str


def read_picture(path: Path) -> "Image":
    """A picture, upright. Raises PictureError where it is damaged, too large or no picture."""
    picture, _ = _opened(path)
    return picture


def keep_picture(path: Path, folder: Path, tag: str) -> KeptPicture:
    """Copy a picture into the folder of a vehicle.

    Parameters
    ----------
    path : Path
        The original.
    folder : Path
        The vehicle's folder.
    tag : str
        Tag of the vehicle; the copies are numbered after it.

    Raises
    ------
    PictureError
        The picture cannot be read, or the copy cannot be written.
    """
    picture, f35 = _opened(path)
    picture.thumbnail((LONGEST_SIDE, LONGEST_SIDE))
    content = io.BytesIO()
    picture.save(content, "JPEG", quality=QUALITY)
    data = content.getvalue()
    try:
        make_folder(folder / FOLDER)
        file = _written(data, folder, tag)
    except OSError as error:
        reason = error.strerror or str(error)
        raise PictureError(f"{plain(folder, 300)}: the copy cannot be written: {reason}") from None
    return KeptPicture(file, hashlib.sha256(data).hexdigest(), *picture.size, f35)


def _written(data: bytes, folder: Path, tag: str) -> str:
    """Write a copy under the first free number."""
    number = 1
    while True:
        file = f"{FOLDER}/{tag}_{number}.jpg"
        try:
            with suppress(UnconfirmedError):  # the original is still there
                create_file(folder / file, data)
        except FileExistsError:
            number += 1
        else:
            return file


def _opened(path: Path) -> tuple["Image", str]:
    """A picture, upright and without metadata, and its focal length as on 35 mm film."""
    from PIL import Image, ImageOps, UnidentifiedImageError

    name = plain(path, 300)
    _allow_heic()
    try:
        if not path.is_file():
            raise PictureError(f"{name}: is no file; it should be a picture, JPEG or PNG")
        if path.stat().st_size > LARGEST_FILE:
            raise PictureError(f"{name}: is larger than {LARGEST_FILE // 1_000_000} MB")
        with warnings.catch_warnings(), path.open("rb") as file:
            warnings.simplefilter("ignore")  # the size is checked here
            with Image.open(file) as picture:
                _check_size(name, picture.size)
                if picture.format not in FORMATS:
                    kind = plain(picture.format)
                    raise PictureError(f"{name}: is {kind}; it should be JPEG, PNG or HEIC")
                f35 = _f35(picture)
                upright = ImageOps.exif_transpose(picture).convert("RGB")
        # A new picture from the pixels alone holds nothing else of the file.
        clean = Image.new("RGB", upright.size)
        clean.paste(upright)
    except PictureError:
        raise
    except UnidentifiedImageError:
        heic = "; HEIC needs the extra heic" if path.suffix.lower() in (".heic", ".heif") else ""
        raise PictureError(f"{name}: is no picture; it should be JPEG or PNG{heic}") from None
    except Image.DecompressionBombError:
        raise PictureError(_too_large(name)) from None
    except FileNotFoundError:
        raise PictureError(f"{name}: there is no such file") from None
    except OSError as error:
        reason = error.strerror or "it ends too soon or its content is broken"
        raise PictureError(f"{name}: cannot be read: {plain(reason, 200)}") from None
    except Exception as error:  # a library must not end the program over a damaged file
        raise PictureError(f"{name}: is damaged: {plain(error, 200)}") from None
    return clean, f35


def _check_size(name: str, size: tuple[int, int]) -> None:
    width, height = size
    if width * height > MOST_PIXELS:
        raise PictureError(_too_large(name))
    if min(size) < SMALLEST_SIDE:
        raise PictureError(
            f"{name}: has {width} x {height} pixels; it should have {SMALLEST_SIDE} at least"
        )


def _too_large(name: str) -> str:
    return f"{name}: has more than {MOST_PIXELS // 1_000_000} megapixels; send a smaller picture"


def _f35(picture: "Image") -> str:
    """Focal length as on 35 mm film; "" where the camera did not write it or wrote nonsense."""
    try:
        f35 = float(picture.getexif().get_ifd(_EXIF).get(_F35, 0))
    except (TypeError, ValueError, ZeroDivisionError, OSError):
        return ""
    return f"{f35:g}" if F35[0] <= f35 <= F35[1] else ""


def _allow_heic() -> None:
    """Read HEIC too where the library for it is installed."""
    with suppress(ImportError):
        from pillow_heif import register_heif_opener

        register_heif_opener()
