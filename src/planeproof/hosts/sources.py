"""The files that a candidate is written in: its own, and those of the user that are imported from there."""

import inspect
import sys
import sysconfig
from collections.abc import Callable, Iterator
from pathlib import Path
from types import FunctionType, ModuleType

_INSTALLED = (
    *(Path(sysconfig.get_path(name)).resolve() for name in ("stdlib", "purelib", "platlib")),
    Path(__file__).resolve().parents[1],
)
"""What is here is known by its version."""


def files_of(make: Callable[[], object]) -> tuple[Path, ...]:
    """Sorted: the file that ``make`` is written in, those of its bases, and what they import in turn.

    What is imported only while it runs is not known. What is installed is left out, but for the candidate's own file.
    """
    made = inspect.unwrap(make)
    found = set(_own(made))
    waiting = [sys.modules.get(str(getattr(one, "__module__", ""))) for one in getattr(made, "__mro__", (made,))]
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


def _own(made: Callable[[], object]) -> Iterator[Path]:
    try:
        file = inspect.getsourcefile(made)
    except (OSError, TypeError):
        return
    if file is not None and Path(file).exists():
        yield Path(file).resolve()


def _named_in(module: ModuleType) -> Iterator[ModuleType | None]:
    """The modules that ``module`` has names of, or names from."""
    for value in list(vars(module).values()):
        if isinstance(value, ModuleType):
            yield value
        else:
            of = value if isinstance(value, type | FunctionType) else type(value)
            yield sys.modules.get(str(getattr(of, "__module__", "")))
