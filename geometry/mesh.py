"""A closed skin of triangles, and its binary STL and GLB files."""

import json
from dataclasses import dataclass
from itertools import chain
from math import pow, sqrt
from struct import pack, unpack

from geometry.model_label import COLOUR, ModelLabel, ascii_text

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


def glb_bytes(mesh: Mesh, label: ModelLabel) -> bytes:
    """The skin as binary glTF 2.0, for showing it on screens: in metres, y up, as that format wants it [from memory]."""
    turned = [(x / 1000, z / 1000, -y / 1000) for x, y, z in mesh.vertices]
    places = pack(f"<{3 * len(turned)}f", *chain.from_iterable(turned))
    corners = pack(f"<{3 * len(mesh.triangles)}I", *chain.from_iterable(mesh.triangles))
    # The bounds must be those of the numbers as stored.
    stored = unpack(f"<{3 * len(turned)}f", places)
    bounds = {name: [found(stored[axis::3]) for axis in range(3)] for name, found in (("min", min), ("max", max))}
    document = json.dumps(_gltf(label, bounds, len(turned), 3 * len(mesh.triangles)), separators=(",", ":")).encode()
    document += b" " * (-len(document) % 4)
    chunks = ((b"JSON", document), (b"BIN\0", places + corners))
    body = b"".join(pack("<I", len(content)) + kind + content for kind, content in chunks)
    return b"glTF" + pack("<II", 2, 12 + len(body)) + body


def _gltf(label: ModelLabel, bounds: dict[str, list[float]], vertices: int, corners: int) -> dict[str, object]:
    """What a GLB file says about its numbers: one node, one mesh, one material. Without directions readers shade it flat."""
    split = 12 * vertices
    floats, whole_numbers = 5126, 5125
    look = {"baseColorFactor": [*(_linear(part) for part in COLOUR), 1], "metallicFactor": 0, "roughnessFactor": 0.8}
    return {
        "asset": {"version": "2.0", "generator": f"Seamrest {label.engine_version}"},
        "scene": 0,
        "scenes": [{"nodes": [0]}],
        "nodes": [{"mesh": 0, "name": label.product_name}],
        "meshes": [{"primitives": [{"attributes": {"POSITION": 0}, "indices": 1, "material": 0}]}],
        "materials": [{"name": ascii_text(label.material), "pbrMetallicRoughness": look}],
        "buffers": [{"byteLength": split + 4 * corners}],
        "bufferViews": [
            {"buffer": 0, "byteOffset": 0, "byteLength": split, "target": 34962},
            {"buffer": 0, "byteOffset": split, "byteLength": 4 * corners, "target": 34963},
        ],
        "accessors": [
            {"bufferView": 0, "componentType": floats, "count": vertices, "type": "VEC3", **bounds},
            {"bufferView": 1, "componentType": whole_numbers, "count": corners, "type": "SCALAR"},
        ],
    }


def _linear(part: float) -> float:
    """A part of a colour as glTF counts it: in light, not in signal (IEC 61966-2-1)."""
    return round(pow((part + 0.055) / 1.055, 2.4), 4)


def _normal(a: Vertex, b: Vertex, c: Vertex) -> Vertex:
    """The triangle's outward direction, of length one (or none where the triangle has no area)."""
    u, v = [q - p for p, q in zip(a, b, strict=True)], [q - p for p, q in zip(a, c, strict=True)]
    x, y, z = u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]
    length = sqrt(x * x + y * y + z * z) or 1.0
    return x / length, y / length, z / length
