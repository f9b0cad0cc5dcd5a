"""The guide holds everything that the program knows about the job, and every link of it leads somewhere."""

import ast
import re
from collections import Counter
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest
from httpx import AsyncClient
from markupsafe import escape

from geometry.cautions import ONE_LINE
from geometry.design import design_pad
from geometry.kinds import FACES, JACKS
from geometry.making.looks import looks_of
from geometry.materials import MATERIALS
from geometry.measurements import read_measurements
from geometry.rules import CHECK_RULES
from server.field_views import field_id
from server.fields import FIELDS, fields_of
from server.forms import Units
from server.guide import guide_text
from server.guide_cautions import all_cautions
from server.guide_glossary import WORDS
from server.guide_kinds import FEET, HEADS, Kind
from server.guide_view import guide_page
from server.guide_words import FAMILIES, PURPOSES
from server.links import STATIC, Sample, ready_sample, samples
from tests.house.test_words import CLAIMS, PROMISES

PAGE = guide_text("mm")
CAUTIONS_FILES = [Path(__file__).parents[2] / "geometry" / name for name in ("cautions.py", "case_cautions.py")]
JUDGED = [sample for sample in samples() if not sample.key.endswith("_no_pad")]
TRADE = (
    *("cup", "rim", "seat", "stem", "slot", "wall", "web", "lip", "seam", "sill", "stock", "blank"),
    *("facing", "parting", "run-out", "infeed", "body", "chamfer", "play", "bow"),
    *("foot", "head", "saddle", "land", "lug", "tooth", "recess", "skirt", "post", "retaining-pin"),
    *("cushion", "frame-rail", "shape-factor", "plug", "pocket", "shoulder"),
)
"""Words that drawing, sheets and cards use without explaining them."""


class Reader(HTMLParser):
    """Collects what is linked to and what is linked, the words that are shown, and what is fetched."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.ids: Counter[str] = Counter()
        self.hrefs: list[str] = []
        self.fetched: list[str] = []
        self.words: list[str] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        found: dict[str, Any] = dict(attrs)
        self.ids.update([found["id"]] if "id" in found else [])
        if tag == "a":
            self.hrefs.append(found["href"])
        elif tag in {"link", "script", "img"}:
            self.fetched.append(found.get("src") or found["href"])

    def handle_data(self, data: str) -> None:
        self.words.append(data)


READ = Reader(PAGE)


@pytest.mark.parametrize("key", FIELDS)
def test_every_field_has_its_place(key: str) -> None:
    assert READ.ids[field_id(key)] == 1
    assert str(escape(FIELDS[key].title)) in PAGE
    assert str(escape(FIELDS[key].how)) in PAGE
    assert str(escape(FIELDS[key].help)) in PAGE
    assert str(escape(FIELDS[key].assumed)) in PAGE


@pytest.mark.parametrize("foot", JACKS)
def test_what_is_asked_of_a_jack_is_told_in_the_words_of_its_kind(foot: str) -> None:
    """A rim, teeth, a plate and a bore share a field for their height; each says to what it is measured."""
    groups = {group.id: group for group in guide_page("mm").measuring}
    told = [f for name in ("group-jack", f"group-jack-{foot}") for f in groups[name].fields]
    asked = {key: field for key, field in fields_of(foot).items() if field.group == "jack"}
    assert {f.key: (f.title, f.how, f.why) for f in told} == {k: (f.title, f.how, f.help) for k, f in asked.items()}
    assert len(told) == len(asked)


def test_every_foot_and_every_head_is_told_of_with_where_it_is_wrong() -> None:
    assert [kind.key for kind in FEET] == list(JACKS)
    assert [kind.key for kind in HEADS] == list(FACES)
    assert all("Not " in kind.leave for kind in (*FEET, *HEADS))


@pytest.mark.parametrize("kind", [*FEET, *HEADS], ids=lambda kind: str(kind.key))
def test_a_kind_leads_to_its_questions_and_its_drawing_says_what_it_shows(kind: Kind) -> None:
    """Oracle: the title within the drawing's own file."""
    drawn = (STATIC / "guide" / f"{kind.picture}.svg").read_text()
    entry = PAGE[PAGE.index(f'id="kind-{kind.key}"') :].partition('<div class="say')[0]
    assert f"<title>{kind.shown}</title>" in drawn
    assert f'alt="{escape(kind.shown)}"' in entry
    assert f'href="#{kind.group}"' in entry
    assert READ.ids[kind.group] == 1


@pytest.mark.parametrize("code", CHECK_RULES)
def test_every_check_has_its_place_purpose_and_source(code: str) -> None:
    entry = PAGE[PAGE.index(f'id="check-{code}"') :].partition('<div class="say"')[0]
    rule = CHECK_RULES[code]
    assert READ.ids[f"check-{code}"] == 1
    for words in (rule.title, PURPOSES[code], rule.source.text, rule.source.mark.words):
        assert str(escape(words)) in entry
    assert entry.count("<math") >= 2
    assert entry.partition("Rests on:")[2].count('href="#field-') >= 1


@pytest.mark.parametrize("sample", JUDGED, ids=lambda sample: str(sample.key))
def test_check_and_measurement_lead_to_each_other_whatever_the_kind(sample: Sample) -> None:
    """Oracle: what the judged checks of an example say they needed, by the names of its own foot and head."""
    design = design_pad(read_measurements(sample.document))
    assert any(check.needs for check in design.checks)
    for check in design.checks:
        told = PAGE[PAGE.index(f'id="check-{check.code}"') :].partition("Rests on:")[2].partition("</p>")[0]
        for key in check.needs:
            entry = PAGE[PAGE.index(f'id="{field_id(key)}"') :].partition('<div class="say')[0]
            assert f'href="#{field_id(key)}"' in told
            assert f'href="#check-{check.code}"' in entry


def test_nothing_is_measured_that_no_check_rests_on() -> None:
    told = {f.key: f.checks for group in guide_page("mm").measuring for f in group.fields}
    lengths = {key for key, field in FIELDS.items() if field.kind == "length"}
    assert {key for key in lengths if key.startswith(("jack.", "seam.", "rail.", "pocket.")) and not told[key]} == set()


def test_no_two_groups_of_checks_have_one_heading() -> None:
    """A boss and a crossed slot stand with cup and slot; what no heading is for stands together, once."""
    groups = guide_page("mm").checks
    codes = [check.code for group in groups for check in group.checks]
    assert len({group.heading for group in groups}) == len(groups)
    assert sorted(codes) == sorted(CHECK_RULES)
    assert {g.heading for g in groups for c in g.checks if c.code in {"boss_clear", "seat_fit_tight"}} == {
        "The seat, the lip and the stem in the cup"
    }


def test_there_is_a_purpose_for_every_check_and_for_nothing_else() -> None:
    assert set(PURPOSES) == set(CHECK_RULES)


@pytest.mark.parametrize("key", MATERIALS)
def test_every_material_has_its_place_and_all_its_notes(key: str) -> None:
    entry = PAGE[PAGE.index(f'id="material-{key}"') :].partition("</ul>")[0]
    assert MATERIALS[key].family in FAMILIES
    assert all(str(escape(note)) in entry for note in MATERIALS[key].notes)
    assert str(escape(MATERIALS[key].slot_refusal or MATERIALS[key].slot_advice or "Offered for a slot.")) in entry


def test_every_caution_that_is_written_anywhere_in_the_program_is_said() -> None:
    """Counted in the source: each ``Caution(...)`` there is one entry here."""
    calls = [
        node
        for path in CAUTIONS_FILES
        for node in ast.walk(ast.parse(path.read_text()))
        if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Caution"
    ]
    assert len(all_cautions()) == len(calls)
    for _, caution in all_cautions():
        assert str(escape(caution.text)) in PAGE
        assert str(escape(str(caution.source))) in PAGE


@pytest.mark.parametrize("word", TRADE)
def test_the_words_of_the_trade_are_explained(word: str) -> None:
    assert READ.ids[f"word-{word}"] == 1


def test_each_word_has_one_sentence() -> None:
    assert all(re.fullmatch(r"[^.]+\.", entry.meaning) for entry in WORDS)


def test_the_words_stand_in_the_order_of_the_alphabet() -> None:
    assert [entry.word for entry in WORDS] == sorted(entry.word for entry in WORDS)


def test_everything_to_look_for_before_use_is_said() -> None:
    example = design_pad(read_measurements(ready_sample().document))
    looks = looks_of(example.conditions, example.pad)
    assert all(str(escape(look.what)) in PAGE and str(escape(look.then)) in PAGE for look in looks)


def test_every_link_within_the_page_leads_to_one_place() -> None:
    inner = {href[1:] for href in READ.hrefs if href.startswith("#")}
    assert len(inner) > len(CHECK_RULES)
    assert {name for name in inner if READ.ids[name] != 1} == set()
    assert {name for name, times in READ.ids.items() if times > 1} == set()


@pytest.mark.anyio
async def test_every_other_link_and_file_answers(client: AsyncClient) -> None:
    for address in {href.partition("#")[0] for href in (*READ.hrefs, *READ.fetched) if not href.startswith("#")}:
        assert address.startswith("/"), "nothing comes from outside"
        assert (await client.get(address)).status_code == 200, address


@pytest.mark.anyio
@pytest.mark.parametrize("units", ["mm", "in"])
async def test_the_guide_answers_in_both_units(client: AsyncClient, units: Units) -> None:
    answer = await client.get(f"/guide?units={units}")
    assert answer.status_code == 200
    assert answer.text == guide_text(units)
    assert str(escape(ONE_LINE)) in answer.text
    assert ("Can be 0.787 in to 7.874 in." in answer.text) == (units == "in")


def test_no_word_of_the_guide_claims_more_than_an_estimate() -> None:
    shown = " ".join(READ.words)
    assert not CLAIMS.findall(shown)
    assert not PROMISES.findall(shown)
