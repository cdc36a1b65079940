"""Changes that the program makes itself, told apart from those a person makes."""


class Quiet:
    """True while the program sets a control: `with quiet:` around that; a handler then returns at once."""

    def __init__(self) -> None:
        self._depth = 0

    def __enter__(self) -> None:
        self._depth += 1

    def __exit__(self, *_: object) -> None:
        self._depth -= 1

    def __bool__(self) -> bool:
        return self._depth > 0
