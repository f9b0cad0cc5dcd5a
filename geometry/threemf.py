"""The pad's skin as a 3MF package: one object, its unit, its material and what it is.

Written here because the modelling package's own 3MF has open edges; the format is the consortium's core specification
[from memory; the files are read back by the consortium's library in the tests].
"""

import zipfile
from io import BytesIO
from xml.sax.saxutils import escape, quoteattr

from geometry.mesh import Mesh
from geometry.model_label import ModelLabel, ascii_text

_CORE = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02"
_TYPES = (
    '<?xml version="1.0" encoding="UTF-8"?>\n'
    '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">'
    '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
    '<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>'
)
_RELATIONS = (
    '<?xml version="1.0" encoding="UTF-8"?>\n'
    '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
    '<Relationship Target="/3D/3dmodel.model" Id="rel0"'
    ' Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>'
)


def threemf_bytes(mesh: Mesh, label: ModelLabel) -> bytes:
    """The skin as a 3MF file; equal pads give equal bytes."""
    parts = {"[Content_Types].xml": _TYPES, "_rels/.rels": _RELATIONS, "3D/3dmodel.model": _model(mesh, label)}
    package = BytesIO()
    with zipfile.ZipFile(package, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, text in parts.items():
            # A name alone would bring today's date into the file.
            archive.writestr(zipfile.ZipInfo(name), text, zipfile.ZIP_DEFLATED)
    return package.getvalue()


def _model(mesh: Mesh, label: ModelLabel) -> str:
    """The model part: metadata, material, one object and where it stands."""
    name = quoteattr(label.product_name)
    about = {
        "Title": label.product_name,
        "Description": f"{ascii_text(label.title)}; {label.standing}",
        "Application": f"Seamrest {label.engine_version}",
    }
    metadata = "".join(f'<metadata name="{key}">{escape(words)}</metadata>' for key, words in about.items())
    material = f'<base name={quoteattr(ascii_text(label.material))} displaycolor="#E9DCC3"/>'
    vertices = "".join(f'<vertex x="{x:.6f}" y="{y:.6f}" z="{z:.6f}"/>' for x, y, z in mesh.vertices)
    triangles = "".join(f'<triangle v1="{a}" v2="{b}" v3="{c}"/>' for a, b, c in mesh.triangles)
    # The specification wants everything that is to be made at positive coordinates.
    x, y, z = (-min(vertex[axis] for vertex in mesh.vertices) for axis in range(3))
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n'
        f'<model unit="millimeter" xml:lang="en" xmlns="{_CORE}">{metadata}<resources>'
        f'<basematerials id="1">{material}</basematerials>'
        f'<object id="2" type="model" name={name} pid="1" pindex="0">'
        f"<mesh><vertices>{vertices}</vertices><triangles>{triangles}</triangles></mesh></object></resources>"
        f'<build><item objectid="2" transform="1 0 0 0 1 0 0 0 1 {x:.6f} {y:.6f} {z:.6f}"/></build></model>'
    )
