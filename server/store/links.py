"""The three links of a design: who has one may do what it says; of each only a hash is kept."""

import hmac
from collections.abc import Mapping
from dataclasses import dataclass

from sqlalchemy import Connection, func, insert, select, update

from server.store.database import Database
from server.store.designs import SavedDesign, now, saved_design
from server.store.errors import NoSuchLinkError, TakenBackError
from server.store.keys import GIVEN_KINDS, Kind, could_be_secret, derived_secret, hash_of, new_secret
from server.store.tables import links


@dataclass(frozen=True, slots=True, kw_only=True)
class Access:
    """What a link leads to, and what its holder may do there."""

    kind: Kind
    secret: str
    design: SavedDesign

    @property
    def is_owner(self) -> bool:
        """Whether its holder may save revisions, rename, and take links back."""
        return self.kind == "owner"

    @property
    def may_add(self) -> bool:
        """Whether its holder may add remarks, readings and proposals."""
        return self.kind in {"owner", "friend"}


def open_link(connection: Connection, secret: str) -> Access:
    """What stands behind the secret of an address.

    Raises NoSuchLinkError, TakenBackError.
    """
    if not could_be_secret(secret):
        raise NoSuchLinkError
    wanted = hash_of(secret)
    row = connection.execute(select(links).where(links.c.hash == wanted)).one_or_none()
    # The database has compared already, but how long it takes over that is not ours to say.
    if row is None or not hmac.compare_digest(row.hash, wanted):
        raise NoSuchLinkError
    if row.taken_back_at is not None:
        raise TakenBackError
    return Access(kind=row.kind, secret=secret, design=saved_design(connection, row.design_id))


def add_links(connection: Connection, design_id: str) -> str:
    """The first, or the next, three links of a design; returns the owner's secret, from which the others follow."""
    owner_secret = new_secret()
    _add(connection, design_id, "owner", owner_secret, _next_number(connection, design_id, "owner"))
    for kind in GIVEN_KINDS:
        number = _next_number(connection, design_id, kind)
        _add(connection, design_id, kind, derived_secret(owner_secret, kind, number), number)
    return owner_secret


def _next_number(connection: Connection, design_id: str, kind: Kind) -> int:
    asked = select(func.max(links.c.number)).where(links.c.design_id == design_id, links.c.kind == kind)
    return (connection.execute(asked).scalar_one() or 0) + 1


def _add(connection: Connection, design_id: str, kind: Kind, secret: str, number: int) -> None:
    row = {"hash": hash_of(secret), "design_id": design_id, "kind": kind, "number": number, "created_at": now()}
    connection.execute(insert(links).values(row))


def given_secrets(connection: Connection, owner: Access) -> Mapping[Kind, str]:
    """The secrets of the links that an owner has given out and not taken back."""
    asked = select(links).where(
        links.c.design_id == owner.design.id, links.c.kind.in_(GIVEN_KINDS), links.c.taken_back_at.is_(None)
    )
    found: dict[Kind, str] = {}
    for row in connection.execute(asked):
        secret = derived_secret(owner.secret, row.kind, row.number)
        if hmac.compare_digest(hash_of(secret), row.hash):
            found[row.kind] = secret
    return {kind: found[kind] for kind in GIVEN_KINDS if kind in found}


def take_back(connection: Connection, design_id: str, kind: Kind | None = None) -> None:
    """End the links of one kind, or all links of a design."""
    wanted = links.c.design_id == design_id, links.c.taken_back_at.is_(None)
    which = wanted if kind is None else (*wanted, links.c.kind == kind)
    connection.execute(update(links).where(*which).values(taken_back_at=now()))


def renew(database: Database, owner: Access, kind: Kind) -> str:
    """Take a link back and give a new one; returns the owner's secret, which is another where it was the owner's link.

    With the owner's link go the two others, which whoever had it could see.
    """
    with database.writing() as connection:
        if kind == "owner":
            take_back(connection, owner.design.id)
            return add_links(connection, owner.design.id)
        take_back(connection, owner.design.id, kind)
        number = _next_number(connection, owner.design.id, kind)
        _add(connection, owner.design.id, kind, derived_secret(owner.secret, kind, number), number)
    return owner.secret


def end(database: Database, owner: Access, kind: Kind) -> None:
    """Take a link back without giving another."""
    with database.writing() as connection:
        take_back(connection, owner.design.id, kind)
