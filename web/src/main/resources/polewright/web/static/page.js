"use strict";
// What a page needs that a server cannot do: show what comes of a press, compare clocks, keep the screen on.

const CLOCK_MS = 2000; // Clocks that differ by more are told of.
const PATIENCE_MS = 20000; // A link that is gone without a word counts as none after this long.
const GONE = "The laptop does not answer. This page may be out of date.";
let clockAhead = 0; // This device's clock minus the laptop's, milliseconds.

function banner(id, text) {
  const element = document.getElementById(id);
  element.hidden = text === "";
  element.textContent = text;
}

// ---- What is shown

function show(page, address) {
  if (!page.querySelector("main")) return location.reload();
  if (address) history.pushState({}, "", address.replace(/[?]said=.*/, ""));
  put(page, whole);
  document.querySelector("main").focus();
  window.scrollTo(0, 0);
}

const whole = (page) => page.querySelector("main").closest("[sse-connect]") || page.querySelector("main");

// Puts a part of a page in the place of the same part of this one.
function put(page, part) {
  const fresh = part(page);
  document.title = page.title;
  part(document).replaceWith(fresh);
  // A press of the real night may be answered on a page of a practice, and the other way round.
  document.querySelector(".banner.practice")?.remove();
  const practice = page.querySelector(".banner.practice");
  if (practice) document.getElementById("link").before(practice);
  for (const links of [".menu", "#siblings"]) document.querySelector(links)?.replaceWith(page.querySelector(links) ?? "");
  window.htmx.process(fresh);
  prepare();
}

// ---- Back from sleep or from beyond the Wi-Fi: what is shown is asked for anew, and so is the stream of news, which
// comes back by itself the later the longer it was cut.

async function wake() {
  if (document.visibilityState !== "visible") return;
  stayAwake();
  await compareClocks();
  await send();
  if (!sending && read().length === 0) await refresh();
}

// Only what the stream belongs to: a file that was chosen next to it, or a close look, stays.
async function refresh() {
  const live = (page) => page.querySelector("[sse-connect]");
  const old = live(document);
  if (!old) return;
  const isPart = !old.contains(document.querySelector("main"));
  const address = isPart ? document.getElementById("frame").getAttribute("hx-get") : location.href;
  try {
    const answer = await fetch(address, { cache: "no-store", headers: { Accept: "text/html" } });
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const fresh = live(page);
    if (!answer.ok || !fresh) return location.reload();
    // As long as nothing else was logged, what was said of the last press is still news.
    const said = document.querySelector("main .said");
    if (said && !isPart && fresh.getAttribute("sse-connect") === old.getAttribute("sse-connect")) {
      page.querySelector("h1").after(said);
    }
    put(page, live);
  } catch (unreachable) {
    // The comparison of clocks says so.
  }
}

window.addEventListener("popstate", () => location.reload());
window.addEventListener("online", wake);
document.addEventListener("visibilitychange", wake);
document.addEventListener("resume", wake);

// ---- Clocks

// What the laptop answered: 200 when it could be done, 0 when there was no answer.
async function compareClocks() {
  try {
    const before = Date.now();
    const answer = await fetch("/clock", { cache: "no-store", signal: AbortSignal.timeout(PATIENCE_MS) });
    if (answer.status === 401 && read().length === 0) {
      banner("link", "This device is no longer paired, and this page is out of date. Pair it again.");
    }
    if (!answer.ok) return answer.status;
    const laptop = Number(await answer.text());
    const now = Date.now();
    clockAhead = (before + now) / 2 - laptop;
    const off = Math.round(Math.abs(clockAhead) / 1000);
    banner("clock", Math.abs(clockAhead) <= CLOCK_MS ? ""
      : `This device's clock is ${off} s ${clockAhead > 0 ? "ahead of" : "behind"} the laptop's. Times in the log are the laptop's: if that one is wrong, set it.`);
    if (document.getElementById("link").textContent === GONE) banner("link", "");
    return answer.status;
  } catch (unreachable) {
    if (read().length === 0) banner("link", GONE);
    return 0;
  }
}

// ---- The screen stays on

let lock = null;

async function stayAwake() {
  const said = document.getElementById("awake");
  if (!("wakeLock" in navigator)) {
    said.textContent = "This browser cannot keep the screen on here. Set the device's own screen timeout to its longest. (An encrypted connection allows it.)";
    return;
  }
  if (lock !== null && !lock.released) return;
  try {
    lock = await navigator.wakeLock.request("screen");
    said.textContent = "The screen stays on.";
  } catch (refused) {
    said.textContent = "The screen may go dark because the device is saving power.";
  }
}

// ---- Brightness: below what the device itself can do

function dim(percent) {
  document.body.style.setProperty("opacity", String(percent / 100));
}

// ---- Position

function here() {
  const button = document.getElementById("here");
  if (!button || !("geolocation" in navigator) || !window.isSecureContext) {
    const said = document.getElementById("here-said");
    if (said) said.textContent = "This page cannot read the position here. Type it. (An encrypted connection allows it.)";
    return;
  }
  button.hidden = false;
  button.addEventListener("click", () => navigator.geolocation.getCurrentPosition(
    (position) => {
      const where = position.coords;
      const height = where.altitude === null ? "" : "," + Math.round(where.altitude);
      document.getElementById("begin-site").value = `${where.latitude.toFixed(4)},${where.longitude.toFixed(4)}${height}`;
      document.getElementById("here-said").textContent = `Taken, to ${Math.round(where.accuracy)} m.`;
    },
    (refused) => {
      document.getElementById("here-said").textContent = "The device does not give its position. Type it.";
    },
    { enableHighAccuracy: true, timeout: 20000 }));
}

function prepare() {
  here();
}

const brightness = document.getElementById("brightness");
brightness.value = localStorage.getItem("polewright-brightness") || "100";
dim(Number(brightness.value));
brightness.addEventListener("input", () => {
  localStorage.setItem("polewright-brightness", brightness.value);
  dim(Number(brightness.value));
});
prepare();
stayAwake();
compareClocks();
setInterval(compareClocks, 30000);
