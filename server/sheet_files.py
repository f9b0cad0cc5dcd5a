"""What may be taken from the working sheet: the drawing, papers, data and models of its design."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class FileView:
    """One file of the design."""

    name: str
    words: str
    href: str
    """Its address; of a model that is not fit to make, the address that the confirmation is sent to."""


def sibling(own: str, suffix: str) -> str:
    """The same design's address with another ending."""
    return own.replace("/pad", f"/pad{suffix}", 1)


def files_of(own: str) -> tuple[FileView, ...]:
    """What may be taken at any time."""
    return tuple(
        FileView(name, words, sibling(own, suffix))
        for name, words, suffix in (
            ("PDF", "the drawing on paper", ".pdf"),
            ("DXF", "the drawing for another drawing program", ".dxf"),
            ("SVG", "the drawing as a picture", ".svg"),
            ("Packet", "everything for paper, the card for the garage wall too", "/packet.pdf"),
            ("Gauges", "true-size outlines to cut from card", "/gauge.pdf"),
            ("JSON", "everything on this page as data", ".json"),
            ("Measurements", "what you typed, as a file of your own", ".document.json"),
        )
    )


def models_of(own: str) -> tuple[FileView, ...]:
    """The model; of a pad that is not fit to make, the bare address that a confirmation is sent to."""
    return tuple(
        FileView(name, words, sibling(own, suffix))
        for name, words, suffix in (
            ("STEP", "the exact solid, for machining", ".step"),
            ("STL", "the solid in triangles", ".stl"),
            ("3MF", "the solid in triangles, with its unit, for printing", ".3mf"),
            ("GLB", "the solid in triangles, in metres, for pictures", ".glb"),
            ("ZIP", "everything in one archive", ".zip"),
        )
    )
