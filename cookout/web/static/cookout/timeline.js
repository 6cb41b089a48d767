// The timeline in the hand: arrows go from task to task, and a task opens beside the drawing. Without this, links do.

"use strict";

const panel = document.getElementById("task-panel");
let opener = null;

const KEYS = { "+": "closer", "=": "closer", "-": "farther", ",": "earlier", ".": "later" };

function middle(link) {
  const box = link.getBoundingClientRect();
  return { x: box.left + box.width / 2, y: box.top + box.height / 2 };
}

function linksIn(place) {
  return [...place.querySelectorAll("a[href]")].filter((link) => link.getClientRects().length);
}

function nearest(links, x) {
  return links.reduce((best, link) => {
    const far = Math.abs(middle(link).x - x);
    return best && Math.abs(middle(best).x - x) <= far ? best : link;
  }, null);
}

// The row above or below that has a link, and in it the one nearest in time.
function acrossRows(link, step) {
  const rows = [...link.closest("svg").querySelectorAll("g.row")];
  const own = link.closest("g.row");
  let at = own ? rows.indexOf(own) + step : step > 0 ? 0 : -1;
  while (rows[at]) {
    const found = nearest(linksIn(rows[at]), middle(link).x);
    if (found) return found;
    at += step;
  }
  return null;
}

function alongRow(link, step) {
  const links = linksIn(link.closest("g.row") || link.closest("svg"));
  return links[links.indexOf(link) + step];
}

function target(link, key) {
  if (key === "ArrowLeft") return alongRow(link, -1);
  if (key === "ArrowRight") return alongRow(link, 1);
  if (key === "ArrowUp") return acrossRows(link, -1);
  if (key === "ArrowDown") return acrossRows(link, 1);
  return null;
}

function follow(choice) {
  if (choice) location.href = choice.href;
}

function look(where) {
  const shown = [...document.querySelectorAll(".look-tools a")].filter((link) => link.getClientRects().length);
  if (where === "earlier" || where === "later") return follow(shown.find((link) => link.id.endsWith(`-${where}`)));
  const zooms = shown.filter((link) => link.dataset.zoom);
  const at = zooms.findIndex((link) => link.getAttribute("aria-current"));
  follow(zooms[at + (where === "closer" ? 1 : -1)]);
}

function onKey(event) {
  const link = event.target.closest("[data-drawing] a");
  if (!link || event.ctrlKey || event.metaKey || event.altKey) return;
  const next = target(link, event.key);
  if (next) next.focus();
  else if (KEYS[event.key]) look(KEYS[event.key]);
  else if (!event.key.startsWith("Arrow")) return;
  event.preventDefault();
}

function close() {
  panel.hidden = true;
  panel.replaceChildren();
  document.body.classList.remove("has-task");
  if (opener && opener.isConnected) opener.focus();
}

async function open(address) {
  await htmx.ajax("GET", address, { target: "#task-panel", swap: "innerHTML" });
  panel.hidden = false;
  document.body.classList.add("has-task");
  const title = panel.querySelector("#task-title");
  if (title) title.focus();
  // The sheet on a phone covers what lies low: the task that was opened goes above it.
  if (opener && getComputedStyle(panel).position === "fixed") opener.scrollIntoView();
}

function isTask(link) {
  const address = link.getAttribute("href") || "";
  return /\/tasks\/[^/?#]+\/$/.test(address);
}

function onClick(event) {
  if (event.target.closest("[data-close]")) return close();
  const link = event.target.closest("[data-drawing] a, #task-panel a");
  if (!link || !isTask(link) || event.ctrlKey || event.metaKey || event.shiftKey || event.button) return undefined;
  event.preventDefault();
  if (link.closest("[data-drawing]")) opener = link;
  return open(link.getAttribute("href"));
}

if (panel && window.htmx) {
  for (const hint of document.querySelectorAll("[data-keys]")) hint.hidden = false;
  document.addEventListener("click", onClick);
  document.addEventListener("keydown", onKey);
  document.addEventListener("keydown", (event) => {
    if (event.key === "Escape" && !panel.hidden) close();
  });
}
