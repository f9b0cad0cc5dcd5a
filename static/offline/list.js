/* Lists the pages that this browser keeps, and forgets those of designs when asked to. */

(() => {
  "use strict";

  const list = document.getElementById("kept-pages");
  const none = document.getElementById("kept-none");
  const forget = document.getElementById("kept-forget");

  const entryOf = async (cache, request) => {
    const answer = await cache.match(request, { ignoreVary: true });
    const address = new URL(request.url);
    if (!answer || address.pathname === "/offline" || !(answer.headers.get("Content-Type") || "").startsWith("text/html")) return null;
    const title = new DOMParser().parseFromString(await answer.text(), "text/html").title.replace(/ · Seamrest$/, "");
    return { href: address.pathname + address.search, title, day: new Date(answer.headers.get("Date") || NaN) };
  };

  const namesOf = async () => (await caches.keys()).filter((name) => name.startsWith("seamrest-"));

  const entries = async () => {
    const found = [];
    for (const name of await namesOf()) {
      const cache = await caches.open(name);
      found.push(...await Promise.all((await cache.keys()).map((request) => entryOf(cache, request))));
    }
    return found.filter(Boolean).reverse();
  };

  const lineOf = ({ href, title, day }) => {
    const item = document.createElement("li");
    const link = document.createElement("a");
    const since = document.createElement("span");
    link.href = href;
    link.className = "tap";
    link.textContent = title;
    since.className = "quiet";
    since.textContent = Number.isNaN(day.getTime()) ? "" : ` kept on ${day.toLocaleString([], { dateStyle: "long", timeStyle: "short" })}`;
    item.append(link, since);
    return item;
  };

  const show = async () => {
    const found = "caches" in window ? await entries() : [];
    list.replaceChildren(...found.map(lineOf));
    list.hidden = !found.length;
    none.hidden = found.length > 0;
    forget.hidden = !found.some(({ href }) => href === "/" || href.startsWith("/pad"));
  };

  forget.addEventListener("click", async () => {
    const seen = (await namesOf()).filter((name) => name.startsWith("seamrest-seen-"));
    await Promise.all(seen.map((name) => caches.delete(name)));
    await show();
    none.hidden = false;
    none.textContent = "Pages of designs are forgotten.";
  });

  // Where the browser lets nobody look, the words for an empty list stand.
  show().catch(() => {});
})();
