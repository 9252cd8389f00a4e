"""For pytest: the rules as tests.

In a suite of one's own, one line gives a test a rule, for each machine, with saved cases replayed first:

    from planeproof.testing import holds

    test_exact_reveal = holds(MyScheduler, "exact-reveal", machines=("vitrine-50", "vitrine-60"), cases="tests/cases")

Without a suite, ``pytest --planeproof-target mine.py:Mine`` adds a test for each rule and machine. `plugin` is what
pytest loads by itself; it imports nothing of ours before it is asked for something.
"""

from planeproof.testing.holding import holds

__all__ = ["holds"]
