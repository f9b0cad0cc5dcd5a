"""Saved designs as a story of any length: whatever is sent in whatever order, pages say what a plain model of them says."""

import asyncio
import re
from dataclasses import dataclass, field
from itertools import count
from typing import Any

import pytest
from httpx import ASGITransport, AsyncClient, Response
from hypothesis import HealthCheck, Phase, settings
from hypothesis import strategies as st
from hypothesis.stateful import Bundle, RuleBasedStateMachine, initialize, multiple, rule, run_state_machine_as_test

from server.app import create_app
from server.settings import Settings
from server.store.keys import letters_of
from tests.documents import van
from tests.server.saving.asking import inputs, links_of, save, send

_HEIGHTS = st.sampled_from([20, 21, 22])
_KINDS = st.sampled_from(["owner", "friend", "view"])
_TOKEN = re.compile(r"(?:note|title|remark|reading|proposal)-\d+-")


@dataclass(eq=False)
class Revision:
    """What a revision is, and the words of everything beside it."""

    height: int
    note: str
    beside: set[str] = field(default_factory=set)


@dataclass(eq=False)
class Design:
    """A saved design as its users think of it."""

    title: str
    first_title: str
    """The name that the first revision was saved under."""
    revisions: list[Revision]
    links: dict[str, str] = field(default_factory=dict)
    """The links that lead to it, by kind."""


@dataclass(eq=False)
class Link:
    """An address that somebody has; the design may not know it any more."""

    address: str
    kind: str
    design: Design

    @property
    def is_alive(self) -> bool:
        return self.design.links.get(self.kind) == self.address

    def at(self, number: int) -> str:
        """The address of a revision behind it."""
        return f"{self.address}/{letters_of(number)}"


class Story(RuleBasedStateMachine):
    """Owners save, revise, rename and take back; friends add; readers read; everybody also tries what they may not."""

    links = Bundle("links")
    client: AsyncClient
    runner: "asyncio.Runner"

    def __init__(self) -> None:
        super().__init__()
        self.numbers = count()
        self.designs: list[Design] = []

    def ask(self, address: str, **fields: str) -> Response:
        """Send a form, or look where there is nothing to send."""
        coming = send(self.client, address, **fields) if fields else self.client.get(address)
        answer: Response = self.runner.run(coming)
        return answer

    def word(self, kind: str) -> str:
        """A word that stands nowhere else."""
        return f"{kind}-{next(self.numbers)}-"

    def known(self, design: Design) -> Any:
        """The links that a design's owner sees, new ones with those that are there already."""
        owner = f"{design.links['owner']}/A"
        found = self.runner.run(links_of(self.client, owner))
        design.links = {kind: address.rpartition("/")[0] for kind, address in found.items()}
        return multiple(*(Link(address, kind, design) for kind, address in design.links.items()))

    def status(self, link: Link, *, least: str) -> int:
        """What somebody is told who does something with a link for which the least is another."""
        if not link.is_alive:
            return 410
        kinds = ["view", "friend", "owner"]
        return 303 if kinds.index(link.kind) >= kinds.index(least) else 403

    @initialize(target=links)
    def begin(self) -> Any:
        return self.save(height=20)

    @rule(target=links, height=_HEIGHTS)
    def save_a_design(self, height: int) -> Any:
        return self.save(height=height)

    def save(self, *, height: int) -> Any:
        title, note = self.word("title"), self.word("note")
        owner = self.runner.run(save(self.client, van(seam__height_mm=height), title=title, note=note))
        self.designs.append(Design(title, title, [Revision(height, note)], {"owner": owner.rpartition("/")[0]}))
        return self.known(self.designs[-1])

    @rule(link=links, height=_HEIGHTS, back=st.integers(0, 2))
    def revise(self, link: Link, height: int, back: int) -> None:
        """With an owner's link: the next revision, nothing where nothing has changed, 409 beside a newer one."""
        design, note = link.design, self.word("note")
        number = max(1, len(design.revisions) - back)
        base = design.revisions[number - 1]
        answer = self.ask(
            "/saved", inputs=inputs(title=design.first_title, seam__height_mm=height), to=link.at(number), note=note
        )
        expected = self.status(link, least="friend")
        if expected == 303 and link.kind == "friend":
            base.beside.add(note)
        elif expected == 303 and base is not design.revisions[-1]:
            expected = 409
        elif expected == 303 and base.height != height:
            design.revisions.append(Revision(height, note))
        assert answer.status_code == expected, answer.text

    @rule(link=links, number=st.integers(1, 4), kind=st.sampled_from(["remark", "reading"]))
    def add(self, link: Link, number: int, kind: str) -> None:
        number = min(number, len(link.design.revisions))
        word = self.word(kind)
        more = {"words": "Looked at."} if kind == "remark" else {"as_made.slot_width_mm": "4.0"}
        answer = self.ask(f"{link.at(number)}/{kind}s", name=word, **more)
        expected = self.status(link, least="friend")
        assert answer.status_code == expected, answer.text
        if expected == 303:
            link.design.revisions[number - 1].beside.add(word)

    @rule(link=links, number=st.integers(1, 4), height=_HEIGHTS)
    def propose(self, link: Link, number: int, height: int) -> None:
        number = min(number, len(link.design.revisions))
        found, word = link.design.revisions[number - 1], self.word("proposal")
        copy = inputs(title=link.design.first_title, seam__height_mm=height)
        answer = self.ask(f"{link.at(number)}/proposals", inputs=copy, name=word)
        expected = self.status(link, least="friend")
        if expected == 303 and height == found.height:
            expected = 422
        assert answer.status_code == expected, answer.text
        if expected == 303:
            found.beside.add(word)

    @rule(link=links)
    def rename(self, link: Link) -> None:
        title = self.word("title")
        expected = self.status(link, least="owner")
        assert self.ask(f"{link.address}/title", title=title).status_code == expected
        if expected == 303:
            link.design.title = title

    @rule(link=links, kind=_KINDS)
    def take_back(self, link: Link, kind: str) -> None:
        expected = self.status(link, least="owner")
        if expected == 303 and kind == "owner":
            # Nobody could ever give one again.
            expected = 422
        assert self.ask(f"{link.address}/links", kind=kind, deed="end").status_code == expected
        if expected == 303:
            link.design.links.pop(kind, None)

    @rule(target=links, link=links, kind=_KINDS)
    def renew(self, link: Link, kind: str) -> Any:
        """Another link of the kind; another owner's link takes the two others with it."""
        before, expected = dict(link.design.links), self.status(link, least="owner")
        answer = self.ask(f"{link.address}/links", kind=kind, deed="renew")
        assert answer.status_code == expected
        if expected != 303:
            return multiple()
        link.design.links["owner"] = answer.headers["location"].partition("?")[0].rstrip("/")
        found = self.known(link.design)
        changed = {k for k in ("owner", "friend", "view") if before.get(k) != link.design.links.get(k)}
        assert changed == ({"owner", "friend", "view"} if kind == "owner" else {kind})
        return found

    @rule(link=links, number=st.integers(1, 4))
    def read(self, link: Link, number: int) -> None:
        """Oracle: of all words of this story, the page shows the title, all notes, and what stands beside the revision.

        The papers of a revision, and so its address on the working sheet, keep the name it was saved under.
        """
        design, page = link.design, self.ask(link.at(number))
        if not link.is_alive:
            assert page.status_code == 410
        elif number > len(design.revisions):
            assert page.status_code == 404
        else:
            here, notes = design.revisions[number - 1], {revision.note for revision in design.revisions}
            assert page.status_code == 200
            assert set(_TOKEN.findall(page.text)) - {design.first_title} == {design.title, *notes, *here.beside} - {
                design.first_title
            }
            assert self.ask(f"{link.at(number)}.json").json()["measurements"]["seam"]["height_mm"] == here.height
            newest = self.ask(link.address).headers["location"]
            assert newest.endswith(f"/{letters_of(len(design.revisions))}")

    def teardown(self) -> None:
        """At the end of each story, its owners read all of it."""
        for design in self.designs:
            for number in range(1, len(design.revisions) + 2):
                self.read(Link(design.links["owner"], "owner", design), number)


@pytest.mark.parametrize(
    ("stories", "steps"),
    [pytest.param(6, 25, id="6 stories"), pytest.param(300, 60, id="300 stories", marks=pytest.mark.full)],
)
def test_whatever_is_sent_in_whatever_order_the_pages_say_what_the_model_says(
    tmp_path: Any, stories: int, steps: int
) -> None:
    """Oracle: a model of lists and sets, told the same story."""
    unlimited: dict[str, Any] = {"client_requests_per_minute": 0, "client_changes_per_minute": 0}
    app = create_app(Settings(database=str(tmp_path / "designs.sqlite3"), drawing_date="2026-02-03", **unlimited))
    with asyncio.Runner() as runner:
        Story.runner, Story.client = runner, AsyncClient(transport=ASGITransport(app=app), base_url="http://pads.test")
        try:
            run_state_machine_as_test(
                Story,
                settings=settings(
                    max_examples=stories,
                    stateful_step_count=steps,
                    deadline=None,
                    derandomize=True,
                    # To make a story that fails shorter takes minutes; it is told step by step as it is.
                    phases=[Phase.generate],
                    suppress_health_check=list(HealthCheck),
                ),
            )
        finally:
            runner.run(Story.client.aclose())
            app.state.store.close()
