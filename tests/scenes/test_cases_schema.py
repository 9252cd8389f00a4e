"""The published JSON Schema of a case."""

import json
from collections.abc import Callable
from importlib import resources
from typing import Any

import jsonschema
import pytest
from hypothesis import given

from planeproof.contract import Scene
from planeproof.machines import read_machine, shipped
from planeproof.scenes.cases import Case, case_schema, encode_case
from tests.scenes.test_cases import some_cases, written

PUBLISHED = resources.files("planeproof.scenes") / "case.schema.json"
VALIDATOR = jsonschema.Draft202012Validator(json.loads(PUBLISHED.read_text("utf-8")))


def test_the_published_schema_is_fresh() -> None:
    """The file is what the code says; if not, write the text of `case_schema` there."""
    assert PUBLISHED.read_text("utf-8") == case_schema()


def test_the_schema_is_one() -> None:
    """It is valid by the schema of schemas."""
    jsonschema.Draft202012Validator.check_schema(VALIDATOR.schema)


@given(some_cases())
def test_every_case_is_valid(case: Case) -> None:
    """What is written keeps to the published schema."""
    VALIDATOR.validate(json.loads(encode_case(case)))


@pytest.mark.parametrize("name", shipped())
def test_a_case_on_a_shipped_machine_is_valid(name: str) -> None:
    """So does a case on a machine that ships."""
    VALIDATOR.validate(json.loads(encode_case(Case(scene=Scene.of(read_machine(name), [])))))


Change = Callable[[dict[str, Any]], object]


@pytest.mark.parametrize(
    "change",
    [
        lambda form: form.pop("machine"),
        lambda form: form.update(planeproof_case=2),
        lambda form: form.update(wings=2),
        lambda form: form["machine"].pop("window"),
        lambda form: form["machine"]["tiles"].update(storage="heaped"),
        lambda form: form["machine"]["tiles"]["pool"][0].update(count=0),
        lambda form: form["machine"]["colours"].update(meaning=["white", "black"]),
        lambda form: form["machine"]["time"].update(reserve="a lot"),
        lambda form: form["machine"]["time"].update(reserve=None),
        lambda form: form["pictures"][0]["cells"].update({"one": "ff" * 8}),
        lambda form: form["pictures"][0]["cells"].update({"1": "ff" * 7}),
        lambda form: form["pictures"][0]["cells"].update({"1": 255}),
        lambda form: form["disturbances"][0].pop("cycles"),
        lambda form: form["found"].pop("rule"),
    ],
)
def test_a_case_that_is_wrong_is_not_valid(change: Change) -> None:
    """Each change to a valid case makes it one the schema refuses."""
    form = written()
    VALIDATOR.validate(form)
    change(form)
    assert not VALIDATOR.is_valid(form)
