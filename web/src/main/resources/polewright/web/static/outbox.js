"use strict";
// What was pressed is kept here until the laptop has taken it, or said why not; its key makes sending it twice harmless.
// What it neither takes nor refuses stays until the person decides.

const LATE_MS = 5000; // What was pressed longer ago keeps the time at which it was.
const WAITS = [408, 429, 502, 503, 504]; // Not now, says the laptop: asked again by itself.
const STRANGER = 401;
const REFUSED = [409, 422]; // Heard, and not logged: the page that comes says why and holds what was typed.

const outboxName = "polewright-outbox";
const read = () => JSON.parse(localStorage.getItem(outboxName) || "[]");
const write = (waiting) => localStorage.setItem(outboxName, JSON.stringify(waiting));

document.addEventListener("submit", (event) => {
  const form = event.target;
  if (!form.classList.contains("sent")) return;
  event.preventDefault();
  const pressed = {
    key: form.elements.namedItem("key").value,
    action: new URL(form.action).pathname,
    body: bodyOf(form, event.submitter),
    at: Date.now(),
    takesTime: form.dataset.takesTime === "yes",
    what: (form.closest("section")?.querySelector("h2") || form.querySelector("button")).textContent.trim(),
  };
  if (!isKept(pressed)) write([...read(), pressed]);
  setPressable(form, false);
  send();
});

// With the button that was pressed, for a form may have one that confirms.
function bodyOf(form, button) {
  const body = new URLSearchParams(new FormData(form));
  if (button?.name) body.set(button.name, button.value);
  return body.toString();
}

// In a practice and in the night, advice that was followed may have the same key.
const isSame = (one, other) => one.key === other.key && one.action === other.action;
const isKept = (one) => read().some((other) => isSame(one, other));
const forget = (one) => write(read().filter((other) => !isSame(one, other)));
const formOf = (one) => [...document.querySelectorAll("form.sent")].find((form) =>
  isSame(one, { key: form.elements.namedItem("key").value, action: new URL(form.action).pathname }));

function setPressable(form, can) {
  form.querySelectorAll("button").forEach((button) => (button.disabled = !can));
}

let typedAt = 0; // What was begun after a press is not to go when the press is answered late.
document.addEventListener("input", () => (typedAt = Date.now()));

let sending = false;
let again = 0; // The timer of the next try.
let isTold = false; // Whether a banner says that something is kept.
let stuck = null; // The first that waits, until the person has said what is to become of it.

async function send(isAsked = false) {
  if (stuck && !isSame(stuck, read()[0] || {})) unstick(); // Another tab has sent it.
  if (sending || (stuck && !isAsked)) return;
  sending = true;
  try {
    for (let one = read()[0]; one; one = read()[0]) {
      const body = new URLSearchParams(one.body);
      if (one.takesTime && !body.has("done-at") && Date.now() - one.at > LATE_MS) {
        const status = await compareClocks();
        if (status === STRANGER) return stick(one, true, "");
        if (status !== 200) return later(one, "");
        body.set("done-at", new Date(one.at - clockAhead).toISOString());
      }
      let answer;
      let page;
      try {
        answer = await fetch(one.action, {
          method: "POST", body, headers: { Accept: "text/html" }, signal: AbortSignal.timeout(PATIENCE_MS),
        });
        page = new DOMParser().parseFromString(await answer.text(), "text/html");
      } catch (unreachable) {
        if (!isKept(one)) continue; // Dropped, or sent by another tab, meanwhile.
        return later(one, "");
      }
      const isTaken = answer.redirected;
      if (!isTaken && !isKept(one)) continue;
      if (!isTaken && WAITS.includes(answer.status)) return later(one, sentence(page));
      const isElsewhere = isBusyElsewhere(one);
      if (!isTaken && (!REFUSED.includes(answer.status) || (isElsewhere && !isAsked))) {
        return stick(one, answer.status === STRANGER, sentence(page));
      }
      forget(one);
      unstick();
      // A complaint is shown once: on the page, or above a page that follows the night and would soon replace it.
      const said = sentence(page);
      const isShown = !isTaken || !isElsewhere;
      const isSoonReplaced = !isTaken && page.querySelector("[sse-connect]") !== null;
      if (isSoonReplaced) page.querySelector("main .complaint")?.remove();
      banner("link", isShown && !isSoonReplaced ? "" : said);
      isTold = false;
      if (isShown) show(page, isTaken ? answer.url : null);
      isAsked = false;
    }
    if (isTold) banner("link", "");
    isTold = false;
  } finally {
    sending = false;
  }
}

// What a page says of what was sent.
function sentence(page) {
  const said = page.querySelector(".said, .complaint")?.cloneNode(true);
  said?.querySelectorAll("a").forEach((link) => link.remove());
  return said ? said.textContent.trim().replace(/\s+/g, " ") : "";
}

// Whether the person has gone on to something that would be lost with the page: a complaint that is not of this press,
// or another form that was begun after it.
function isBusyElsewhere(one) {
  if (document.querySelector("main .complaint") && !formOf(one)) return true;
  return typedAt > one.at && [...document.querySelectorAll("main form")]
    .filter((form) => !read().some((kept) => formOf(kept) === form))
    .flatMap((form) => [...form.elements])
    .some((field) => field.type === "checkbox" ? field.checked !== field.defaultChecked
      : field.tagName === "SELECT" ? [...field.options].some((option, at) =>
          option.selected !== (option.defaultSelected || (at === 0 && !field.querySelector("[selected]"))))
      : field.type === "file" ? field.value !== ""
      : field.type !== "hidden" && field.tagName === "INPUT" && field.value !== field.defaultValue);
}

function later(one, why) {
  unstick();
  if (why) {
    offer(one, `“${one.what}” is kept here and sent again by itself. ${why}`);
  } else {
    const count = read().length;
    banner("link", count === 1
      ? "The laptop does not answer. Your entry is kept here and sent as soon as it does."
      : `The laptop does not answer. ${count} things you pressed are kept here and sent as soon as it does.`);
    isTold = true;
  }
  clearTimeout(again);
  again = setTimeout(send, 1000);
}

function stick(one, isStranger, why) {
  stuck = one;
  if (isStranger) {
    offer(one, `This device is not paired any more. What you pressed, “${one.what}”, is kept here: pair it again, and it is sent.`,
      "Pair again", () => location.assign("/"));
  } else {
    offer(one, `“${one.what}” was not taken, and is kept here. ${why}`);
  }
}

// What may become of the first that waits.
function offer(one, text, word = "Send again", act = () => send(true)) {
  banner("link", "");
  const panel = document.getElementById("stuck");
  panel.hidden = false;
  const said = panel.querySelector("p");
  if (said.textContent !== text) said.textContent = text;
  const retry = document.getElementById("stuck-again");
  retry.textContent = word;
  retry.onclick = act;
  document.getElementById("stuck-drop").onclick = () => {
    forget(one);
    const form = formOf(one);
    if (form) setPressable(form, true);
    unstick();
    send();
  };
}

function unstick() {
  stuck = null;
  document.getElementById("stuck").hidden = true;
}

window.addEventListener("storage", (event) => {
  if (event.key === outboxName) send();
});
send();
