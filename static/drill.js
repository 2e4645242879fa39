// Writes down a session of a drill at the practice green: keys answer at once, the
// tries stay on this device while playing, and saving works without a connection.
// Without this file every key is a button that asks the server.
import { draftOf, keepDraft, dropDraft, hold, drop, list, post, send, sentence, waitingOf } from "./waiting.js";

const form = document.querySelector("form.session-form[data-name]");
if (form) begin();

function begin() {
  const address = location.pathname;
  const state = form.querySelector(".session-state");
  const counter = form.querySelector(".tally-count b");
  const goal = Number(form.dataset.goal);
  const names = ["tries", "each", "feet", "day", "minutes", "note", ...[...form.querySelectorAll(".count-row input")].map((input) => input.name)];
  const field = (name) => form.elements.namedItem(name);
  const used = names.filter((name) => field(name));
  let left = false; // the page is being left: what is stored must not come back as a draft

  // A name for a session that no other has. The page may be an old copy, so it
  // does not use the one that it came with.
  const fresh = () => [...crypto.getRandomValues(new Uint8Array(16))].map((n) => n.toString(16).padStart(2, "0")).join("");
  const fields = () => Object.fromEntries(["entered", ...used].map((name) => [name, field(name).value]));
  const written = used.filter((name) => name === "tries" || name === "note" || name.startsWith("count-"));
  const started = () => written.some((name) => field(name).value !== "");
  const tell = (text) => { state.textContent = text; };
  const keep = () => { if (!left) started() ? keepDraft(address, fields()) : dropDraft(address); };

  const templates = Object.fromEntries([...form.querySelectorAll("template[data-letter]")].map((t) => [t.dataset.letter, t]));
  const said = (letter) => templates[letter].content.querySelector(".visually-hidden").textContent;

  // draw shows the tries, or adds up the counts.
  function draw() {
    if (field("tries")) {
      const tries = [...field("tries").value];
      const open = Array(Math.max(goal - tries.length, 0)).fill("");
      form.querySelector(".try-row").replaceChildren(...[...tries, ...open].map((letter) => templates[letter].content.cloneNode(true)));
      counter.textContent = String(tries.length);
      const kinds = Object.keys(templates).filter((letter) => letter !== "");
      form.querySelector(".tally-so").textContent = kinds.map((letter) => [tries.filter((t) => t === letter).length, letter])
        .filter(([n, letter]) => n > 0 || letter === "m").map(([n, letter]) => `${n} ${said(letter)}`).join(", ");
      const undo = form.querySelector(".take-back-key");
      undo.replaceChildren("Undo ");
      if (tries.length > 0) undo.append(Object.assign(document.createElement("span"), { textContent: said(tries.at(-1)) }));
    }
    const total = form.querySelector(".count-total");
    if (total) {
      const counts = [...form.querySelectorAll(".count-row input")];
      const each = Number(field("each").value) || 0;
      total.querySelector("b").textContent = String(counts.reduce((sum, count) => sum + (Number(count.value) || 0), 0));
      total.querySelector("span").textContent = String(each * counts.length);
      for (const of of form.querySelectorAll(".count-of")) of.textContent = `of ${each}`;
    }
  }

  const most = 200; // tries of one session
  function key(press) {
    const [name, place] = press.split("-");
    if (name === "more" || name === "less") {
      const count = field(`count-${place}`);
      const each = Number(field("each").value) || 0;
      count.value = String(Math.min(Math.max((Number(count.value) || 0) + (name === "more" ? 1 : -1), 0), each));
    } else {
      const tries = field("tries");
      if (press === "undo") tries.value = tries.value.slice(0, -1);
      else if (tries.value.length < most) tries.value += press;
    }
    keep();
    draw();
    tell(navigator.onLine === false ? "Offline, kept on this phone." : "Kept on this phone until you save.");
  }

  // put fills the form.
  function put(from) {
    for (const name of used) if (from[name] !== undefined) field(name).value = from[name];
    if (from.entered) field("entered").value = from.entered;
    draw();
  }

  // again empties the form for the next session.
  function again() {
    put({ ...Object.fromEntries(written.map((name) => [name, ""])), minutes: "", entered: fresh() });
    today();
  }

  // today puts the day of this device into the form when the page is older.
  function today() {
    const now = new Date();
    const day = [now.getFullYear(), String(now.getMonth() + 1).padStart(2, "0"), String(now.getDate()).padStart(2, "0")].join("-");
    if (day > field("day").value) field("day").value = day;
  }

  const outcome = () => (field("tries") ? `${form.querySelector(".tally-so").textContent}` : form.querySelector(".count-total")?.textContent.trim() ?? field("note").value);

  // save sends the session, and keeps it here until the server has it. What the
  // server refuses is sent again as a page, which says why.
  async function save() {
    const sent = fields();
    const place = `${address}#${sent.entered}`;
    const session = { fields: sent, line: outcome(), name: form.dataset.name };
    const answer = await post(place, session);
    switch (answer?.status) {
      case 200:
        left = true;
        dropDraft(address);
        return location.assign(answer.next);
      case 400:
      case 404:
      case 409:
      case 422:
        keepDraft(address, sent);
        return form.submit();
      default:
        hold(place, session);
        dropDraft(address);
        again();
        return tell(answer?.status === 401 ? "You are signed out. The session is kept on this phone; sign in again to send it."
          : "Offline: the session is kept on this phone and sent when the connection is back.");
    }
  }

  form.addEventListener("submit", (event) => {
    const press = event.submitter?.value ?? "save";
    if (press === "feet") return keep();
    if (press === "replace" || press === "another") return sessionStorage.setItem("settling", address);
    event.preventDefault();
    if (press === "save") save();
    else key(press);
  });
  form.addEventListener("input", () => { keep(); draw(); });

  // The draft of a session that the player decided about is stored now.
  if (sessionStorage.getItem("settling") === address && new URLSearchParams(location.search).get("saved") === "session") dropDraft(address);
  sessionStorage.removeItem("settling");

  // A session that the server refused while it waited is opened from the list.
  const place = address + location.hash;
  const waits = location.hash.length > 1 ? waitingOf(place) : null;
  const draft = draftOf(address);
  if (form.dataset.conflict === "yes") {
    draw();
  } else if (waits?.fields) {
    put(waits.fields);
    keepDraft(address, waits.fields);
    drop(place);
    tell("This session could not be saved yet. Save it to see why.");
  } else if (draft && !form.querySelector("[aria-invalid], .fault-summary")) {
    put(draft);
    tell("What you wrote down before is back.");
  } else if (!started()) {
    field("entered").value = fresh();
    today();
    draw();
  }

  // Another window of this drill saved the session or wrote more: follow it.
  addEventListener("storage", (event) => {
    if (event.key === null || !event.key.startsWith("draft ") || !event.key.endsWith(` ${address}`)) return;
    const other = draftOf(address);
    if (other) put(other);
    else again();
  });

  function waiting() {
    const n = list().filter((item) => item.address.startsWith(`${address}#`)).length;
    if (n > 0 && !started()) tell(sentence());
    else if (n === 0 && /kept on this phone/.test(state.textContent) && !started()) tell("Sent.");
  }
  addEventListener("waiting", waiting);
  addEventListener("online", send);

  // The service worker keeps this page, so that it opens without a connection.
  function keepPage() {
    navigator.serviceWorker?.register("/worker.js").then(() => navigator.serviceWorker.ready)
      .then((worker) => worker.active?.postMessage({ player: document.body.dataset.player, pages: [address], needed: form.dataset.needed.split(" ") }))
      .catch(() => {}); // without TLS there is none
  }
  if (document.readyState === "complete") keepPage();
  else addEventListener("load", keepPage);
  form.dataset.script = "on";
}
