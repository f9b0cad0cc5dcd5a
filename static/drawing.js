// Looking closer at a drawing: its window on the sheet is moved, so that lines stay sharp. Without this script the sheet
// stands there whole, and every file can be taken.

const stage = document.getElementById("sheet-stage");
const sheet = stage?.querySelector("svg");
if (sheet) {
  const whole = sheet.getAttribute("viewBox").split(/\s+/).map(Number);
  const ratio = whole[3] / whole[2];
  const closest = 20, step = 1.4, stride = 0.15;
  let seen = [...whole];
  const held = new Map();

  const show = () => {
    const width = Math.min(whole[2], Math.max(whole[2] / closest, seen[2]));
    const height = width * ratio;
    const within = (at, low, room) => Math.min(low + room, Math.max(low, at));
    seen = [within(seen[0], whole[0], whole[2] - width), within(seen[1], whole[1], whole[3] - height), width, height];
    sheet.setAttribute("viewBox", seen.map((n) => n.toFixed(1)).join(" "));
    stage.classList.toggle("is-close", width < whole[2]);
  };
  const say = () => {
    document.getElementById("looking-now").textContent = `Shown ${(whole[2] / seen[2]).toFixed(1)} times as large as the whole sheet.`;
  };
  const zoom = (factor, x = 0.5, y = 0.5) => {
    const width = Math.min(whole[2], Math.max(whole[2] / closest, seen[2] / factor));
    seen = [seen[0] + x * (seen[2] - width), seen[1] + y * (seen[3] - width * ratio), width, width * ratio];
    show();
  };
  const pan = (right, down) => { seen[0] += right * seen[2]; seen[1] += down * seen[3]; show(); };
  const looks = {
    in: () => zoom(step), out: () => zoom(1 / step), whole: () => { seen = [...whole]; show(); },
    left: () => pan(-stride, 0), right: () => pan(stride, 0), up: () => pan(0, -stride), down: () => pan(0, stride),
  };
  const keys = { "+": "in", "=": "in", "-": "out", "0": "whole", ArrowLeft: "left", ArrowRight: "right", ArrowUp: "up", ArrowDown: "down" };

  const look = (name) => { looks[name](); say(); };
  document.getElementById("looking").hidden = false;
  document.getElementById("looking").addEventListener("click", (event) => {
    const name = event.target.closest("[data-look]")?.dataset.look;
    if (name) look(name);
  });
  stage.tabIndex = 0;
  stage.setAttribute("role", "group");
  stage.setAttribute("aria-label", "Drawing to look at closely");
  stage.setAttribute("aria-describedby", "looking-words");
  stage.classList.add("is-live");
  stage.addEventListener("keydown", (event) => {
    const name = keys[event.key];
    if (!name || event.ctrlKey || event.metaKey || event.altKey) return;
    // While the whole sheet is seen, arrows scroll the page as everywhere.
    if (event.key.startsWith("Arrow") && seen[2] >= whole[2]) return;
    event.preventDefault();
    look(name);
  });

  const place = (event) => {
    const box = stage.getBoundingClientRect();
    return [(event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height];
  };
  stage.addEventListener("wheel", (event) => {
    // A plain wheel scrolls the page; pinching a touchpad arrives as a wheel with the control key.
    if (!event.ctrlKey) return;
    event.preventDefault();
    zoom(Math.exp(-event.deltaY / 200), ...place(event));
  }, { passive: false });
  stage.addEventListener("pointerdown", (event) => {
    held.set(event.pointerId, place(event));
    if (event.pointerType === "mouse" || stage.classList.contains("is-close")) stage.setPointerCapture(event.pointerId);
    stage.classList.add("is-held");
  });
  stage.addEventListener("pointermove", (event) => {
    if (!held.has(event.pointerId)) return;
    const before = held.get(event.pointerId), now = place(event);
    const others = [...held].filter(([id]) => id !== event.pointerId).map(([, at]) => at);
    held.set(event.pointerId, now);
    if (!others.length) { pan(before[0] - now[0], before[1] - now[1]); return; }
    const apart = (at) => Math.hypot(at[0] - others[0][0], (at[1] - others[0][1]) * ratio);
    if (apart(before) > 0) zoom(apart(now) / apart(before), (now[0] + others[0][0]) / 2, (now[1] + others[0][1]) / 2);
  });
  for (const end of ["pointerup", "pointercancel"]) {
    stage.addEventListener(end, (event) => { held.delete(event.pointerId); if (!held.size) stage.classList.remove("is-held"); });
  }
  // With two fingers the browser would enlarge the page instead of the sheet.
  stage.addEventListener("touchmove", (event) => { if (event.touches.length > 1) event.preventDefault(); }, { passive: false });

  // Paper always gets the whole sheet, in true size.
  let looked = null;
  addEventListener("beforeprint", () => { looked = [...seen]; looks.whole(); });
  addEventListener("afterprint", () => { if (looked) { seen = looked; show(); } });
}

// A sign while a long document is being made; where anything goes wrong, the plain link takes over.
for (const link of document.querySelectorAll("[data-made-slowly]")) {
  const sign = document.getElementById("made-slowly");
  link.addEventListener("click", async (event) => {
    if (event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    if (link.hasAttribute("aria-busy")) return;
    link.setAttribute("aria-busy", "true");
    sign.textContent = link.dataset.madeSlowly;
    try {
      const answer = await fetch(link.href);
      if (!answer.ok) throw new Error(String(answer.status));
      const name = /filename="([^"]+)"/.exec(answer.headers.get("Content-Disposition") ?? "")?.[1] ?? "packet.pdf";
      const made = document.createElement("a");
      made.href = URL.createObjectURL(await answer.blob());
      made.download = name;
      made.click();
      setTimeout(() => URL.revokeObjectURL(made.href), 60000);
      sign.textContent = `Done: ${name}.`;
    } catch {
      sign.textContent = "";
      location.assign(link.href);
    } finally {
      link.removeAttribute("aria-busy");
    }
  });
}
