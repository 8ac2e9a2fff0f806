"use strict";
// What was pressed is kept here until the laptop has taken it, or said why not; its key makes sending it twice harmless.
// What it neither takes nor refuses stays until the person decides.

const LATE_MS = 5000; // What was pressed longer ago keeps the time at which it was.
const WAITS = [408, 429, 502, 503, 504]; // Not now, says the laptop: asked again by itself.
const REFUSED = [409, 422]; // Heard, and not logged: the page that comes says why and holds what was typed.

const outboxName = "polewright-outbox";
const read = () => JSON.parse(localStorage.getItem(outboxName) || "[]");
const write = (waiting) => localStorage.setItem(outboxName, JSON.stringify(waiting));

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
      what: (form.closest("section")?.querySelector("h2") || form.querySelector("button")).textContent.trim(),
    });
    write(waiting);
  }
  setPressable(form, false);
  send();
});

function setPressable(form, can) {
  form.querySelectorAll("button").forEach((button) => (button.disabled = !can));
}

let typedAt = 0; // What was begun after a press is not to go when the press is answered late.
document.addEventListener("input", () => (typedAt = Date.now()));

const formOf = (key) =>
  [...document.querySelectorAll("form.sent")].find((form) => form.elements.namedItem("key").value === key);

let sending = false;
let again = 0; // The timer of the next try.
let isStuck = false; // Until the person has said what is to become of the first that waits.

async function send(asIsAsked = false) {
  if (sending || (isStuck && !asIsAsked)) return;
  sending = true;
  try {
    while (read().length > 0) {
      const one = read()[0];
      const body = new URLSearchParams(one.body);
      if (one.takesTime && !body.has("done-at") && Date.now() - one.at > LATE_MS) {
        if (!(await compareClocks())) return later(one, "");
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
        return later(one, "");
      }
      const isTaken = answer.redirected;
      if (!isTaken && WAITS.includes(answer.status)) return later(one, sentence(page));
      const isTyping = typedAt > one.at && isHalfFilled(one.key);
      if (!isTaken && (!REFUSED.includes(answer.status) || (isTyping && !asIsAsked))) {
        return stick(one, answer.status === 401, sentence(page));
      }
      write(read().filter((other) => other.key !== one.key));
      unstick();
      if (isTyping && isTaken) {
        banner("link", sentence(page));
      } else {
        banner("link", "");
        show(page, isTaken ? answer.url : null);
      }
    }
  } finally {
    sending = false;
  }
}

// What a page says of what was sent.
function sentence(page) {
  const said = page.querySelector(".said, .complaint");
  said?.querySelectorAll("a").forEach((link) => link.remove());
  return said ? said.textContent.trim().replace(/\s+/g, " ") : "";
}

// Whether another form than the one that was sent holds something that would be lost with the page.
function isHalfFilled(key) {
  return [...document.querySelectorAll("main form")]
    .filter((form) => form !== formOf(key))
    .flatMap((form) => [...form.elements])
    .some((field) => field.type === "checkbox" ? field.checked !== field.defaultChecked
      : field.tagName === "SELECT" ? [...field.options].some((option, at) =>
          option.selected !== (option.defaultSelected || (at === 0 && !field.querySelector("[selected]"))))
      : field.type === "file" ? field.value !== ""
      : field.type !== "hidden" && field.tagName === "INPUT" && field.value !== field.defaultValue);
}

function later(one, why) {
  const count = read().length;
  if (why) {
    offer(one, `“${one.what}” is kept here and sent again by itself. ${why}`);
  } else {
    unstick();
    banner("link", count === 1
      ? "The laptop does not answer. What you pressed is kept here and sent as soon as it does."
      : `The laptop does not answer. ${count} things you pressed are kept here and sent as soon as it does.`);
  }
  clearTimeout(again);
  again = setTimeout(send, 1000);
}

function stick(one, isStranger, why) {
  isStuck = true;
  if (isStranger) {
    offer(one, `This device is not paired any more. What you pressed, “${one.what}”, is kept here: pair it again, and it is sent.`,
      "Pair it again", () => location.assign("/"));
  } else {
    offer(one, `“${one.what}” was not taken, and is kept here. ${why}`);
  }
}

// What may become of the first that waits.
function offer(one, text, word = "Send it again", act = () => send(true)) {
  banner("link", "");
  const stuck = document.getElementById("stuck");
  stuck.hidden = false;
  const said = stuck.querySelector("p");
  if (said.textContent !== text) said.textContent = text;
  const retry = document.getElementById("stuck-again");
  retry.textContent = word;
  retry.onclick = act;
  document.getElementById("stuck-drop").onclick = () => {
    write(read().filter((other) => other.key !== one.key));
    const form = formOf(one.key);
    if (form) setPressable(form, true);
    unstick();
    send();
  };
}

function unstick() {
  isStuck = false;
  document.getElementById("stuck").hidden = true;
}
