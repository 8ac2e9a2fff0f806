"use strict";
// What a page needs that a server cannot do: keep what was pressed until it is heard, compare clocks, keep the screen on.

const LATE_MS = 5000; // What was pressed longer ago keeps the time at which it was.
const CLOCK_MS = 2000; // Clocks that differ by more are told of.
const outboxName = "polewright-outbox";
let clockAhead = 0; // This device's clock minus the laptop's, milliseconds.

const read = () => JSON.parse(localStorage.getItem(outboxName) || "[]");
const write = (waiting) => localStorage.setItem(outboxName, JSON.stringify(waiting));

function banner(id, text) {
  const element = document.getElementById(id);
  element.hidden = text === "";
  element.textContent = text;
}

// ---- What was pressed is kept here until the laptop has answered; its key makes sending it twice harmless.

document.addEventListener("submit", (event) => {
  const form = event.target;
  if (!form.classList.contains("sent")) return;
  event.preventDefault();
  const waiting = read();
  const key = form.elements.namedItem("key").value;
  if (!waiting.some((one) => one.key === key)) {
    waiting.push({
      key,
      action: new URL(form.action).pathname,
      body: new URLSearchParams(new FormData(form)).toString(),
      at: Date.now(),
      takesTime: form.dataset.takesTime === "yes",
    });
    write(waiting);
  }
  form.querySelectorAll("button").forEach((button) => (button.disabled = true));
  send();
});

let sending = false;

async function send() {
  if (sending) return;
  sending = true;
  try {
    while (read().length > 0) {
      const one = read()[0];
      const body = new URLSearchParams(one.body);
      if (one.takesTime && Date.now() - one.at > LATE_MS) {
        body.set("done-at", new Date(one.at - clockAhead).toISOString());
      }
      let answer;
      try {
        answer = await fetch(one.action, { method: "POST", body, headers: { Accept: "text/html" } });
      } catch (unreachable) {
        return later();
      }
      if (answer.status >= 500) return later();
      write(read().filter((other) => other.key !== one.key));
      banner("link", "");
      show(await answer.text(), answer.redirected ? answer.url : null);
    }
  } finally {
    sending = false;
  }
}

function later() {
  const count = read().length;
  banner("link", count === 1
    ? "The laptop does not answer. What you pressed is kept here and sent as soon as it does."
    : `The laptop does not answer. ${count} things you pressed are kept here and sent as soon as it does.`);
  setTimeout(send, 1000);
}

function show(html, address) {
  const page = new DOMParser().parseFromString(html, "text/html");
  if (!page.querySelector("main")) return location.reload();
  if (address) history.pushState({}, "", address.replace(/[?]said=.*/, ""));
  put(page);
  document.querySelector("main").focus();
  window.scrollTo(0, 0);
}

function put(page) {
  const whole = (from) => from.querySelector("main").closest("[sse-connect]") || from.querySelector("main");
  const fresh = whole(page);
  document.title = page.title;
  whole(document).replaceWith(fresh);
  document.querySelector("nav").replaceWith(page.querySelector("nav"));
  window.htmx.process(fresh);
  prepare();
}

// ---- Back from sleep or from beyond the Wi-Fi: what is shown is asked for anew, and so is the stream of news, which
// comes back by itself the later the longer it was cut.

async function wake() {
  if (document.visibilityState !== "visible") return;
  stayAwake();
  compareClocks();
  await send();
  if (sending || read().length > 0 || !document.querySelector("[sse-connect]")) return;
  try {
    const answer = await fetch(location.href, { cache: "no-store", headers: { Accept: "text/html" } });
    if (!answer.ok) return location.reload();
    put(new DOMParser().parseFromString(await answer.text(), "text/html"));
  } catch (unreachable) {
    // The comparison of clocks says so.
  }
}

window.addEventListener("popstate", () => location.reload());
window.addEventListener("online", wake);
document.addEventListener("visibilitychange", wake);
document.addEventListener("resume", wake);

// ---- Clocks

async function compareClocks() {
  try {
    const before = Date.now();
    const answer = await fetch("/clock", { cache: "no-store" });
    if (!answer.ok) return;
    const laptop = Number(await answer.text());
    const now = Date.now();
    clockAhead = (before + now) / 2 - laptop;
    const off = Math.round(Math.abs(clockAhead) / 1000);
    banner("clock", Math.abs(clockAhead) <= CLOCK_MS ? ""
      : `This device's clock is ${off} s ${clockAhead > 0 ? "ahead of" : "behind"} the laptop's. Times in the log are the laptop's: if that one is wrong, set it.`);
    if (document.getElementById("link").textContent !== "" && read().length === 0) banner("link", "");
  } catch (unreachable) {
    if (read().length === 0) banner("link", "The laptop does not answer. This page may be old.");
  }
}

// ---- The screen stays on

let lock = null;

async function stayAwake() {
  const said = document.getElementById("awake");
  if (!("wakeLock" in navigator)) {
    said.textContent = "This browser keeps no screen awake here: set the device's own screen time to its longest. (Over https it can: serve --share --secure.)";
    return;
  }
  if (lock !== null && !lock.released) return;
  try {
    lock = await navigator.wakeLock.request("screen");
    said.textContent = "The screen stays on.";
  } catch (refused) {
    said.textContent = "The screen may go dark: the device saves power.";
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
    if (said) said.textContent = "This page cannot ask for the position here; type it. (Over https it can: serve --share --secure.)";
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
      document.getElementById("here-said").textContent = "The device does not tell its position: type it.";
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
send();
