"""Ctrl-C that is never lost.

Python raises KeyboardInterrupt wherever it happens to be. In a callback of the garbage collector, of which Hypothesis
has one, it is printed and forgotten, and elsewhere it may come out as another error. So that it was pressed is
remembered, and asked for again between two scenes and at the end.
"""

import signal
import sys
import threading
from types import FrameType, TracebackType
from typing import TYPE_CHECKING, Self

if TYPE_CHECKING:
    from sys import UnraisableHookArgs


class Interruption:
    """Context manager: inside it, Ctrl-C ends in KeyboardInterrupt, at the next `check` at the latest."""

    def __init__(self) -> None:
        self._pressed = False

    def __enter__(self) -> Self:
        self._hook, self._handler = sys.unraisablehook, signal.getsignal(signal.SIGINT)
        sys.unraisablehook = self._unraisable
        # Only the main thread may set a handler, and whoever ignores Ctrl-C goes on ignoring it.
        if threading.current_thread() is threading.main_thread() and self._handler is not signal.SIG_IGN:
            signal.signal(signal.SIGINT, self._press)
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        sys.unraisablehook = self._hook
        if signal.getsignal(signal.SIGINT) == self._press:
            signal.signal(signal.SIGINT, self._handler)
        if not isinstance(error, KeyboardInterrupt):
            self.check()

    def check(self) -> None:
        """Raise KeyboardInterrupt if Ctrl-C was pressed."""
        if self._pressed:
            raise KeyboardInterrupt

    def _press(self, _signal: int, _frame: FrameType | None) -> None:
        self._pressed = True
        raise KeyboardInterrupt

    def _unraisable(self, about: "UnraisableHookArgs") -> None:
        if not (self._pressed and issubclass(about.exc_type, KeyboardInterrupt)):
            self._hook(about)
