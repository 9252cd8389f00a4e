"""Broken schedulers, one planted fault each, named by the fault. Read the tuple `ZOO`."""

from planeproof.candidates.faults.left_out import (
    EmptyPlaneLeft,
    LastCellNotSent,
    LastRowNotSent,
    OldInkLeft,
    PaletteEntryForgotten,
    StaleEntry,
)
from planeproof.candidates.faults.queued import Queued
from planeproof.candidates.faults.stale import (
    ChecksumForCompare,
    FoundOnSeenSide,
    LostBlankingCounted,
    ShadowAhead,
    TileInUseReused,
)
from planeproof.candidates.faults.wrong_answers import (
    AlwaysBusy,
    DeclinesEverything,
    DeclinesTheLargest,
    DoesNothing,
    TakenAndDropped,
    TakesOneTooMany,
)
from planeproof.candidates.faults.wrong_bytes import (
    InterleavedAsPlanar,
    LowByteOnly,
    MapBytesSwapped,
    PackedWrittenWhole,
    TileIndexWraps,
)
from planeproof.candidates.faults.wrong_in_place import ClearedFirst, OldListReplayed, SplitInPlace
from planeproof.candidates.faults.wrong_order import (
    OrderSwapped,
    PairsMapFirst,
    PairsWithoutRelease,
    PictureSkipped,
    SeenPatternNotCopied,
)
from planeproof.candidates.faults.wrong_place import (
    BlankTileWritten,
    CountsTilesFromOne,
    PanelColours,
    PanelTileForBlank,
    PatternsToSeenPlane,
    PoolBeginsTooEarly,
    PoolNotSplit,
    SeenPlaneToo,
    WrongPitch,
)
from planeproof.candidates.faults.wrong_reveal import (
    BankWithoutPage,
    FlipsWhenIdle,
    NothingSentNotRevealed,
    PageARefreshLate,
    PaletteBeforePage,
    RevealOneBurstEarly,
)
from planeproof.candidates.faults.wrong_time import BurstAcrossTheEnd, FullBlankingAssumed, SetUpNotCharged
from planeproof.candidates.faults.zoo import ZOO, Fault

__all__ = [
    "ZOO",
    "AlwaysBusy",
    "BankWithoutPage",
    "BlankTileWritten",
    "BurstAcrossTheEnd",
    "ChecksumForCompare",
    "ClearedFirst",
    "CountsTilesFromOne",
    "DeclinesEverything",
    "DeclinesTheLargest",
    "DoesNothing",
    "EmptyPlaneLeft",
    "Fault",
    "FlipsWhenIdle",
    "FoundOnSeenSide",
    "FullBlankingAssumed",
    "InterleavedAsPlanar",
    "LastCellNotSent",
    "LastRowNotSent",
    "LostBlankingCounted",
    "LowByteOnly",
    "MapBytesSwapped",
    "NothingSentNotRevealed",
    "OldInkLeft",
    "OldListReplayed",
    "OrderSwapped",
    "PackedWrittenWhole",
    "PageARefreshLate",
    "PairsMapFirst",
    "PairsWithoutRelease",
    "PaletteBeforePage",
    "PaletteEntryForgotten",
    "PanelColours",
    "PanelTileForBlank",
    "PatternsToSeenPlane",
    "PictureSkipped",
    "PoolBeginsTooEarly",
    "PoolNotSplit",
    "Queued",
    "RevealOneBurstEarly",
    "SeenPatternNotCopied",
    "SeenPlaneToo",
    "SetUpNotCharged",
    "ShadowAhead",
    "SplitInPlace",
    "StaleEntry",
    "TakenAndDropped",
    "TakesOneTooMany",
    "TileInUseReused",
    "TileIndexWraps",
    "WrongPitch",
]
