"""Nonsense: values, texts and names that no vehicle and no person has."""

from typing import Any

CODES = (
    "\x1b[31mred\x1b[0m",
    "\x1b]0;title\x07",
    "a\0b",
    "\u202eleft",
    "\r\nnew",
    "\u2028",
    "\x9b2J",
)
"""Control codes of a terminal, and characters that turn or break a line."""

MARKUP = (
    "[red]x[/red]",
    "[@click=app.quit]x[/]",
    "[/]",
    "<script>alert(1)</script>",
    '"><img src=x onerror=alert(1)>',
    "{{ 7 * 7 }}",
    "{% raw %}",
    "&lt;b&gt;",
    "%s %n {0}",
)
"""Markup of the screen, of a page and of a template."""

NUMBERS = (
    *("0", "-0", "0 in", "-1 in", "9" * 60 + " in", "1e308", "nan", "inf", "1 parsec", "1/0 in"),
    *("9999999999 deg", "89.999 deg", "-90 deg", "1e-300 in", "99 m", "-99 m", "828 1/2 in"),
    *("17 5/8; 17 9/16; x", ";;;", "1;" * 40, "17 5/8 in in", "½", "１７ in", "10^3 mm", "0x1F"),
)
"""Texts of quantities."""

VALUES: tuple[Any, ...] = (
    *(0, 1, -1, 10**30, 1e308, float("inf"), float("nan"), True, False, [], {}, [[]], [{}]),
    *(["0 in"], ["1 in", "2 in"], ["24 in"], ["99 m"], ["90 deg"], {"a": 1}, "x" * 5000, ""),
    *NUMBERS,
    *MARKUP,
)
"""Values of a document that TOML can keep."""

TEXTS = (*CODES, *MARKUP, *NUMBERS, "", " ", "x" * 5000, "../../etc", "CON", "COM¹", "~nobody")
"""Texts that a person or a program could type."""
