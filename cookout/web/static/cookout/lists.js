// Ticks that did not reach the server are sent again; a meadow has little signal. The page works without this.

"use strict";

const AGAIN_AFTER = 8000;
const unsent = new Set();

function isTick(element) {
  return element.matches("button[name=tick]");
}

function showUnsent() {
  document.getElementById("not-sent").hidden = unsent.size === 0;
  for (const line of document.querySelectorAll(".tick-line")) {
    line.classList.toggle("is-unsent", [...line.querySelectorAll("button")].some((button) => unsent.has(button.id)));
  }
}

function sendAgain() {
  for (const id of unsent) {
    const button = document.getElementById(id);
    if (button) button.click();
    else unsent.delete(id);
  }
  showUnsent();
}

document.addEventListener("htmx:sendError", (event) => {
  if (!isTick(event.detail.elt)) return;
  unsent.add(event.detail.elt.id);
  showUnsent();
});
document.addEventListener("htmx:beforeSwap", (event) => {
  const pressed = event.detail.requestConfig && event.detail.requestConfig.elt;
  if (pressed && unsent.delete(pressed.id)) showUnsent();
});
// Refused for good: the event or the line is gone, or is no longer ours to change. The page as it is now says which.
document.addEventListener("htmx:responseError", (event) => {
  if (isTick(event.detail.elt)) location.reload();
});
window.addEventListener("online", sendAgain);
setInterval(() => unsent.size > 0 && navigator.onLine && sendAgain(), AGAIN_AFTER);
window.addEventListener("beforeunload", (event) => {
  if (unsent.size > 0) event.preventDefault();
});
