"""A candidate named in text: ``package.module:Name`` or ``file.py:Name``."""

import difflib
import importlib
import importlib.util
import inspect
import sys
import traceback
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from types import ModuleType

from planeproof.contract import Scheduler
from planeproof.contract.errors import in_words


class TargetError(ValueError):
    """A target that names nothing that could be checked."""


@dataclass(frozen=True, kw_only=True)
class Candidate:
    """Something to check: its name, and how to make a scheduler of it."""

    name: str
    make: Callable[[], Scheduler]

    @property
    def written(self) -> tuple[str, int] | None:
        """File and line, from 1, where its class or function begins; None where that is not known."""
        try:
            made = inspect.unwrap(self.make)
            file = inspect.getsourcefile(made)
            return None if file is None else (file, inspect.getsourcelines(made)[1])
        except (OSError, TypeError):
            return None


def load(target: str | Callable[[], Scheduler]) -> Candidate:
    """The candidate that ``target`` names, or that it is. Raises `TargetError` with what to do instead."""
    if not isinstance(target, str):
        if not callable(target):
            raise TargetError(f"target is {target!r}: it must be a class, or a function that returns a scheduler")
        module, name = getattr(target, "__module__", ""), getattr(target, "__qualname__", type(target).__name__)
        return Candidate(name=f"{module}:{name}", make=target)
    place, colon, name = target.rpartition(":")
    if not colon or not place or not name:
        raise TargetError(f"target {target!r} must read package.module:Name or file.py:Name")
    if "/" in place and not place.endswith(".py"):
        raise TargetError(f"target {target!r} names a file that does not end in .py: only those can be read")
    module_ = _from_file(Path(place)) if place.endswith(".py") else _from_package(place)
    found = getattr(module_, name, None)
    if found is None:
        raise TargetError(f"target {target!r}: {place} has no {name!r}; {_instead(name, _offered(module_))}")
    if not callable(found):
        raise TargetError(f"target {target!r} is of type {type(found).__name__}: it must be a class or a function")
    return Candidate(name=target, make=found)


def _offered(module: ModuleType) -> list[str]:
    """What could be checked: what ``__all__`` names, or else its own classes and functions and schedulers of others."""
    said = getattr(module, "__all__", None)
    if said is not None:
        return sorted(name for name in said if callable(getattr(module, name, None)))
    public = {name: value for name, value in vars(module).items() if callable(value) and not name.startswith("_")}
    return sorted(name for name, value in public.items() if _is_own(module, value) or _schedules(value))


def _is_own(module: ModuleType, value: object) -> bool:
    return getattr(value, "__module__", None) == module.__name__


def _schedules(value: object) -> bool:
    """Whether it is a class with the methods of a scheduler, and not only the description of one."""
    if not isinstance(value, type) or value is Scheduler or inspect.isabstract(value):
        return False
    return all(callable(getattr(value, method, None)) for method in ("start", "offer", "blank"))


def _instead(name: str, offered: list[str]) -> str:
    """The one that was probably meant, and all there are."""
    by_lower = {each.lower(): each for each in offered}
    near = difflib.get_close_matches(name.lower(), by_lower, n=1)
    guess = f"did you mean {by_lower[near[0]]!r}? " if near else ""
    return f"{guess}it has {', '.join(offered) or 'no class or function of its own'}"


def _from_file(path: Path) -> ModuleType:
    if not path.is_file():
        raise TargetError(f"target file {str(path)!r}: there is no such file in {Path.cwd()}")
    name = f"planeproof_target_{path.stem}"
    spec = importlib.util.spec_from_file_location(name, path)
    if spec is None or spec.loader is None:
        raise TargetError(f"target file {str(path)!r} can't be read as Python")
    module = importlib.util.module_from_spec(spec)
    sys.modules[name] = module  # dataclasses and pickling look their module up by name
    try:
        # So that the file may import its neighbours, as it could when run.
        sys.path.insert(0, str(path.parent.resolve()))
        spec.loader.exec_module(module)
    except KeyboardInterrupt:
        raise
    except BaseException as error:
        raise TargetError(_import_trouble(str(path), error)) from error
    finally:
        sys.path.pop(0)
    return module


def _from_package(name: str) -> ModuleType:
    if str(Path.cwd()) not in sys.path:
        sys.path.insert(0, str(Path.cwd()))
    try:
        return importlib.import_module(name)
    except ModuleNotFoundError as error:
        if error.name is not None and (name == error.name or name.startswith(f"{error.name}.")):
            raise TargetError(f"target module {name!r}: there is no module {error.name!r} here or installed") from error
        raise TargetError(_import_trouble(name, error)) from error
    except KeyboardInterrupt:
        raise
    except BaseException as error:
        raise TargetError(_import_trouble(name, error)) from error


def _import_trouble(what: str, error: BaseException) -> str:
    last = traceback.extract_tb(error.__traceback__)[-1] if error.__traceback__ else None
    where = f" (line {last.lineno} of {last.filename})" if last else ""
    # A syntax error names its file and line itself, and what raised it is not the file's code.
    line = "" if isinstance(error, SyntaxError) and error.lineno is not None else where
    said = f"it ends the program ({error!r})" if isinstance(error, SystemExit) else in_words(error)
    return f"target {what!r} can't be imported: {said}{line}"
