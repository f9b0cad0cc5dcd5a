/* What stays readable without the network. Pages come from the server first, and as they were last seen where it does not
   answer; static files, whose addresses change with their content, come from here first. In front of this stands KEPT:
   a version, the static files, the pages that are kept from the start, those that are kept as they are seen, and how many of
   these. */

const PREFIX = "seamrest-";
const FILES = `${PREFIX}files-${KEPT.version}`;
const SEEN = `${PREFIX}seen-${KEPT.version}`;
const OFFLINE = "/offline";
const PATIENCE_MS = 8000;
const LOOSE = { ignoreVary: true };

const pause = (milliseconds) => new Promise((resolve) => { setTimeout(resolve, milliseconds); });
const isPage = (answer) => answer.status === 200 && !answer.redirected && (answer.headers.get("Content-Type") || "").startsWith("text/html");

/* Pages that every design shares are kept once for each unit, whatever else their address says. */

const keyOf = (url) => {
  if (!KEPT.pages.includes(url.pathname)) return url.pathname + url.search;
  return url.pathname + (url.searchParams.get("units") === "in" ? "?units=in" : "");
};

const keep = async (url, answer) => {
  if (!isPage(answer)) return;
  if (KEPT.pages.includes(url.pathname)) {
    const files = await caches.open(FILES);
    const own = keyOf(url);
    if (url.pathname + url.search === own) {
      await files.put(own, answer);
    } else if (!(await files.match(own, LOOSE))) {
      // This one leads back to one sheet of many; the page that every sheet shares is kept in its place.
      const shared = await fetch(own);
      if (isPage(shared)) await files.put(own, shared);
    }
  } else if (KEPT.seen.includes(url.pathname)) {
    const seen = await caches.open(SEEN);
    // What is put again goes to the end of the row, so the page longest unseen stands first.
    await seen.delete(keyOf(url), LOOSE);
    await seen.put(keyOf(url), answer);
    const row = await seen.keys();
    await Promise.all(row.slice(0, Math.max(0, row.length - KEPT.most_seen)).map((oldest) => seen.delete(oldest, LOOSE)));
  }
};

const find = async (url) => {
  const [files, seen] = await Promise.all([caches.open(FILES), caches.open(SEEN)]);
  if (!KEPT.pages.includes(url.pathname)) return seen.match(keyOf(url), LOOSE);
  return (await files.match(keyOf(url), LOOSE)) || files.match(url.pathname, LOOSE);
};

/* The headers of an answer, its content policy with them, for a text that is unpacked and may be longer than it was. */

const unpacked = (found) => {
  const headers = new Headers(found);
  headers.delete("Content-Encoding");
  headers.delete("Content-Length");
  return headers;
};

/* A page from here says so, and since when it is kept: by the server's own clock, at which it answered. */

const withItsAge = async (answer) => {
  const text = await answer.text();
  const day = new Date(answer.headers.get("Date") || NaN);
  const since = Number.isNaN(day.getTime()) ? "an unknown day" : day.toLocaleString([], { dateStyle: "long", timeStyle: "short" });
  const line = `<p class="kept-line">The server does not answer. This page was kept in this browser on ${since}. <a href="${OFFLINE}">What else is kept</a></p>`;
  return new Response(text.replace("<body>", () => `<body>${line}`), { status: answer.status, headers: unpacked(answer.headers) });
};

const offlinePage = async () => {
  const answer = await (await caches.open(FILES)).match(OFFLINE, LOOSE);
  return answer ? new Response(await answer.text(), { status: 503, headers: unpacked(answer.headers) }) : Response.error();
};

const page = async (event, url) => {
  const soon = fetch(event.request).catch(() => undefined);
  // A full or forbidden store keeps nothing, and the page comes nevertheless.
  event.waitUntil(soon.then((answer) => answer && keep(url, answer.clone())).catch(() => {}));
  const first = await Promise.race([soon, pause(PATIENCE_MS)]);
  if (first) return first;
  const kept = await find(url);
  if (kept && url.pathname !== OFFLINE) return withItsAge(kept);
  return (await soon) || offlinePage();
};

const file = async (event, url) => {
  const files = await caches.open(FILES);
  const kept = await files.match(url.pathname, LOOSE);
  if (kept) return kept;
  const answer = await fetch(event.request);
  if (answer.status === 200) event.waitUntil(files.put(url.pathname, answer.clone()).catch(() => {}));
  return answer;
};

const holdsSecrets = (path) => /^\/(saved|save|mine)(\/|$)/.test(path);
const isFile = (path) => /\.[^/]*$/.test(path);

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== location.origin || holdsSecrets(url.pathname)) return;
  if (url.pathname.startsWith("/static/")) event.respondWith(file(event, url));
  else if (event.request.mode === "navigate" && !isFile(url.pathname)) event.respondWith(page(event, url));
});

/* A page that was there before this was, or whose address changed as somebody typed, asks to be kept. */

self.addEventListener("message", (event) => {
  const url = new URL(event.data.keep, location.origin);
  if (url.origin !== location.origin || !KEPT.seen.includes(url.pathname)) return;
  event.waitUntil(fetch(url.pathname + url.search).then((answer) => keep(url, answer)).catch(() => {}));
});

self.addEventListener("install", (event) => {
  self.skipWaiting();
  event.waitUntil(caches.open(FILES).then((files) => files.addAll([...KEPT.files, ...KEPT.pages])));
});

const takeOver = async () => {
  const others = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== FILES && name !== SEEN);
  await Promise.all(others.map((name) => caches.delete(name)));
  await self.clients.claim();
};

self.addEventListener("activate", (event) => { event.waitUntil(takeOver()); });
