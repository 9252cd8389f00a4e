"""The search for what is wrong with a candidate, and the check that puts it all together."""

from planeproof.search.checking import check
from planeproof.search.watching import Watcher

__all__ = ["Watcher", "check"]
