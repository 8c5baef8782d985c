"""Rendering of templates: all text is escaped, and every value has to be there."""

from dataclasses import dataclass

import pytest
from jinja2 import UndefinedError

from wizard.printed.rendering import TEMPLATES, render


@dataclass
class TitleOnly:
    """Data of a page without any content."""

    title: str
    paper: str = "letter"


def test_text_is_escaped_in_every_template():
    for name in ("page.html", "page.txt", "page"):
        template = TEMPLATES.from_string("{{ text }}")
        template.name = name
        assert template.render(text="<b>\"'&") == "&lt;b&gt;&#34;&#39;&amp;"
    assert "<title>&lt;b&gt;</title>" in render("base.html", TitleOnly("<b>"))


def test_a_value_that_the_page_does_not_have_is_refused():
    with pytest.raises(UndefinedError):
        render("owners_page.html", TitleOnly("a title"))


def test_the_style_is_part_of_the_page():
    html = render("base.html", TitleOnly("a title"))
    assert "@page { size: letter;" in html
    assert "<link" not in html


@pytest.mark.parametrize("name", TEMPLATES.list_templates(extensions=["html"]))
def test_no_template_switches_escaping_off(name):
    source, _, _ = TEMPLATES.loader.get_source(TEMPLATES, name)
    assert "safe" not in source
    assert "autoescape" not in source
