"""Text from a keyboard or a file, made safe to display."""


def plain(text: object, longest: int = 60) -> str:
    """One line that is safe to print: control characters are escaped, a long text is cut.

    Parameters
    ----------
    text : object
        Typed text or a value; a value is written as by ``str``.
    longest : int
        Characters kept before the cut.

    Returns
    -------
    str
        Text without control, formatting or direction characters.
    """
    whole = str(text)
    line = "".join(_plain_character(character) for character in whole[:longest])
    return line + "…" if len(whole) > longest else line


def with_full_stop(text: str) -> str:
    """A text as a sentence, so that another one can follow: a full stop is added to its end.

    A text that ends a sentence itself, or was cut, stays as it is.
    """
    return text if text.endswith((".", "!", "?", "…")) else f"{text}."


def _plain_character(character: str) -> str:
    if character.isprintable():
        return character
    if character.isspace() and character > "\x9f":  # no-break and thin spaces are only spaces
        return " "
    return character.encode("unicode_escape").decode("ascii")
