"""For all tests: Hypothesis has no deadline, for no test may depend on how busy the computer is."""

from hypothesis import settings

settings.register_profile("untimed", deadline=None)
settings.load_profile("untimed")
