// Comforts of the pages that make an event: drag to order, sums that follow the typing, the browser's time zone.

"use strict";

// Dragging does what the arrow buttons do: it sends the dish, its list and the one that it was dropped before.
function letDishesBeDragged() {
  let held = null;
  for (const line of document.querySelectorAll("[data-dish]")) {
    if (line.closest("fieldset:disabled")) continue;
    line.draggable = true;
    // A link that is grabbed would be dragged away by itself.
    for (const link of line.querySelectorAll("a")) link.draggable = false;
    line.addEventListener("dragstart", (event) => {
      if (event.target !== line) return;
      held = line;
      event.dataTransfer.effectAllowed = "move";
      event.dataTransfer.setData("text/plain", line.dataset.dish);
      line.classList.add("held");
    });
    line.addEventListener("dragend", () => {
      line.classList.remove("held");
      held = null;
    });
  }
  for (const list of document.querySelectorAll("[data-serving]")) {
    list.addEventListener("dragover", (event) => {
      if (held) event.preventDefault();
    });
    list.addEventListener("drop", (event) => {
      if (!held) return;
      event.preventDefault();
      sendPlace(held, list, lineBelow(list, event.clientY));
    });
  }
}

function lineBelow(list, y) {
  const lines = [...list.querySelectorAll("[data-dish]:not(.held)")];
  return lines.find((line) => y < line.getBoundingClientRect().top + line.offsetHeight / 2);
}

function sendPlace(line, list, before) {
  const form = document.createElement("form");
  form.method = "post";
  const token = line.querySelector("[name=csrfmiddlewaretoken]").value;
  const fields = { csrfmiddlewaretoken: token, do: "place", dish: line.dataset.dish, serving: list.dataset.serving };
  for (const [name, value] of Object.entries({ ...fields, before: before ? before.dataset.dish : "" })) {
    const input = document.createElement("input");
    input.type = "hidden";
    input.name = name;
    input.value = value;
    form.append(input);
  }
  document.body.append(form);
  form.submit();
}

// The minutes of what is shown, against those of the slot, while they are typed.
function addUpSlots() {
  for (const form of document.querySelectorAll("[data-adds-up]")) {
    const place = form.querySelector("[data-sum]");
    const add = () => {
      const fixed = [...form.querySelectorAll("[data-minutes]")].map((each) => Number(each.dataset.minutes));
      const typed = [...form.querySelectorAll("[data-adds]")].map((each) => Number(each.value) || 0);
      const sum = [...fixed, ...typed].reduce((all, each) => all + each, 0);
      const slot = Number(form.querySelector("[data-slot]")?.value || form.dataset.addsUp);
      const words = sum > slot ? place.dataset.over : sum < slot ? place.dataset.under : place.dataset.even;
      place.textContent = words.replace("{sum}", sum).replace("{slot}", slot).replace("{rest}", Math.abs(slot - sum));
      place.classList.toggle("late", sum > slot);
    };
    form.addEventListener("input", add);
    add();
  }
}

function proposeTimeZone() {
  const input = document.querySelector("[data-time-zone]");
  if (input && !input.value) input.value = Intl.DateTimeFormat().resolvedOptions().timeZone || "";
}

document.addEventListener("DOMContentLoaded", () => {
  letDishesBeDragged();
  addUpSlots();
  proposeTimeZone();
});
