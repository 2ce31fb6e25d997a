"""Keeps the journal of a running check in a file, and takes it up again: keep_a_journal.py FILE"""

import os
import sys

from brimline import KeptJournal, Pack

HEADER = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check"}


class FileStorage:
    """A journal in a file."""

    def __init__(self, name: str) -> None:
        self.file = os.open(name, os.O_RDWR | os.O_CREAT | os.O_APPEND)

    def read(self) -> bytes:
        with open(self.file, "rb", closefd=False) as file:
            return file.read()

    def append(self, data: bytes) -> None:
        while data:
            data = data[os.write(self.file, data) :]
        os.fsync(self.file)

    def truncate(self, length: int) -> None:
        os.ftruncate(self.file, length)


storage = FileStorage(sys.argv[1])
kept = storage.read()
if b"\n" in kept:
    journal = KeptJournal.recover(Pack.embedded(), kept, storage)
else:
    storage.truncate(0)
    journal = KeptJournal.start(Pack.embedded(), HEADER, storage)
if journal.dropped_bytes > 0:
    print(journal.dropped_bytes, "bytes of a line were cut off")
for line in sys.stdin:
    for finding in journal.append(line):
        print(finding["severity"], finding["id"])
    # Only now is the entry answered for.
    print("kept,", journal.check.evaluation().verdict)
