"""The measurement document: everything a person measures or knows before a pad can be sized.

One frozen pydantic model. The form, the API schema and the help are made from it; there is no second list of fields.
"""

from collections.abc import Mapping
from typing import Any, Literal, Self

from pydantic import ValidationError, ValidationInfo, field_validator, model_validator

from geometry.document.as_made import ReadingSet
from geometry.document.car import Car
from geometry.document.fixed import Fixed
from geometry.document.make import Make
from geometry.document.own import OwnValues
from geometry.document.service import Service
from geometry.document.shop import Shop
from geometry.document.wear import WearLog
from geometry.errors import BadMeasurementsError, Problem
from geometry.heads.cushion.fields import FlatRail
from geometry.heads.plug.fields import Pocket
from geometry.heads.slot.fields import SlotSeam
from geometry.kinds import FACE_GROUPS, AnyCarFace, AnyJack, FootKind, HeadKind, face_group, jack_model
from geometry.materials import Material, material
from geometry.own_values import with_own_values
from geometry.quantity import Group, ShortText, chosen, problem_if, refuse
from geometry.refusals import problems_of


class Measurements(Group):
    """All that is measured, known or chosen for one pad."""

    version: Literal[1] = 1
    title: ShortText = chosen(
        "Name of this job", default="", kind="text", help="For your own use, such as “van, left front point”."
    )
    foot: FootKind = chosen(
        "What the jack carries with",
        default="cup",
        help="A round cup with a floor and a rim; a saddle with teeth or lugs; a flat plate; or a bore that takes a post.",
    )
    head: HeadKind = chosen(
        "What the car is lifted by",
        default="slot",
        help="A welded seam that stands in a slot; a reinforced plate or frame rail that stands on a flat cushion; or a hole that"
        " a plug enters.",
    )
    jack: AnyJack
    seam: SlotSeam | None = None
    rail: FlatRail | None = None
    pocket: Pocket | None = None
    car: Car
    service: Service = Service()
    make: Make = Make()
    own: OwnValues = OwnValues()
    fixed: Fixed = Fixed()
    shop: Shop = Shop()
    as_made: ReadingSet = ReadingSet()
    as_made_2: ReadingSet = ReadingSet()
    as_made_3: ReadingSet = ReadingSet()
    wear: WearLog = WearLog()

    @model_validator(mode="before")
    @classmethod
    def _asks_for_its_head(cls, document: Any) -> Any:
        """The group of the chosen head is asked for field by field even where it is missing altogether."""
        if not isinstance(document, Mapping):
            return document
        group = face_group(document.get("head", "slot"))
        return document if document.get(group) is not None else {**document, group: {}}

    @field_validator("jack", mode="wrap")
    @classmethod
    def _of_its_kind(cls, jack: Any, _: Any, info: ValidationInfo) -> AnyJack:
        """The jack with the fields of the chosen kind of foot, and no others."""
        model = jack_model(info.data.get("foot"))
        return jack if isinstance(jack, model) else model.model_validate(jack)

    @model_validator(mode="after")
    def _must_go_together(self) -> Self:
        self._refuse_other_heads()
        chosen_material = material(self.make.material)
        refusal = chosen_material.refusal_in(self.head)
        stored = self.service.hold == "stored" and chosen_material.stress_stored_mpa is None
        refuse(
            "make",
            problem_if(
                refusal is not None,
                "material",
                self.make.material,
                f"{chosen_material.name} is not offered for a {self.head}. {refusal or ''} Choose another material.",
            ),
            problem_if(
                stored,
                "material",
                self.make.material,
                f"{chosen_material.name} creeps: nothing may rest on it for longer than minutes. Choose another material.",
            ),
        )
        seam = self.seam
        place, offset = (seam.local_length_mm, seam.offset_mm) if seam else (None, 0.0)
        refuse(
            "make",
            problem_if(
                self.make.slots == "crossed" and (place is not None or offset > 0),
                "slots",
                self.make.slots,
                "Crossed slots meet in the pad's middle: they go neither with a pocket there nor with a slot off the middle."
                " Choose one slot.",
            ),
        )
        self.own_problems()
        return self

    def _refuse_other_heads(self) -> None:
        """Refuse measurements of something that the car is not lifted by, where they are given."""
        for kind, group in FACE_GROUPS.items():
            given = getattr(self, group)
            if given is not None and group != face_group(self.head):
                refuse(
                    "",
                    Problem(
                        group,
                        "given",
                        f"The document says that the car is lifted by “{self.head}”, so “{group}” is not asked for: leave it out,"
                        f" or choose the head “{kind}”.",
                    ),
                )

    @property
    def face(self) -> AnyCarFace:
        """What was measured on the car, whatever it is lifted by."""
        given: AnyCarFace | None = getattr(self, face_group(self.head))
        if given is None:
            raise ValueError(f"the document should have been refused: the head {self.head} has no measurements")
        return given

    def own_problems(self) -> None:
        """Refuse own values that the chosen material cannot have."""
        try:
            self.material_used()
        except BadMeasurementsError as error:
            refuse("own", *(Problem(_own_field(p.field), p.value, p.message) for p in error.problems))

    def material_used(self) -> Material:
        """The chosen material, with the user's own values in place of the table's."""
        table, own = material(self.make.material), self.own.given()
        return with_own_values(table, own, field="own") if own else table


def _own_field(key: str) -> str:
    name = key.removeprefix("own.")
    return "expansion_um_per_m_k" if name == "expansion_per_k" else name


def read_measurements(document: Mapping[str, Any]) -> Measurements:
    """A document as understood.

    Raises BadMeasurementsError with one Problem per field that cannot be.
    """
    try:
        return Measurements.model_validate(document)
    except ValidationError as error:
        raise BadMeasurementsError(problems_of(error.errors(), Measurements)) from error
