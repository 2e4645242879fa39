// Holes saved without a connection. They are kept on this device by account, sent
// in the order they were saved, and dropped only when the server confirms them.
// What the server refuses (changed elsewhere, not understood) stays until the
// player decides.
//
// An unsent hole is { line, version, asked, par, length, index, name, at }
// and, when the server refused it, refused: "conflict", "problem" or "gone". A
// session of a drill waits in the same list, with its form as fields; its address
// ends with # and its name, since one drill may have several.

const player = document.body.dataset.player ?? "";
const waitPrefix = `wait ${player} `;
const draftPrefix = `draft ${player} `;

const read = (key) => {
  try {
    return JSON.parse(localStorage.getItem(key) ?? "null");
  } catch {
    return null; // written by something else
  }
};

// What this device last saved of a hole, { line, version, score }: a page that
// was kept for a dead connection may be older.
const knownPrefix = `saved ${player} `;
export const knownOf = (address) => read(knownPrefix + address);
const know = (address, { line, version, score }) => localStorage.setItem(knownPrefix + address, JSON.stringify({ line, version, score }));

// onlyRound forgets what was saved of other rounds than the one at an address.
export function onlyRound(round) {
  for (const address of under(knownPrefix)) if (!address.startsWith(round)) localStorage.removeItem(knownPrefix + address);
}

const under = (prefix) => Object.keys(localStorage).filter((key) => key.startsWith(prefix)).map((key) => key.slice(prefix.length));

export const draftOf = (address) => read(draftPrefix + address);
export const keepDraft = (address, draft) => localStorage.setItem(draftPrefix + address, JSON.stringify(draft));
export const dropDraft = (address) => localStorage.removeItem(draftPrefix + address);

export const waitingOf = (address) => read(waitPrefix + address);

// list returns the unsent holes in the order they were saved.
export const list = () => under(waitPrefix).map((address) => ({ address, ...waitingOf(address) })).sort((a, b) => a.at - b.at);

function changed() {
  dispatchEvent(new CustomEvent("waiting"));
}

// hold keeps a hole until the server has it.
export function hold(address, hole) {
  localStorage.setItem(waitPrefix + address, JSON.stringify({ at: Date.now(), ...hole }));
  changed();
}

// drop removes a hole: the server has it, or the player discards it.
export function drop(address) {
  localStorage.removeItem(waitPrefix + address);
  changed();
}

// forgetAll removes everything this account kept here.
export function forgetAll() {
  for (const key of Object.keys(localStorage)) {
    if ([waitPrefix, draftPrefix, knownPrefix].some((prefix) => key.startsWith(prefix))) localStorage.removeItem(key);
  }
}

// patience is how long to wait for an answer, in ms. The server takes a repeated
// save only once, so giving up too early loses nothing.
const patience = 10000;

// post saves a hole. It returns the answer of the server, { status, next,
// html … }, or null without a connection.
export async function post(address, { line, version, asked, par, length, index, fields: form }) {
  const fields = form ? { press: "save", ...form } : { press: asked ? "anyway" : "save", line, version };
  if (!form) for (const [name, value] of Object.entries({ asked, par, length, index })) if (value !== undefined && value !== "") fields[name] = value;
  try {
    const answer = await fetch(address, { method: "POST", headers: { Accept: "application/json" }, body: new URLSearchParams(fields), signal: AbortSignal.timeout(patience) });
    const type = answer.headers.get("Content-Type") ?? "";
    return { status: answer.status, ...(type.startsWith("application/json") ? await answer.json() : {}) };
  } catch {
    return null;
  }
}

// stored notes that the server has a hole.
export function stored(address, line, { version, score }) {
  know(address, { line, version, score });
  if (draftOf(address)?.line === line) dropDraft(address);
  drop(address);
}

// settle records the answer for an unsent hole, and reports whether the next one
// may be sent.
function settle(hole, answer) {
  const { address, ...kept } = hole;
  const now = waitingOf(address);
  if (!now || now.at !== hole.at) return true; // saved once more in the meantime
  switch (answer?.status) {
    case 200:
      if (hole.fields) drop(address);
      else stored(address, hole.line, answer);
      return true;
    case 400:
    case 404:
    case 409:
    case 422:
      hold(address, { ...kept, refused: { 404: "gone", 409: "conflict" }[answer.status] ?? "problem" });
      return true;
    default:
      return false; // no connection, signed out, or a server that cannot now
  }
}

let sending = false;
let pause = 5000;

// send sends the unsent holes one after the other. Its state afterwards is
// "sent", "offline", "signed-out".
export async function send() {
  if (sending || player === "") return;
  sending = true;
  try {
    for (const hole of list()) {
      if (hole.refused) continue;
      const answer = await post(hole.address, hole);
      send.state = { null: "offline", 401: "signed-out" }[answer && answer.status] ?? "sent";
      if (!settle(hole, answer)) break;
      pause = 5000;
    }
  } finally {
    sending = false;
    changed();
  }
}
send.state = "sent";

function again() {
  setTimeout(async () => {
    if (list().some((hole) => !hole.refused)) {
      pause = Math.min(pause * 2, 60000);
      await send();
    }
    again();
  }, pause);
}

const spelled = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

// count writes a number of holes in words.
export const count = (n) => `${spelled[n] ?? n} ${n === 1 ? "hole" : "holes"}`;

// counted writes how many holes and sessions of drills there are in words.
function counted(all) {
  const sessions = all.filter((item) => item.fields).length;
  const parts = [];
  if (all.length > sessions) parts.push(count(all.length - sessions));
  if (sessions > 0) parts.push(`${spelled[sessions] ?? sessions} ${sessions === 1 ? "session" : "sessions"} of practice`);
  return parts.join(" and ");
}

const capital = (text) => text[0].toUpperCase() + text.slice(1);

// sentence says what is unsent; empty for nothing.
export function sentence() {
  const asked = list().filter((hole) => hole.refused);
  const rest = list().filter((hole) => !hole.refused);
  const parts = [];
  if (rest.length > 0) parts.push(`${capital(counted(rest))} ${rest.length === 1 ? "is" : "are"} waiting to be sent.`);
  if (asked.length > 0) parts.push(`${capital(counted(asked))} ${asked.length === 1 ? "needs" : "need"} your answer.`);
  return parts.join(" ");
}

// show lists the unsent holes at the top of a page other than a hole's.
function show() {
  const bar = document.querySelector(".waiting-bar");
  if (!bar) return;
  const all = list();
  bar.hidden = all.length === 0;
  if (all.length === 0) return bar.replaceChildren();
  const say = document.createElement("p");
  say.textContent = sentence() + (send.state === "signed-out" ? " Sign in again to send them." : send.state === "offline" ? " You are offline." : "");
  const links = document.createElement("ul");
  for (const hole of all) {
    const item = document.createElement("li");
    if (hole.refused === "gone") {
      const gone = hole.fields ? "drill was removed" : hole.address.includes("/walked/") ? "round was sent or taken back" : "round was removed";
      item.append(`${hole.name}: its ${gone}; you entered ${hole.line} `);
      const button = document.createElement("button");
      button.className = "small-button";
      button.textContent = "Discard";
      button.addEventListener("click", () => drop(hole.address));
      item.append(button);
    } else {
      const link = document.createElement("a");
      link.href = hole.address;
      link.textContent = hole.name;
      item.append(link, hole.refused === "conflict" ? ": also saved in another window" : hole.refused === "problem" ? ": not understood yet" : "");
    }
    links.append(item);
  }
  bar.replaceChildren(say, links);
}

// guardSignOut sends unsent holes before the player signs out, asks before any
// are lost, and leaves nothing of this account on the device.
function guardSignOut(form) {
  let sure = false;
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    if (!sure && list().length > 0) await send();
    if (!sure && list().length > 0) {
      sure = true;
      form.querySelector("button").textContent = "Sign out and discard what is unsent";
      document.querySelector(".waiting-bar")?.scrollIntoView();
      return;
    }
    forgetAll();
    if (window.caches) for (const name of await caches.keys()) if (name.startsWith("holes ") || name.startsWith("card ")) await caches.delete(name);
    form.submit();
  });
}

if (player !== "") {
  addEventListener("waiting", show);
  addEventListener("online", send);
  addEventListener("storage", show);
  for (const form of document.querySelectorAll("form.sign-out")) guardSignOut(form);
  navigator.serviceWorker?.getRegistration().then((worker) => worker?.active?.postMessage({ player }));
  show();
  send();
  again();
}
