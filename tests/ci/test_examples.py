"""The example workflows: valid by the schemas of the systems that they are for, and agreeing with the gate.

Schemas: those that the package check-jsonschema has vendored (READ-2: copies of the ones published for these systems).
"""

import re
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML

CI = Path(__file__).parents[2] / "ci"
SCHEMAS = {"workflow.yml": "vendor.github-workflows", "pipeline.yml": "vendor.gitlab-ci"}


def valid(file: Path, schema: str) -> bool:
    """Whether the schema lets it pass; nothing is fetched for one that is vendored."""
    command = [sys.executable, "-m", "check_jsonschema", "--builtin-schema", schema, str(file)]
    done = subprocess.run(command, capture_output=True, text=True, timeout=60, check=False)
    assert done.returncode in (0, 1), done.stdout + done.stderr
    return done.returncode == 0


def read(name: str) -> Any:  # noqa: ANN401 -- as YAML has it
    """The example as YAML 1.2, in which `on` is no truth value."""
    return YAML(typ="safe", pure=True).load(CI / "examples" / name)


def test_every_example_has_a_schema() -> None:
    """None is left out of these tests."""
    assert {path.name for path in (CI / "examples").iterdir()} == set(SCHEMAS)


@pytest.mark.parametrize(("name", "schema"), SCHEMAS.items())
def test_an_example_is_valid(name: str, schema: str) -> None:
    """By the published schema of its system."""
    assert valid(CI / "examples" / name, schema)


@pytest.mark.parametrize(
    ("name", "old", "new"),
    [
        ("workflow.yml", "runs-on:", "run-on:"),
        ("workflow.yml", "  pull_request:", "  pull_requests:"),
        ("workflow.yml", "security-events: write", "security-events: yes please"),
        ("pipeline.yml", "when: always", "when: ever"),
        ("pipeline.yml", "  script:", "  scripts:"),
        ("pipeline.yml", "junit: planeproof-report/*.xml", "junit: 3"),
    ],
)
def test_a_mutated_example_is_refused(name: str, old: str, new: str, tmp_path: Path) -> None:
    """The schemas are such that can refuse."""
    text = (CI / "examples" / name).read_text("utf-8")
    assert old in text
    (tmp_path / name).write_text(text.replace(old, new), "utf-8")
    assert not valid(tmp_path / name, SCHEMAS[name])


def test_what_they_set_are_settings_of_the_gate() -> None:
    """A misspelt one would be ignored in silence."""
    settings = set(re.findall(r'^: "\$\{([A-Z]+):=', (CI / "gate").read_text("utf-8"), re.MULTILINE))
    assert {"TARGET", "MACHINES", "CASES", "REPORT", "EXPECTED", "SCENES", "PYTHON"} == settings
    assert set(read("workflow.yml")["jobs"]["gate"]["env"]) <= settings
    assert set(read("pipeline.yml")["planeproof"]["variables"]) <= settings


def test_report_and_cases_are_kept_whatever_came_of_it() -> None:
    """A failure is when they are wanted."""
    steps = read("workflow.yml")["jobs"]["gate"]["steps"]
    (at,) = [place for place, step in enumerate(steps) if step.get("run") == "sh ci/gate"]
    assert all("!cancelled()" in step["if"] for step in steps[at + 1 :])
    job = read("pipeline.yml")["planeproof"]
    assert job["artifacts"]["when"] == "always"
    named = job["variables"]
    assert job["artifacts"]["paths"] == [f"{named['REPORT']}/", f"{named['CASES']}/"]
    assert job["artifacts"]["reports"]["junit"] == f"{named['REPORT']}/*.xml"


def test_no_address_stands_in_what_is_copied() -> None:
    """Neither of a registry nor of anything else."""
    for path in (CI / "gate", *(CI / "examples").iterdir()):
        assert "://" not in path.read_text("utf-8")
