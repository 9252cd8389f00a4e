"""The published JSON Schema of a record."""

import json
from collections.abc import Callable
from importlib import resources
from typing import Any

import jsonschema
import pytest

from planeproof.record import record_schema, write_record
from tests.record.verdicts import KINDS, verdict_of_kind

PUBLISHED = resources.files("planeproof.record") / "record.schema.json"
VALIDATOR = jsonschema.Draft202012Validator(json.loads(PUBLISHED.read_text("utf-8")))


def test_the_published_schema_is_fresh() -> None:
    """The file is what the code says; if not, write the text of `record_schema` there."""
    assert PUBLISHED.read_text("utf-8") == record_schema()


def test_the_schema_is_one() -> None:
    """It is valid by the schema of schemas."""
    jsonschema.Draft202012Validator.check_schema(VALIDATOR.schema)


@pytest.mark.parametrize("kind", KINDS)
def test_every_record_is_valid(kind: str) -> None:
    """What is written keeps to the published schema."""
    VALIDATOR.validate(json.loads(write_record(verdict_of_kind(kind))))


Change = Callable[[dict[str, Any]], object]


@pytest.mark.parametrize(
    "change",
    [
        lambda raw: raw.pop("closing"),
        lambda raw: raw.update(planeproof_record=2),
        lambda raw: raw.update(machines="vitrine-50"),
        lambda raw: raw["rules"][0].pop("status"),
        lambda raw: raw["findings"][0]["play"].update(frames=[]),
        lambda raw: raw["findings"][0]["play"]["refreshes"][0].update(number="first"),
        lambda raw: raw["findings"][0]["play"]["scene"].pop("machine"),
    ],
)
def test_a_changed_record_is_not_valid(change: Change) -> None:
    """What is missing, of another type or unknown."""
    raw = json.loads(write_record(verdict_of_kind("fail")))
    change(raw)
    with pytest.raises(jsonschema.ValidationError):
        VALIDATOR.validate(raw)
