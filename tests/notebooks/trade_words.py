"""Trade words in a lesson that the glossary lacks, found without a list of the trade's words.

Four nets: what a lesson sets in italics or bold, what its panels show, what its worked examples print, and
which of the package's own terms its prose uses.
"""

import ast
import re
from collections.abc import Iterable, Iterator
from functools import cache
from itertools import chain
from pathlib import Path

import ipywidgets as widgets
from notebooks.known_words import GRAMMAR, WORD, Known, words_of
from notebooks.lesson import prose, run

from lablib.panels.panel import Panel
from lablib.panels.specs import Choice
from lablib.working import Working

# In terms of the package, but meaning in the shop what they mean at home or at school.
_EVERYDAY_TEXT = """
alike angle apart asked away bears begins blue care check chosen compares corner cosine cost covers diameter
differ difference digits doubt either exact eyes factor farther faults file finished fit force found gap give
held high higher instead job kind labour light limit line look low lower mean measured middle mm most moved
name named off order out piece place plus point promised reach read reason ring rows rule safety sentences
shape shows side sideways sine small smallest spread stand start step strength swing take taken text thicker
touch tried turned turning unclear upper use water weakest wiped word worst written
"""
_UNITS = re.compile(
    r"_(?:mm3_per_rad|mm3_per_s|j_per_mm3|n_per_mm|per_mm|prism_d|nmm|mm3|mm2|mpa|deg|rpm|mm|d|n|g|w)$"
)
_ITALIC = re.compile(r"(?<![*\w])\*([^*\n]+)\*(?![*\w])")
_BOLD = re.compile(r"\*\*(.+?)\*\*", flags=re.DOTALL)
_ENDS = '.:?!"'
_TRADE = ("optics", "bench", "inspection")
_ROOT = Path(__file__).resolve().parents[2]


_EVERYDAY = frozenset(words_of(_EVERYDAY_TEXT))


def set_apart(path: Path, known: Known) -> list[str]:
    """Return what a lesson sets in italics or bold that is no control and no word of the glossary.

    A run in bold that ends like a sentence or with a colon is a heading within its paragraph, no word.

    path: of the lesson.
    known: the glossary.
    """
    told = prose(path)
    controls = {words.casefold() for words in _on_controls(path)}
    spans = [*_ITALIC.findall(_BOLD.sub("", told)), *_BOLD.findall(told)]
    words = (span for span in spans if span[-1] not in _ENDS and span.casefold() not in controls)
    return _unique(span for span in words if known.left_over(span))


def _on_controls(path: Path) -> Iterator[str]:
    """What stands on a notebook's sliders, lists, buttons and boxes."""
    for shown in _shown(path):
        parts = _parts(shown.widget)
        yield from (part.description for part in parts if isinstance(part, widgets.Button | widgets.Text))
        if isinstance(shown, Panel):
            yield from (spec.label for spec in shown.controls)


def _shown(path: Path) -> list:
    names = run(path).names.values()
    return [value for value in names if isinstance(getattr(value, "widget", None), widgets.Widget)]


def _parts(widget: widgets.Widget) -> Iterator[widgets.Widget]:
    yield widget
    for child in getattr(widget, "children", ()):
        yield from _parts(child)


def on_panels(path: Path, known: Known) -> list[str]:
    """Return the labels of a lesson's panels that hold words which are not in the glossary, with those words.

    path: of the lesson.
    known: the glossary.
    """
    return _unique(_with_reason(label, known) for label in panel_labels(path) if known.left_over(label))


def panel_labels(path: Path) -> tuple[str, ...]:
    """Return the labels of a lesson's panels: of controls that are shown, of what they offer, of the numbers.

    path: of the lesson.
    """
    panels = (shown for shown in _shown(path) if isinstance(shown, Panel))
    return tuple(chain.from_iterable(map(_labels, panels)))


def _labels(panel: Panel) -> Iterator[str]:
    for name in panel.shown:
        spec = panel.ranges[name]
        yield spec.label
        if isinstance(spec, Choice):
            yield from spec.options
    yield from (label for label, _, _ in panel.numbers(panel.compute(panel.values)))


def in_workings(path: Path, known: Known) -> list[str]:
    """Return what a lesson's worked examples print and the glossary does not know.

    That is a symbol that no entry has with its unit, and a name for it without any word of the glossary.

    path: of the lesson.
    known: the glossary.
    """
    signs = chain.from_iterable(_signs(step) for step in run(path).printed if isinstance(step, Working))
    return _unique(
        f"{symbol} [{unit}], {meaning}"
        for symbol, unit, meaning in signs
        if (_bare(symbol), unit) not in known.signs or (meaning and not known.holds(meaning))
    )


def _signs(working: Working) -> Iterator[tuple[str, str, str]]:
    yield working.symbol, working.unit, working.what
    yield from ((term.symbol, term.unit, term.meaning) for term in working.terms)


def _bare(symbol: str) -> str:
    """A symbol without the marks of an eye and of the other form."""
    return symbol.removesuffix("_R").removesuffix("_L").rstrip("'")


def in_prose(path: Path, known: Known) -> list[str]:
    """Return the package's own terms that a lesson's prose uses and the glossary does not know.

    path: of the lesson; its list of sources is passed over.
    known: the glossary.
    """
    told = prose(path).partition("\n## Sources")[0]
    whole, unknown = f" {' '.join(words_of(told))} ", known.unknown(told)
    return [term for term in terms() if _is_missing(term, whole, unknown, known)]


def _is_missing(term: str, whole: str, unknown: str, known: Known) -> bool:
    """Whether a text uses a term of which the glossary does not know every word.

    A single word may stand in a longer name: there it is not missing.
    """
    words = words_of(term)
    left = set(known.left_over(term)) - _EVERYDAY
    return bool(left) and f" {' '.join(words)} " in (whole if len(words) > 1 else unknown)


@cache
def terms() -> tuple[str, ...]:
    """Return the package's own terms: names in its code, and phrases of its workings, tables and notes."""
    found = (*map(_names, _files("*.py")), *map(_phrases, _texts()))
    return tuple(sorted(set(chain.from_iterable(found)) - {""}))


def _files(pattern: str) -> Iterator[Path]:
    return chain.from_iterable((_ROOT / "lablib" / part).rglob(pattern) for part in _TRADE)


def _names(module: Path) -> Iterator[str]:
    """What a module is called, its classes, what they hold, and every function that gives a measure."""
    yield module.stem.strip("_").replace("_", " ")
    for node in ast.walk(ast.parse(module.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ClassDef):
            yield " ".join(re.findall(r"[A-Z][a-z]+", node.name)).lower()
            fields = [part.target.id for part in node.body if isinstance(part, ast.AnnAssign)]
            properties = [
                part.name for part in node.body if isinstance(part, ast.FunctionDef) and part.decorator_list
            ]
            yield from map(_without_unit, fields + properties)
        elif isinstance(node, ast.FunctionDef) and _UNITS.search(node.name):
            yield _without_unit(node.name)


def _without_unit(name: str) -> str:
    return "" if name.startswith("_") else _UNITS.sub("", name).replace("_", " ")


def _texts() -> Iterator[str]:
    """What workings say, what tables call their numbers, what words the notes for engineers explain."""
    for module in _files("*_workings.py"):
        yield from _strings(ast.parse(module.read_text(encoding="utf-8")))
    for table in _files("*.toml"):
        yield from re.findall(r'^words = "(.*)"', table.read_text(encoding="utf-8"), flags=re.MULTILINE)
    notes = (_ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    yield from _ITALIC.findall(notes.partition("## Words and signs\n")[2].partition("\n## ")[0])


def _strings(tree: ast.Module) -> Iterator[str]:
    """Texts of a module, without its docstrings, sources and constants."""
    nodes = list(ast.walk(tree))
    skipped = {id(node.value) for node in nodes if isinstance(node, ast.Expr)}
    skipped |= {id(node.value) for node in nodes if isinstance(node, ast.keyword) and node.arg == "source"}
    skipped |= {id(node.value) for node in tree.body if isinstance(node, ast.Assign)}
    for node in nodes:
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in skipped:
            yield node.value


def _phrases(text: str) -> Iterator[str]:
    """Runs of two words and more with no grammar between: "lever arm" of "lever arm of the force"."""
    marked = WORD.sub(lambda word: "|" if word[0] in GRAMMAR else word[0], text.casefold())
    runs = (WORD.findall(part) for part in re.split(r"[^\w\s'’]|[\d_]", marked))
    return (" ".join(words) for words in runs if len(words) > 1)


def _with_reason(words: str, known: Known) -> str:
    return f"{words} ({', '.join(known.left_over(words))})"


def _unique(found: Iterable[str]) -> list[str]:
    return sorted(set(found))
