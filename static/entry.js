// Entering a hole. The keys of the pad edit the line here, at once; the server
// is asked only how the line reads, and the newest answer wins. What is saved
// without a connection waits on this device. Without this file the same keys
// post the form.
import { press } from "./keys.js";
import { count, draftOf, drop, dropDraft, hold, keepDraft, knownOf, list, onlyRound, post, send, sentence, stored, waitingOf } from "./waiting.js";

const form = document.querySelector("form.entry-form");
const field = form.elements.line;
const rows = form.querySelector(".shot-rows");
const total = form.querySelector(".total-line");
const state = form.querySelector(".saved-state");
const address = form.getAttribute("action");
const round = address.slice(0, address.lastIndexOf("/") + 1);
const name = form.dataset.name;
const savedState = state.textContent;
const card = ["par", "length", "index"]; // asked for while nobody has said them
const input = (name) => form.querySelector(`input[name="${name}"]`);

let version = form.elements.version.value;
let asked = ""; // the line whose questions were answered
let theirs = version; // the version that another window saved
let past = []; // what the line was before each key, for Undo
let offline = false;

const fields = () => {
  const all = { line: field.value, version };
  for (const part of card) if (input(part)) all[part] = input(part).value;
  return all;
};

// The state of the page in a line: what waits, whether there is a connection.
function tell(text, bad = false) {
  state.classList.toggle("offline-state", offline || send.state === "offline" || bad);
  state.textContent = text;
}

function tellState() {
  const waits = sentence();
  if (send.state === "signed-out" && waits) {
    tell(`You are signed out. ${waits} `, true);
    state.append(linkTo(address, "Sign in and send"));
  } else if (offline || send.state === "offline") tell(waits ? `Offline, kept on this phone: ${waits[0].toLowerCase()}${waits.slice(1)}` : "Offline: what you save is kept on this phone.");
  else tell(waits || savedState, waits !== "");
  const asks = list().find((hole) => hole.refused && hole.address !== address);
  if (asks) state.append(" ", linkTo(asks.address, "Open it"));
  strip();
}

function linkTo(at, text) {
  const link = document.createElement("a");
  link.href = at;
  link.textContent = text;
  return link;
}

// strip marks the holes that wait, and those saved since a kept page was made.
function strip() {
  for (const link of form.querySelectorAll(".hole-strip a[href]")) {
    const at = link.getAttribute("href");
    const waits = waitingOf(at);
    const known = knownOf(at);
    link.parentElement.classList.toggle("waiting-hole", waits !== null);
    const mark = link.querySelector(".score-mark");
    if (at !== address && mark.classList.contains("no-mark") && (waits || known)) {
      mark.classList.remove("no-mark");
      mark.textContent = waits?.score ?? known?.score ?? "?";
    }
  }
}

// How the line reads.
let asking = null;
let later = 0;

async function read() {
  asking?.abort();
  asking = new AbortController();
  const mine = asking;
  const line = field.value;
  try {
    const answer = await fetch(form.dataset.echo, { method: "POST", headers: { Accept: "application/json" }, body: new URLSearchParams(fields()), signal: mine.signal });
    if (mine.signal.aborted) return;
    offline = false;
    if (answer.status === 401) send.state = "signed-out";
    if (answer.ok) showReading(line, await answer.json());
    tellState();
  } catch {
    if (mine.signal.aborted) return;
    offline = true;
    unread(line);
    tellState();
  }
}

const readSoon = () => {
  clearTimeout(later);
  later = setTimeout(read, 150);
};

function put(html) {
  const page = new DOMParser().parseFromString(html, "text/html");
  rows.replaceChildren(...page.querySelector(".shot-rows").childNodes);
  const said = page.querySelector(".total-line");
  total.className = said.className;
  total.replaceChildren(...said.childNodes);
  button("save").classList.toggle("ready-key", said.dataset.ready === "yes");
  button("h").classList.toggle("lit-key", said.dataset.holed === "yes");
  for (const name of ["score", "holed", "ready"]) total.dataset[name] = said.dataset[name] ?? "";
  total.dataset.line = field.value;
  upgrade();
}

function showReading(line, { html }) {
  if (line !== field.value) return; // typed on: the next answer comes
  put(html);
  field.removeAttribute("aria-invalid");
  rows.scrollTop = 0; // the newest row lies on the total
}

// unread shows a line as it was typed, since nobody can say how it reads.
function unread(line) {
  const table = document.createElement("table");
  table.className = "shots-so-far";
  const body = table.createTBody();
  line.trim().split(/\s+/).filter(Boolean).forEach((word, i) => {
    const row = body.insertRow();
    const head = document.createElement("th");
    head.scope = "row";
    head.textContent = i + 1;
    const code = document.createElement("code");
    code.textContent = word;
    row.append(head);
    row.insertCell().append(code);
    row.cells[1].className = "text-cell";
  });
  const stack = document.createElement("div");
  stack.append(table);
  rows.replaceChildren(stack);
  total.className = "total-line";
  total.dataset.score = "";
  const say = document.createElement("span");
  say.className = "total-state";
  say.textContent = "As you typed it. It is checked when you are back online";
  total.replaceChildren(say);
  button("save").classList.toggle("ready-key", /[h-]$|^=/.test(line.trim()));
}

const button = (key) => form.querySelector(`button[name="press"][value="${key}"]`);

// upgrade makes buttons of the rows: a tap puts the caret into their words.
function upgrade() {
  for (const row of rows.querySelectorAll("tr[data-from]")) {
    const say = row.querySelector(".shot-words");
    const tap = document.createElement("button");
    tap.type = "button";
    tap.className = "row-button";
    tap.append(...say.childNodes);
    say.replaceWith(tap);
  }
  markRow();
}

// markRow marks the row whose word the caret stands in, unless it is the last.
function markRow() {
  const at = field.selectionEnd;
  for (const row of rows.querySelectorAll("tr[data-from]")) {
    const here = Number(row.dataset.from) <= at && at <= Number(row.dataset.to) && row.dataset.from !== "";
    row.classList.toggle("caret-row", here);
    const tap = row.querySelector(".row-button");
    if (here) tap?.setAttribute("aria-current", "true");
    else tap?.removeAttribute("aria-current");
  }
}

rows.addEventListener("click", (event) => {
  const row = event.target.closest("tr[data-from]");
  if (!row) return;
  field.focus();
  field.setSelectionRange(Number(row.dataset.from), Number(row.dataset.to));
  markRow();
});

// edited is done whenever the line is another.
function edited() {
  leaving = false;
  asked = "";
  keepDraft(address, fields());
  markRow();
  readSoon();
}

function key(name) {
  const before = { line: field.value, start: field.selectionStart, end: field.selectionEnd };
  let after;
  if (name === "undo" && past.length > 0) after = past.pop();
  else {
    after = press(before, name);
    if (after.line !== before.line) past.push(before);
  }
  field.value = after.line;
  field.setSelectionRange(after.start, after.end);
  for (const tray of form.querySelectorAll("details.more-keys")) tray.open = false;
  typing(name === "/");
  if (after.line !== before.line) edited();
}

// typing gives the phone's keyboard back where a club or a word is typed.
function typing(yes) {
  field.inputMode = yes || !matchMedia("(pointer: coarse)").matches ? "text" : "none";
  if (yes) field.focus();
}

// next is the hole after this one, in the order of play, that is neither
// saved nor waiting; the round's statement after the last.
function next() {
  const order = form.dataset.order.split(" ");
  const here = order.indexOf(address.slice(address.lastIndexOf("/") + 1));
  for (const n of [...order.slice(here + 1), ...order.slice(0, here)]) {
    const link = form.querySelector(`.hole-strip a[href="${round}${n}"]`);
    const open = link?.querySelector(".score-mark.no-mark, .score-mark.open-mark");
    if (open && !waitingOf(round + n) && !knownOf(round + n)) return round + n;
  }
  return null;
}

let saving = false;

async function save() {
  if (saving) return;
  saving = true;
  clearTimeout(later);
  asking?.abort();
  const hole = { ...fields(), asked, name, score: total.dataset.line === field.value ? total.dataset.score : "" };
  hold(address, hole);
  tell("Saving…");
  const answer = await post(address, hole);
  saving = false;
  switch (answer?.status) {
    case 200:
      stored(address, hole.line, answer);
      location.assign(answer.next);
      return;
    case 409:
    case 422:
      drop(address); // it is in the field, and in the draft
      keepDraft(address, fields());
      refuse(answer);
      return;
    case 401:
      send.state = "signed-out";
      tellState();
      return;
    default:
      offline = !answer;
      goOn();
  }
}

let leaving = false; // this hole was saved and waits; the page goes on once it is sent

// goOn leads to the next hole while this one waits, if its page is kept.
async function goOn() {
  leaving = true;
  const to = next();
  tellState();
  if (to && offline && (await isKept(to))) return location.assign(to);
  if (!to) tell(`All holes are kept on this phone: ${count(list().length)} to send when you are back online.`, true);
  else if (offline) tell("Offline: this hole is kept on this phone. The next one opens once it is sent.", true);
  else tell("The server is not responding. This hole is kept on this phone and will be sent again.", true);
}

// isKept tells whether a page opens without a connection; without TLS no page
// is kept.
async function isKept(page) {
  return Boolean(navigator.serviceWorker?.controller && (await caches.match(page, { ignoreSearch: true, ignoreVary: true })));
}

function arrived() {
  if (leaving && waitingOf(address)?.refused) location.reload(); // both versions, or what is wrong, are shown then
  else if (leaving && !waitingOf(address)) location.assign(next() ?? round.replace(/\/holes\/$/, ""));
}

// refuse shows a question, a fault or another version in the place of the rows.
function refuse(answer) {
  put(answer.html);
  tellState();
  if (answer.version !== undefined) theirs = String(answer.version);
  const wrong = answer.field ? input(answer.field) : answer.status === 422 && !rows.querySelector(".question") ? field : null;
  wrong?.setAttribute("aria-invalid", "true");
  (wrong ?? rows.querySelector("[role=alert] button"))?.focus();
}

form.addEventListener("submit", (event) => {
  const pressed = event.submitter?.value ?? "save";
  event.preventDefault();
  switch (pressed) {
    case "save":
      return save();
    case "anyway":
      asked = field.value;
      return save();
    case "mend": {
      const { from, to } = event.submitter.dataset;
      field.focus();
      field.setSelectionRange(Number(from), Number(to));
      return read();
    }
    case "mine":
      version = theirs;
      return save();
    case "theirs":
      dropDraft(address);
      drop(address);
      return location.reload();
    case "keyboard":
      for (const tray of form.querySelectorAll("details.more-keys")) tray.open = false;
      return typing(true);
    default:
      return key(pressed);
  }
});

// A key keeps the caret where it is, and the phone's keyboard away.
form.querySelector(".key-pad").addEventListener("pointerdown", (event) => {
  if (event.target.closest("button")) event.preventDefault();
});

field.addEventListener("input", edited);
field.addEventListener("select", markRow);
document.addEventListener("selectionchange", () => document.activeElement === field && markRow());
for (const part of card) input(part)?.addEventListener("input", () => keepDraft(address, fields()));

// What the field begins with: a save that waits, what was saved since this page
// was kept, or what was typed before and not saved.
function begin() {
  const waits = waitingOf(address);
  const known = knownOf(address);
  const draft = draftOf(address);
  const touched = field.value !== field.defaultValue; // a letter typed before this ran
  let line = field.defaultValue;
  if (known && Number(known.version) > Number(version)) ({ line, version } = { line: known.line, version: String(known.version) });
  let from = null;
  if (waits) from = waits;
  else if (draft && (draft.line !== line || draft.par !== undefined)) from = draft;
  if (from && !touched) {
    for (const part of card) if (input(part) && from[part] !== undefined) input(part).value = from[part];
    line = from.line;
  }
  if (!touched && field.value !== line) field.value = line;
  const older = from && String(from.version) !== String(version) && from.line !== form.dataset.saved;
  field.setSelectionRange(field.value.length, field.value.length);
  form.elements.version.value = version;
  if (older) conflict(from);
  else if (from && !touched && !rows.querySelector("[role=alert]")) read();
  if (waits && !older && waits.refused) save();
  return from && !waits ? "What you typed before without saving is back in the field." : "";
}

// conflict asks the server to set both versions side by side.
async function conflict(from) {
  const answer = await post(address, { ...fields(), version: from.version });
  if (answer?.status === 409 || answer?.status === 422) {
    drop(address);
    keepDraft(address, { ...fields(), version: from.version });
    refuse(answer);
  } else if (answer?.status === 200) {
    stored(address, field.value, answer);
    location.reload();
  }
}

// keep asks the service worker to keep the pages of this round.
function keep() {
  const pages = [...form.querySelectorAll(".hole-strip li:not(.turn-link) a")].map((link) => link.getAttribute("href"));
  const needed = form.dataset.needed.split(" ");
  navigator.serviceWorker?.register("/worker.js").then(() => navigator.serviceWorker.ready)
    .then((worker) => worker.active?.postMessage({ player: document.body.dataset.player, pages, needed }))
    .catch(() => {}); // without TLS there is none
}

typing(false);
onlyRound(round);
if (!form.querySelector(".conflict-notice")) {
  const said = begin();
  upgrade();
  tellState();
  if (said) tell(said);
}
for (const only of form.querySelectorAll("[data-script]")) only.hidden = false;
addEventListener("waiting", () => { arrived(); tellState(); });
addEventListener("online", () => { offline = false; read(); });
addEventListener("offline", () => { offline = true; tellState(); });
if (document.readyState === "complete") keep();
else addEventListener("load", keep);
form.dataset.script = "on";
