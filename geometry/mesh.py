"""A closed skin of triangles, and its binary STL file."""

from dataclasses import dataclass
from math import sqrt
from struct import pack

from geometry.model_label import ModelLabel, ascii_text

Vertex = tuple[float, float, float]
Triangle = tuple[int, int, int]


@dataclass(frozen=True, slots=True)
class Mesh:
    """Vertices in mm, each once, and triangles that name them anticlockwise as seen from outside."""

    vertices: tuple[Vertex, ...]
    triangles: tuple[Triangle, ...]


def stl_bytes(mesh: Mesh, label: ModelLabel) -> bytes:
    """The skin as binary STL; the 80 bytes of its header say what it is."""
    # Readers take a file that starts with "solid" for the text form of STL; ours starts with "lifting pad".
    header = ascii_text(f"{label.product_name}; mm; {label.material}").encode()[:80].ljust(80)
    facets = bytearray()
    for triangle in mesh.triangles:
        a, b, c = (mesh.vertices[i] for i in triangle)
        facets += pack("<12fH", *_normal(a, b, c), *a, *b, *c, 0)
    return header + pack("<I", len(mesh.triangles)) + bytes(facets)


def _normal(a: Vertex, b: Vertex, c: Vertex) -> Vertex:
    """The triangle's outward direction, of length one (or none where the triangle has no area)."""
    u, v = [q - p for p, q in zip(a, b, strict=True)], [q - p for p, q in zip(a, c, strict=True)]
    x, y, z = u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]
    length = sqrt(x * x + y * y + z * z) or 1.0
    return x / length, y / length, z / length
