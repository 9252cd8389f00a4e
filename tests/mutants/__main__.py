"""Try every mutant of the reference schedulers, and write ``specs/mutants`` anew.

python -m tests.mutants [MODULE ...]     only the mutants of these modules; the rows of the others stay
python -m tests.mutants --again ID ...   try these only, and say whether it went as in the table (exit code 1 if not)
"""

import os
import sys
from collections.abc import Sequence
from itertools import product

from tests.mutants.campaign import judgements
from tests.mutants.judging import Fate, judge, said_by_the_right_one
from tests.mutants.making import mutants_of
from tests.mutants.sources import digest, mutated, sources
from tests.mutants.table import PAGE, ROWS, Row, complaints, page_text, read_reasons, read_rows, rows_text
from tests.mutants.trials import scenes_each, trials_of


def run(modules: Sequence[str]) -> None:
    """Try all mutants of ``modules``, and write the rows and the page."""
    texts = sources()
    mutants = [mutant for module in modules for mutant in mutants_of(module, texts[module])]
    for module in modules:
        trials = trials_of(module, texts)
        for trial, number in product(trials, range(scenes_each(len(trials)))):
            said_by_the_right_one(trial, number)  # once, before the processes part
    rows = [row for row in (read_rows() if ROWS.exists() else []) if row.module not in modules and row.module in texts]
    for number, (mutant, judgement) in enumerate(judgements(mutants, texts, jobs=os.cpu_count() or 1), 1):
        rows.append(Row.of(mutant, digest(texts[mutant.module]), judgement))
        if judgement.fate is Fate.SURVIVED or number % 50 == 0:
            told = f"{judgement.fate.value}: {mutant.before} -> {mutant.after} ({judgement.unlike} unlike)"
            print(f"{number} of {len(mutants)}: {mutant.id} {told}", flush=True)  # noqa: T201
    ROWS.write_text(rows_text(rows), "utf-8")
    PAGE.write_text(page_text(read_rows(), read_reasons()), "utf-8")
    for complaint in complaints(rows, read_reasons()):
        print(complaint)  # noqa: T201


def again(ids: Sequence[str]) -> bool:
    """Try the mutants of these ids once more, in this process; whether they meet the same fate."""
    texts, rows, alike = sources(), {row.id: row for row in read_rows()}, True
    unknown = [each for each in ids if each not in rows]
    if unknown:
        sys.exit(f"there is no mutant {', '.join(unknown)} in {ROWS.name}")
    for module in sorted({rows[each].module for each in ids}):
        for mutant in mutants_of(module, texts[module]):
            if mutant.id in ids:
                fate = judge(mutant, texts).fate.value
                print(f"{mutant.id} {fate}")  # noqa: T201
                alike &= fate == rows[mutant.id].fate
    return alike


if __name__ == "__main__":
    if sys.argv[1:2] == ["--again"]:
        sys.exit(not again(sys.argv[2:]))
    run(sys.argv[1:] or mutated())
