"""The three links: what each opens, that only hashes are kept, and that a link taken back stays back."""

import hashlib

import pytest
from sqlalchemy import select

from server.store.database import Database
from server.store.errors import NoSuchLinkError, TakenBackError
from server.store.keys import derived_secret, new_secret
from server.store.links import end, given_secrets, renew
from server.store.tables import ALL_TABLES
from server.store.tables import links as links_table
from tests.server.saving.keeping import access, saved


def given(database: Database, owner_secret: str) -> dict[str, str]:
    owner = access(database, owner_secret)
    with database.reading() as connection:
        return {str(kind): secret for kind, secret in given_secrets(connection, owner).items()}


def test_each_of_three_links_says_what_its_holder_may_do(database: Database) -> None:
    design_id, owner = saved(database)
    secrets = {"owner": owner} | given(database, owner)
    found = {kind: access(database, secret) for kind, secret in secrets.items()}
    assert {kind: (a.kind, a.is_owner, a.may_add, a.design.id) for kind, a in found.items()} == {
        "owner": ("owner", True, True, design_id),
        "friend": ("friend", False, True, design_id),
        "view": ("view", False, False, design_id),
    }


def test_a_secret_holds_128_bits_and_no_two_are_the_same() -> None:
    """Oracle: 22 characters of 6 bits each hold 16 bytes; a thousand draws differ."""
    drawn = {new_secret() for _ in range(1000)}
    assert len(drawn) == 1000
    assert {len(secret) for secret in drawn} == {22}
    assert len({derived_secret(s, kind, 1) for s in drawn for kind in ("view", "friend")}) == 2000


def test_of_secrets_only_hashes_are_kept(database: Database) -> None:
    """Oracle: no value of any table contains a secret; sha256 by hashlib."""
    _, owner = saved(database)
    secrets = [owner, *given(database, owner).values()]
    with database.reading() as connection:
        values = [str(value) for table in ALL_TABLES for row in connection.execute(select(table)) for value in row]
        hashes = set(connection.execute(select(links_table.c.hash)).scalars())
    assert not [value for value in values for secret in secrets if secret in value]
    assert hashes == {hashlib.sha256(secret.encode()).hexdigest() for secret in secrets}


@pytest.mark.parametrize("wrong", ["", "short", "A" * 22, "A" * 23, "ü" * 22, "' OR 1=1 --............", "\x00" * 22])
def test_what_is_no_secret_opens_nothing(database: Database, wrong: str) -> None:
    saved(database)
    with pytest.raises(NoSuchLinkError):
        access(database, wrong)


def test_the_hash_of_a_secret_opens_nothing(database: Database) -> None:
    _, owner = saved(database)
    with pytest.raises(NoSuchLinkError):
        access(database, hashlib.sha256(owner.encode()).hexdigest()[:22])


@pytest.mark.parametrize("kind", ["friend", "view"])
def test_a_link_that_was_taken_back_stays_back_and_the_others_stay_open(database: Database, kind: str) -> None:
    _, owner = saved(database)
    before = given(database, owner)
    end(database, access(database, owner), kind)  # type: ignore[arg-type]
    with pytest.raises(TakenBackError):
        access(database, before[kind])
    other = next(secret for k, secret in before.items() if k != kind)
    assert access(database, other).kind != kind
    assert kind not in given(database, owner)


def test_a_new_link_is_another_and_the_old_one_is_closed(database: Database) -> None:
    _, owner = saved(database)
    before = given(database, owner)["friend"]
    assert renew(database, access(database, owner), "friend") == owner
    after = given(database, owner)["friend"]
    assert after != before
    assert access(database, after).kind == "friend"
    with pytest.raises(TakenBackError):
        access(database, before)


def test_with_the_owners_link_go_the_two_that_its_holder_could_see(database: Database) -> None:
    design_id, owner = saved(database)
    before = [owner, *given(database, owner).values()]
    new = renew(database, access(database, owner), "owner")
    for secret in before:
        with pytest.raises(TakenBackError):
            access(database, secret)
    assert access(database, new).design.id == design_id
    assert set(given(database, new)) == {"friend", "view"}


def test_no_link_gives_away_one_that_may_do_more(database: Database) -> None:
    """Oracle: from friend and view secrets nothing is derived that opens."""
    _, owner = saved(database)
    for secret in given(database, owner).values():
        for kind in ("view", "friend", "owner"):
            with pytest.raises(NoSuchLinkError):
                access(database, derived_secret(secret, kind, 1))
