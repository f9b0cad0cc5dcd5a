"""A builder that fails on request; in a room of its own, so that a worker that needs it is up as fast as a real one."""

import os
import time

from geometry.errors import ModelError
from geometry.model_label import ModelFormat, ModelLabel
from geometry.pad import Pad


def misbehave(pad: Pad, label: ModelLabel, _: ModelFormat) -> bytes:
    """Do what the design's title says; else say which process this is, and how thick the web."""
    match label.title:
        case "crash":
            os.abort()
        case "hang":
            time.sleep(60)
        case "hunger":
            bytearray(10**9)
        case "raise":
            raise ValueError("a class of the kernel's own")
        case "refuse":
            raise ModelError("not this one")
    return f"{os.getpid()} {pad.web_mm}".encode()


def counted(tally: str, pad: Pad, label: ModelLabel, form: ModelFormat) -> bytes:
    """Take a little while, and note in a file what was built."""
    time.sleep(0.2)
    with open(tally, "a", encoding="utf-8") as notes:
        notes.write(f"{pad.web_mm:g}\n")
    return misbehave(pad, label, form)


_left_behind: list[bytearray] = []


def draw_badly(job: tuple[str, str]) -> bytes:
    """Fail as told, or leave 30 MB behind; else say which process this is."""
    deed, words = job
    match deed:
        case "hang":
            time.sleep(60)
        case "crash":
            os.abort()
        case "leak":
            _left_behind.append(bytearray(b"x" * 30 * 2**20))
    return f"{os.getpid()} {words}".encode()
