"""Secrets of links, and the letters of revisions."""

import base64
import hashlib
import hmac
import re
import secrets
from typing import Literal

Kind = Literal["view", "friend", "owner"]
KINDS: tuple[Kind, ...] = ("view", "friend", "owner")
"""Who may do what, least first: read; also add readings, remarks and proposals; also save, rename and take links back."""
GIVEN_KINDS: tuple[Kind, ...] = ("friend", "view")
"""The links that an owner gives to others."""
_SECRET_BYTES = 16
_SECRET = re.compile(r"[A-Za-z0-9_-]{22}")
_LETTERS = "ABCDEFGHJKLMNPRTUVWY"
"""Without I, O, Q, S, X and Z, which drawings leave out because they are misread (ASME Y14.35, from memory)."""


def new_secret() -> str:
    """128 bits of chance, as they stand in an address."""
    return secrets.token_urlsafe(_SECRET_BYTES)


def could_be_secret(text: str) -> bool:
    """Whether a text has the shape of a secret."""
    return _SECRET.fullmatch(text) is not None


def hash_of(secret: str) -> str:
    """What is kept of a secret."""
    return hashlib.sha256(secret.encode()).hexdigest()


def derived_secret(owner_secret: str, kind: Kind, number: int) -> str:
    """The secret of a link that an owner gives away.

    It follows from the owner's own, so that the owner's page can show it again though only its hash is kept; from it nobody
    gets back to the owner's (HMAC, RFC 2104).
    """
    made = hmac.digest(owner_secret.encode(), f"{kind} {number}".encode(), "sha256")
    return base64.urlsafe_b64encode(made[:_SECRET_BYTES]).rstrip(b"=").decode()


def letters_of(number: int) -> str:
    """The letters of a revision, the first being 1.

    >>> [letters_of(n) for n in (1, 8, 9, 20, 21, 40, 41)]
    ['A', 'H', 'J', 'Y', 'AA', 'AY', 'BA']
    """
    text = ""
    while number > 0:
        number, last = divmod(number - 1, len(_LETTERS))
        text = _LETTERS[last] + text
    return text


def number_of(letters: str) -> int | None:
    """The number of a revision by its letters; None where no revision is called that.

    >>> number_of("A"), number_of("BA"), number_of("I"), number_of("")
    (1, 41, None, None)
    """
    if not 1 <= len(letters) <= 3 or any(letter not in _LETTERS for letter in letters):
        return None
    number = 0
    for letter in letters:
        number = number * len(_LETTERS) + _LETTERS.index(letter) + 1
    return number
