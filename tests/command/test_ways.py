import pytest

from planeproof.machines import shipped
from tests.command.running import run
from tests.ways.pages import GOLDEN


def test_without_a_name_all_that_ships_stands_side_by_side() -> None:
    """The table first, how it is reckoned below; a line for each machine that ships."""
    result = run("ways")
    assert result.exit_code == 0
    assert result.stdout.startswith((GOLDEN / "shipped.txt").read_text("utf-8"))
    assert "How it is reckoned." in result.stdout
    assert [
        line.split()[0] for line in result.stdout.splitlines() if line.startswith("  ") and line.split()[0] in shipped()
    ] == list(shipped())


def test_one_machine_is_told_in_full() -> None:
    """All five ways, each with what it rests on."""
    assert run("ways", "drawer-front").stdout.startswith((GOLDEN / "drawer-front.txt").read_text("utf-8"))


def test_a_machine_of_ones_own_stands_beside_one_that_ships() -> None:
    """Files work like names, and two machines make a table."""
    lines = run("ways", "tiny.toml", "vitrine-60").stdout.splitlines()
    assert [line.split()[0] for line in lines[4:7]] == ["hidden", "tiny", "vitrine-60"]


@pytest.mark.parametrize("name", ["nowhere", "mine.py"])
def test_what_is_no_machine_is_refused(name: str) -> None:
    """Wrong usage, with the name."""
    result = run("ways", name)
    assert result.exit_code == 64
    assert name in result.stderr
