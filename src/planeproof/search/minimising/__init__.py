"""Making a scene smaller, in the terms of the problem: fewer pictures, cells, bytes, tiles, less waiting.

Hypothesis shrinks the choices of a recipe, which can't reach every smaller scene, and knows nothing of scenes that
no recipe made. This works on any scene. The smallest so far is always kept, so it may be stopped at any time.
"""

from planeproof.search.minimising.descent import minimise

__all__ = ["minimise"]
