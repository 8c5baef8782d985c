"""Rendering of pages from the templates of this room.

Every value that a template prints is escaped. Only drawings that the program makes itself are
marked as safe (`markupsafe.Markup`), by the module that prepares the page.
"""

from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined

TEMPLATES = Environment(
    loader=PackageLoader("wizard.printed"),
    autoescape=True,
    undefined=StrictUndefined,
    trim_blocks=True,
    lstrip_blocks=True,
    keep_trailing_newline=True,
)


def render(template: str, page: Any) -> str:
    """HTML text of a page.

    Parameters
    ----------
    template : str
        File name of the template.
    page : dataclass
        Data of the page, which the template reads as `page`; it has a `title`.

    Raises
    ------
    jinja2.UndefinedError
        The template reads a value that the page does not have.
    """
    return TEMPLATES.get_template(template).render(page=page)
