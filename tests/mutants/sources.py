"""The reference schedulers as texts, and as modules made of texts: a mutant runs without a file being changed."""

import ast
import hashlib
import importlib
import sys
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from importlib.abc import InspectLoader, MetaPathFinder
from importlib.machinery import ModuleSpec
from importlib.util import spec_from_loader
from pathlib import Path
from types import ModuleType

from planeproof.candidates import reference

PACKAGE = reference.__name__
FOLDER = Path(next(iter(reference.__path__)))


def sources() -> dict[str, str]:
    """The text of each reference module by its short name, ``__init__`` included, as it stands on disk now."""
    return {file.stem: file.read_text("utf-8") for file in sorted(FOLDER.glob("*.py"))}


def digest(source: str) -> str:
    """Twelve digits that are others once the text has changed."""
    return hashlib.sha256(source.encode()).hexdigest()[:12]


def needs(texts: Mapping[str, str]) -> dict[str, set[str]]:
    """For each module all those that it is made of: itself, and what it imports, directly or not."""
    direct = {module: set(_imported(text)) & texts.keys() for module, text in texts.items()}
    found = {module: {module} for module in texts}
    for _ in texts:
        found = {module: each.union(*(direct[other] for other in each)) for module, each in found.items()}
    return found


def _imported(source: str) -> Iterator[str]:
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith(f"{PACKAGE}."):
            yield (node.module or "").removeprefix(f"{PACKAGE}.")


@dataclass(frozen=True)
class _Text(InspectLoader):
    source: str
    package: bool

    def get_source(self, _name: str) -> str:
        """The text."""
        return self.source

    def is_package(self, _name: str) -> bool:
        """Whether it is the ``__init__``."""
        return self.package


@dataclass(frozen=True)
class _Finder(MetaPathFinder):
    texts: Mapping[str, str]

    def find_spec(self, name: str, _path: Sequence[str] | None, _target: ModuleType | None = None) -> ModuleSpec | None:
        """A module of ours; None for all others, which are found as ever."""
        short = "__init__" if name == PACKAGE else name.removeprefix(f"{PACKAGE}.")
        if short not in self.texts or (short == name):
            return None
        package = short == "__init__"
        return spec_from_loader(name, _Text(self.texts[short], package), is_package=package)


@contextmanager
def loaded(texts: Mapping[str, str]) -> Iterator[None]:
    """Inside, importing a reference module makes it of ``texts``; afterwards all is as it was."""
    finder = _Finder(texts)
    before = {name: module for name, module in sys.modules.items() if f"{name}.".startswith(f"{PACKAGE}.")}
    for name in before:
        del sys.modules[name]
    sys.meta_path.insert(0, finder)
    try:
        yield
    finally:
        sys.meta_path.remove(finder)
        for name in [name for name in sys.modules if f"{name}.".startswith(f"{PACKAGE}.")]:
            del sys.modules[name]
        sys.modules.update(before)


def made(module: str, name: str) -> type:
    """The class ``name`` of a reference module, as it is loaded now."""
    found: type = getattr(importlib.import_module(f"{PACKAGE}.{module}"), name)
    return found


def mutated() -> list[str]:
    """The modules of which mutants are made: all that hold more than names."""
    return [module for module in sources() if module != "__init__"]
