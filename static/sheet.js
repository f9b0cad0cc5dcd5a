/* What the working sheet does beyond its form: it keeps what is typed, lights what is asked for, and walks a phone through
   the groups. Without this file everything works, one press of a button at a time. */

(() => {
  "use strict";

  // Pages beside the sheet load this file too, and have nothing for it to do.
  if (!document.getElementById("measurements")) return;

  const phone = window.matchMedia("(max-width: 699.98px)");
  const all = (selector) => document.querySelectorAll(selector);
  const sheet = () => document.getElementById("sheet");
  const form = () => document.getElementById("measurements");
  const isText = (element) => element instanceof HTMLInputElement && element.type === "text";

  /* Keeping what is typed. An answer on its way was computed from what stood in the form before this keystroke: it is called
     off. And no answer ever writes into a text field: what a person typed is theirs. */

  document.addEventListener("input", (event) => {
    if (event.target.form === form()) {
      htmx.trigger(form(), "htmx:abort");
      edited = event.target.id;
      typedAt = performance.now();
      window.clearTimeout(later);
      later = 0;
    }
  });

  htmx.registerExtension("keep-typed", {
    htmx_before_morph_attr: (element, detail) => !(detail.attrName === "value" && isText(element)),
  });

  /* What is half typed must not shout: "1" on the way to "105" is no mistake yet, and an emptied box is about to be filled.
     Such an answer is not shown until there is a pause, or the box is left; then the sheet asks once more. */

  const PAUSE_MS = 1500;
  let typedAt = -PAUSE_MS;
  let later = 0;

  const isHalfTyped = (status) => {
    const box = document.activeElement;
    const isTyping = isText(box) && box.id === edited && performance.now() - typedAt < PAUSE_MS;
    const isEmptied = isTyping && !box.value.trim() && document.getElementById("the-pad");
    return isTyping && (status === 422 || isEmptied);
  };

  const askAgain = () => {
    window.clearTimeout(later);
    later = 0;
    typedAt = -PAUSE_MS;
    htmx.trigger(form(), "submit");
  };

  /* An answer that is no sheet, or none at all, changes nothing; the page says so until the next one comes. */

  const noAnswer = (isSo) => { document.getElementById("no-answer").hidden = !isSo; };

  document.addEventListener("htmx:before:response", (event) => {
    const { status, headers } = event.detail.ctx.response;
    const isSheet = (status === 200 || status === 422) && (headers.get("Content-Type") || "").startsWith("text/html");
    noAnswer(!isSheet);
    if (!isSheet) {
      event.preventDefault();
    } else if (isHalfTyped(status)) {
      event.preventDefault();
      window.clearTimeout(later);
      later = window.setTimeout(askAgain, PAUSE_MS);
    }
  });
  document.addEventListener("htmx:error", () => noAnswer(true));

  /* The address holds what was given, and nothing else. */

  document.addEventListener("htmx:config:request", (event) => {
    const { ctx } = event.detail;
    const body = ctx.request.body;
    if (ctx.sourceElement === form()) ctx.asked = answers();
    if (body instanceof FormData) {
      // A box for a size of one's own may stand empty beside a button that says the size.
      [...new Set(body.keys())].forEach((key) => {
        const given = body.getAll(key).filter((text) => String(text).trim());
        body.delete(key);
        given.forEach((text) => body.append(key, text));
      });
    }
  });

  /* What was typed before this file had come, and what a browser kept of an earlier visit, stands in the boxes and in no
     answer: the sheet asks as if it were typed now. A size of one's own waits for its button. */

  const inHand = (box) => box.value;
  const asSent = (box) => {
    if (!(box instanceof HTMLSelectElement)) return box.defaultValue.replace(/[\r\n]/g, "");
    return ([...box.options].find((option) => option.defaultSelected) || box.options[0]).value;
  };
  const boxes = () => [...form().elements].filter(
    (box) => box.name && !(box instanceof HTMLButtonElement) && !box.closest(".own-size"),
  );
  const answers = (read = inHand) => boxes().map((box) => `${box.name}=${read(box).trim()}`).join("&");
  let answered = "";

  const catchUp = () => {
    if (answers() === answered) return;
    const box = boxes().includes(document.activeElement) ? document.activeElement : form();
    box.dispatchEvent(new Event("input", { bubbles: true }));
  };

  document.addEventListener("htmx:after:swap", (event) => { answered = event.detail.ctx.asked ?? answers(asSent); });
  window.addEventListener("pageshow", catchUp);

  /* Back undoes one answer, not one keystroke: while the same field is being edited, its address is replaced. */

  let edited = null;
  let lastPushed = null;

  document.addEventListener("htmx:before:history:update", (event) => {
    const history = event.detail.history;
    const isSame = history.path === location.pathname + location.search;
    if (isSame || (edited && edited === lastPushed)) history.type = "replace";
    lastPushed = edited;
  });
  let wentBack = false;
  window.addEventListener("popstate", () => { lastPushed = null; wentBack = true; });

  /* A link that changes answers writes them into the boxes and asks as typing does: the reader keeps the place. */

  document.addEventListener("click", (event) => {
    const link = event.target.closest("a[data-answers]");
    if (!link || !form() || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
    event.preventDefault();
    const wanted = new URL(link.href).searchParams;
    const written = new Set(["units"]);
    for (const box of form().elements) {
      if (!box.name || box.name === "units" || box instanceof HTMLButtonElement) continue;
      box.value = written.has(box.name) ? "" : wanted.get(box.name) || "";
      if (box.value) written.add(box.name);
    }
    [...wanted].filter(([key]) => !written.has(key)).forEach(([key, text]) => {
      const select = document.getElementById(`field-${key.replace(".", "-")}`);
      if (select) return;
      const extra = Object.assign(document.createElement("input"), { type: "hidden", name: key, value: text });
      form().append(extra);
    });
    edited = null;
    askAgain();
  });

  /* Saying the outcome once it has settled, and only where it has changed. */

  let saying = 0;
  let said = "";

  const say = () => {
    const words = document.querySelector("#outcome .verdict").textContent.trim();
    window.clearTimeout(saying);
    saying = window.setTimeout(() => {
      if (words !== said) document.getElementById("announcement").textContent = words;
      said = words;
    }, 700);
  };

  /* Lighting the balloon of the field in use, and finding the field of a balloon. */

  let lit = null;

  const light = () => {
    all("[data-live-lit]").forEach((element) => element.removeAttribute("data-live-lit"));
    if (lit) all(`[data-field="${lit}"]`).forEach((element) => element.setAttribute("data-live-lit", ""));
  };

  document.addEventListener("focusin", (event) => {
    const field = event.target.closest(".field");
    lit = field ? field.dataset.field : null;
    light();
    fitToKeyboard();
  });
  document.addEventListener("focusout", () => {
    lit = null;
    light();
    if (later) askAgain();
  });

  const goTo = (field) => {
    for (let fold = field.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
    const step = field.closest(".step");
    if (step) show(step.id);
    field.focus({ preventScroll: true });
    field.scrollIntoView({ block: "center" });
    if (isText(field)) field.select();
  };

  document.addEventListener("click", (event) => {
    const link = event.target.closest("a[href^='#']");
    if (!link) {
      closeOthers(event.target.closest(".how"));
      return;
    }
    const target = document.getElementById(link.getAttribute("href").slice(1));
    target?.querySelectorAll(":scope > .fold").forEach((part) => { part.open = true; });
    if (target && target.matches(".field input, .field select")) {
      event.preventDefault();
      goTo(target);
    } else if (target && target.matches(".kinds")) {
      event.preventDefault();
      goTo(target.querySelector("select"));
    } else if (target && target.matches(".step")) {
      event.preventDefault();
      show(target.id);
      target.scrollIntoView();
    }
  });

  /* At the bottom edge of a phone stands the verdict; while it is in sight in its own place, that way leads on to the sizes. */

  const inSight = new IntersectionObserver(([seen]) => {
    document.documentElement.toggleAttribute("data-live-verdict", seen.isIntersecting);
  });
  inSight.observe(document.querySelector("#outcome .verdict"));

  document.addEventListener("click", (event) => {
    const sizes = document.getElementById("the-pad");
    if (!event.target.closest(".foot-verdict a") || !sizes || !document.documentElement.hasAttribute("data-live-verdict")) return;
    event.preventDefault();
    sizes.scrollIntoView();
  });

  /* The first page's ways lead to the sheet and the first box of the jack and car that are chosen. */

  const keepWays = () => {
    const way = (mark) => document.querySelector(`#welcome-ways [data-live-${mark}]`);
    if (!way("first")) return;
    way("kinds").textContent = document.querySelector(".kinds .group-line").textContent;
    way("measure").href = document.querySelector("#elsewhere a[href^='/measure']").href;
    way("first").href = `#${document.querySelector("#step-jack .field input, #step-jack .field select").id}`;
  };

  /* Of the explanations that lie over the page, one at a time. */

  const wide = window.matchMedia("(min-width: 1100px)");

  const closeOthers = (kept) => {
    if (wide.matches) all(".stand .how[open]").forEach((how) => { if (how !== kept) how.open = false; });
  };

  document.addEventListener("keydown", (event) => { if (event.key === "Escape") all(".how[open]").forEach((how) => { how.open = false; }); });

  /* One group at a time on a phone. */

  let shown = "step-jack";

  const show = (id) => {
    shown = id;
    all(".step").forEach((step) => step.toggleAttribute("data-live-shown", step.id === shown));
    const group = document.querySelector(`#${shown} > .group`);
    if (group && phone.matches) group.open = true;
  };

  /* While a phone's keyboard is open, the picture shows only what is being measured, and stays on top of what is left of
     the screen. That the keyboard is open is told by the height that it takes away. */

  const view = window.visualViewport;
  let tallest = 0;
  let widest = 0;
  let zoomed = "";
  let whole = "";

  const keyboardIsOpen = () => {
    if (view.width !== widest) [widest, tallest] = [view.width, 0];
    tallest = Math.max(tallest, view.height);
    return phone.matches && isText(document.activeElement) && view.height < 0.75 * tallest;
  };

  const fitToKeyboard = () => {
    const isOpen = keyboardIsOpen();
    document.documentElement.toggleAttribute("data-live-keyboard", isOpen);
    document.getElementById("assembly").style.top = isOpen ? `${view.offsetTop}px` : "";
    const svg = document.querySelector("#section-phone svg");
    const box = svg.getAttribute("viewBox");
    if (box !== zoomed) whole = box;
    zoomed = isOpen && lit ? detailOf(svg) : whole;
    svg.setAttribute("viewBox", zoomed);
    if (isOpen) document.activeElement.scrollIntoView({ block: "center" });
  };

  const detailOf = (svg) => {
    const boxes = [...svg.querySelectorAll(`[data-field="${lit}"]`)].map((element) => element.getBBox());
    if (!boxes.length) return whole;
    const left = Math.min(...boxes.map((b) => b.x)) - 8;
    const top = Math.min(...boxes.map((b) => b.y)) - 8;
    const right = Math.max(...boxes.map((b) => b.x + b.width)) + 8;
    const bottom = Math.max(...boxes.map((b) => b.y + b.height)) + 8;
    const [x, , width] = whole.split(" ").map(Number);
    // A detail almost as wide as the picture would cut the balloons at its other edge.
    if (right - left > 0.6 * width) return `${x} ${top} ${width} ${bottom - top}`;
    return `${left} ${top} ${right - left} ${bottom - top}`;
  };

  view.addEventListener("resize", fitToKeyboard);
  view.addEventListener("scroll", () => {
    if (keyboardIsOpen()) document.getElementById("assembly").style.top = `${view.offsetTop}px`;
  });

  /* What takes longer than a keystroke may is fetched once the sheet has come to rest; until then the old words stand. */

  const REST_MS = 600;
  let rest = 0;
  let fetching = null;

  const fetchSlow = async (place, signal) => {
    const address = place.dataset.slow;
    if (place.dataset.liveHas === address) return;
    const answer = await fetch(address, { headers: { "HX-Request": "true" }, signal });
    if (answer.status !== 200 || !place.isConnected) return;
    const isOpen = new Set([...place.querySelectorAll(".fold[open]")].map((part) => part.parentElement.id));
    place.innerHTML = await answer.text();
    place.querySelectorAll(".fold").forEach((part) => { part.open = !phone.matches || isOpen.has(part.parentElement.id); });
    place.dataset.liveHas = address;
  };

  const fetchAllSlow = () => {
    window.clearTimeout(rest);
    if (fetching) fetching.abort();
    rest = window.setTimeout(() => {
      fetching = new AbortController();
      // A piece that cannot be had leaves what is there, at first a link to the same on a page of its own.
      all("[data-slow]").forEach((place) => fetchSlow(place, fetching.signal).catch(() => {}));
    }, REST_MS);
  };

  /* On a phone, tables, curves and files are folded away until asked for; on a wide page and on paper they stand open. What
     the sheet itself folds is folded once, so that an answer closes nothing that was opened. */

  const fold = () => {
    const aimed = document.getElementById(location.hash.slice(1));
    all("#the-load .fold, #files > .fold, .fold-here").forEach((part) => {
      if (part.hasAttribute("data-live-folded")) return;
      part.setAttribute("data-live-folded", "");
      if (phone.matches && !aimed?.contains(part) && !aimed?.matches(".is-further")) part.open = false;
    });
  };

  const unfold = () => all(".fold, .fold-here").forEach((part) => { part.open = true; });
  phone.addEventListener("change", unfold);
  window.addEventListener("beforeprint", unfold);

  /* Enter leads from box to box in the order of their numbers, and on to the next group. */

  const boxesOf = (place) => [...place.querySelectorAll(".field input")].filter((box) => !box.closest("details:not([open])"));
  const firstEmpty = () => [...all(".is-open input")].find((box) => !box.value.trim());

  // Where there is room the page moves no more than it must.
  const reach = (box) => { if (phone.matches) goTo(box); else [box.focus(), box.select()]; };

  const goOn = (box) => {
    const step = box.closest(".step");
    const boxes = boxesOf(phone.matches ? step : form());
    const following = boxes[boxes.indexOf(box) + 1];
    const on = step.querySelector(".walk .next");
    if (following?.closest(".step")) {
      reach(following);
    } else if (!phone.matches) {
      const open = firstEmpty();
      if (open) reach(open); else document.getElementById("outcome").scrollIntoView({ block: "nearest" });
    } else if (on) {
      on.click();
      // Where nothing more is needed the keyboard gives way to the outcome.
      const open = document.querySelector(`#${shown} .is-open input`);
      if (open) goTo(open); else box.blur();
      // The box just filled may still be marked as open: what stands in it decides.
      if (!firstEmpty()) document.getElementById("outcome").scrollIntoView();
    }
  };

  /* Tab passes over “how?”, or every second number would be typed into nothing; “?” in a box opens it. What is typed while
     an explanation is being read goes into its box. */

  const howOf = (field) => field?.querySelector(".how summary");

  const passOver = (event, field) => {
    const before = field.previousElementSibling;
    const how = howOf(event.shiftKey ? before?.matches(".field:not(.is-choice)") && before : field);
    // From there the browser itself goes on.
    if (how) how.focus({ preventScroll: true });
  };

  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || !event.target.closest?.(".step")) return;
    const field = event.target.closest(".field");
    if (!field) return;
    if (isText(event.target)) {
      if (event.key === "Enter") {
        event.preventDefault();
        goOn(event.target);
      } else if (event.key === "Tab") {
        passOver(event, field);
      } else if (event.key === "?" && howOf(field)) {
        event.preventDefault();
        howOf(field).click();
      }
    } else if (event.target === howOf(field) && /^[0-9.,]$/.test(event.key)) {
      const box = field.querySelector("input");
      if (box) [box.focus(), box.select()];
    }
  });

  /* What was taken back by going back stands in sight. */
  const showWhatIsMissing = () => {
    const step = wentBack && document.querySelector(".is-open")?.closest(".step");
    wentBack = false;
    if (step) shown = step.id;
  };

  const settle = () => { showWhatIsMissing(); keepWays(); light(); show(shown); fitToKeyboard(); fold(); fetchAllSlow(); };

  document.addEventListener("htmx:after:swap", () => { settle(); say(); });
  document.addEventListener("DOMContentLoaded", () => {
    document.documentElement.classList.add("live");
    // On a phone picture and boxes come first.
    if (phone.matches) all(".kinds").forEach((fold) => { fold.open = false; });
    said = document.querySelector("#outcome .verdict").textContent.trim();
    settle();
    // htmx binds the form a moment after it has loaded, which may be later than this.
    htmx.process(form());
    answered = answers(asSent);
    catchUp();
    // An address may name a box; on a phone it may stand in a group that is put away.
    const named = location.hash && document.getElementById(location.hash.slice(1));
    if (named && named.matches(".field input, .field select")) goTo(named);
    if (named && named.matches(".kinds")) goTo(named.querySelector("select"));
  });
})();
