/* Has pages kept for a place without the network, where the browser can: on https, or on the machine that runs the server.
   Without this file everything else works. */

(() => {
  "use strict";

  if (!window.isSecureContext || !("serviceWorker" in navigator)) return;

  const REST_MS = 3000;
  const workers = navigator.serviceWorker;
  // A page that came through the worker is kept already.
  let kept = workers.controller ? location.href : "";
  let last = location.href;

  const askToKeep = () => {
    if (!workers.controller) return;
    kept = location.href;
    workers.controller.postMessage({ keep: kept });
  };

  workers.addEventListener("controllerchange", askToKeep);
  // The address changes as somebody types; it is kept once it has stood for a while.
  window.setInterval(() => {
    if (location.href !== kept && location.href === last && navigator.onLine) askToKeep();
    last = location.href;
  }, REST_MS);
  workers.register("/offline.js", { updateViaCache: "none" }).catch(() => { /* Then nothing is kept. */ });
})();
