"""``python -m planeproof``."""

from planeproof.command.entry import run

if __name__ == "__main__":
    run()
