"use strict";
// A point of the frame that is tapped is looked at closely; without this script the buttons do the same.

document.addEventListener("click", (event) => {
  const light = event.target.closest(".light");
  if (!light || light.dataset.tapTimes === "0") return;
  const box = light.getBoundingClientRect();
  const { left, top, times, tapTimes } = light.dataset;
  const at = (from, share) => Math.round(1000 * (Number(from) + share / Number(times)));
  const x = at(left, (event.clientX - box.left) / box.width);
  const y = at(top, (event.clientY - box.top) / box.height);
  const page = location.pathname;
  window.htmx.ajax("GET", `${page}?times=${tapTimes}&x=${x}&y=${y}`, { target: "#frame", select: "#frame", swap: "outerHTML" });
});
