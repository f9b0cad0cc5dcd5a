/* Buttons that print the page they stand on. Without this file they stay away, and the browser's own menu prints. */

(() => {
  "use strict";

  document.querySelectorAll("[data-print]").forEach((button) => {
    button.hidden = false;
    button.addEventListener("click", () => window.print());
  });
})();
