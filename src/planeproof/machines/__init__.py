"""Machines as TOML: reading a user's own and those that ship, and saving one.

wire (the written form) and complaint (what a reader is told) <- reading, writing.
"""

from planeproof.machines.reading import MachineFileError, parse_machine, read_machine, shipped
from planeproof.machines.writing import machine_toml

__all__ = ["MachineFileError", "machine_toml", "parse_machine", "read_machine", "shipped"]
