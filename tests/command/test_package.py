import subprocess
import sys

import pytest

import planeproof


def test_everything_that_is_offered_is_there() -> None:
    """Each name resolves, and is what the package it stems from calls by it."""
    for name in planeproof.__all__:
        assert getattr(planeproof, name) is not None
    assert set(planeproof.__all__) <= set(dir(planeproof))
    assert planeproof.check.__module__ == "planeproof.search.checking"
    with pytest.raises(AttributeError, match="no attribute 'Machin'"):
        planeproof.Machin  # type: ignore[attr-defined]  # noqa: B018


def test_the_package_itself_is_light() -> None:
    """`import planeproof` loads nothing of its own before it is asked for something."""
    program = "import sys, planeproof; print(sorted(n for n in sys.modules if n.startswith(('planeproof', 'numpy'))))"
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, timeout=60, check=True)
    assert done.stdout == "['planeproof']\n"
