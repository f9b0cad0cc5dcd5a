/* The pad to turn in the hand: begins on a tap, above a picture that needs no script and stays where the view cannot come. */

const STEP_TURN = 15;
const STEP_TILT = 10;
const STEP_NEAR = 1.2;
const STEP_CUT = 0.05;
const FIRST = { turn: 45, tilt: 35, near: 1, withOthers: false, cut: "across", share: 0 };
const SIDES = ["the front", "the front right", "the right", "the back right", "the back", "the back left", "the left", "the front left"];
const KEYS = {
  ArrowLeft: "left", ArrowRight: "right", ArrowUp: "away", ArrowDown: "towards", "+": "nearer", "=": "nearer", "-": "further",
  PageUp: "deeper", PageDown: "shallower", Home: "first", c: "cut", C: "cut",
};
const between = (low, value, high) => Math.min(high, Math.max(low, value));

const DEEDS = {
  // The pad turns, not the eye: what is near goes left, or comes up.
  left: (v) => ({ turn: v.turn + STEP_TURN }),
  right: (v) => ({ turn: v.turn - STEP_TURN }),
  away: (v) => ({ tilt: v.tilt - STEP_TILT }),
  towards: (v) => ({ tilt: v.tilt + STEP_TILT }),
  nearer: (v) => ({ near: v.near * STEP_NEAR }),
  further: (v) => ({ near: v.near / STEP_NEAR }),
  deeper: (v) => ({ share: v.share + STEP_CUT }),
  shallower: (v) => ({ share: v.share - STEP_CUT }),
  cut: (v) => ({ share: v.share > 0 ? 0 : 0.5 }),
  first: (v) => ({ ...FIRST, withOthers: v.withOthers }),
};

const words = (v) => {
  const side = SIDES[Math.round((((v.turn % 360) + 360) % 360) / 45) % 8];
  const height = v.tilt === 0 ? "level" : `${Math.abs(Math.round(v.tilt))}° from ${v.tilt > 0 ? "above" : "below"}`;
  const cut = v.share > 0 ? `Cut ${v.cut} the slot, ${Math.round(100 * v.share)} % taken away.` : "Not cut.";
  return `Seen from ${side}, ${height}. ${cut}`;
};

class Turning {
  constructor(root) {
    this.root = root;
    this.view = { ...FIRST };
    this.node = root.querySelector("template").content.firstElementChild.cloneNode(true);
    this.canvas = this.node.querySelector("canvas");
    this.said = this.node.querySelector(".turn-said");
    this.slider = this.node.querySelector("input[type=range]");
    this.dark = window.matchMedia("(prefers-color-scheme: dark)");
    this.pointers = new Map();
    this.listen();
    this.attach(root);
  }

  /* Into the page, above the picture; again after the page has been brought up to date. */
  attach(root) {
    this.root = root;
    const place = root.querySelector(".turn-live");
    if (this.node.parentElement !== place) place.replaceChildren(this.node);
    root.classList.toggle("is-turning", Boolean(this.stage));
  }

  async begin() {
    this.tell("The model is on its way.");
    const [{ Stage }, bodies] = await Promise.all([this.root.dataset.stage, this.root.dataset.shapes].map((url) => import(url)));
    this.shapes = bodies;
    const model = await this.fetched();
    try {
      this.stage = new Stage(this.canvas, bodies.cutLines);
    } catch {
      throw new Error("This browser shows no turning picture (it has no WebGL). The picture above shows the same pad.");
    }
    this.canvas.addEventListener("webglcontextlost", () => this.tell("The browser took the picture away. Put the pad down and take it again."));
    this.attach(this.root);
    this.stage.fit();
    this.set(model);
    this.sized = new ResizeObserver(() => { this.stage.fit(); this.change({}); });
    this.sized.observe(this.canvas);
    this.canvas.focus({ preventScroll: true });
  }

  async fetched() {
    this.model = this.root.dataset.model;
    const answer = await fetch(this.model);
    if (!answer.ok) {
      const problem = await answer.json().catch(() => ({}));
      throw new Error(problem.detail || `The model did not come (status ${answer.status}).`);
    }
    return answer.arrayBuffer();
  }

  set(model) {
    const others = JSON.parse(this.root.dataset.bodies);
    this.stage.show([this.shapes.padOf(model), ...others.map(this.shapes.bodyOf)]);
    this.change({});
  }

  /* The sheet has new numbers: the model follows once they have settled. */
  renew(root) {
    this.attach(root);
    if (root.dataset.model === this.model || !this.stage) return;
    this.tell("The numbers have changed; the model follows.");
    window.clearTimeout(this.renewing);
    this.renewing = window.setTimeout(() => this.fetched().then((model) => this.set(model), (error) => this.tell(error.message)), 700);
  }

  change(what) {
    const view = { ...this.view, ...what };
    view.tilt = between(-85, view.tilt, 85);
    view.near = between(0.5, view.near, 4);
    view.share = between(0, Math.round(view.share * 1000) / 1000, 1);
    this.view = view;
    this.slider.value = String(Math.round(100 * view.share));
    this.node.querySelectorAll("[name=turn-cut]").forEach((choice) => { choice.checked = choice.value === view.cut; });
    this.node.querySelector("[name=turn-others]").checked = view.withOthers;
    this.node.querySelector("[data-deed=cut]").textContent = view.share > 0 ? "Make it whole" : "Cut here, in the middle";
    this.slider.setAttribute("aria-valuetext", `${Math.round(100 * view.share)} % taken away`);
    this.stage?.look(view);
    window.clearTimeout(this.saying);
    this.saying = window.setTimeout(() => this.tell(words(this.view)), 400);
  }

  tell(text) {
    window.clearTimeout(this.saying);
    this.said.textContent = text;
  }

  listen() {
    this.node.addEventListener("click", (event) => {
      const deed = event.target.closest("[data-deed]")?.dataset.deed;
      if (deed === "down-with-it") close();
      else if (deed) this.change(DEEDS[deed](this.view));
    });
    this.node.addEventListener("input", (event) => {
      const { name, value, checked } = event.target;
      // None of this is a measurement: the sheet need not hear of it.
      event.stopPropagation();
      if (name === "turn-share") this.change({ share: Number(value) / 100 });
      if (name === "turn-cut") this.change({ cut: value, share: this.view.share || 0.5 });
      // The sill would hide everything from high above.
      if (name === "turn-others") this.change({ withOthers: checked, tilt: checked ? Math.min(15, this.view.tilt) : this.view.tilt });
    });
    this.canvas.addEventListener("keydown", (event) => {
      const deed = event.ctrlKey || event.metaKey || event.altKey ? undefined : KEYS[event.key];
      if (!deed) return;
      event.preventDefault();
      this.change(DEEDS[deed](this.view));
    });
    this.canvas.addEventListener("pointerdown", (event) => {
      this.canvas.setPointerCapture(event.pointerId);
      this.pointers.set(event.pointerId, event);
    });
    this.canvas.addEventListener("pointermove", (event) => this.drag(event));
    ["pointerup", "pointercancel"].forEach((name) => this.canvas.addEventListener(name, (event) => this.pointers.delete(event.pointerId)));
    // The wheel belongs to the page until the picture has the focus.
    this.canvas.addEventListener("wheel", (event) => {
      if (document.activeElement !== this.canvas) return;
      event.preventDefault();
      this.change({ near: this.view.near * Math.exp(-event.deltaY / 600) });
    }, { passive: false });
    this.repaint = () => this.stage?.paint();
    this.dark.addEventListener("change", this.repaint);
  }

  /* One finger or the mouse turns and tilts; two fingers drawn apart come nearer. */
  drag(event) {
    const before = this.pointers.get(event.pointerId);
    if (!before) return;
    const other = [...this.pointers.values()].find((pointer) => pointer.pointerId !== event.pointerId);
    if (other) {
      const apart = (p) => Math.hypot(p.clientX - other.clientX, p.clientY - other.clientY);
      this.change({ near: (this.view.near * apart(event)) / Math.max(1, apart(before)) });
    } else {
      const [x, y] = [event.clientX - before.clientX, event.clientY - before.clientY];
      this.change({ turn: this.view.turn - x / 2, tilt: this.view.tilt + y / 2 });
    }
    this.pointers.set(event.pointerId, event);
  }

  close() {
    [this.saying, this.renewing].forEach((timer) => window.clearTimeout(timer));
    this.dark.removeEventListener("change", this.repaint);
    this.sized?.disconnect();
    this.stage?.close();
    this.node.remove();
    this.root.classList.remove("is-turning");
  }
}

let turning = null;

const close = () => {
  const begin = turning.root.querySelector("[data-turn-begin]");
  turning.close();
  turning = null;
  begin?.focus();
};

const begin = async (root) => {
  turning?.close();
  turning = new Turning(root);
  const mine = turning;
  root.querySelector(".turn-trouble").textContent = "";
  try {
    await mine.begin();
  } catch (error) {
    if (turning !== mine) return;
    mine.close();
    turning = null;
    root.querySelector(".turn-trouble").textContent = error.message;
  }
};

document.addEventListener("click", (event) => {
  const start = event.target.closest("[data-turn-begin]");
  if (!start || event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  begin(start.closest(".turn"));
});

// Until this is said, the way to the turning pad leads to a page of its own.
document.documentElement.dataset.liveTurn = "";

document.addEventListener("htmx:after:swap", () => {
  const root = document.querySelector(".turn");
  if (turning && root) turning.renew(root);
  else if (turning) { turning.close(); turning = null; }
});
