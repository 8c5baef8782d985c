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
    text_line = "".join(_plain_character(character) for character in whole[:longest])
    return text_line + "…" if len(whole) > longest else text_line


def _plain_character(character: str) -> str:
    if character.isprintable():
        return character
    if character.isspace() and character > "\x9f":  # no-break and thin spaces are only spaces
        return " "
    return character.encode("unicode_escape").decode("ascii")
