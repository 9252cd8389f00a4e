"""All mutants, some at a time, each in a process of its own that is forked off with everything loaded."""

import multiprocessing
import os
import time
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from multiprocessing.connection import Connection, wait
from multiprocessing.process import BaseProcess

from tests.mutants.judging import Fate, Judgement, judge
from tests.mutants.making import Mutant

SECONDS = 900.0
"""After which a mutant counts as hung, whatever it is at: the judge's own limit can't interrupt every call."""


@dataclass(frozen=True, kw_only=True)
class _Running:
    mutant: Mutant
    process: BaseProcess
    until: float


def judgements(mutants: Iterable[Mutant], texts: Mapping[str, str], *, jobs: int) -> Iterator[tuple[Mutant, Judgement]]:
    """What becomes of each, as they end; at most ``jobs`` at a time."""
    waiting, running = list(mutants)[::-1], dict[Connection, _Running]()
    while waiting or running:
        while waiting and len(running) < jobs:
            mutant = waiting.pop()
            reader, process = _started(lambda mutant=mutant: judge(mutant, texts))  # type: ignore[misc]
            running[reader] = _Running(mutant=mutant, process=process, until=time.monotonic() + SECONDS)
        for reader in [reader for reader in wait(list(running), timeout=1.0) if isinstance(reader, Connection)]:
            yield running[reader].mutant, _told(reader, running.pop(reader).process)
        for reader, one in list(running.items()):
            if time.monotonic() > one.until:
                one.process.kill()
                one.process.join()
                del running[reader]
                yield one.mutant, Judgement(fate=Fate.HUNG, by="not to be interrupted")


def _started(call: Callable[[], Judgement]) -> tuple[Connection, BaseProcess]:
    context = multiprocessing.get_context("fork")
    reader, writer = context.Pipe(duplex=False)

    def tell() -> None:
        reader.close()
        writer.send(call())
        writer.close()
        os._exit(0)  # nothing of the parent's is to be tidied up here

    process = context.Process(target=tell)
    process.start()
    writer.close()
    return reader, process


def _told(reader: Connection, process: BaseProcess) -> Judgement:
    try:
        told: Judgement = reader.recv()
    except EOFError:
        process.join()
        told = Judgement(fate=Fate.ERROR, by=f"the process ended with {process.exitcode}")
    process.join()
    reader.close()
    return told
