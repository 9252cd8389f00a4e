"""In a notebook: verdicts, findings, machines and figures show themselves as the last line of a cell.

Nothing need be done for it: where IPython runs, importing anything of ours calls `register`. Where we were imported
before it ran, ``%load_ext planeproof.notebook`` does the same.
"""

from typing import Any

from planeproof.notebook.registering import register

__all__ = ["load_ipython_extension", "register"]


def load_ipython_extension(shell: Any) -> None:  # noqa: ANN401 -- IPython's, which is not imported here
    """For ``%load_ext planeproof.notebook``."""
    register(shell)
