"""The words of the program: short sentences, and docstrings that say what a thing is or does."""

import ast
import re
from collections.abc import Iterator

import pytest

from tests.conftest import ROOT

MODULES = sorted(
    path.relative_to(ROOT).as_posix()
    for room in ("core", "wizard")
    for path in (ROOT / room).rglob("*.py")
)

LONGEST = 25
"""Words of a sentence that a person reads."""

NO_BEGINNING = {
    *("what", "how", "where", "when", "why", "which", "who", "whose", "whether", "that"),
    *("it", "they", "as", "at", "by", "for", "from", "in", "of", "on", "to", "with", "without"),
    *("not", "nothing", "everything", "something", "if", "because", "so", "then", "there", "but"),
}
"""A docstring begins with a verb or with a noun phrase, so with none of these words."""

DEFINITIONS = (ast.Module, ast.ClassDef, ast.FunctionDef, ast.AsyncFunctionDef)


def docstrings(tree: ast.Module) -> Iterator[tuple[int, str]]:
    """Line and text of every docstring, and of every text under a constant or an attribute."""
    for node in ast.walk(tree):
        if isinstance(node, DEFINITIONS) and ast.get_docstring(node):
            yield getattr(node, "lineno", 1), ast.get_docstring(node) or ""


def bare_texts(tree: ast.Module) -> set[int]:
    """Identities of the texts that stand alone as statements: docstrings and remarks."""
    return {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}


def said(node: ast.AST) -> str:
    """A text as it is read; each figure or name that is filled in counts as one word."""
    if isinstance(node, ast.Constant):
        return node.value if isinstance(node.value, str) else ""
    if isinstance(node, ast.JoinedStr):
        return "".join(said(part) for part in node.values)
    if isinstance(node, ast.FormattedValue):
        return "N"
    return ""


def messages(tree: ast.Module) -> Iterator[tuple[int, str]]:
    """Line and text of everything that is said."""
    bare = bare_texts(tree)
    inside = {
        id(part)
        for node in ast.walk(tree)
        if isinstance(node, ast.JoinedStr)
        for part in node.values
    }
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant | ast.JoinedStr) and id(node) not in bare | inside:
            yield node.lineno, said(node)


def sentences(text: str) -> list[str]:
    """Sentences of a text, each up to its end mark or the end of its line."""
    return re.split(r"(?<=[.!?])\s+|\n", text)


def words(sentence: str) -> list[str]:
    """Words of a sentence; figures and signs count where they stand alone."""
    return [word for word in sentence.split() if any(map(str.isalnum, word))]


@pytest.mark.parametrize("module", MODULES)
def test_sentences_that_people_read_are_short(module):
    tree = ast.parse((ROOT / module).read_text("utf-8"))
    long = [
        f"{module}:{line}: {len(words(sentence))} words: {sentence}"
        for line, text in messages(tree)
        for sentence in sentences(text)
        if len(words(sentence)) > LONGEST
    ]
    assert not long, "\n".join(long)


@pytest.mark.parametrize("module", MODULES)
def test_docstrings_begin_with_a_verb_or_a_noun(module):
    tree = ast.parse((ROOT / module).read_text("utf-8"))
    odd = [
        f"{module}:{line}: {text.splitlines()[0]}"
        for line, text in docstrings(tree)
        if re.split(r"[\s,;:'’]", text.lower(), maxsplit=1)[0] in NO_BEGINNING
    ]
    assert not odd, "\n".join(odd)
