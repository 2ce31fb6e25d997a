"""Where a host keeps a journal."""

from typing import Protocol

__all__ = ["Storage"]


class Storage(Protocol):
    """Where a host keeps one journal: a file, a blob, whatever grows at its end. Both methods raise what went wrong."""

    def append(self, data: bytes, /) -> object:
        """Adds bytes at the end, and returns once they are durable: written, and flushed down to the medium."""

    def truncate(self, length: int, /) -> object:
        """Drops all but the first `length` bytes. It need not be durable before the next append is."""
