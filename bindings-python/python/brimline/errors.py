"""What brimline raises. Every exception has the same fields, and the same text as in Rust and C."""

from ._native import Fault, error_document

__all__ = ["BrimlineError", "DocumentError", "InternalError", "LimitError", "QuantityError"]


class BrimlineError(ValueError):
    """Something that was handed in is refused: one fault or more, in the order they stand in the document.

    >>> from brimline import Amount, BrimlineError
    >>> try:
    ...     Amount("1,6 L")
    ... except BrimlineError as error:
    ...     print(error.kind, error.code, error.faults[0].allowed)
    decimal_comma 22 ('1.6 L', '16 L')
    """

    def __init__(self, message: str, faults: tuple[Fault, ...]) -> None:
        super().__init__(message, faults)
        self.message = message
        """Every fault in a line of its own."""
        self.faults = faults
        """What is wrong, piece by piece."""

    @property
    def kind(self) -> str:
        """The kind of the first fault: a stable word, as `unit_ambiguous`."""
        return self.faults[0].kind

    @property
    def code(self) -> int:
        """The number of that kind, the status of the C library."""
        return self.faults[0].code

    def to_json(self) -> str:
        """The error document: `{"kind","code","message","faults":[…]}`, the same bytes in every language."""
        return error_document(self.faults)

    def __str__(self) -> str:
        return self.message


class DocumentError(BrimlineError):
    """A pack, a journal, a header, an entry or a JSON of arguments cannot be read: each fault with its path and place."""


class LimitError(DocumentError):
    """A document goes beyond one of the `Limits`; the fault names it."""


class QuantityError(BrimlineError):
    """A number, a unit or an amount that was handed in by itself cannot be read, or not reckoned with.

    Where it is an argument of a calculator, the path of the fault is the name of the argument.
    """


class InternalError(BrimlineError):
    """A defect of the library itself, caught at its border."""


_FAMILIES = ((range(20, 40), QuantityError), (range(90, 100), InternalError))


def refusal(message: str, faults: tuple[Fault, ...]) -> BrimlineError:
    """The exception for these faults, by the first of them: one with a place in a text is of a document."""
    first = faults[0]
    if first.kind == "limit":
        return LimitError(message, faults)
    if first.line is not None:
        return DocumentError(message, faults)
    for codes, family in _FAMILIES:
        if first.code in codes:
            return family(message, faults)
    return BrimlineError(message, faults)
