"""The answers of every choice in plain words."""

from collections.abc import Mapping

from geometry.materials import MATERIALS

CHOICE_WORDS: Mapping[str, Mapping[str, str]] = {
    "car.load_source": {
        "gross_mass": "the mass on the vehicle's plate",
        "stated": "a load that you know",
        "statics": "the car's own balance",
    },
    "foot": {
        "cup": "a round cup",
        "saddle": "a saddle with teeth or lugs",
        "plate": "a flat plate",
        "post": "a bore for a post",
    },
    "head": {
        "slot": "a welded seam, in a slot",
        "cushion": "a plate or frame rail, on a flat cushion",
        "plug": "a hole or pocket, on a plug",
    },
    "jack.stands_on": {"land": "the land between the teeth", "teeth": "the teeth's tips"},
    "jack.located_by": {
        "edge": "the pad's own skirt, around it",
        "ring": "a ring on it",
        "recess": "a recess in it",
    },
    "pocket.shape": {"round": "round", "rectangular": "rectangular"},
    "service.wetness": {"dry": "kept dry", "room": "in room air", "soaked": "soaked"},
    "service.ground": {"rolls": "the jack can roll", "stuck": "the jack cannot roll"},
    "service.hold": {
        "minutes": "minutes",
        "overnight": "overnight, to judge ageing only",
        "stored": "in storage, to judge ageing only",
    },
    "make.process": {
        "lathe_and_mill": "lathe and milling machine",
        "cnc": "computer-controlled machines",
        "printed": "3D printer",
        "hand_tools": "hand tools",
    },
    "make.body": {"round": "round", "two_flats": "round, with two flats"},
    "make.slots": {"one": "one slot", "crossed": "two, crossed at right angles"},
    "make.step": {"metric": "in metric steps", "inch": "in inch steps"},
    "make.measured_with": {"caliper": "a caliper", "rule": "a rule"},
    "make.material": {key: entry.name for key, entry in MATERIALS.items()},
    "shop.slide": {"radius": "its own travel (radius)", "diameter": "what comes off the diameter"},
    "shop.tool": {"hss": "high-speed steel", "carbide": "carbide inserts"},
    "shop.slot_machine": {
        "mill": "a milling machine",
        "vertical_slide": "a vertical slide on the lathe",
        "none": "nothing: saw and file",
    },
    "shop.cutter_held_in": {"collet": "a collet", "chuck": "a three-jaw chuck"},
    **{
        f"{readings}.{name}": words
        for readings in ("as_made", "as_made_2", "as_made_3")
        for name, words in {
            "instrument": {"caliper": "a caliper", "micrometer": "a micrometer", "rule": "a rule"},
            "sure": {"ask": "ask about them", "yes": "take them as they are"},
        }.items()
    },
}


def words_of_answer(key: str, answer: str) -> str:
    """One answer of the choice with this dotted name, in words; one that is unknown as it is typed.

    >>> words_of_answer("service.wetness", "room"), words_of_answer("service.wetness", "half_wet")
    ('in room air', 'half wet')
    """
    return CHOICE_WORDS.get(key, {}).get(answer, answer.replace("_", " "))
