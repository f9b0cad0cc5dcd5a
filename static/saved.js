/* What pages of saved designs do beyond their links and forms: remembering, copying, passing on. Without this file
   everything works; only the list of opened designs stays empty. */

(() => {
  "use strict";

  const KEY = "seamrest.opened";
  const FROM = "seamrest.from";
  const MOST = 200;
  const all = (selector) => document.querySelectorAll(selector);
  const one = (selector) => document.querySelector(selector);

  /* The browser's memory may be switched off, full, or hold something else. */

  const load = () => {
    try {
      const found = JSON.parse(localStorage.getItem(KEY));
      return Array.isArray(found) ? found.filter((entry) => entry && /^\/saved\/[\w-]{22}\//.test(entry.href)) : [];
    } catch { return []; }
  };
  const keep = (store, key, value) => { try { store.setItem(key, value); } catch { /* then it is not remembered */ } };
  const read = (key) => { try { return sessionStorage.getItem(key) || ""; } catch { return ""; } };
  const secretOf = (href) => href.split("/")[2];

  const remember = (entry) => {
    const others = load().filter((known) => secretOf(known.href) !== secretOf(entry.href));
    keep(localStorage, KEY, JSON.stringify([entry, ...others].slice(0, MOST)));
  };

  const opened = one("[data-remember]");
  if (opened) {
    const { kind, title, letters, href } = opened.dataset;
    remember({ kind, title, letters, href });
    // What is changed from here belongs to this link and this revision when it is saved.
    all("[data-change]").forEach((link) => link.addEventListener("click", () => {
      keep(sessionStorage, FROM, JSON.stringify({ href, title, letters, kind }));
    }));
  }
  all("[data-brought]").forEach((link) => {
    remember({ kind: "owner", title: link.dataset.title, letters: link.dataset.letters, href: link.getAttribute("href") });
  });

  /* The list of what was opened here. */

  const list = one("[data-mine]");
  if (list) {
    const WORDS = { owner: "yours", friend: "to read and to add to", view: "to read" };
    const entries = load();
    one("[data-mine-empty]").hidden = entries.length > 0;
    entries.forEach((entry) => {
      const item = document.createElement("li");
      const link = document.createElement("a");
      const forget = document.createElement("button");
      item.className = "mine-line";
      link.href = entry.href;
      link.textContent = `${entry.title}, revision ${entry.letters}`;
      const may = document.createElement("span");
      may.className = "quiet";
      may.textContent = WORDS[entry.kind] || "";
      forget.type = "button";
      forget.textContent = "Take off this list";
      forget.setAttribute("aria-label", `Take off this list: ${entry.title}`);
      forget.addEventListener("click", () => {
        keep(localStorage, KEY, JSON.stringify(load().filter((known) => known.href !== entry.href)));
        item.remove();
        fill();
      });
      item.append(link, may, forget);
      list.append(item);
    });
    const box = one("[data-mine-links]");
    const fill = () => { if (box) box.value = load().map((entry) => location.origin + entry.href).join("\n"); };
    fill();
  }

  /* Where a working sheet came from, so that saving it finds back. */

  const to = document.getElementById("to");
  const from = read(FROM);
  if (to && !to.value && from) {
    const { href, title, letters } = JSON.parse(from);
    const line = one("[data-from-here]");
    to.value = location.origin + href;
    one("[data-from-here-words]").textContent = `${title}, revision ${letters}`;
    line.hidden = false;
    one("[data-belongs]").open = true;
    one("[data-from-here-clear]").addEventListener("click", () => {
      to.value = "";
      line.hidden = true;
      to.focus();
    });
  }

  /* Copying and passing on, where the browser can. */

  all("[data-copy]").forEach((button) => {
    if (!navigator.clipboard) return;
    const words = button.textContent;
    button.hidden = false;
    button.addEventListener("click", async () => {
      const field = document.getElementById(button.dataset.copy);
      try {
        await navigator.clipboard.writeText(field.value);
        button.textContent = "Copied";
      } catch {
        field.select();
        button.textContent = "Marked: press copy";
      }
      window.setTimeout(() => { button.textContent = words; }, 2000);
    });
  });
  all("[data-share]").forEach((button) => {
    if (!navigator.share) return;
    button.hidden = false;
    button.addEventListener("click", () => {
      const url = document.getElementById(button.dataset.share).value;
      navigator.share({ title: button.dataset.title, url }).catch(() => { /* called off */ });
    });
  });
  all("input.link").forEach((field) => field.addEventListener("focus", () => field.select()));

  /* Enter goes to the next box, as on the working sheet; only the button sends. */

  all("form[data-step]").forEach((form) => {
    form.addEventListener("keydown", (event) => {
      if (event.key !== "Enter" || event.isComposing || !event.target.matches("input[type=text]")) return;
      event.preventDefault();
      const boxes = [...form.querySelectorAll("input[type=text], select, button[type=submit]")];
      boxes[boxes.indexOf(event.target) + 1].focus();
    });
  });

  /* A copy and the form that passes it on: what was typed into one is not lost by sending the other. */

  const copy = one("form[data-answers]");
  const passed = one("form[data-passed-on]");
  if (copy && passed) {
    passed.querySelectorAll(".unsent").forEach((line) => line.remove());
    const asSent = (box) => (box.matches("select")
      ? ([...box.options].find((option) => option.defaultSelected) || box.options[0]).value : box.defaultValue);
    const isChanged = () => [...copy.elements].some((box) => (
      box.matches("input:not([type=hidden]), select") && box.value !== asSent(box)));
    const along = (name, value) => {
      const box = document.createElement("input");
      Object.assign(box, { type: "hidden", name, value });
      copy.append(box);
    };
    const takeAlong = () => passed.querySelectorAll("textarea, input[type=text]").forEach((box) => {
      if (box.value) along(box.name, box.value);
    });
    copy.addEventListener("submit", takeAlong);
    passed.addEventListener("submit", (event) => {
      if (!isChanged()) return;
      event.preventDefault();
      along("again", "yes");
      copy.requestSubmit();
    });
  }

  /* A second press while the first is under way would send everything twice. */

  all("form[data-once]").forEach((form) => {
    form.addEventListener("submit", (event) => {
      if (form.dataset.sent) event.preventDefault();
      form.dataset.sent = "yes";
    });
    window.addEventListener("pageshow", () => { delete form.dataset.sent; });
  });
})();
