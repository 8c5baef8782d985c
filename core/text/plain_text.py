"""Text from a keyboard or a file, made fit to be shown."""


def plain(text: object, longest: int = 60) -> str:
    """One line that is safe to print: control characters escaped, cut when too long.

    Parameters
    ----------
    text : object
        What was typed or read; anything but a string is shown as ``str`` writes it.
    longest : int
        Characters kept before the cut.

    Returns
    -------
    str
        Text without control, formatting or direction characters.
    """
    whole = str(text)
    shown = "".join(_plain_character(character) for character in whole[:longest])
    return shown + "…" if len(whole) > longest else shown


def _plain_character(character: str) -> str:
    if character.isprintable():
        return character
    if character.isspace() and character > "\x9f":  # no-break and thin spaces are only spaces
        return " "
    return character.encode("unicode_escape").decode("ascii")
