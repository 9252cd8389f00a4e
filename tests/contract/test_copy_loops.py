"""The cost of a burst is that of copy loops on a real processor: py65 runs them, and is the outside oracle.

Cycle counts of the instructions: MCS6500 Microcomputer Family Programming Manual, Appendix B, and Hardware Manual,
Appendix A, both MOS Technology 1976 (READ-2: in transcriptions). What a whole loop takes: RUN, here, in py65.
The loops copy to a data port at $9E10, address port $9E12; ordinary memory stands in for both.
"""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from py65.devices.mpu6502 import MPU

from planeproof.contract import Burst
from tests.contract.machines_by_hand import copying

Blocks = list[tuple[int, list[int]]]


def cycles(code: bytes, data: Blocks, *, sp: int = 0xFF) -> int:
    """Run ``code`` from $8000 until it falls off its end, with ``data`` in memory: how many cycles that took."""
    cpu = MPU(pc=0x8000)
    for address, block in [(0x8000, list(code)), *data]:
        cpu.memory[address : address + len(block)] = block
    cpu.sp = sp
    for _ in range(100_000):
        if cpu.pc == 0x8000 + len(code):
            return int(cpu.processorCycles)
        cpu.step()
    raise AssertionError(f"still running at {cpu.pc:#x}")


SOURCE: Blocks = [(0x0300, list(range(1, 256)))]


def absolute(n: int) -> int:
    """LDA abs; STA abs for each byte, unrolled."""
    return cycles(b"".join(bytes([0xAD, i, 3, 0x8D, 0x10, 0x9E]) for i in range(n)), SOURCE)


def immediate(n: int) -> int:
    """LDA #; STA abs, code that was generated with the data in it."""
    return cycles(bytes([0xA9, 1, 0x8D, 0x10, 0x9E]) * n, [])


def zero_page(n: int) -> int:
    """LDA zp; STA abs, unrolled."""
    return cycles(bytes([0xA5, 0x10, 0x8D, 0x10, 0x9E]) * n, [])


def counting_up(n: int) -> int:
    """LDX #0; LDA abs,X; STA; INX; CPX #n; BNE."""
    return cycles(bytes([0xA2, 0, 0xBD, 0, 3, 0x8D, 0x10, 0x9E, 0xE8, 0xE0, n, 0xD0, 0xF5]), SOURCE)


def up_to_a_page_end(n: int) -> int:
    """LDX #-n; LDA abs,X; STA; INX; BNE, the data ending where a page ends."""
    return cycles(bytes([0xA2, 256 - n, 0xBD, 0, 3, 0x8D, 0x10, 0x9E, 0xE8, 0xD0, 0xF7]), SOURCE)


def across_a_page(n: int) -> int:
    """The same, based at $03ff: the load crosses a page every time, which costs one more."""
    return cycles(bytes([0xA2, 256 - n, 0xBD, 0xFF, 3, 0x8D, 0x10, 0x9E, 0xE8, 0xD0, 0xF7]), SOURCE)


def pulled(n: int) -> int:
    """PLA; STA abs from the stack page, unrolled."""
    return cycles(bytes([0x68, 0x8D, 0x10, 0x9E]) * n, [(0x0140, [7] * n)], sp=0x3F)


def through_a_pointer(n: int) -> int:
    """LDY #0; LDA (zp),Y; STA; INY; CPY #n; BNE."""
    code = bytes([0xA0, 0, 0xB1, 0x10, 0x8D, 0x10, 0x9E, 0xC8, 0xC0, n, 0xD0, 0xF6])
    return cycles(code, [(0x10, [0, 3]), *SOURCE])


# Loop: set-up and cycles per byte of the machine that says the same.
LOOPS = [
    (absolute, 0, 8),
    (immediate, 0, 6),
    (zero_page, 0, 7),
    (counting_up, 1, 15),
    (up_to_a_page_end, 1, 13),
    (across_a_page, 1, 14),
    (pulled, 0, 8),
    (through_a_pointer, 1, 16),
]


@pytest.mark.parametrize(("loop", "setup", "per_byte"), LOOPS, ids=[row[0].__name__ for row in LOOPS])
@pytest.mark.parametrize("n", [1, 2, 8, 64, 128])
def test_a_copy_loop_takes_a_set_up_and_so_much_a_byte(loop: object, setup: int, per_byte: int, n: int) -> None:
    """`burst_cycles` says what the processor takes, and a cycle more or less a byte does not."""
    assert callable(loop)
    taken = loop(n)
    assert copying(setup, per_byte).burst_cycles(n) == taken
    assert copying(setup, per_byte - 1).burst_cycles(n) != taken
    assert copying(setup + 1, per_byte).burst_cycles(n) != taken


def test_a_longer_loop_up_to_a_page_end() -> None:
    """255 bytes: 13 each and 1 (RUN: 3316)."""
    assert up_to_a_page_end(255) == copying(1, 13).burst_cycles(255) == 3316


SET_UPS = [("a9308d129ea9008d129e", 12), ("688d129e688d129e", 16)]


@pytest.mark.parametrize(("code", "setup"), SET_UPS)
def test_what_setting_an_address_takes(code: str, setup: int) -> None:
    """Two immediate writes, which is the machine's default set-up, or two that are pulled from the stack."""
    assert cycles(bytes.fromhex(code), [(0x0140, [0x30, 0])], sp=0x3F) == setup


# A list of bursts on the stack page: count, address high, address low, bytes; a count of 0 ends it.
BURST_LIST = bytes.fromhex("68f013aa688d129e688d129e688d109ecad0f94c0080")
ENDING = 7
"""What the loop takes to find the end of the list."""


def sent(bursts: list[Burst]) -> int:
    """Cycles in which the processor sends ``bursts`` from such a list."""
    listed = [byte for burst in bursts for byte in (len(burst.data), *divmod(burst.address, 256), *burst.data)]
    return cycles(BURST_LIST, [(0x0100, [*listed, 0])])


@pytest.mark.parametrize(("lengths", "taken"), [([8], 137), ([8, 8], 267), ([8] * 4, 527), ([32], 449), ([1], 46)])
def test_a_list_of_bursts_takes_what_is_known(lengths: list[int], taken: int) -> None:
    """26 a burst and 13 a byte and 7 (RUN)."""
    assert sent([Burst(0x1230, bytes(length)) for length in lengths]) == taken


@settings(max_examples=40)
@given(st.lists(st.builds(Burst, st.integers(0x400, 0x7FFF), st.binary(min_size=1, max_size=20)), max_size=10))
def test_a_list_of_bursts_takes_the_sum_of_their_costs(bursts: list[Burst]) -> None:
    """For any bursts that the stack page holds, the machine says what the processor takes; off by one it does not."""
    right, wrong = copying(26, 13), copying(25, 13)
    assert sum(map(right.cost, bursts)) + ENDING == sent(bursts)
    assert not bursts or sum(map(wrong.cost, bursts)) + ENDING != sent(bursts)
