"""Writing a machine as TOML, so that a user can save one.

The written form has names, whole numbers, text, yes or no, and flat lists of those: twenty lines, held by a
round trip over drawn machines. A writer of all TOML would be one more dependency, and puts each number of a
list on a line of its own.
"""

import json

import msgspec

from planeproof.contract import Machine
from planeproof.machines.wire import from_machine, write_cycles

_A_LINE = 8
"""Items of a list that stand on one line."""


def machine_toml(machine: Machine) -> str:
    """``machine`` as TOML text, defaults spelt out, its name included; read it back with `parse_machine`."""
    written: dict[str, object] = msgspec.to_builtins(from_machine(machine), enc_hook=write_cycles)
    lines = [_line(key, value) for key, value in written.items() if not isinstance(value, dict)]
    for key, table in written.items():
        if isinstance(table, dict) and table:
            lines += ["", f"[{key}]", *(_line(name, value) for name, value in table.items())]
    return "\n".join(lines) + "\n"


def _line(key: str, value: object) -> str:
    return f"{key} = {_value(value)}"


def _value(value: object) -> str:
    if isinstance(value, dict):
        return f"{{ {', '.join(_line(key, item) for key, item in value.items())} }}"
    if isinstance(value, list | tuple):
        items = [_value(item) for item in value]
        rows = [", ".join(items[i : i + _A_LINE]) for i in range(0, len(items), _A_LINE)]
        return f"[{rows[0]}]" if len(rows) == 1 else "[\n    " + ",\n    ".join(rows) + ",\n]"
    # JSON's text, numbers and yes or no are TOML's too, but for the one control character that TOML escapes.
    return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007f")
