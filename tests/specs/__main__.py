"""Write everything in ``specs`` that is not written by hand anew: python -m tests.specs."""

from planeproof.spec import OBLIGATIONS
from planeproof.spec.certificates import write_all
from planeproof.spec.premises import write_table
from tests.specs import rulebook

SPECS = rulebook.FOLDER.parent

if __name__ == "__main__":
    write_all(OBLIGATIONS, SPECS / "obligations")
    write_table(OBLIGATIONS, SPECS / "premises.md")
    rulebook.write()
