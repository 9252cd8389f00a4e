"""The zoo: every fault, with the rule that must catch it and the smallest scene that shows it."""

import re
from dataclasses import dataclass
from typing import Self

from planeproof.candidates.faults.beyond_a_byte import (
    BurstIndexInAByte,
    BytesLeftInAByte,
    CellNumberInAByte,
    HighByteForgotten,
    QueuePlacesInAByte,
    RevealsCountedInAByte,
)
from planeproof.candidates.faults.left_out import (
    EmptyPlaneLeft,
    LastCellNotSent,
    LastRowNotSent,
    OldInkLeft,
    PaletteEntryForgotten,
    StaleEntry,
)
from planeproof.candidates.faults.stale import (
    ChecksumForCompare,
    FoundByLowestPlane,
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
    TakesMoreThanHalf,
    TakesOneTooMany,
)
from planeproof.candidates.faults.wrong_batches import (
    ColumnGoesOnAlongTheRow,
    ColumnOneTooLong,
    KeptTilesGivenAway,
    OneEntryTooMany,
    PassedOverBlanked,
    RestOfBurstDropped,
    RowComparedByItsEnds,
)
from planeproof.candidates.faults.wrong_bytes import (
    InterleavedAsPlanar,
    LowByteOnly,
    MapBytesSwapped,
    PackedWrittenWhole,
    PlanesExchanged,
    TileIndexWraps,
)
from planeproof.candidates.faults.wrong_clearing import (
    ClearedAsFarAsItGoes,
    OnePageCleared,
    SeenPageCleared,
    TileClearedFirst,
)
from planeproof.candidates.faults.wrong_in_place import (
    ClearedFirst,
    OldListReplayed,
    PendingReplaced,
    SplitInPlace,
)
from planeproof.candidates.faults.wrong_library import (
    FoundInOtherBank,
    ListedByInk,
    ReplacedStillListed,
)
from planeproof.candidates.faults.wrong_order import (
    OrderSwapped,
    PairsMapFirst,
    PairsWithoutRelease,
    PictureSkipped,
    QueueOverrun,
    RevealedTwice,
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
from planeproof.candidates.faults.wrong_time import (
    BurstAcrossTheEnd,
    CutNotNoticed,
    CyclesOfTheOtherStandard,
    FractionsDropped,
    FullBlankingAssumed,
    OneCycleMore,
    SetUpNotCharged,
    ViewChargedAsMemory,
)
from planeproof.contract import Rule, Scheduler
from planeproof.contract.rules import (
    BLANKING_ONLY,
    EXACT_REVEAL,
    FAIR_REFUSAL,
    HIDDEN_WRITES,
    IN_ORDER,
    OWN_MEMORY,
    PROGRESS,
    TILE_CAP,
    WHOLE_REVEAL,
)


@dataclass(frozen=True, kw_only=True)
class Fault:
    """A broken scheduler: what `make` makes is what ``base`` makes, but for one mistake.

    ``rule`` is what the first violation breaks in the smallest scene that shows the mistake: of the scenes with the
    fewest ``pictures``, one with the fewest occupied ``cells`` over all pictures. ``machine`` names the shipped
    machine that it shows on, at the size of a few cells. ``story``: the mistake, and what the viewer sees.
    """

    id: str
    make: type[Scheduler]
    base: type[Scheduler]
    rule: Rule
    machine: str
    pictures: int
    cells: int
    story: str

    @classmethod
    def of(cls, make: type[Scheduler], rule: Rule, machine: str, *, pictures: int, cells: int) -> Self:
        """The fault of a class: its name is the id, the class it overrides the base, its docstring the story."""
        return cls(
            id=re.sub(r"(?<!^)(?=[A-Z])", "-", make.__name__).lower(),
            make=make,
            base=make.__bases__[0],
            rule=rule,
            machine=machine,
            pictures=pictures,
            cells=cells,
            story=" ".join((make.__doc__ or "").split()),
        )

    @property
    def target(self) -> str:
        """The fault as a target in text."""
        return f"planeproof.candidates.faults:{self.make.__name__}"


ZOO: tuple[Fault, ...] = (
    # wrong place
    Fault.of(PatternsToSeenPlane, PROGRESS, "vitrine-50", pictures=1, cells=1),
    Fault.of(WrongPitch, OWN_MEMORY, "vitrine-60", pictures=1, cells=0),
    Fault.of(CountsTilesFromOne, OWN_MEMORY, "vitrine-50", pictures=1, cells=1),
    Fault.of(PoolBeginsTooEarly, OWN_MEMORY, "vitrine-60", pictures=1, cells=1),
    Fault.of(PanelColours, OWN_MEMORY, "vitrine-50", pictures=1, cells=0),
    Fault.of(BlankTileWritten, OWN_MEMORY, "vitrine-60", pictures=1, cells=0),
    Fault.of(PanelTileForBlank, TILE_CAP, "vitrine-50", pictures=1, cells=0),
    Fault.of(SeenPlaneToo, HIDDEN_WRITES, "case-label", pictures=1, cells=1),
    Fault.of(PoolNotSplit, HIDDEN_WRITES, "twin-niche", pictures=2, cells=2),
    # wrong bytes
    Fault.of(TileIndexWraps, OWN_MEMORY, "long-frieze", pictures=1, cells=1),
    Fault.of(MapBytesSwapped, PROGRESS, "long-frieze", pictures=1, cells=1),
    Fault.of(LowByteOnly, PROGRESS, "long-frieze", pictures=1, cells=1),
    Fault.of(PackedWrittenWhole, HIDDEN_WRITES, "drawer-front", pictures=2, cells=2),
    Fault.of(InterleavedAsPlanar, EXACT_REVEAL, "pigment-chart", pictures=1, cells=1),
    Fault.of(PlanesExchanged, EXACT_REVEAL, "mosaic-floor", pictures=1, cells=1),
    # left out
    Fault.of(LastRowNotSent, EXACT_REVEAL, "vitrine-60", pictures=1, cells=1),
    Fault.of(LastCellNotSent, PROGRESS, "vitrine-50", pictures=1, cells=1),
    Fault.of(StaleEntry, EXACT_REVEAL, "vitrine-60", pictures=3, cells=1),
    Fault.of(OldInkLeft, EXACT_REVEAL, "vitrine-50", pictures=3, cells=2),
    Fault.of(EmptyPlaneLeft, EXACT_REVEAL, "mosaic-floor", pictures=3, cells=2),
    Fault.of(PaletteEntryForgotten, HIDDEN_WRITES, "vitrine-60", pictures=2, cells=2),
    # stale
    Fault.of(ChecksumForCompare, EXACT_REVEAL, "vitrine-50", pictures=3, cells=2),
    Fault.of(TileInUseReused, EXACT_REVEAL, "vitrine-60", pictures=3, cells=3),
    Fault.of(FoundOnSeenSide, EXACT_REVEAL, "vitrine-50", pictures=2, cells=2),
    Fault.of(ShadowAhead, PROGRESS, "vitrine-60", pictures=2, cells=1),
    Fault.of(LostBlankingCounted, PROGRESS, "vitrine-50", pictures=2, cells=1),
    Fault.of(FoundByLowestPlane, EXACT_REVEAL, "pigment-chart", pictures=1, cells=2),
    # wrong library
    Fault.of(ReplacedStillListed, HIDDEN_WRITES, "twin-niche", pictures=4, cells=4),
    Fault.of(FoundInOtherBank, EXACT_REVEAL, "two-wings", pictures=2, cells=2),
    Fault.of(ListedByInk, EXACT_REVEAL, "scroll-case", pictures=1, cells=2),
    # wrong clearing
    Fault.of(OnePageCleared, EXACT_REVEAL, "vitrine-50", pictures=4, cells=1),
    Fault.of(SeenPageCleared, HIDDEN_WRITES, "vitrine-60", pictures=1, cells=1),
    Fault.of(ClearedAsFarAsItGoes, EXACT_REVEAL, "long-frieze", pictures=3, cells=1),
    Fault.of(TileClearedFirst, HIDDEN_WRITES, "drawer-front", pictures=2, cells=2),
    # wrong reveal
    Fault.of(PaletteBeforePage, EXACT_REVEAL, "vitrine-60", pictures=2, cells=2),
    Fault.of(PageARefreshLate, EXACT_REVEAL, "vitrine-50", pictures=2, cells=2),
    Fault.of(RevealOneBurstEarly, HIDDEN_WRITES, "vitrine-60", pictures=1, cells=1),
    Fault.of(BankWithoutPage, PROGRESS, "two-wings", pictures=1, cells=1),
    Fault.of(NothingSentNotRevealed, PROGRESS, "vitrine-50", pictures=2, cells=1),
    Fault.of(FlipsWhenIdle, EXACT_REVEAL, "vitrine-60", pictures=1, cells=1),
    # wrong order
    Fault.of(OrderSwapped, EXACT_REVEAL, "vitrine-50", pictures=2, cells=1),
    Fault.of(PictureSkipped, PROGRESS, "vitrine-60", pictures=2, cells=1),
    Fault.of(QueueOverrun, PROGRESS, "vitrine-60", pictures=3, cells=1),
    Fault.of(RevealedTwice, PROGRESS, "vitrine-50", pictures=2, cells=1),
    Fault.of(PairsWithoutRelease, HIDDEN_WRITES, "case-label", pictures=3, cells=4),
    Fault.of(PairsMapFirst, HIDDEN_WRITES, "case-label", pictures=2, cells=3),
    Fault.of(SeenPatternNotCopied, HIDDEN_WRITES, "case-label", pictures=2, cells=3),
    # wrong batches
    Fault.of(RowComparedByItsEnds, PROGRESS, "vitrine-60", pictures=1, cells=1),
    Fault.of(KeptTilesGivenAway, EXACT_REVEAL, "vitrine-50", pictures=3, cells=3),
    Fault.of(OneEntryTooMany, OWN_MEMORY, "vitrine-60", pictures=1, cells=1),
    Fault.of(RestOfBurstDropped, EXACT_REVEAL, "vitrine-50", pictures=1, cells=1),
    Fault.of(ColumnOneTooLong, OWN_MEMORY, "case-label", pictures=1, cells=2),
    Fault.of(ColumnGoesOnAlongTheRow, OWN_MEMORY, "case-label", pictures=1, cells=2),
    Fault.of(PassedOverBlanked, HIDDEN_WRITES, "case-label", pictures=2, cells=3),
    # wrong time
    Fault.of(SetUpNotCharged, BLANKING_ONLY, "vitrine-60", pictures=1, cells=0),
    Fault.of(BurstAcrossTheEnd, BLANKING_ONLY, "twin-niche", pictures=1, cells=0),
    Fault.of(FullBlankingAssumed, BLANKING_ONLY, "case-label", pictures=1, cells=0),
    Fault.of(OneCycleMore, BLANKING_ONLY, "vitrine-50", pictures=1, cells=0),
    Fault.of(ViewChargedAsMemory, BLANKING_ONLY, "pigment-chart", pictures=1, cells=0),
    Fault.of(FractionsDropped, BLANKING_ONLY, "mosaic-floor", pictures=1, cells=0),
    Fault.of(CyclesOfTheOtherStandard, BLANKING_ONLY, "vitrine-60", pictures=1, cells=0),
    Fault.of(CutNotNoticed, BLANKING_ONLY, "name-plate", pictures=1, cells=1),
    # beyond a byte
    Fault.of(BurstIndexInAByte, EXACT_REVEAL, "scroll-case", pictures=1, cells=1),
    Fault.of(CellNumberInAByte, EXACT_REVEAL, "vitrine-50", pictures=1, cells=1),
    Fault.of(BytesLeftInAByte, HIDDEN_WRITES, "vitrine-60", pictures=1, cells=1),
    Fault.of(QueuePlacesInAByte, PROGRESS, "pigment-chart", pictures=1, cells=31),
    Fault.of(RevealsCountedInAByte, HIDDEN_WRITES, "vitrine-50", pictures=257, cells=1),
    Fault.of(HighByteForgotten, PROGRESS, "long-frieze", pictures=1, cells=1),
    # wrong in place: where there is one side
    Fault.of(SplitInPlace, WHOLE_REVEAL, "name-plate", pictures=1, cells=1),
    Fault.of(ClearedFirst, IN_ORDER, "name-plate", pictures=2, cells=2),
    Fault.of(OldListReplayed, IN_ORDER, "name-plate", pictures=2, cells=1),
    Fault.of(PendingReplaced, PROGRESS, "name-plate", pictures=2, cells=1),
    # wrong answers
    Fault.of(TakesOneTooMany, EXACT_REVEAL, "vitrine-50", pictures=1, cells=2),
    Fault.of(DeclinesTheLargest, FAIR_REFUSAL, "twin-niche", pictures=1, cells=1),
    Fault.of(AlwaysBusy, PROGRESS, "vitrine-50", pictures=1, cells=0),
    Fault.of(DeclinesEverything, FAIR_REFUSAL, "vitrine-60", pictures=1, cells=0),
    Fault.of(DoesNothing, PROGRESS, "vitrine-50", pictures=1, cells=1),
    Fault.of(TakenAndDropped, PROGRESS, "vitrine-60", pictures=2, cells=1),
    Fault.of(TakesMoreThanHalf, FAIR_REFUSAL, "case-label", pictures=2, cells=3),
)
"""Every fault that ships, by subject."""
