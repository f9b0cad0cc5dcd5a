"""The words of the trade that pages, drawing and cards use, each in one sentence of our own."""

from dataclasses import dataclass

from geometry.provenance import practice


@dataclass(frozen=True, slots=True)
class Word:
    """One word, what it means, and the part of the guide that says more."""

    word: str
    meaning: str
    see: str = ""
    """The id of what says more, such as a field or a check; empty where this sentence is all."""

    @property
    def id(self) -> str:
        """The id of its entry.

        >>> Word("run-out", "").id, Word("slot floor", "").id
        ('word-run-out', 'word-slot-floor')
        """
        return "word-" + self.word.lower().replace(" ", "-").replace("'", "")


SOURCE = practice("Words as workshops use them, said in our own way")

WORDS = (
    Word("bar", "Round stock, sold by its diameter and cut to length.", "field-make-stock_diameters_mm"),
    Word("blank", "A piece sawn off the bar, a little longer than the finished part."),
    Word("body", "The widest part of the pad, between the lip and the tops of the walls.", "check-stock"),
    Word(
        "bore",
        "The inside diameter of a round hollow: of a cup, a ring, or a tube for a post.",
        "field-jack-cup_bore_mm",
    ),
    Word("boss", "A raised lump on a flat face, such as a bolt head on the cup's floor.", "check-cup_floor_flat"),
    Word("bow", "How far something that should be straight is bent along its length.", "field-seam-bow_mm"),
    Word("chamfer", "An edge cut off at an angle so that it neither cuts nor chips."),
    Word("chock", "A wedge on either side of a wheel that keeps it from rolling.", "lifting"),
    Word("collet", "A split sleeve that grips a tool or a bar all round.", "field-shop-cutter_held_in"),
    Word("creep", "The slow growth of a deformation while a load stays the same.", "field-service-hold"),
    Word("cup", "The round hollow on top of the jack in which the pad stands.", "field-jack-cup_depth_mm"),
    Word("cushion", "A plain, level top on which a flat face of the car lies.", "kind-cushion"),
    Word("datum", "The face or axis from which other sizes are measured; for the pad, its seat face."),
    Word("end mill", "A rotating cutter that cuts with its end and its sides, used here for the slot.", "check-cutter"),
    Word("facing", "Turning the end of a part flat and square to its axis."),
    Word("feed", "How far the tool moves along the work, per turn or per minute."),
    Word("foot", "How the pad stands on the jack: in a cup, on a saddle, on a plate or in a bore.", "which-foot"),
    Word("frame rail", "A long, boxed beam under the car's floor that carries engine or axles.", "group-rail"),
    Word("general tolerance", "What every size may be off by where the drawing gives nothing narrower."),
    Word("head", "How the pad takes the car: with a slot, a cushion or a plug.", "which-head"),
    Word("inboard", "On the side towards the middle of the car.", "field-seam-clear_inboard_mm"),
    Word(
        "infeed",
        "How far the tool is advanced into the work before a cut; in turning it takes twice itself off the diameter.",
    ),
    Word("joggle", "A small step in a seam where one sheet passes behind another.", "check-slot_end_foul"),
    Word("kerf", "The width of material that a saw cut takes away.", "field-shop-kerf_mm"),
    Word(
        "land",
        "The flat face that is left standing between teeth, grooves or holes; of a saddle, the face between its teeth.",
        "field-jack-between_teeth_mm",
    ),
    Word(
        "lip",
        "The ring of the body that reaches out over the cup's rim or the tips of teeth without touching them.",
        "check-lip_gap",
    ),
    Word(
        "lug",
        "A stub that stands out from a part so that something can be carried, gripped or located by it; a broad tooth.",
        "field-jack-teeth",
    ),
    Word("mouth", "The upper end of the slot, chamfered so that the seam finds its way in."),
    Word("nose radius", "The rounding at the tip of a turning tool.", "field-shop-nose_radius_mm"),
    Word("outboard", "On the side away from the middle of the car.", "field-seam-clear_outboard_mm"),
    Word("parting", "Cutting the finished part off the bar with a narrow tool."),
    Word("pitch", "How far the car tips nose up or nose down as it rises.", "check-saddle_pitch"),
    Word("play", "How far one part can move in another before it touches.", "check-seat_fit_loose"),
    Word(
        "plug",
        "The part above the shoulder that enters a hole of the car's body and keeps the car from sliding off.",
        "kind-plug",
    ),
    Word(
        "pocket",
        "A hollow: in the car's body one with a strong rim to lift by, in the slot one that clears a doubler or a drain lip.",
        "group-pocket",
    ),
    Word("post", "A round stem as a foot: it goes into a bore of the jack and takes the side load.", "kind-post"),
    Word("recess", "A round hollow that is sunk into a flat face.", "field-jack-ring_bore_mm"),
    Word(
        "retaining pin",
        "A pin across bore and stem that keeps the stem from falling or being pulled out and carries nothing of the load.",
        "field-jack-pin_diameter_mm",
    ),
    Word(
        "rim",
        "The edge around a hollow: of the cup's wall, of a bore for a post, or of a hole in the car's body.",
        "field-jack-rim_diameter_mm",
    ),
    Word("roll", "How far the car leans to one side as the other side rises.", "check-seam_lean"),
    Word("run-out", "How far a turning part wobbles, read on a dial held against it."),
    Word(
        "saddle",
        "The head of the jack that carries the load: it has a cup in it, or teeth around a land.",
        "kind-saddle",
    ),
    Word(
        "seam",
        "The flange under the sill where sheets are welded together, standing downwards.",
        "field-seam-height_mm",
    ),
    Word(
        "seat", "The lower part of the pad that stands on the jack, in a cup inside its wall.", "check-seat_fit_tight"
    ),
    Word("seat face", "The flat underside of the seat, which carries the load.", "check-cup_floor_bearing"),
    Word("set-up", "One clamping of the work, with all the operations done in it."),
    Word(
        "shape factor",
        "The loaded area of a block of rubber over its free surface around it: the larger it is, the less the block gives way.",
        "check-cushion_strain",
    ),
    Word(
        "shoulder",
        "The flat step from a thin part to a thick one; on a pad, the ring around the plug that carries the hole's rim.",
        "check-plug_shoulder_bearing",
    ),
    Word("sill", "The box of sheet below the doors, from which the seam stands down.", "check-sill_clear"),
    Word(
        "skirt",
        "The thin wall that hangs down around a plate's edge or around teeth and only keeps the pad in the middle.",
        "check-skirt_clear",
    ),
    Word("slot", "The straight groove across the top of the pad in which the seam stands.", "check-slot_fit_tight"),
    Word("slot floor", "The bottom of the slot, on which the seam's edge stands.", "check-slot_floor_bearing"),
    Word("squash", "How much shorter the seat becomes under the load.", "check-lip_gap"),
    Word("stand", "A support with legs that carries a raised car; a jack only raises it.", "lifting"),
    Word(
        "stem",
        "The thin part below the seat that enters a hole in the cup's floor, or the bore for a post, and keeps the pad there.",
        "check-stem_clear",
    ),
    Word("stock", "The material as bought, before anything is cut.", "field-make-stock_diameters_mm"),
    Word(
        "straight edge",
        "A bar with one true edge, laid against something to see how straight it is.",
        "field-seam-bow_mm",
    ),
    Word(
        "tooth",
        "One of the stubs that stand in a ring on a saddle to grip what it lifts.",
        "field-jack-tooth_height_mm",
    ),
    Word("utilisation", "How much of its limit an estimate uses: 1 is at the limit."),
    Word("wall", "Either side of the slot, standing beside the seam.", "check-wall_bending"),
    Word("web", "What stands between the slot's floor and the seat face.", "check-web_bending"),
    Word("yield", "The stress beyond which metal stays bent.", "field-seam-yield_mpa"),
)
