"""Solve the edge scenes of the machines that ship anew, and write them where they are cached: python -m tests.edges."""

import shutil
import sys
from pathlib import Path

from planeproof import scenes
from planeproof.machines import read_machine, shipped
from planeproof.scenes.edges import files_of
from planeproof.spec.edges import solve_edges

FOLDER = Path(scenes.__file__).parent / "edge_cases"

if __name__ == "__main__":
    for name in sys.argv[1:] or shipped():
        files = files_of(solve_edges(read_machine(name)))
        shutil.rmtree(FOLDER / name, ignore_errors=True)
        for path, text in files.items():
            (FOLDER / name / path).parent.mkdir(parents=True, exist_ok=True)
            (FOLDER / name / path).write_bytes(text)
        sys.stdout.write(f"{name}: {len(files) - 1} scenes, {sum(map(len, files.values()))} bytes\n")
