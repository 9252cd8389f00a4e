"""The proved strategies as schedulers that run: ``planeproof check planeproof.spec.executed:Delta``.

Each takes the steps that are proved of it, on machines of its family: two map pages and one bank; see
`planeproof.spec.steps.addresses`. They are slow, for every step is the proof's formula, evaluated.
"""

from planeproof.spec.steps import reference
from planeproof.spec.steps.executing import executed

Delta = executed(reference.Delta())
Full = executed(reference.Full())
DeepDelta = executed(reference.DeepDelta())
PackedDelta = executed(reference.PackedDelta())
SplitPool = executed(reference.SplitPool())
SplitPoolDelta = executed(reference.SplitPoolDelta())
