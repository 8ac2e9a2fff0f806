"use strict";
// Handles on the corners of the skyline. They only type into the form's field, which works without them too; the server
// draws what stands there.

(() => {
  const HALF = 24; // Half of what a gloved finger needs, px.
  const STEP = 1; // Of an arrow key, degrees.
  const WIDE_STEP = 10; // With Shift.
  const LAST = 359.5; // The strip's right end is its left end again.
  const TOP = 90;

  const frame = document.getElementById("horizon-sketch");
  const field = document.getElementById("horizon-corners");
  const scale = frame?.querySelector("g.strip")?.dataset;
  if (!frame || !field || !scale) return;
  const left = Number(scale.left);
  const leftmost = Number(scale.leftmostAzimuth);
  const level = Number(scale.level);
  const unit = Number(scale.unitsPerDegree);

  let corners = [];
  let chosen = -1;

  const layer = document.createElement("div");
  layer.className = "corners";
  // Whoever has no finger on the strip moves it with the arrow keys.
  frame.tabIndex = 0;
  frame.setAttribute("role", "group");
  frame.setAttribute("aria-label", "Skyline, to be moved from side to side");
  frame.append(layer);
  const tools = document.createElement("div");
  tools.className = "presses";
  const said = document.createElement("p");
  said.setAttribute("role", "status");
  said.id = "horizon-said";
  said.textContent = "Drag a corner with a finger, or choose one and use the arrow keys; Delete removes it.";
  frame.after(tools, said);
  tool("Add a corner", "horizon-add", add);
  tool("Remove corner", "horizon-away", away);

  function tool(label, id, does) {
    const button = document.createElement("button");
    button.type = "button";
    button.id = id;
    button.textContent = label;
    button.addEventListener("click", does);
    tools.append(button);
  }

  const half = (value) => Math.round(value * 2) / 2;
  const wrapped = (azimuth) => ((azimuth % 360) + 360) % 360;
  const across = (corner) => wrapped(corner.azimuth - leftmost);
  const words = (corner) => `azimuth ${corner.azimuth}°, ${corner.altitude}° high`;

  function read() {
    const typed = field.value.trim().split(/\s+/).filter((word) => word !== "");
    const parts = typed.map((word) => word.split(",").map(Number));
    // What is half typed has no handles yet.
    if (parts.some((part) => part.length !== 2 || !part.every(Number.isFinite))) return;
    corners = parts.map(([azimuth, altitude]) => ({ azimuth, altitude }));
    chosen = Math.min(chosen, corners.length - 1);
    show();
  }

  function show() {
    while (layer.children.length > corners.length) layer.lastChild.remove();
    while (layer.children.length < corners.length) layer.append(handle());
    corners.forEach((corner, index) => place(layer.children[index], corner, index));
  }

  function place(button, corner, index) {
    button.style.left = `${left + unit * across(corner) - HALF}px`;
    button.style.top = `${level - unit * Math.max(0, corner.altitude) - HALF}px`;
    button.setAttribute("aria-label", `Corner ${index + 1} of ${corners.length}: ${words(corner)}`);
    button.setAttribute("aria-pressed", String(index === chosen));
  }

  function handle() {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "corner";
    button.setAttribute("aria-describedby", "horizon-said");
    const index = () => [...layer.children].indexOf(button);
    let grip = null;
    button.addEventListener("focus", () => choose(index()));
    button.addEventListener("pointerdown", (event) => {
      button.focus();
      button.setPointerCapture(event.pointerId);
      const box = button.getBoundingClientRect();
      grip = { x: event.clientX - box.left - HALF, y: event.clientY - box.top - HALF };
      event.preventDefault();
    });
    button.addEventListener("pointermove", (event) => {
      if (grip === null) return;
      const box = layer.getBoundingClientRect();
      const right = (event.clientX - grip.x - box.left - left) / unit;
      const up = (level - (event.clientY - grip.y - box.top)) / unit;
      move(index(), half(Math.min(LAST, Math.max(0, right))), half(up));
    });
    const let_go = () => (grip = null);
    button.addEventListener("pointerup", let_go);
    button.addEventListener("pointercancel", let_go);
    button.addEventListener("keydown", (event) => {
      const step = event.shiftKey ? WIDE_STEP : STEP;
      const by = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, step], ArrowDown: [0, -step] }[event.key];
      if (by) {
        const corner = corners[index()];
        move(index(), wrapped(across(corner) + by[0]), corner.altitude + by[1]);
        tell(corners[index()]);
        event.preventDefault();
        button.scrollIntoView({ block: "nearest", inline: "nearest" });
      } else if (event.key === "Delete" || event.key === "Backspace") {
        away();
        event.preventDefault();
      }
    });
    return button;
  }

  function choose(index) {
    chosen = index;
    show();
  }

  function move(index, right, altitude) {
    const azimuth = Math.round(wrapped(leftmost + right) * 100) / 100;
    corners[index] = { azimuth, altitude: Math.min(TOP, Math.max(0, altitude)) };
    place(layer.children[index], corners[index], index);
    type();
  }

  function type() {
    field.value = corners.map((corner) => `${corner.azimuth},${corner.altitude}`).join(" ");
    field.dispatchEvent(new Event("input", { bubbles: true }));
  }

  function tell(corner) {
    said.textContent = words(corner) + ". Save it with the button below.";
  }

  // In the middle of the widest gap, where a corner is wanted most; without any, in the middle of what is seen.
  function add() {
    const sorted = [...corners].sort((a, b) => across(a) - across(b));
    let added = {
      azimuth: half(wrapped(leftmost + Math.min(LAST, (frame.scrollLeft + frame.clientWidth / 2 - left) / unit))),
      altitude: 10,
    };
    let widest = 0;
    sorted.forEach((corner, index) => {
      const next = sorted[(index + 1) % sorted.length];
      const gap = wrapped(next.azimuth - corner.azimuth) || (sorted.length === 1 ? 360 : 0);
      if (gap > widest) {
        widest = gap;
        added = { azimuth: half(wrapped(corner.azimuth + gap / 2)), altitude: half((corner.altitude + next.altitude) / 2) };
      }
    });
    corners.push(added);
    type();
    show();
    layer.lastChild.focus();
    layer.lastChild.scrollIntoView({ block: "nearest", inline: "center" });
    tell(added);
  }

  function away() {
    if (chosen < 0 || chosen >= corners.length) {
      said.textContent = "Choose a corner first.";
      return;
    }
    const gone = corners.splice(chosen, 1)[0];
    chosen = Math.min(chosen, corners.length - 1);
    type();
    show();
    said.textContent = `Taken away: ${words(gone)}. Save it with the button below.`;
    if (chosen >= 0) layer.children[chosen].focus();
  }

  field.addEventListener("input", (event) => {
    if (event.isTrusted) read();
  });
  read();
  // The pole, in the middle of the strip, is what one looks for first.
  frame.scrollLeft = (frame.scrollWidth - frame.clientWidth) / 2;
})();
