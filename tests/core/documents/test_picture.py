"""Pictures that are kept: upright, small, without metadata; every fault in one line."""

import hashlib

import numpy as np
import pytest
from PIL import Image

from core.documents.picture import LONGEST_SIDE, PictureError, keep_picture, read_picture


def picture_file(path, size=(400, 300), orientation=1, f35=26, **options):
    """A picture whose left half is dark, with what a camera writes into it."""
    pixels = np.full((size[1], size[0], 3), 200, np.uint8)
    pixels[:, : size[0] // 2] = 20
    exif = Image.Exif()
    exif[0x0112] = orientation
    exif[0x9286] = "taken at home"
    directory = exif.get_ifd(0x8769)
    directory[0xA405] = f35
    exif.get_ifd(0x8825)[1] = "N"
    Image.fromarray(pixels).save(path, exif=exif, **options)
    return path


def test_a_copy_is_kept_and_the_original_stays(tmp_path):
    original = picture_file(tmp_path / "home.jpg")
    before = original.read_bytes()
    kept = keep_picture(original, tmp_path / "FG-2", "FG-2")
    assert original.read_bytes() == before
    copy = tmp_path / "FG-2" / kept.file
    assert kept.file == "photographs/FG-2_1.jpg"
    assert hashlib.sha256(copy.read_bytes()).hexdigest() == kept.sha256
    assert (kept.width, kept.height, kept.f35) == (400, 300, "26")


def test_the_copy_has_no_metadata(tmp_path):
    kept = keep_picture(picture_file(tmp_path / "home.jpg"), tmp_path, "FG-2")
    with Image.open(tmp_path / kept.file) as copy:
        assert not dict(copy.getexif())
        assert not {"exif", "icc_profile", "comment", "xmp"} & copy.info.keys()
    assert b"taken at home" not in (tmp_path / kept.file).read_bytes()


def test_the_orientation_is_applied(tmp_path):
    """Exif orientation 6: the picture has to be turned by a quarter to the right."""
    kept = keep_picture(picture_file(tmp_path / "turned.jpg", orientation=6), tmp_path, "FG-2")
    assert (kept.width, kept.height) == (300, 400)
    pixels = np.asarray(read_picture(tmp_path / kept.file))
    assert pixels[20, 150, 0] < 60
    assert pixels[380, 150, 0] > 160


def test_a_large_picture_is_made_smaller(tmp_path):
    original = picture_file(tmp_path / "large.png", (5000, 1000))
    kept = keep_picture(original, tmp_path, "FG-2")
    assert (kept.width, kept.height) == (LONGEST_SIDE, round(LONGEST_SIDE / 5))


def test_no_copy_takes_the_place_of_another(tmp_path):
    original = picture_file(tmp_path / "home.jpg")
    files = [keep_picture(original, tmp_path, "FG-2").file for _ in range(3)]
    assert files == [f"photographs/FG-2_{number}.jpg" for number in (1, 2, 3)]


@pytest.mark.parametrize("f35", [0, 1, 60000])
def test_a_focal_length_that_no_lens_has_is_not_known(tmp_path, f35):
    kept = keep_picture(picture_file(tmp_path / "home.jpg", f35=f35), tmp_path, "FG-2")
    assert kept.f35 == ""


class TestFaults:
    def fault(self, path):
        with pytest.raises(PictureError) as fault:
            read_picture(path)
        message = str(fault.value)
        assert path.name in message
        assert "\n" not in message
        return message

    def test_missing(self, tmp_path):
        assert "is no file" in self.fault(tmp_path / "missing.jpg")

    def test_a_folder(self, tmp_path):
        (tmp_path / "folder.jpg").mkdir()
        assert "is no file" in self.fault(tmp_path / "folder.jpg")

    def test_lying(self, tmp_path):
        path = tmp_path / "text.jpg"
        path.write_text("this is no picture")
        assert "is no picture" in self.fault(path)

    def test_of_another_kind(self, tmp_path):
        path = tmp_path / "moving.jpg"
        Image.new("RGB", (200, 200)).save(path, "GIF")
        assert "GIF" in self.fault(path)

    def test_damaged(self, tmp_path):
        path = picture_file(tmp_path / "cut.jpg", (1200, 900), quality=95)
        path.write_bytes(path.read_bytes()[:6000])
        assert "cannot be read" in self.fault(path)

    @pytest.mark.parametrize("side", [10_001, 30_000])
    def test_of_more_than_100_megapixels(self, tmp_path, side):
        path = tmp_path / "huge.png"
        Image.new("1", (side, side)).save(path)
        assert "100 megapixels" in self.fault(path)

    def test_too_small(self, tmp_path):
        assert "20 x 20" in self.fault(picture_file(tmp_path / "dot.png", (20, 20)))
