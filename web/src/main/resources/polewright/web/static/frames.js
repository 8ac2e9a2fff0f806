"use strict";
// A part of the frame is looked at closely: a point that is tapped, or the next part by a button. Without this script the
// buttons are links to pages that show the same.

let news = 0; // How often the frame was asked for anew, since something came in.
document.addEventListener("htmx:beforeRequest", (event) => {
  if (event.target.id === "frame") news++;
});

document.addEventListener("click", (event) => {
  const step = event.target.closest(".frame .presses a");
  if (step) {
    event.preventDefault();
    return look(step.href);
  }
  const light = event.target.closest(".light");
  if (!light || light.dataset.tapTimes === "0") return;
  const box = light.getBoundingClientRect();
  const { left, top, times, tapTimes } = light.dataset;
  const at = (from, share) => Math.round(1000 * (Number(from) + share / Number(times)));
  const x = at(left, (event.clientX - box.left) / box.width);
  const y = at(top, (event.clientY - box.top) / box.height);
  look(`${location.pathname}?times=${tapTimes}&x=${x}&y=${y}`);
});

// The frame is another one by the time that the answer comes if something came in meanwhile: it takes the place of the one
// that is there then, and asks for what it may have missed.
async function look(address) {
  const before = news;
  let page;
  try {
    const answer = await fetch(address, { headers: { Accept: "text/html" }, signal: AbortSignal.timeout(PATIENCE_MS) });
    if (!answer.ok) return;
    page = new DOMParser().parseFromString(await answer.text(), "text/html");
  } catch (unreachable) {
    return; // The comparison of clocks says so.
  }
  const fresh = page.getElementById("frame");
  const old = document.getElementById("frame");
  if (!fresh || !old) return;
  const focused = document.activeElement.id;
  old.replaceWith(fresh);
  window.htmx.process(fresh);
  if (focused) document.getElementById(focused)?.focus();
  if (news !== before) window.htmx.trigger(fresh, "sse:frame");
}
