"""What cannot be kept comes back with all that was typed, and what to do stands beside the box that is meant."""

import re

import pytest
from httpx import AsyncClient

from server.collection import MOST_LINKS
from tests.server.saving.asking import NO_PAD, inputs, links_of, page, save, send, words_of

pytestmark = pytest.mark.anyio
NOBODYS = "/saved/AAAAAAAAAAAAAAAAAAAAAA/A"


def beside(text: str, box: str) -> str:
    """The words of the problem that stands with a box of that id."""
    found = re.search(rf'<div class="ask-for has-problem">(?:(?!</div>).)*id="{box}"(?:(?!</div>).)*</div>', text, re.S)
    assert found, text
    problem = re.search(r'class="problem"[^>]*>(.*?)</p>', found[0], re.S)
    assert problem
    assert 'aria-invalid="true"' in found[0]
    return words_of(problem[1])


@pytest.mark.parametrize(
    ("link", "status", "says"),
    [
        ("a link", 422, "It looks like …/saved/…/A"),
        (NOBODYS, 404, ""),
        ("view", 403, "This link is for reading"),
    ],
)
async def test_a_link_that_nothing_can_be_saved_to_is_asked_for_again(
    asking: AsyncClient, link: str, status: int, says: str
) -> None:
    """Oracle: name, note and link stand in their boxes as they were typed; nothing was saved; without the link it is."""
    owner = await save(asking)
    view = (await links_of(asking, owner))["view"]
    to = view if link == "view" else link
    typed = {"inputs": inputs(seam__height_mm=22), "title": "Our van", "note": "Measured again", "name": "Ada"}
    answer = await send(asking, "/saved", **typed, to=to)
    assert answer.status_code == status
    said = beside(answer.text, "to")
    assert said.startswith("Nothing is saved yet.")
    assert says in said
    assert "Correct the link, or empty its box" in said
    for text in (to, "Our van", "Ada"):
        assert f'value="{text}"' in answer.text
    assert ">Measured again</textarea>" in answer.text
    assert "revision B" not in words_of(await page(asking, owner))
    assert (await send(asking, "/saved", **typed, to="")).status_code == 303


async def test_an_empty_remark_comes_back_with_the_name(asking: AsyncClient) -> None:
    owner = await save(asking)
    friend = (await links_of(asking, owner))["friend"]
    answer = await send(asking, f"{friend}/remarks", words="  ", name="Ada")
    assert answer.status_code == 422
    assert beside(answer.text, "remark").startswith("The remark is empty")
    assert 'name="name" type="text" maxlength="60" autocomplete="name" value="Ada"' in answer.text


@pytest.mark.parametrize(
    ("sent", "says"), [(inputs(), "Nothing is different"), (inputs(NO_PAD), "cannot be worked out")]
)
async def test_a_proposal_that_was_not_sent_keeps_the_words_that_go_with_it(
    asking: AsyncClient, sent: str, says: str
) -> None:
    """Oracle: words and name go along with the next copy, and stand in their boxes there."""
    friend = (await links_of(asking, await save(asking)))["friend"]
    answer = await send(asking, f"{friend}/proposals", inputs=sent, words="I have nylon", name="Ada")
    assert answer.status_code == 422
    assert says in words_of(answer.text)
    assert f'action="{friend}/try"' in answer.text
    carried = dict(re.findall(r'<input type="hidden" name="([^"]+)" value="([^"]*)"', answer.text))
    assert (carried["words"], carried["name"]) == ("I have nylon", "Ada")
    again = await asking.get(f"{friend}/try", params=carried | {"make.material": "pa66"})
    assert ">I have nylon</textarea>" in again.text
    assert 'name="name" type="text" maxlength="60" autocomplete="name" value="Ada"' in again.text


async def test_a_note_goes_along_while_the_copy_is_worked_out_again(asking: AsyncClient) -> None:
    """Oracle: the note stands in its box; where something had changed since, the page says that nothing is saved."""
    owner = await save(asking)
    text = (await asking.get(f"{owner}/change?seam.height_mm=22&note=Measured+again&again=yes")).text
    assert ">Measured again</textarea>" in text
    assert "Nothing is sent yet" in words_of(text)
    assert "Nothing is sent yet" not in words_of(await page(asking, f"{owner}/change?seam.height_mm=22"))


async def test_links_that_open_nothing_are_named_and_stay_in_their_box(asking: AsyncClient) -> None:
    """Oracle: the line that is wrong, among one that is right."""
    owner = await save(asking)
    for links, wrong in ((f"{owner}\n{NOBODYS}", NOBODYS), (f"{owner}\nmy van", "my van")):
        answer = await send(asking, "/mine/export", links=links)
        assert answer.status_code == 422
        assert beside(answer.text, "links").startswith(f"“{wrong}”")
        assert f">{links}</textarea>" in answer.text
    empty = await send(asking, "/mine/export", links="")
    assert "Put one on each line" in beside(empty.text, "links")


async def test_more_links_than_one_file_takes_are_refused_and_none_is_left_out_unsaid(asking: AsyncClient) -> None:
    """Oracle: one link more than the limit, told with both numbers."""
    owner = await save(asking)
    answer = await send(asking, "/mine/export", links="\n".join([owner] * (MOST_LINKS + 1)))
    said = beside(answer.text, "links")
    assert str(MOST_LINKS + 1) in said
    assert f"at most {MOST_LINKS}" in said
    assert (await send(asking, "/mine/export", links="\n".join([owner] * MOST_LINKS))).status_code == 200


@pytest.mark.parametrize(("times", "says"), [(99, "between 1 and 8 readings, not 100"), (170, "at most 1000 are read")])
async def test_a_long_row_of_readings_comes_back_whole(asking: AsyncClient, times: int, says: str) -> None:
    """Oracle: what was typed, to the last figure; half of a number would be another number."""
    owner = await save(asking)
    typed = "; ".join(["18.96"] * times + ["19.04"])
    answer = await send(asking, f"{owner}/readings", **{"as_made.web_mm": typed, "units": "mm"})
    assert answer.status_code == 422
    assert f'value="{typed}"' in answer.text
    found = re.search(r'<div class="reading has-problem.*?</div>', answer.text, re.S)
    assert found
    assert says in words_of(found[0])


@pytest.mark.parametrize(
    ("where", "box", "content", "says"),
    [
        ("/mine/import", "designs-file", b"", "No file was chosen"),
        ("/mine/import", "designs-file", b"{", "The file cannot be read"),
        ("/mine/import", "designs-file", b"{}", "no file of saved designs"),
        ("/pad/document", "document-file", b"", "No file was chosen"),
        ("/pad/document", "document-file", b'{"jacks": {}}', "“jacks”, which is not known"),
    ],
)
async def test_a_file_that_cannot_be_taken_is_asked_for_again_at_its_box(
    asking: AsyncClient, where: str, box: str, content: bytes, says: str
) -> None:
    """Oracle: the box that the form has for it, and no other, is marked."""
    answer = await asking.post(where, files={"file": ("f.json", content)}, headers={"sec-fetch-site": "same-origin"})
    assert answer.status_code == 422
    assert says in beside(answer.text, box)
    assert answer.text.count('aria-invalid="true"') == 1
