"""colour-science, imported so that its word on features nobody here asks for is no warning of ours."""

import warnings

with warnings.catch_warnings():
    warnings.simplefilter("ignore")
    import colour

__all__ = ["colour"]
