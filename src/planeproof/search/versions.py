"""What must be the same wherever a part of a check is played, for a seed to mean the same scenes."""

import sys
from importlib.metadata import version


def versions() -> dict[str, str]:
    """Of Planeproof, of Hypothesis, which makes scenes of a seed, and of Python, whose code may be sent."""
    python = f"{sys.version_info.major}.{sys.version_info.minor}"
    return {"planeproof": version("planeproof"), "hypothesis": version("hypothesis"), "python": python}
