"""The architecture, executable: which package may import which, and how long a module may be.

The order is contract < machines < display < judge < scenes < candidates, hosts, spec, ways, record < search,
conformance < power < report < pictures < page, notebook, testing < command.
`ALLOWED` is the whole of it. Every import statement counts, inside functions and under
TYPE_CHECKING too: a cycle that is only for the type checker is a cycle for the reader. What this can't see is a
module imported by a name that is computed.
"""

import ast
import sys
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

ROOT = "planeproof"
SOURCE = Path(__file__).parent.parent / "src" / ROOT
LONGEST = 320
"""Lines a module may have: one subject, read in one sitting."""

ALLOWED: dict[str, set[str]] = {
    "contract": set(),
    "machines": {"contract"},
    "display": {"contract"},
    "judge": {"contract", "display"},
    "scenes": {"contract", "machines", "display"},
    "candidates": {"contract"},
    "hosts": {"contract"},
    "spec": {"contract", "scenes"},
    "ways": {"contract"},
    "record": {"contract", "machines", "judge", "scenes"},
    "search": {"contract", "machines", "display", "judge", "scenes", "hosts", "record"},
    "conformance": {"contract", "judge", "scenes", "spec"},
    "power": {"contract", "machines", "judge", "scenes", "candidates", "hosts", "search", "spec", "conformance"},
    "report": {"contract", "display", "judge", "scenes", "ways", "search", "power"},
    "pictures": {"contract", "display", "judge", "report"},
    "page": {"contract", "display", "judge", "report", "pictures"},
    "notebook": {"contract", "judge", "report", "pictures"},
    "testing": {"contract", "machines", "judge", "scenes", "hosts", "report", "search"},
}
"""Package -> the other packages of ours it may import. A new package is a new line here."""

UNBOUND = {"command", "__init__", "__main__"}
"""Where everything comes together: these may import any package, and no package may import them."""

THIRD_PARTY: dict[str, set[str]] = {"contract": {"numpy"}}
"""Package -> all that it may import from elsewhere, where that is limited."""

OWNED = {"z3": "spec", "jinja2": "page"}
"""Library -> the only package that may import it."""


@dataclass(frozen=True, kw_only=True)
class Module:
    """One module: the names that lead to it below the root package, and its text.

    ``path`` is ("contract", "machine") for planeproof/contract/machine.py, and ("contract", "__init__") for
    planeproof/contract/__init__.py.
    """

    path: tuple[str, ...]
    text: str

    @property
    def package(self) -> str:
        """The package directly below the root, or the module that stands there by itself."""
        return self.path[0]

    def where(self, line: int) -> str:
        """File and line, as an editor opens it."""
        return f"src/{ROOT}/{'/'.join(self.path)}.py:{line}"


def modules_on_disk() -> list[Module]:
    """Every module of the package as it stands in the checkout."""
    return [
        Module(path=file.relative_to(SOURCE).with_suffix("").parts, text=file.read_text("utf-8"))
        for file in sorted(SOURCE.rglob("*.py"))
    ]


def imports(module: Module) -> Iterator[tuple[int, str]]:
    """(line, absolute dotted name) of everything that the module imports; names imported `from` count."""
    for node in ast.walk(ast.parse(module.text)):
        if isinstance(node, ast.Import):
            yield from ((node.lineno, alias.name) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            base = _absolute(module, node)
            yield from ((node.lineno, f"{base}.{alias.name}") for alias in node.names)


def _absolute(module: Module, node: ast.ImportFrom) -> str:
    parents = (ROOT, *module.path)[: -node.level] if node.level else ()
    return ".".join([*parents, *([node.module] if node.module else [])])


def wrong_imports(modules: Iterable[Module]) -> list[str]:
    """One line for each import that points the wrong way."""
    return [
        f"{module.where(line)} {complaint}"
        for module in modules
        for line, name in imports(module)
        for complaint in _complaints(module.package, name.split("."))
    ]


def _complaints(package: str, name: list[str]) -> Iterator[str]:
    top = name[0]
    if top == ROOT:
        target = name[1] if name[1:] else ROOT
        if package not in UNBOUND and target not in {package, *ALLOWED.get(package, set())}:
            yield f"{package} may not import {'.'.join(name)}"
        return
    if OWNED.get(top, package) != package:
        yield f"only {OWNED[top]} may import {top}"
    if package in THIRD_PARTY and top not in THIRD_PARTY[package] | sys.stdlib_module_names:
        yield f"{package} may import {', '.join(sorted(THIRD_PARTY[package]))} only, not {top}"


def undeclared(modules: Iterable[Module]) -> list[str]:
    """The packages, and modules beside them, that the table does not know."""
    return sorted({module.package for module in modules} - ALLOWED.keys() - UNBOUND)


def too_long(modules: Iterable[Module]) -> list[str]:
    """One line for each module of more lines than `LONGEST`."""
    counts = ((module, len(module.text.splitlines())) for module in modules)
    return [f"{module.where(count)} has more than {LONGEST} lines" for module, count in counts if count > LONGEST]


def test_imports_point_one_way() -> None:
    """Every import in the package is one that the table allows."""
    assert wrong_imports(modules_on_disk()) == []


def test_the_table_has_no_cycle() -> None:
    """Each line of the table names only packages of the lines above it, so that it can't allow a cycle."""
    order = list(ALLOWED)
    backward = [(p, q) for p, allowed in ALLOWED.items() for q in allowed if q not in order[: order.index(p)]]
    assert backward == []


def test_the_table_knows_every_package() -> None:
    """Nothing stands below the root that the table does not name, and the contract does stand there."""
    modules = modules_on_disk()
    assert undeclared(modules) == []
    assert "contract" in {module.package for module in modules}


def test_modules_are_short() -> None:
    """No module has more than `LONGEST` lines."""
    assert too_long(modules_on_disk()) == []


BAD_IMPORTS = [
    ("contract/a", "import planeproof.judge.play", "contract may not import planeproof.judge.play"),
    ("contract/a", "from planeproof.judge import play", "contract may not import planeproof.judge.play"),
    ("contract/a", "from planeproof import judge", "contract may not import planeproof.judge"),
    ("contract/a", "from ..judge import play", "contract may not import planeproof.judge.play"),
    ("contract/__init__", "from ..judge import play", "contract may not import planeproof.judge.play"),
    ("contract/a", "from .. import judge", "contract may not import planeproof.judge"),
    ("candidates/deep/a", "from ...judge import play", "candidates may not import planeproof.judge.play"),
    ("judge/a", "import planeproof", "judge may not import planeproof"),
    ("judge/a", "from planeproof import Machine", "judge may not import planeproof.Machine"),
    ("report/a", "import planeproof.command.main", "report may not import planeproof.command.main"),
    ("contract/a", "def f():\n    import planeproof.judge", "contract may not import planeproof.judge"),
    (
        "contract/a",
        "if TYPE_CHECKING:\n    import planeproof.judge",
        "contract may not import planeproof.judge",
    ),
    ("contract/a", "import os, msgspec", "contract may import numpy only, not msgspec"),
    ("judge/a", "from z3 import Solver", "only spec may import z3"),
    ("command/a", "import z3", "only spec may import z3"),
    ("stray/a", "import planeproof.contract", "stray may not import planeproof.contract"),
]


@pytest.mark.parametrize(("path", "text", "complaint"), BAD_IMPORTS)
def test_a_wrong_import_is_reported(path: str, text: str, complaint: str) -> None:
    """An import that points the wrong way is reported once, with file, line and reason, however written."""
    module = Module(path=tuple(path.split("/")), text=text)
    assert wrong_imports([module]) == [f"src/planeproof/{path}.py:{len(text.splitlines())} {complaint}"]


@pytest.mark.parametrize(
    ("path", "text"),
    [
        ("contract/a", "import ast\nimport numpy.typing\nfrom . import b\nfrom .b import c"),
        ("contract/__init__", "from .machine import Machine\nfrom planeproof.contract import machine"),
        ("search/a", "from planeproof.judge import play\nfrom ..scenes import recipes\nimport hypothesis"),
        ("spec/a", "import z3"),
        ("command/main", "from planeproof import report\nimport click, planeproof.search"),
        ("__init__", "from planeproof.contract import Machine\nfrom . import judge"),
    ],
)
def test_a_right_import_is_not_reported(path: str, text: str) -> None:
    """What the table allows passes, so that a report means something."""
    assert wrong_imports([Module(path=tuple(path.split("/")), text=text)]) == []


def test_a_stray_package_and_a_long_module_are_reported() -> None:
    """A package or lone module that the table does not name is found, and so is the first line too many."""
    stray = [Module(path=("stray", "a"), text=""), Module(path=("lone",), text="")]
    assert undeclared([*stray, Module(path=("judge", "a"), text="")]) == ["lone", "stray"]
    lengths = [Module(path=("judge", "a"), text="\n" * LONGEST), Module(path=("judge", "b"), text="\n" * 321)]
    assert too_long(lengths) == ["src/planeproof/judge/b.py:321 has more than 320 lines"]
