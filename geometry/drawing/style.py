"""All line widths, heights and gaps of the drawings, in mm on paper."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Style:
    """One look for every sheet; values by the standards named beside them (reference values, from memory)."""

    thick_mm: float = 0.5
    """Visible outlines: line group 0.5/0.25 of ISO 128-2."""
    thin_mm: float = 0.25
    """Dimensions, hatching, hidden and centre lines."""
    least_apart_mm: float = 0.7
    """Between two parallel lines (ISO 128-2, from memory)."""
    dash_gap_mm: float = 0.75
    """Between the dashes of hidden lines: 3 line widths, ISO 128-2."""
    text_mm: float = 2.5
    """Least lettering height on A4, ISO 3098-1."""
    small_mm: float = 1.8
    """Captions of the title block, ISO 3098-1 series."""
    large_mm: float = 3.5
    """Title, section letters and view names, ISO 3098-1 series."""
    banner_mm: float = 5.0
    """The words NOT FIT TO MAKE."""
    line_step_mm: float = 4.2
    """Distance between lines of notes."""
    arrow_mm: float = 2.5
    arrow_width_mm: float = 0.85
    """Closed filled arrows, ISO 129-1."""
    first_row_mm: float = 8.0
    """Outline to the first dimension line."""
    row_pitch_mm: float = 7.0
    """Between parallel dimension lines."""
    extension_gap_mm: float = 0.8
    extension_over_mm: float = 2.0
    """Extension lines run 8 line widths past the dimension line, ISO 129-1."""
    text_gap_mm: float = 1.2
    """Dimension line to the text above it."""
    framed_gap_mm: float = 2.2
    """The same under the frame of an exact dimension, which is a line itself."""
    frame_gap_mm: float = 0.4
    """Between that frame and what its letters may touch."""
    clear_mm: float = 0.5
    """Free space between texts."""
    line_clear_mm: float = 0.12
    """Free space between a text and a line, beside the text gap of a dimension line."""
    apart_mm: float = 1.0
    """Lines that run side by side nearer than this look like one."""
    beside_mm: float = 1.5
    """Lines that run side by side nearer than this had better not."""
    text_clear_mm: float = 0.7
    sign_clear_mm: float = 1.5
    """Free space that words and signs had better have to lines."""
    letter_clear_mm: float = 2.5
    """Free space about the letter of a detail: it belongs to no dimension near it."""
    centre_over_mm: float = 3.0
    """How far centre lines run past the outline."""
    hatch_step_mm: float = 2.2
    margin_left_mm: float = 20.0
    margin_mm: float = 10.0
    """Filing margin and the other three, ISO 5457."""
    centring_mm: float = 10.0
    """How far centring marks come into the drawing space, ISO 5457."""
    view_gap_mm: float = 8.0
    block_row_mm: float = 9.0
    """A row of the title block."""
    cell_pad_mm: float = 1.2
    """Between the wall of a cell of title block or notes and its words."""
    grid_mm: float = 5.0
    """Width of the border with the grid references about the frame, ISO 5457."""
    grid_step_mm: float = 50.0
    """Length of its fields, counted from the centring marks, ISO 5457."""
    detail_radii_mm: tuple[float, ...] = (14.0, 10.0)
    """Radius on paper of the round window of a detail, and a smaller one for a crowded sheet."""


STYLE = Style()
