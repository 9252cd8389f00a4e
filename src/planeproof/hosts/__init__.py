"""Ways in: how a candidate is found and made."""

from planeproof.hosts.target import Candidate, TargetError, load

__all__ = ["Candidate", "TargetError", "load"]
