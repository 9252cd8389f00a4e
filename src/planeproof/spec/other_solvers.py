"""Two more solvers that read the certificates: cvc5 and bitwuzla, from the optional extra ``certificates``.

Each is given text, never a formula of ours, so that nothing is shared with z3 but the certificate itself.
"""

import importlib
import time
from collections.abc import Callable
from dataclasses import dataclass
from types import ModuleType

from planeproof.spec.certificates import certificate
from planeproof.spec.obligation import Obligation
from planeproof.spec.solving import Result, reading

Said = tuple[str, int | None]
"""What the solver said, and how many resource units it used, if it counts them."""


@dataclass(frozen=True, kw_only=True)
class OtherSolver:
    """A solver by the name of its package. ``limit`` is in ``unit``; ``ask`` takes the package, a text, the limit."""

    name: str
    limit: int
    unit: str
    ask: Callable[[ModuleType, str, int], Said]

    def confirm(self, obligation: Obligation, limit: int | None = None) -> Result:
        """Ask this solver the certificate of ``obligation``. A missing package is UNKNOWN, and says what to install."""
        allowed = self.limit if limit is None else limit
        started = time.perf_counter()
        try:
            package = importlib.import_module(self.name)
        except ImportError:
            said, used, version = f"{self.name} is missing: pip install 'planeproof[certificates]'", None, "missing"
        else:
            said, used = self.ask(package, _unannounced(certificate(obligation)), allowed)
            version = str(getattr(package, "__version__", None) or package.version())
        answer, reason = reading(said, exact=obligation.exact)
        return Result(
            obligation=obligation,
            solver=f"{self.name} {version}",
            answer=answer,
            seconds=time.perf_counter() - started,
            used=used,
            limit=allowed,
            reason=reason,
        )


def _unannounced(text: str) -> str:
    """The text without its status line: cvc5 compares it with its own answer, and fails instead of saying it."""
    return "\n".join(line for line in text.splitlines() if not line.startswith("(set-info :status"))


def _ask_cvc5(cvc5: ModuleType, text: str, limit: int) -> Said:
    solver = cvc5.Solver(cvc5.TermManager())
    solver.setOption("rlimit", str(limit))
    parser = cvc5.InputParser(solver)
    parser.setStringInput(cvc5.InputLanguage.SMT_LIB_2_6, text, "certificate")
    names, said = parser.getSymbolManager(), ""
    while not (command := parser.nextCommand()).isNull():
        said = command.invoke(solver, names).strip() or said
    return _plain("cvc5", said), None


def _ask_bitwuzla(bitwuzla: ModuleType, text: str, limit: int) -> Said:
    options = bitwuzla.Options()
    options.set(bitwuzla.Option.TIME_LIMIT_PER, limit)
    parser = bitwuzla.Parser(bitwuzla.TermManager(), options)
    parser.parse(text, True, False)  # parse only, from text
    return _plain("bitwuzla", str(parser.bitwuzla().check_sat())), None


def _plain(name: str, said: str) -> str:
    return said if said in {"sat", "unsat"} else f"{name} gave up: {said}"


CVC5 = OtherSolver(name="cvc5", limit=400_000, unit="resource units", ask=_ask_cvc5)
BITWUZLA = OtherSolver(name="bitwuzla", limit=60_000, unit="milliseconds", ask=_ask_bitwuzla)
SOLVERS: tuple[OtherSolver, ...] = (CVC5, BITWUZLA)
"""bitwuzla has no resource limit, only a time; an answer it gives is not the less sure for that."""

OUT_OF_REACH: dict[str, dict[str, str]] = {
    "cvc5": {
        "rules-let-nothing-be-seen": "a search over three free refreshes; a-schedule-within-the-rules is one to check"
    },
    "bitwuzla": {},
}
"""Solver -> id of each obligation that it does not answer within its limit -> why."""
