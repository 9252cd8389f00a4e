"""A record that was cut off, changed or made up is refused, with what to do."""

import hashlib
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from planeproof.record import RecordError, load_record, read_record, write_record
from planeproof.record.wire import as_text
from tests.record.verdicts import verdict_of_kind


def record() -> bytes:
    """A record of a candidate that fails."""
    return write_record(verdict_of_kind("fail"))


@pytest.mark.parametrize("share", [0.0, 0.1, 0.5, 0.9, 0.999])
def test_a_record_that_was_cut_off_is_refused(share: float) -> None:
    """Wherever the cut is: also before the very last brace."""
    data = record().rstrip()
    with pytest.raises(RecordError, match="it was cut off: have it written anew"):
        read_record(data[: min(int(len(data) * share), len(data) - 1)], "record.json")


def test_every_single_changed_letter_is_noticed() -> None:
    """A sample of the places in the file: whatever stands there, changed by hand it is no record any more."""
    data = record()
    for place in range(3, len(data) - 2, 97):
        changed = data[:place] + bytes([data[place] ^ 1]) + data[place + 1 :]
        if changed.split() != data.split():
            with pytest.raises(RecordError):
                read_record(changed, "record.json")


def closed(raw: dict[str, Any]) -> bytes:
    """``raw`` with the closing that fits it: as if it had been written so."""
    rest = {key: value for key, value in raw.items() if key != "closing"}
    return json.dumps(rest | {"closing": hashlib.sha256(as_text(rest)).hexdigest()}).encode()


Change = Callable[[dict[str, Any]], object]


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (lambda raw: raw.update(planeproof_record=2), "planeproof_record is 2: this version reads up to 1"),
        (lambda raw: raw.pop("planeproof_record"), "is not a record"),
        (lambda raw: raw.update(seed="none"), "seed is 'none'"),
        (lambda raw: raw.update(wings=2), "wings is unknown"),
        (lambda raw: raw.update(outcomes=["FINE"]), "FINE"),
        (lambda raw: raw.update(profile="lax"), "lax"),
        (lambda raw: raw["rules"][0].update(id="no-rule"), "no-rule"),
        (lambda raw: raw["findings"][0].update(rule="own-memory"), "is of"),
        (lambda raw: raw["findings"][0].update(violation=99), "names a violation"),
        (lambda raw: raw["findings"][0]["play"]["violations"][0].update(refresh=0), "comes out otherwise"),
        (lambda raw: raw["findings"][0]["play"]["refreshes"][0].update(bursts=[]), "comes out otherwise"),
        (lambda raw: raw["findings"][0]["play"]["scene"]["machine"]["tiles"].update(count=0), "machine.tiles"),
    ],
)
def test_what_can_not_be_is_refused_also_where_it_is_well_closed(change: Change, said: str) -> None:
    """The closing is no seal: whoever makes a record up is still held to what the judge says of its plays."""
    raw = json.loads(record())
    change(raw)
    with pytest.raises(RecordError, match=said):
        read_record(closed(raw), "record.json")


def test_a_file_that_is_not_there_is_told(tmp_path: Path) -> None:
    """With its path."""
    with pytest.raises(RecordError, match=r"none\.json: can't be read"):
        load_record(tmp_path / "none.json")
