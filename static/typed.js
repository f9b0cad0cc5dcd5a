/* What is typed on a page of the shop and not sent goes along on the ways to the others. Without this file a line beside
   each button says that it has to be sent first. */

(() => {
  "use strict";

  const ADDED = "added.";
  /* A number without a unit, as the server knows one. */
  const BARE = /^[\d\s.,;/⁄½¼¾⅛⅜⅝⅞+−-]*[\d½¼¾⅛⅜⅝⅞]\s*$/;
  /* Units, the other pages of the shop, an entry to take out, a day that waits. */
  const WAYS = ".units a, .shop-pages a, .worn-days a, .pending a";
  const UNITS = ["mm", "in", "kg", "lb"];

  const forms = [...document.querySelectorAll("form[data-typed]")];
  if (!forms.length) return;
  document.querySelectorAll(".unsent").forEach((line) => line.remove());

  const asSent = (box) => (box.matches("select")
    ? ([...box.options].find((option) => option.defaultSelected) || box.options[0]).value : box.defaultValue);
  const boxes = () => forms.flatMap((form) => [...form.elements])
    .filter((box) => box.name && box.matches("input:not([type=hidden]), select, textarea"));
  const unsent = () => boxes().filter((box) => box.value !== asSent(box));

  /* A bare number means the same where others are read in another unit. */
  const spelled = (box, isOtherUnits) => {
    const beside = box.closest(".answer, .reading-box, .asked");
    const unit = beside?.querySelector(".unit")?.textContent.trim();
    return isOtherUnits && UNITS.includes(unit) && BARE.test(box.value) ? `${box.value.trim()} ${unit}` : box.value;
  };

  const unitsOf = (url) => (url.searchParams.get("units") === "in" ? "in" : "mm");
  const isSheet = (url) => url.pathname === "/pad";
  const isRevision = (url) => /^\/saved\/[^/]+\/[^/]+$/.test(url.pathname);
  const here = document.querySelector(".units [aria-current]")?.textContent.trim() || "mm";

  /* What is typed as keys of a way's address; false where the page there has no place for some of it. */
  const carry = (way, typed) => {
    const url = new URL(way.dataset.bare || way.href);
    way.dataset.bare = url.href;
    // A revision's own page reads what it carries in mm, whatever its drawing is shown in.
    const isOtherUnits = here !== (isRevision(url) ? "mm" : unitsOf(url));
    const taken = typed.filter((box) => !(isSheet(url) && box.name.startsWith(ADDED)) && !(isSheet(url) && box.name === "name"));
    taken.forEach((box) => url.searchParams.set(box.name, spelled(box, isOtherUnits)));
    if (taken.some((box) => box.name.startsWith(ADDED))) url.searchParams.set(`${ADDED}later`, "yes");
    way.href = url.href;
    return taken.length === typed.length;
  };

  let isTaken = false;
  const follow = (event) => {
    const way = event.target.closest(WAYS);
    if (!way) return;
    const all = carry(way, unsent());
    isTaken = all && event.button === 0 && !(event.ctrlKey || event.metaKey || event.shiftKey);
  };
  document.addEventListener("click", follow, true);
  document.addEventListener("auxclick", follow, true);
  forms.forEach((form) => form.addEventListener("submit", () => {
    // What is typed in another form of this page is not sent with this one.
    isTaken = unsent().every((box) => box.form === form);
  }));

  window.addEventListener("beforeunload", (event) => {
    if (!isTaken && unsent().length) event.preventDefault();
  });
  window.addEventListener("pageshow", () => { isTaken = false; });
})();
