"""What a person is told whose machine can't be read."""

from pathlib import Path

import pytest

from planeproof.machines import MachineFileError, parse_machine, read_machine, shipped
from planeproof.machines.reading import LINES
from planeproof.ways.standards import STANDARDS

GOOD = """\
outside = "wrecks"
[window]
columns = 2
rows = 1
[tiles]
count = 4
pool = [{ first = 1, count = 3 }]
[colours]
meaning = ["#000000", "#FFffff"]
[time]
per_byte = 8
"""


def complaint(text: str) -> str:
    """What is said about a machine called ``mine`` that is written so."""
    with pytest.raises(MachineFileError) as caught:
        parse_machine(text, "mine")
    return str(caught.value)


def test_the_file_that_the_cases_change_is_good() -> None:
    """Each complaint below is about the one change, for unchanged the file is read."""
    assert parse_machine(GOOD, "mine").name == "mine"


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("count = 3", "count = 0", "tiles.pool[0].count is 0: must be a whole number from 1 to 65536"),
        ("first = 1", "first = -1", "tiles.pool[0].first is -1: must be a whole number from 0 to 65535"),
        ("count = 4", 'count = "4"', "tiles.count is '4': must be a whole number"),
        ("count = 4", "count = 4.5", "tiles.count is 4.5: must be a whole number"),
        ("count = 4", "count = true", "tiles.count is True: must be a whole number"),
        ("count = 4", "count = 1979-05-27", "tiles.count is datetime.date(1979, 5, 27): must be a whole number"),
        ("count = 4\n", "", "tiles.count is missing: add it, a whole number"),
        ("count = 4", "coutn = 4", "tiles.coutn is unknown (4 stands there): did you mean 'count'? the keys here"),
        ("count = 4", "wings = 4", "tiles.wings is unknown (4 stands there): the keys here are count, pool, blank"),
        ("[time]", "[tiem]", "tiem is unknown ({'per_byte': 8} stands there): did you mean 'time'?"),
        ("first = 1", "fist = 1", "tiles.pool[0].fist is unknown (1 stands there): did you mean 'first'?"),
        ("[{ first = 1, count = 3 }]", "3", "tiles.pool is 3: must be a list"),
        ("{ first = 1, count = 3 }", "1", "tiles.pool[0] is 1: must be a group with the keys first, count"),
        ('"wrecks"', '"explodes"', "outside is 'explodes': must be one of 'wrecks', 'lands', 'lost'"),
        ('"wrecks"', "3", "outside is 3: must be one of 'wrecks', 'lands', 'lost'"),
        ("#FFffff", "white", "colours.meaning[1] is 'white': must be a colour such as \"#f2e8d5\""),
        ('"#FFffff"', "7", 'colours.meaning[1] is 7: must be a colour such as "#f2e8d5"'),
        ("[colours]", "[colours]\nfixed = 1", "colours.fixed is 1: must be true or false"),
        ("per_byte = 8", "standard = 50", "time.standard is 50: must be text in quotes"),
        ("[window]\n", "[window.more]\n", "window.more is unknown ({'columns': 2, 'rows': 1} stands there): the keys"),
        ("[colours]\n", "colours = 3\n[colour]\n", "tiles.colours is unknown (3 stands there)"),
    ],
)
def test_a_field_that_is_wrong(old: str, new: str, said: str) -> None:
    """The message says file, field with its path, what stood there and what may stand there."""
    assert GOOD.count(old) == 1
    assert complaint(GOOD.replace(old, new)).startswith(f"mine: {said}")


@pytest.mark.parametrize(
    "written", ["true", '""', '"8 "', '"1/0"', '"1e3"', '"٣"', "nan", "inf", "1e99", "1e-99", "[8]"]
)
def test_what_is_no_exact_number_of_cycles(written: str) -> None:
    """Cycles are finite, of a size that can be held, and written plainly; anything else is named."""
    said = complaint(GOOD.replace("per_byte = 8", f"per_byte = {written}"))
    assert said.startswith("mine: time.per_byte is ")
    assert said.endswith('must be an exact number of cycles, such as 8, "448/5" or "89.6"')


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("columns = 2", "columns = 300", "window.columns is 300: must be a whole number from 1 to 256"),
        ("first = 1, count = 3", "first = 2, count = 3", "tiles.pool is 4: must be a whole number from 0 to 3"),
        ("first = 1", "first = 0", "tiles.pool is [0]: must not hold the blank tile"),
        ("#FFffff", "#000000", "colours.inks is (1,): background and inks must show pairwise different colours"),
        ("per_byte = 8", "per_byte = -8", "time.per_byte is -8: must be an exact number of cycles"),
        ("per_byte = 8", "per_byte = 1000000", "time (cycles left of a blanking) is 7884: must leave at least"),
        (
            "[time]",
            "[demands]\nmust_show = 4\n[time]",
            "demands.must_show is 4: must be at most 3, the tiles of the pool that one view can show",
        ),
        ("[time]", "[map]\nbanks = 3\n[time]", "map.banks is 3: must split the 4 tiles evenly"),
    ],
)
def test_a_machine_that_can_not_be(old: str, new: str, said: str) -> None:
    """What the contract refuses is told with the file before it."""
    assert GOOD.count(old) == 1
    assert complaint(GOOD.replace(old, new)).startswith(f"mine: {said}")


@pytest.mark.parametrize(
    ("text", "place"),
    [
        ("[window]\ncolumns = = 2\n", "line 2, column 11"),
        ("[window]\ncolumns = 2\ncolumns = 3\n", "line 3, column 12"),
        ("[window]\ncolumns =", "line 2, column 10, the end of the file"),
        ('a = "never closed', "line 1, column 18, the end of the file"),
    ],
)
def test_what_is_not_toml(text: str, place: str) -> None:
    """A fault of the syntax is told with line and column, at the end of the file too."""
    said = complaint(text)
    assert said.startswith("mine: is not TOML: ")
    assert f"(at {place})" in said


def test_what_toml_itself_can_not_hold() -> None:
    """A number of thousands of digits and lists without end are refused as a file, not as a fault of ours."""
    assert complaint(f"a = {'9' * 5000}").startswith("mine: is not TOML: ")
    assert complaint(f"a = {'[' * 5000}").startswith("mine: is nested too deeply")


def test_an_empty_file() -> None:
    """A file without a window is told what a window needs."""
    assert complaint("") == (
        "mine: window is missing: add it, a group with the keys columns, rows, map_columns, map_rows, "
        "origin_column, origin_row, first_line"
    )


def test_a_long_value_is_cut_short() -> None:
    """A value of thousands of characters does not bury the message."""
    said = complaint(GOOD.replace('"wrecks"', f'"{"x" * 5000}"'))
    assert len(said) < 200
    assert "xxx ...: must be one of" in said


def read_complaint(source: "str | Path") -> str:
    """What is said about the machine ``source``."""
    with pytest.raises(MachineFileError) as caught:
        read_machine(source)
    return str(caught.value)


def test_a_machine_is_read_from_a_file(tmp_path: Path) -> None:
    """It is called like its file, or as it calls itself; a byte order mark does no harm."""
    file = tmp_path / "my-wall.toml"
    file.write_text(GOOD, encoding="utf-8-sig")
    assert read_machine(file) == read_machine(str(file)) == parse_machine(GOOD, "my-wall")
    file.write_text(f'name = "Südwand"\n{GOOD}', encoding="utf-8")
    assert read_machine(file).name == "Südwand"


def test_a_path_to_a_file_named_like_a_shipped_machine(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The bare name is the shipped machine; a path, or a `Path`, is the file."""
    (tmp_path / "bench").write_text(GOOD, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    assert read_machine("bench").cells == 48
    assert read_machine("./bench").cells == 2
    assert read_machine(tmp_path / "bench").cells == 2


def test_an_unknown_name_lists_the_machines_that_ship() -> None:
    """A name that no file has either is compared with those that ship."""
    said = read_complaint("vitrin-50")
    assert said.startswith(
        "vitrin-50: no machine of that name ships, and there is no such file: did you mean 'vitrine-50'?"
    )
    assert said.endswith(", ".join(shipped()))


@pytest.mark.parametrize("path", ["wall.toml", "walls/north", "./bench-2"])
def test_an_unknown_path_is_no_such_file(path: str) -> None:
    """What looks like a path is said to be no file."""
    assert read_complaint(path) == f"{path}: no such file: check the path, or name a machine that ships"


def test_what_is_no_readable_file(tmp_path: Path) -> None:
    """A directory, a file inside a file, a name that is too long or none at all: each is told for what it is."""
    assert read_complaint(tmp_path) == f"{tmp_path}: is a directory: name a TOML file in it"
    (tmp_path / "file").write_text("", encoding="utf-8")
    inside = tmp_path / "file" / "mine.toml"
    assert read_complaint(inside).startswith(f"{inside}: can't be read (Not a directory): check the path")
    assert "can't be read (File name too long)" in read_complaint("x" * 5000)
    assert "can't be read (embedded null byte)" in read_complaint("x\0y")


def test_what_is_not_utf_8(tmp_path: Path) -> None:
    """The byte and its line are named."""
    file = tmp_path / "mine.toml"
    file.write_bytes(b"# one\n# two\n# \xfcber\n")
    assert read_complaint(file) == f"{file}: line 3 holds the byte 0xfc, which is not UTF-8: save the file as UTF-8"


@pytest.mark.parametrize(("standard", "lines"), [("525/60", 312), ("625/50", 262)])
def test_one_standard_with_the_lines_of_the_other_is_refused(standard: str, lines: int) -> None:
    """Both are named; a standard of another name, and any other number of lines, are the machine's own affair."""
    text = "window = { columns = 2, rows = 1 }\ntiles = { count = 4, pool = [{ first = 1, count = 2 }] }\n"
    with pytest.raises(MachineFileError, match=rf"time.lines is {lines}, and time.standard '{standard}'"):
        parse_machine(f"{text}time = {{ standard = '{standard}', lines = {lines} }}", "mixed")
    assert parse_machine(f"{text}time = {{ standard = 'my own', lines = {lines} }}", "own").time.lines == lines
    assert parse_machine(f"{text}time = {{ standard = '{standard}', lines = 250 }}", "short").time.lines == 250


def test_the_lines_of_the_standards_are_those_that_the_ways_are_reckoned_by() -> None:
    """One table each, for neither package may import the other."""
    assert {standard.name: standard.lines for standard in STANDARDS} == LINES
