"""The files that a candidate is written in: its own, and those of the user that are imported from there."""

import inspect
import sys
import sysconfig
from collections.abc import Iterator
from pathlib import Path
from types import FunctionType, ModuleType

from planeproof.hosts.target import Candidate

_INSTALLED = (
    *(Path(sysconfig.get_path(name)).resolve() for name in ("stdlib", "purelib", "platlib")),
    Path(__file__).resolve().parents[1],
)
"""What is here is known by its version."""


def files_of(candidate: Candidate) -> tuple[Path, ...]:
    """Sorted: the file that ``candidate`` is written in, those of its bases, and what they import in turn.

    What is imported only while it runs is not known. What is installed is left out, but for the candidate's own file.
    """
    made = inspect.unwrap(candidate.make)
    found = set() if candidate.written is None else {Path(candidate.written[0]).resolve()}
    waiting = [_module_of(one) for one in getattr(made, "__mro__", (made,))]
    seen: set[str] = set()
    while waiting:
        module = waiting.pop()
        if module is None or module.__name__ in seen:
            continue
        seen.add(module.__name__)
        file = getattr(module, "__file__", None)
        if file is not None and not any(Path(file).resolve().is_relative_to(folder) for folder in _INSTALLED):
            found.add(Path(file).resolve())
            waiting.extend(_named_in(module))
    return tuple(sorted(found))


def _named_in(module: ModuleType) -> Iterator[ModuleType | None]:
    """The modules that ``module`` has names of, or names from."""
    for value in list(vars(module).values()):
        if isinstance(value, ModuleType):
            yield value
        else:
            of = value if isinstance(value, type | FunctionType) else type(value)
            yield _module_of(of)


def _module_of(of: object) -> ModuleType | None:
    return sys.modules.get(str(getattr(of, "__module__", "")))
