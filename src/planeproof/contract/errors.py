"""What is said when a value of the contract can't be: where, the value, what is allowed."""


class ContractError(ValueError):
    """A value of the contract that can't be.

    ``field`` names the place (``tiles.pool``), ``value`` what stood there, ``allowed`` what may stand there.
    """

    def __init__(self, field: str, value: object, allowed: str) -> None:
        super().__init__(f"{field} is {value!r}: {allowed}")
        self.field = field
        self.value = value
        self.allowed = allowed


class MachineError(ContractError):
    """A machine that can't be, or on which nothing could ever be shown whole."""


class SceneError(ContractError):
    """A scene that can't be played on its machine."""


def require(holds: bool, error: type[ContractError], field: str, value: object, allowed: str) -> None:
    """Raise ``error`` about ``field`` unless ``holds``."""
    if not holds:
        raise error(field, value, allowed)


def in_words(error: BaseException) -> str:
    """The kind of ``error`` and what it says, also where it is somebody else's and can't even say it."""
    try:
        text = str(error)
    except Exception:
        return f"{type(error).__name__} (whose text can't be had: its __str__ fails)"
    return f"{type(error).__name__}: {text}" if text else type(error).__name__
