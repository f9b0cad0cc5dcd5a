/* Finding on the guide: what does not hold every word that is typed is put away. Without this file the browser's own
   search finds the same words. */

(() => {
  "use strict";

  const guide = document.querySelector(".guide");
  const box = document.getElementById("find-words");
  const count = document.getElementById("find-count");
  const parts = [...guide.querySelectorAll("[data-find]")].map((element) => ({
    element,
    words: `${element.textContent} ${element.dataset.find}`.toLowerCase(),
  }));

  const put = (element, isFound) => element.toggleAttribute("data-unfound", !isFound);

  const find = () => {
    const wanted = box.value.toLowerCase().split(/\s+/).filter(Boolean);
    let found = 0;
    parts.forEach(({ element, words }) => {
      const is = wanted.every((word) => words.includes(word));
      found += is ? 1 : 0;
      put(element, is);
    });
    guide.querySelectorAll("[data-find-in]").forEach((group) => {
      put(group, !wanted.length || group.querySelector("[data-find]:not([data-unfound])") !== null);
    });
    guide.toggleAttribute("data-finding", wanted.length > 0);
    count.textContent = wanted.length ? `${found} of ${parts.length} entries` : "";
  };

  /* A link into what has been put away brings everything back first. */
  document.addEventListener("click", (event) => {
    const link = event.target.closest("a[href^='#']");
    const target = link && document.getElementById(link.getAttribute("href").slice(1));
    if (!target || !(target.closest("[data-unfound]") || target.querySelector("[data-unfound]"))) return;
    box.value = "";
    find();
  });

  box.addEventListener("input", find);
  document.getElementById("find").hidden = false;
  // A browser may put back what was looked for at an earlier visit, and that as late as this.
  window.addEventListener("pageshow", () => { if (box.value) find(); });
  if (box.value) find();
})();
