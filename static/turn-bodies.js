/* Bodies for the turning view: the pad from its STL file, cup, seam and sill from their outlines, and where a plane cuts them. */

import {
  BufferAttribute, BufferGeometry, ExtrudeGeometry, LatheGeometry, Shape, toCreasedNormals, Vector2,
} from "./vendor/three-0.187.0.min.js";

const CREASE = Math.PI / 9;
const TURN_STEPS = 120;

/* A binary STL file: 80 bytes of words, a count, and 50 bytes for each triangle, of which the first 12 are its direction. */
const trianglesOf = (bytes) => {
  const view = new DataView(bytes);
  const count = view.getUint32(80, true);
  if (bytes.byteLength !== 84 + 50 * count) throw new Error("The model came incomplete. Try again.");
  const positions = new Float32Array(9 * count);
  for (let triangle = 0; triangle < count; triangle += 1) {
    for (let k = 0; k < 9; k += 1) positions[9 * triangle + k] = view.getFloat32(84 + 50 * triangle + 12 + 4 * k, true);
  }
  return positions;
};

export const padOf = (bytes) => {
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(trianglesOf(bytes), 3));
  return { name: "pad", geometry: toCreasedNormals(geometry, CREASE) };
};

/* Three's turned and drawn-out bodies stand along other axes than the job, whose height is z. */
export const bodyOf = ({ name, way, outline, half_length_mm: half }) => {
  const points = outline.map(([across, height]) => new Vector2(across, height));
  const made = way === "turned"
    ? new LatheGeometry([...points, points[0]], TURN_STEPS)
    : new ExtrudeGeometry(new Shape(points), { depth: 2 * half, bevelEnabled: false }).translate(0, 0, -half);
  const upright = made.rotateX(Math.PI / 2);
  return { name, geometry: toCreasedNormals(upright.index ? upright.toNonIndexed() : upright, CREASE) };
};

/* Where the plane at one value of one axis crosses the triangles: the ends of short lines, one after the other. */
export const cutLines = (geometry, axis, at) => {
  const p = geometry.getAttribute("position").array;
  const lines = [];
  for (let start = 0; start < p.length; start += 9) {
    const ends = [];
    for (let k = 0; k < 3; k += 1) {
      const a = start + 3 * k;
      const b = start + 3 * ((k + 1) % 3);
      const from = p[a + axis] - at;
      const to = p[b + axis] - at;
      if ((from < 0) !== (to < 0)) {
        const share = from / (from - to);
        ends.push([0, 1, 2].map((i) => (i === axis ? at : p[a + i] + share * (p[b + i] - p[a + i]))));
      }
    }
    if (ends.length === 2) lines.push(...ends[0], ...ends[1]);
  }
  return new Float32Array(lines);
};
