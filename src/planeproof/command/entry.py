"""Where the command begins: what runs a candidate runs in a process of its own.

A candidate can end the process it runs in (``os._exit``, an abort, a crash in a library of its own), with any exit
code, 0 included. So the verdict's exit code is handed over in words of ours, and where it never comes that is said
and, if a report was asked for, written there.
"""

import os
import signal
import sys
from collections.abc import Callable
from types import FrameType
from typing import NoReturn

_RUNNING = "the candidate was running"
_DOING = {
    **dict.fromkeys(("check", "exhaust", "compare", "replay", "pictures"), _RUNNING),
    "prove": "an answer was being looked for",
}
RUNS_CANDIDATES = tuple(_DOING)
UNKNOWN, CANDIDATE_ERROR = 2, 4
"""As in `planeproof.judge.Outcome`, which is not imported here, for it is not needed to say --help."""

FROM_OUTSIDE = (signal.SIGTERM, signal.SIGKILL) if hasattr(signal, "SIGKILL") else (signal.SIGTERM,)
"""Signals that a candidate hardly sends itself: somebody, or the system, has ended it."""


def run() -> NoReturn:
    """The command ``planeproof``."""
    if hasattr(os, "fork") and len(sys.argv) > 1 and sys.argv[1] in RUNS_CANDIDATES:
        sys.exit(_watched())
    sys.exit(_command())


def _command(tell: Callable[[str, str], None] | None = None) -> int:
    """Run the command; ``tell`` takes what is to be known if the process ends: a ``seed`` drawn, the ``target``."""
    from planeproof.command.main import main  # noqa: PLC0415 -- not in the process that only waits

    try:
        main(prog_name="planeproof", obj=tell)
    except SystemExit as ended:
        return int(ended.code or 0)
    return 0


def _watched() -> int:
    """Run the command in a child; its exit code, or what the way it ended means."""
    reader, writer = os.pipe()
    case, earlier = _playing(), _state(_playing())
    child = os.fork()
    if child == 0:
        os.close(reader)
        code = _command(lambda what, value: _say(writer, what, value))
        sys.stdout.flush()
        sys.stderr.flush()
        _say(writer, "code", str(code))
        os._exit(code)
    os.close(writer)
    _pass_on(child)
    told = _heard(reader)
    _, status = os.waitpid(child, 0)
    if "code" in told:
        return int(told["code"])
    return _died(status, case if _state(case) not in {None, earlier} else None, told)


def _say(writer: int, what: str, value: str) -> None:
    os.write(writer, f"{what} {value}\n".encode())


def _heard(reader: int) -> dict[str, str]:
    """What the child says, up to its exit code: a process that it leaves behind may hold the pipe open for ever."""
    told: dict[str, str] = {}
    with os.fdopen(reader, "rb") as lines:
        for line in lines:
            what, _, value = line.decode().rstrip("\n").partition(" ")
            told[what] = value
            if what == "code":
                break
    return told


def _pass_on(child: int) -> None:
    """Signals that ask for an end go on to the child, which says what became of it; this process only waits."""

    def interrupt(number: int, _frame: FrameType | None) -> None:
        if not _in_front():  # at a terminal Ctrl-C reaches the child by itself, and twice would be once too often
            os.kill(child, number)

    signal.signal(signal.SIGINT, interrupt)
    signal.signal(signal.SIGTERM, lambda number, _frame: os.kill(child, number))


def _in_front() -> bool:
    try:
        return os.tcgetpgrp(sys.stderr.fileno()) == os.getpgrp()
    except (OSError, ValueError):
        return False


def _died(status: int, case: str | None, told: dict[str, str]) -> int:
    """Say that there is no verdict, and where the scene is that was being played, if it is anywhere."""
    code = os.waitstatus_to_exitcode(status)
    how = f"by signal {-code} ({signal.Signals(-code).name})" if code < 0 else f"with exit code {code}"
    target = told.get("target")
    doing = _DOING[sys.argv[1]] if target is None else f"{target} was running"
    lines = [f"planeproof: there is no verdict: the process ended {how} while {doing}."]
    if target is not None:
        lines += [f"To see in which scene: planeproof check {target}; any others can be compared without it."]
    if case is not None:
        lines += [f"The scene that was being played is in {case}; to see it again: planeproof replay {case}"]
    sys.stderr.write("\n".join(lines) + "\n")
    outside = code < 0 and -code in FROM_OUTSIDE
    if sys.argv[1] == "check":
        from planeproof.command.ended import report_of_the_end  # noqa: PLC0415 -- hardly ever needed

        report_of_the_end(sys.argv[2:], how=how, case=case, seed=told.get("seed"), outside=outside)
    return UNKNOWN if outside or sys.argv[1] == "prove" else CANDIDATE_ERROR


def _playing() -> str | None:
    """Where a check leaves the scene that it is playing, if the process ends in it."""
    if sys.argv[1] != "check":
        return None
    return os.path.join(_cases(sys.argv), "playing.json")  # noqa: PTH118 -- pathlib is not needed for this


def _state(file: str | None) -> tuple[int, int] | None:
    """Tells a file from another one of its name; None if there is none."""
    try:
        found = None if file is None else os.stat(file)  # noqa: PTH116 -- as above
    except OSError:
        return None
    return None if found is None else (found.st_ino, found.st_mtime_ns)


def _cases(arguments: list[str]) -> str:
    """The folder given with --cases, as far as that can be told without parsing the whole line."""
    for place, word in enumerate(arguments):
        if word.startswith("--cases="):
            return word.removeprefix("--cases=")
        if word == "--cases" and place + 1 < len(arguments):
            return arguments[place + 1]
    return ".planeproof"
