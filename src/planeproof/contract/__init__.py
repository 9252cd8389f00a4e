"""The contract: the machine, the picture, the burst, the scheduler, the scene and the rules.

Start reading in `planeproof.contract.scheduler`.
"""

from planeproof.contract.burst import Burst
from planeproof.contract.errors import ContractError, MachineError, SceneError
from planeproof.contract.layout import TILE_SIDE, ByteDirection, Storage
from planeproof.contract.machine import Machine
from planeproof.contract.parts import (
    RGB,
    ByteOrder,
    Colours,
    Demands,
    Memory,
    Outside,
    Rational,
    TileMap,
    Tiles,
    Timing,
    Window,
)
from planeproof.contract.picture import Answer, Picture
from planeproof.contract.regions import Region, RegionKind
from planeproof.contract.rules import RULES, Kind, Rule, RuleClass, rule
from planeproof.contract.scene import Disturbance, Scene
from planeproof.contract.scheduler import Scheduler

__all__ = [
    "RGB",
    "RULES",
    "TILE_SIDE",
    "Answer",
    "Burst",
    "ByteDirection",
    "ByteOrder",
    "Colours",
    "ContractError",
    "Demands",
    "Disturbance",
    "Kind",
    "Machine",
    "MachineError",
    "Memory",
    "Outside",
    "Picture",
    "Rational",
    "Region",
    "RegionKind",
    "Rule",
    "RuleClass",
    "Scene",
    "SceneError",
    "Scheduler",
    "Storage",
    "TileMap",
    "Tiles",
    "Timing",
    "Window",
    "rule",
]
