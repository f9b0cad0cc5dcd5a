/* What the working sheet does beyond its form: it keeps what is typed, lights what is asked for, and walks a phone through
   the groups. Without this file everything works, one press of a button at a time. */

(() => {
  "use strict";

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
    }
  });

  htmx.registerExtension("keep-typed", {
    htmx_before_morph_attr: (element, detail) => !(detail.attrName === "value" && isText(element)),
  });

  /* An answer that is no sheet, or none at all, changes nothing; the page says so until the next one comes. */

  const noAnswer = (isSo) => { document.getElementById("no-answer").hidden = !isSo; };

  document.addEventListener("htmx:before:response", (event) => {
    const { status, headers } = event.detail.ctx.response;
    const isSheet = (status === 200 || status === 422) && (headers.get("Content-Type") || "").startsWith("text/html");
    noAnswer(!isSheet);
    if (!isSheet) event.preventDefault();
  });
  document.addEventListener("htmx:error", () => noAnswer(true));

  /* The address holds what was given, and nothing else. */

  document.addEventListener("htmx:config:request", (event) => {
    const body = event.detail.ctx.request.body;
    if (body instanceof FormData) {
      [...body.entries()].filter(([, text]) => !String(text).trim()).forEach(([key]) => body.delete(key));
    }
  });

  /* Back undoes one answer, not one keystroke: while the same field is being edited, its address is replaced. */

  let edited = null;
  let lastPushed = null;

  document.addEventListener("htmx:before:history:update", (event) => {
    const history = event.detail.history;
    const isSame = history.path === location.pathname + location.search;
    if (isSame || (edited && edited === lastPushed)) history.type = "replace";
    lastPushed = edited;
  });
  window.addEventListener("popstate", () => { lastPushed = null; });

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
  });
  document.addEventListener("focusout", () => { lit = null; light(); });

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
    if (target && target.matches(".field input, .field select")) {
      event.preventDefault();
      goTo(target);
    } else if (target && target.matches(".step")) {
      event.preventDefault();
      show(target.id);
      target.scrollIntoView();
    }
  });

  /* One explanation at a time. */

  const closeOthers = (kept) => all(".how[open]").forEach((how) => { if (how !== kept) how.open = false; });

  document.addEventListener("keydown", (event) => { if (event.key === "Escape") closeOthers(null); });

  /* One group at a time on a phone. */

  let shown = "step-jack";

  const show = (id) => {
    shown = id;
    all(".step").forEach((step) => step.toggleAttribute("data-live-shown", step.id === shown));
    const group = document.querySelector(`#${shown} > .group`);
    if (group && phone.matches) group.open = true;
  };

  const settle = () => { light(); show(shown); };

  document.addEventListener("htmx:after:swap", () => { settle(); say(); });
  document.addEventListener("DOMContentLoaded", () => {
    document.documentElement.classList.add("live");
    said = document.querySelector("#outcome .verdict").textContent.trim();
    settle();
  });
})();
