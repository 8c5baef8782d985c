"""The shop's name and address."""

import pytest

from core.profiles.profile import ProfileError
from core.profiles.shop import NO_SHOP, Shop, load_shop


def test_a_folder_without_a_shop_has_an_empty_one(tmp_path):
    assert load_shop(tmp_path / "shop.toml") == NO_SHOP


def test_the_lines_of_a_shop(tmp_path):
    file = tmp_path / "shop.toml"
    file.write_text('name = "Motor pool"\naddress = ["Bay 4", "Mill Lane"]\nphone = "555 0100"\n')
    assert load_shop(file) == Shop("Motor pool", ("Bay 4", "Mill Lane", "555 0100"))
    file.write_text('name = "Motor pool"\naddress = "Bay 4"\n')
    assert load_shop(file) == Shop("Motor pool", ("Bay 4",))


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("address = []", "name: is missing"),
        ('name = ""', "name: "),
        ('name = "x"\naddress = 5', "address: should be a text, or a list"),
        ('name = "x"\naddress = [5]', "address: is a int"),
        ('name = "x"\nlogo = "x.png"', "logo: is not known"),
        (f'name = "{"x" * 99}"', "at most 60 characters"),
        ('name = "a\\nb"', "without control characters"),
    ],
)
def test_a_faulty_shop_is_refused_with_file_and_key(tmp_path, text, words):
    file = tmp_path / "shop.toml"
    file.write_text(text)
    with pytest.raises(ProfileError) as refused:
        load_shop(file)
    assert str(refused.value).startswith(f"{file}: ")
    assert words in str(refused.value)
