/* The stage of the turning view: light, the page's own colours, an eye that goes around, and a plane that cuts everything open.
   It draws only when something has changed. */

import {
  AlwaysStencilFunc, BackSide, Box3, BufferAttribute, BufferGeometry, Color, DataTexture, DecrementWrapStencilOp,
  DirectionalLight, DoubleSide, EdgesGeometry, FrontSide, Group, HemisphereLight, IncrementWrapStencilOp, LinearFilter,
  LinearMipmapLinearFilter, LineBasicMaterial, LineSegments, Mesh, MeshBasicMaterial, MeshLambertMaterial,
  NotEqualStencilFunc, PerspectiveCamera, Plane, PlaneGeometry, RepeatWrapping, ReplaceStencilOp, Scene, Sphere,
  SRGBColorSpace, Vector3, WebGLRenderer,
} from "./vendor/three-0.187.0.min.js";

const SMOOTHER_THAN_DEG = 20;
const SIGHT_DEG = 26;
const HATCH_PIXELS = 32;
const HATCHES_ACROSS = 80;
const LOOKS = {
  pad: { face: "--pad", line: "--pad-edge", hatch: 0 },
  cup: { face: "--steel", line: "--hatch", hatch: 1 },
  seam: { face: "--car", line: "--ink", hatch: -1 },
  sill: { face: "--car", line: "--ink", hatch: 1 },
};

/* Across the slot the near end is cut away; along it, the right side. Both lie towards the eye as one starts. */
export const CUTS = {
  across: { axis: 1, normal: new Vector3(0, 1, 0), towardsEye: -1 },
  along: { axis: 0, normal: new Vector3(-1, 0, 0), towardsEye: 1 },
};

const hatching = (face, line, slope) => {
  const n = HATCH_PIXELS;
  const pixels = new Uint8Array(4 * n * n);
  for (let y = 0; y < n; y += 1) {
    for (let x = 0; x < n; x += 1) {
      const isLine = (x + slope * y + n) % n < n / 5;
      const [r, g, b] = (isLine ? line : face).clone().convertLinearToSRGB().toArray();
      pixels.set([255 * r, 255 * g, 255 * b, 255], 4 * (y * n + x));
    }
  }
  const texture = new DataTexture(pixels, n, n);
  Object.assign(texture, {
    wrapS: RepeatWrapping, wrapT: RepeatWrapping, magFilter: LinearFilter, minFilter: LinearMipmapLinearFilter,
    generateMipmaps: true, colorSpace: SRGBColorSpace, anisotropy: 4, needsUpdate: true,
  });
  texture.repeat.set(HATCHES_ACROSS, HATCHES_ACROSS);
  return texture;
};

/* Counts, per point of the picture, how many skins lie between the eye and what is far away: where the count is not even,
   the plane runs inside the body. */
const counter = (side, operation) => new MeshBasicMaterial({
  side, depthWrite: false, depthTest: false, colorWrite: false, stencilWrite: true, stencilFunc: AlwaysStencilFunc,
  stencilFail: operation, stencilZFail: operation, stencilZPass: operation,
});

const capping = () => new MeshBasicMaterial({
  side: DoubleSide, stencilWrite: true, stencilRef: 0, stencilFunc: NotEqualStencilFunc,
  stencilFail: ReplaceStencilOp, stencilZFail: ReplaceStencilOp, stencilZPass: ReplaceStencilOp,
});

class Actor {
  constructor({ name, geometry }, order, clearStencil) {
    this.name = name;
    this.geometry = geometry;
    this.edges = new EdgesGeometry(geometry, SMOOTHER_THAN_DEG);
    this.face = new MeshLambertMaterial({ polygonOffset: true, polygonOffsetFactor: 1, polygonOffsetUnits: 1 });
    this.line = new LineBasicMaterial();
    this.outline = new LineSegments(new BufferGeometry(), new LineBasicMaterial());
    this.counters = [counter(BackSide, IncrementWrapStencilOp), counter(FrontSide, DecrementWrapStencilOp)];
    this.cap = new Mesh(new PlaneGeometry(1, 1), capping());
    this.cap.onAfterRender = clearStencil;
    this.cap.renderOrder = order + 0.5;
    const counted = this.counters.map((material) => new Mesh(geometry, material));
    counted.forEach((mesh) => { mesh.renderOrder = order; });
    const skin = new Mesh(geometry, this.face);
    const drawn = new LineSegments(this.edges, this.line);
    [skin, drawn, this.outline].forEach((object) => { object.renderOrder = 100; });
    this.cutGroup = new Group().add(...counted, this.cap, this.outline);
    this.group = new Group().add(skin, drawn, this.cutGroup);
  }

  paint(colour) {
    const look = LOOKS[this.name];
    const [face, line] = [colour(look.face), colour(look.line)];
    this.face.color.copy(face);
    this.line.color.copy(colour(this.name === "pad" ? "--pad-edge" : "--ink"));
    this.outline.material.color.copy(this.line.color);
    this.cap.material.map?.dispose();
    this.cap.material.map = look.hatch ? hatching(face, line, look.hatch) : null;
    this.cap.material.color.set(look.hatch ? "#fff" : face);
    this.cap.material.needsUpdate = true;
  }

  cut(plane, cut, at, size, linesOf) {
    [this.face, this.line, ...this.counters].forEach((material) => { material.clippingPlanes = plane ? [plane] : null; });
    this.cutGroup.visible = Boolean(plane);
    if (!plane) return;
    const place = [0, 0, 0];
    place[cut.axis] = at;
    this.cap.position.set(...place);
    this.cap.scale.set(size, size, 1);
    this.cap.lookAt(this.cap.position.clone().add(cut.normal));
    this.outline.geometry.dispose();
    this.outline.geometry = new BufferGeometry();
    this.outline.geometry.setAttribute("position", new BufferAttribute(linesOf(this.geometry, cut.axis, at), 3));
    // A hair towards the eye, so that the outline stands on the cut face and not in it.
    place[cut.axis] = cut.towardsEye * size * 2e-4;
    this.outline.position.fromArray(place.map((value, i) => (i === cut.axis ? value : 0)));
  }

  dispose() {
    [this.geometry, this.edges, this.outline.geometry, this.cap.geometry].forEach((made) => made.dispose());
    this.cap.material.map?.dispose();
    [this.face, this.line, this.outline.material, this.cap.material, ...this.counters].forEach((made) => made.dispose());
  }
}

export class Stage {
  constructor(canvas, linesOf) {
    this.canvas = canvas;
    this.linesOf = linesOf;
    this.renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, stencil: true });
    this.renderer.localClippingEnabled = true;
    this.scene = new Scene();
    this.eye = new PerspectiveCamera(SIGHT_DEG, 1, 1, 5000);
    this.eye.up.set(0, 0, 1);
    const lamp = new DirectionalLight("#fff", 1.5);
    lamp.position.set(-0.5, 0.9, 0.6);
    this.eye.add(lamp);
    this.scene.add(this.eye, new HemisphereLight("#fff", "#cfc9bd", 2.2));
    this.actors = [];
    this.plane = new Plane();
    this.waiting = 0;
  }

  /* Bodies that replace those of the same name; those not named stay. */
  show(bodies) {
    const names = new Set(bodies.map((body) => body.name));
    this.actors.filter((actor) => names.has(actor.name)).forEach((actor) => { this.scene.remove(actor.group); actor.dispose(); });
    this.actors = this.actors.filter((actor) => !names.has(actor.name));
    bodies.forEach((body) => {
      const actor = new Actor(body, this.actors.length + 1, () => this.renderer.clearStencil());
      this.actors.push(actor);
      this.scene.add(actor.group);
    });
    this.paint();
  }

  paint() {
    const page = getComputedStyle(this.canvas);
    const colour = (name) => new Color(page.getPropertyValue(name).trim());
    this.actors.forEach((actor) => actor.paint(colour));
    this.draw();
  }

  /* How one looks: degrees around and above, how near, what is in view, and where it is cut. */
  look({ turn, tilt, near, withOthers, cut, share }) {
    this.actors.forEach((actor) => { actor.group.visible = withOthers || actor.name === "pad"; });
    const seen = this.actors.filter((actor) => actor.group.visible);
    const box = seen.reduce((all, actor) => {
      actor.geometry.computeBoundingBox();
      return all.union(actor.geometry.boundingBox);
    }, new Box3());
    if (box.isEmpty()) return;
    const { center, radius } = box.getBoundingSphere(new Sphere());
    // The job is wider than it is high: a wide stage may come nearer than the ball around everything.
    const narrow = this.eye.aspect > 1.2 ? 1.25 : Math.min(1, this.eye.aspect);
    const distance = radius / Math.sin((SIGHT_DEG * Math.PI) / 360) / narrow / near;
    const [around, above] = [turn, tilt].map((degrees) => (degrees * Math.PI) / 180);
    const flat = Math.cos(above);
    this.eye.position.set(flat * Math.sin(around), -flat * Math.cos(around), Math.sin(above)).multiplyScalar(distance).add(center);
    this.eye.near = Math.max(0.5, distance - 2 * radius);
    this.eye.far = distance + 2 * radius;
    this.eye.lookAt(center);
    this.eye.updateProjectionMatrix();
    this.cutAt(seen, box, CUTS[cut], share, 4 * radius);
    this.draw();
  }

  cutAt(seen, box, cut, share, size) {
    const low = box.min.getComponent(cut.axis);
    const high = box.max.getComponent(cut.axis);
    const at = cut.towardsEye < 0 ? low + share * (high - low) : high - share * (high - low);
    this.plane.set(cut.normal, -cut.normal.getComponent(cut.axis) * at);
    seen.forEach((actor) => actor.cut(share > 0 ? this.plane : null, cut, at, size, this.linesOf));
  }

  fit() {
    const { clientWidth: width, clientHeight: height } = this.canvas;
    if (!width || !height) return;
    this.renderer.setPixelRatio(Math.min(2, window.devicePixelRatio || 1));
    this.renderer.setSize(width, height, false);
    this.eye.aspect = width / height;
    this.eye.updateProjectionMatrix();
  }

  draw() {
    if (this.waiting) return;
    this.waiting = requestAnimationFrame(() => {
      this.waiting = 0;
      this.renderer.render(this.scene, this.eye);
      this.canvas.dispatchEvent(new Event("drawn"));
    });
  }

  close() {
    cancelAnimationFrame(this.waiting);
    this.actors.forEach((actor) => actor.dispose());
    this.renderer.dispose();
    this.renderer.forceContextLoss();
  }
}
