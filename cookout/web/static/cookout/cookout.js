// Small comforts; every page works without them.

"use strict";

const MINUTE = 60000;

function spoken(minutes) {
  if (minutes < 60) return `${minutes} min`;
  const hours = Math.floor(minutes / 60);
  if (hours < 48) return minutes % 60 ? `${hours} h ${minutes % 60} min` : `${hours} h`;
  return `${Math.floor(hours / 24)} days`;
}

function showCountdowns() {
  for (const place of document.querySelectorAll("[data-until]")) {
    const left = Math.ceil((new Date(place.dataset.until) - Date.now()) / MINUTE);
    place.textContent = left > 0 ? `${spoken(left)} ${place.dataset.words}` : "";
  }
}

// A task that came due makes the sheet out of date: fetch it anew, but only while somebody looks.
function renewWhenDue() {
  const place = document.querySelector("[data-until]");
  if (!place || !document.body.querySelector(".next")) return;
  const due = new Date(place.dataset.until) - Date.now();
  if (due > 0 && due < 24 * 60 * MINUTE) setTimeout(() => document.hidden || location.reload(), due + 1000);
}

// A task that is pointed to may lie in a folded list; not every browser unfolds it and goes there by itself.
function unfoldTarget() {
  const target = location.hash.length > 1 && document.getElementById(decodeURIComponent(location.hash.slice(1)));
  const list = target && target.closest("details");
  if (!list) return;
  list.open = true;
  requestAnimationFrame(() => target.scrollIntoView());
}

function offerCopies() {
  for (const button of document.querySelectorAll("[data-copies]")) {
    if (!navigator.clipboard) return;
    button.hidden = false;
    button.addEventListener("click", async () => {
      await navigator.clipboard.writeText(document.getElementById(button.dataset.copies).value);
      button.textContent = "Copied";
    });
  }
}

document.addEventListener("DOMContentLoaded", () => {
  showCountdowns();
  setInterval(showCountdowns, 15000);
  renewWhenDue();
  offerCopies();
  unfoldTarget();
});
window.addEventListener("hashchange", unfoldTarget);
document.addEventListener("visibilitychange", () => {
  if (!document.hidden) showCountdowns();
});
