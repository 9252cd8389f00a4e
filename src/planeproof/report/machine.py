"""A machine in words: in one line, in a few, or with all its figures."""

from planeproof.contract import ByteDirection, Machine, Outside, Region, RegionKind
from planeproof.report.figures import counted, cycles, spans, wrapped

_LATE = {
    Outside.WRECKS: "a late byte wrecks the rest of the frame",
    Outside.LANDS: "a late byte takes effect from its line on",
    Outside.LOST: "a late byte is lost",
}


def machine_lines(machine: Machine, indent: int) -> list[str]:
    """The machine in a few lines: what it has, what its blanking holds, what is demanded on it."""
    return [
        line
        for text in (f'machine "{machine.name}": {_has(machine)}', _times(machine), demands(machine))
        for line in wrapped(text, indent)
    ]


def demands(machine: Machine) -> str:
    """What is demanded on the machine, in words."""
    return (
        f"pictures of up to {counted(machine.must_show, 'occupied cell')} must be shown (must_show), "
        f"each within {counted(machine.patience, 'full blanking')} (patience)"
    )


def machine_headline(machine: Machine) -> str:
    """One line: name, window, pool, planes, pages and blanking."""
    window, tiles, time = machine.window, machine.tiles, machine.time
    said = [
        f"{window.columns} x {window.rows} cells",
        f"pool {machine.cap}",
        f"{counted(tiles.planes, 'plane')} {tiles.storage.value}",
        counted(machine.map.pages, "page") + (f" {machine.map.banks} banks" if machine.map.banks > 1 else ""),
        f"{time.standard}, {machine.blank_cycles} cycles of blanking",
    ]
    return f"{machine.name:<14}" + ", ".join(said)


def machine_page(machine: Machine) -> list[str]:
    """All figures, a line each."""
    figures = [*_sizes(machine), *_view(machine), *_time(machine), *_demanded(machine), *_memory(machine)]
    return [machine.name, *(line for label, text in figures for line in _labelled(label, text))]


def _from_to(region: Region) -> str:
    return f"{region.start}" if region.length == 1 else f"{region.start}-{region.end - 1}"


def _labelled(label: str, text: str) -> list[str]:
    first, *others = wrapped(text, 18)
    return [f"  {label:<16}{first.strip()}", *others]


def _sizes(machine: Machine) -> list[tuple[str, str]]:
    window, tiles = machine.window, machine.tiles
    size = f"a map of {window.pitch} x {window.map_height}"
    bits = f"{counted(tiles.depth, 'bit')} per pixel of a picture, so {counted(machine.plane_sets, 'picture')} a tile"
    return [
        ("window", f"{window.columns} x {window.rows} cells = {machine.cells}, in {size}"),
        ("", f"from column {window.origin_column}, row {window.origin_row} of it on"),
        ("", f"from displayed line {window.first_line} on"),
        ("tiles", f"{tiles.count} of {machine.tile_bytes} bytes; the blank one is {spans(machine.blank_tiles)}"),
        ("pool", f"{counted(machine.cap, 'tile')}: {spans(machine.pool)}"),
        ("planes", f"{tiles.planes}, {tiles.storage.value}, a byte is a {tiles.byte.value} of pixels; {bits}"),
        ("map", f"{counted(machine.map.pages, 'page')}, {counted(machine.map.entry_bytes, 'byte')} an entry"),
        ("banks", f"{machine.map.banks}, of {machine.tiles_per_bank} tiles each"),
        ("sides", str(machine.sides)),
    ]


def _view(machine: Machine) -> list[tuple[str, str]]:
    colours = machine.colours
    inks = ", ".join(map(str, colours.inks))
    kind = "fixed, there is no palette" if colours.fixed else f"palette entries from {colours.first_entry} on"
    return [("colours", f"background {colours.background}, inks {inks}; {kind}")]


def _time(machine: Machine) -> list[tuple[str, str]]:
    time = machine.time
    lines = time.lines - time.shown
    reserve = f", less {cycles(time.reserve)} for other work" if time.reserve else ""
    view_setup, view_per_byte = machine.rates(view=True)
    return [
        ("line standard", f"{time.standard}: {time.lines} lines a refresh, of which {time.shown} are displayed"),
        ("blanking", f"{machine.blank_cycles} cycles: {lines} lines of {cycles(time.cycles_per_line)}{reserve}"),
        ("a burst", f"{cycles(time.setup)} cycles and {cycles(time.per_byte)} for each byte"),
        ("", f"to colours and registers {cycles(view_setup)} cycles and {cycles(view_per_byte)} for each byte"),
        ("steps", f"of {' or '.join(map(str, machine.layout.steps))} between the addresses of a burst"),
        ("late bytes", _LATE[machine.outside]),
    ]


def _demanded(machine: Machine) -> list[tuple[str, str]]:
    return [
        ("must_show", f"pictures of up to {counted(machine.must_show, 'occupied cell')} may not be declined"),
        ("patience", f"{counted(machine.patience, 'full blanking')} for a picture to be seen, or BUSY to end"),
    ]


def _memory(machine: Machine) -> list[tuple[str, str]]:
    regions = sorted(machine.regions, key=lambda region: region.start)
    names = [f"{r.kind.value} {r.page}" if r.kind is RegionKind.MAP else r.kind.value for r in regions]
    places = [f"{_from_to(r)} {name}" for r, name in zip(regions, names, strict=True)]
    return [("memory", "; ".join(places))]


def _has(machine: Machine) -> str:
    window, tiles = machine.window, machine.tiles
    depth, rows = f", {tiles.depth} bits per pixel" if tiles.depth > 1 else "", tiles.byte is ByteDirection.ROW
    said = [
        f"window of {window.columns} x {window.rows} {'cell' if machine.cells == 1 else 'cells'}{depth}",
        f"pool of {counted(machine.cap, 'tile')} ({spans(machine.pool)})",
        f"blank tile{'s' if len(machine.blank_tiles) > 1 else ''} {spans(machine.blank_tiles)}",
        f"{counted(tiles.planes, 'plane')} ({tiles.storage.value}{'' if rows else ', bytes are columns'})",
        counted(machine.map.pages, "map page") + (" of 2-byte entries" if machine.map.entry_bytes == 2 else ""),
    ]
    said += [f"{machine.map.banks} banks of tiles"] if machine.map.banks > 1 else []
    said += ["fixed colours, no palette"] if machine.colours.fixed else []
    return ", ".join([*said, counted(machine.sides, "side")])


def _times(machine: Machine) -> str:
    time = machine.time
    costs = f"a burst costs {cycles(time.setup)} cycles and {cycles(time.per_byte)} for each byte"
    if time.view_setup is not None or time.view_per_byte is not None:
        setup, per_byte = machine.rates(view=True)
        costs += f" (to colours and registers {cycles(setup)} and {cycles(per_byte)})"
    blanking = f"{counted(time.lines - time.shown, 'line')} of blanking, {machine.blank_cycles} cycles of it usable"
    return f"line standard {time.standard}: {blanking}; {costs}; {_LATE[machine.outside]}"
