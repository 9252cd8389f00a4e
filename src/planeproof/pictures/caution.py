"""The caution that stands on everything of ours that moves, and beside everything that could be made to."""

CAUTION = (
    "Caution: pictures that change quickly can trigger seizures in people with photosensitive epilepsy. "
    "Before you show such pictures to anybody, keep to the published limits (WCAG 2.2, success criterion 2.3.1; "
    "ITU-R BT.1702) and take qualified advice. What a program finds is no assurance that a picture is safe."
)
"""For the command line, for files, for the page and for the README: one wording everywhere."""
