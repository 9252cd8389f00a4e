from pathlib import Path

import pytest

from tests.command.running import CANDIDATES, run

CHECK = ("check", "mine.py:Right")

REFUSALS = [
    ((), "check", "Missing argument 'TARGET'"),
    (("frob",), "", "No such command 'frob'"),
    ((*CHECK, "--frob"), "", "No such option"),
    ((*CHECK, "--scenes", "0"), "", "'--scenes': 0 is not in the range x>=1"),
    ((*CHECK, "--scenes", "many"), "", "'many' is not a valid integer"),
    ((*CHECK, "--seconds", "-1"), "", "-1 is not a number of seconds above 0"),
    ((*CHECK, "--seconds", "nan"), "", "nan is not a number of seconds above 0"),
    ((*CHECK, "--seconds", "1", "--scenes", "2"), "", "--scenes and --seconds are both given"),
    ((*CHECK, "--only", "no-rule"), "", "there is no rule 'no-rule'; there are: hidden-writes"),
    ((*CHECK, "--profile", "lax"), "", "'lax' is not one of 'strict', 'seen'"),
    ((*CHECK, "--machine", "vitrine"), "", "did you mean 'vitrine-"),
    ((*CHECK, "--machine", "no.toml"), "", "no.toml: no such file"),
    ((*CHECK, "--machine", "bad.toml"), "", "bad.toml: is not TOML"),
    ((*CHECK, "--machine", "odd.toml"), "", "odd.toml: window.colums is unknown"),
    ((*CHECK, "--cases", "mine.py"), "", "mine.py can't be written"),
    ((*CHECK, "--cases", "mine.py/below"), "", "name another --cases folder"),
    (("check", "mine.py"), "", "'mine.py' must read package.module:Name or file.py:Name"),
    (("check", "../run.sh:Mine"), "", "'../run.sh:Mine' names a file that does not end in .py"),
    (("check", "mine.py:Rigth"), "", "mine.py has no 'Rigth'; did you mean 'Right'? it has Delta, Early"),
    (("check", "mine.py:LIMIT"), "", "must be a class or a function"),
    (("check", "no.py:Right"), "", "there is no such file"),
    (("check", "no_such_module:Right"), "", "there is no module 'no_such_module'"),
    (("check", "raises.py:Right"), "", "can't be imported: ValueError: not today (line 1"),
    (("check", "exits.py:Right"), "", "it ends the program"),
    (("check", "broken.py:Right"), "", "can't be imported: SyntaxError: expected ':' (broken.py, line 1)"),
    (("replay", "no.json"), "", "no.json: no such file"),
    (("replay", "tiny.toml"), "", "is not whole JSON"),
    (("replay", "empty.json"), "", "planeproof_case is missing"),
    (("replay", "record.json"), "", "record.json: is a record of a check, which is looked at on its page"),
    (("rules", "no-rule"), "", "there is no rule 'no-rule'"),
    (("machines", "no-machine"), "", "no machine of that name ships"),
    (("machines", "--toml"), "", "--toml needs the name of a machine"),
    (("new", "mine.py"), "", "is there already, and is left as it is"),
    (("new", "mine.txt"), "", "does not end in .py"),
    (("new", "no/folder/new.py"), "", "can't be written"),
]


@pytest.fixture
def bad_files(folder: Path) -> None:
    """Files that can't be used, each for its own reason."""
    (folder / "bad.toml").write_text("window = [", "utf-8")
    (folder / "odd.toml").write_text("[window]\ncolums = 3\nrows = 1\n[tiles]\ncount = 4\npool = []\n", "utf-8")
    (folder / "raises.py").write_text("raise ValueError('not today')\n", "utf-8")
    (folder / "exits.py").write_text("raise SystemExit(0)\n", "utf-8")
    (folder / "broken.py").write_text("class Right\n", "utf-8")
    (folder / "empty.json").write_text("{}", "utf-8")
    (folder / "record.json").write_text('{"planeproof_record": 1}', "utf-8")


@pytest.mark.usefixtures("bad_files")
@pytest.mark.parametrize(("arguments", "command", "said"), REFUSALS)
def test_what_can_not_be_used_is_refused_in_one_sentence(arguments: tuple[str, ...], command: str, said: str) -> None:
    """Exit code 64, one line that begins with Error, says what is wrong, and no traceback; nothing on stdout."""
    result = run(*([command] if command else []), *arguments)
    assert (result.exit_code, result.stdout) == (64, "")
    errors = [line for line in result.stderr.splitlines() if line.startswith("Error: ")]
    assert len(errors) == 1
    assert said in errors[0]
    assert "Traceback" not in result.stderr


def test_a_refusal_leaves_files_alone(folder: Path) -> None:
    """`new` does not touch a file that is there."""
    run("new", "mine.py")
    assert (folder / "mine.py").read_text("utf-8") == CANDIDATES
