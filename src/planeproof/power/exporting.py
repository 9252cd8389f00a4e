"""Detection power as data: every hunt as JSON, a line a fault and engine as CSV, which can be read back."""

import csv
import io
from collections.abc import Iterator, Sequence
from dataclasses import asdict, dataclass, fields

import msgspec

from planeproof.power.detection import Detection
from planeproof.power.summary import FaultRow, Summary


@dataclass(frozen=True, kw_only=True)
class Line:
    """A line of the table: `FaultRow`, flat. Scenes and seconds are 0 where no seed found the fault."""

    fault: str
    rule: str
    engine: str
    seeds: int
    caught: int
    strayed: int
    wrong_rule: int
    scenes_median: float
    scenes_worst: int
    seconds_median: float
    seconds_worst: float
    smallest_pictures: int
    smallest_cells: int
    smallest_bytes: int
    other_rules: str

    @classmethod
    def of(cls, row: FaultRow) -> "Line":
        """The line of one fault and engine."""
        size = row.smallest
        return cls(
            fault=row.fault,
            rule=row.wanted,
            engine=row.engine,
            seeds=row.seeds,
            caught=row.caught,
            strayed=row.strayed,
            wrong_rule=row.wrong,
            scenes_median=row.scenes or 0,
            scenes_worst=row.worst_scenes or 0,
            seconds_median=round(row.seconds or 0, 2),
            seconds_worst=round(row.worst_seconds or 0, 2),
            smallest_pictures=0 if size is None else size.pictures,
            smallest_cells=0 if size is None else size.cells,
            smallest_bytes=0 if size is None else size.n_bytes,
            other_rules=" ".join(row.others),
        )


def csv_of(summary: Summary) -> str:
    """A line for each fault and engine that was asked about it."""
    text = io.StringIO()
    table = csv.DictWriter(text, [field.name for field in fields(Line)], lineterminator="\n")
    table.writeheader()
    table.writerows(asdict(Line.of(row)) for row in summary.faults if row.asked)
    return text.getvalue()


def lines_of(text: str) -> Iterator[Line]:
    """What `csv_of` has written. Raises `msgspec.ValidationError` for anything else."""
    return (msgspec.convert(row, Line, strict=False) for row in csv.DictReader(io.StringIO(text)))


def json_of(detections: Sequence[Detection], summary: Summary) -> str:
    """Every hunt, and what they come to."""
    whole = {"hunts": [asdict(one) for one in detections], "summary": asdict(summary)}
    return msgspec.json.format(msgspec.json.encode(whole), indent=1).decode() + "\n"
