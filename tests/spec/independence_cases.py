"""The kept witnesses of theorem 9: a case for the scene of each, and beside it what is written in it.

python -m tests.spec.independence_cases
"""

from pathlib import Path

from planeproof.judge import Play, play
from planeproof.scenes.cases import Case, Found, load_case, save_case
from planeproof.spec import prove
from planeproof.spec.theorems.independence import DISCIPLINE, DROPPED, without
from planeproof.spec.witness_run import Witness, WitnessRun, run_machine
from tests.judge.scripted import scripted

FOLDER = Path(__file__).parents[1] / "cases" / "independence"


def run_of(witness: Witness) -> WitnessRun:
    """The run that a witness of theorem 9 tells of."""
    return WitnessRun.from_witness(witness, run_machine(1, (1, 2)))


def played(run: WitnessRun) -> Play:
    """What comes of a run on the numpy model."""
    return play(run.scene, scripted(run.blankings, set_up=run.set_up))


def kept(rule: str) -> WitnessRun:
    """The kept witness."""
    scene = load_case(FOLDER / f"{rule}.json").scene
    return WitnessRun.from_json((FOLDER / f"{rule}.writes.json").read_text("utf-8"), scene)


def main() -> None:
    """Write the cases anew."""
    for rule, kinds in DROPPED.items():
        witness = prove(without(rule, kinds)).witness
        assert witness is not None, rule
        run = run_of(witness)
        seen = " The viewer sees a frame that is no picture." if rule in DISCIPLINE else ""
        note = f"Theorem 9: every other rule of discipline and ownership is kept, {rule} is not.{seen}"
        found = Found(target=f"the writes in {rule}.writes.json", rule=rule, note=note)
        save_case(FOLDER / f"{rule}.json", Case(scene=run.scene, found=found))
        (FOLDER / f"{rule}.writes.json").write_text(run.to_json(), encoding="utf-8")


if __name__ == "__main__":
    main()
