"""``python -m planeproof``."""

from planeproof.command.main import main

if __name__ == "__main__":
    main(prog_name="planeproof")
