"""Where the command begins: what runs a candidate runs in a process of its own.

A candidate can end the process it runs in (``os._exit``, an abort, a crash in a library of its own), with any exit
code, 0 included. So the verdict's exit code is handed over in words of ours, and where it never comes that is said.
"""

import os
import signal
import sys
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


def _command() -> int:
    from planeproof.command.main import main  # noqa: PLC0415 -- not in the process that only waits

    try:
        main(prog_name="planeproof")
    except SystemExit as ended:
        return int(ended.code or 0)
    return 0


def _watched() -> int:
    """Run the command in a child; its exit code, or what the way it ended means."""
    reader, writer = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(reader)
        code = _command()
        sys.stdout.flush()
        sys.stderr.flush()
        os.write(writer, bytes([code]))
        os._exit(code)
    os.close(writer)
    _pass_on(child)
    told = os.read(reader, 1)
    _, status = os.waitpid(child, 0)
    return told[0] if told else _died(status)


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


def _died(status: int) -> int:
    """Say that there is no verdict, and where the scene is that was being played."""
    code = os.waitstatus_to_exitcode(status)
    how = f"by signal {-code} ({signal.Signals(-code).name})" if code < 0 else f"with exit code {code}"
    lines = [f"planeproof: there is no verdict: the process ended {how} while {_DOING[sys.argv[1]]}."]
    if sys.argv[1] == "check":
        case = os.path.join(_cases(sys.argv), "playing.json")  # noqa: PTH118 -- pathlib is not needed for this
        lines += [f"The scene that was being played is in {case}; to see it again: planeproof replay {case}"]
    sys.stderr.write("\n".join(lines) + "\n")
    no_fault_of_it = sys.argv[1] == "prove" or (code < 0 and -code in FROM_OUTSIDE)
    return UNKNOWN if no_fault_of_it else CANDIDATE_ERROR


def _cases(arguments: list[str]) -> str:
    """The folder given with --cases, as far as that can be told without parsing the whole line."""
    for place, word in enumerate(arguments):
        if word.startswith("--cases="):
            return word.removeprefix("--cases=")
        if word == "--cases" and place + 1 < len(arguments):
            return arguments[place + 1]
    return ".planeproof"
