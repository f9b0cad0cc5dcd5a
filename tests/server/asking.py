"""What the tests of addresses ask with, and how they read the answers."""

from math import isclose
from typing import Any

from httpx import Response

from server.links import address_of_document, ready_sample
from tests.documents import sample, van

FITTING = ready_sample().document
FAILING = sample("repair_cafe_people_carrier")
NO_PAD = sample("rowing_club_trailer_car_no_pad")
FILES = ("json", "step", "stl", "3mf", "glb", "svg", "dxf", "pdf", "zip")
DRAWINGS = ("svg", "dxf", "pdf")
MODELS = ("step", "stl", "3mf", "glb")
MEDIA_TYPES = {
    "json": "application/json",
    "step": "model/step",
    "stl": "model/stl",
    "3mf": "model/3mf",
    "glb": "model/gltf-binary",
    "svg": "image/svg+xml",
    "dxf": "image/vnd.dxf",
    "pdf": "application/pdf",
    "zip": "application/zip",
}
FIRST_BYTES = {
    "step": b"ISO-10303-21;",
    "3mf": b"PK",
    "glb": b"glTF",
    "svg": b"<svg",
    "dxf": b"  0\nSECTION",
    "pdf": b"%PDF-",
}


async def problem(answer: Response, *, status: int, kind: str) -> dict[str, Any]:
    """The body of an answer that must be a problem of one kind, in the shape of RFC 9457 section 3."""
    body: dict[str, Any] = answer.json()
    assert (answer.status_code, answer.headers["content-type"]) == (status, "application/problem+json"), body
    assert (body["type"], body["status"]) == (f"/problems/{kind}", status)
    assert body["title"]
    assert body["detail"]
    return body


def fields_of(body: dict[str, Any]) -> set[str]:
    """The fields that a problem names."""
    return {error["field"] for error in body["errors"]}


def address(document: dict[str, Any] | None = None, ending: str = "json", units: str = "mm", **more: str) -> str:
    """The address of one file of a document, with further keys."""
    whole = address_of_document(document or van(), f".{ending}", units=units)
    return whole + "".join(f"&{key}={text}" for key, text in more.items())


def differences(one: Any, other: Any, tolerance: float = 1e-9) -> list[str]:
    """Where two JSON values differ by more than a relative and absolute tolerance."""
    if isinstance(one, dict) and isinstance(other, dict) and one.keys() == other.keys():
        return [f"{key}.{d}" for key in one for d in differences(one[key], other[key], tolerance)]
    if isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        return [d for a, b in zip(one, other, strict=True) for d in differences(a, b, tolerance)]
    if isinstance(one, float) and isinstance(other, int | float):
        return [] if isclose(one, other, rel_tol=tolerance, abs_tol=tolerance) else [f"{one} {other}"]
    return [] if one == other else [f"{one} {other}"]
