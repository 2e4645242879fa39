// Keeps what is being written about a round, a lesson or a question until the server
// has it: a text comes back into its field when the page is opened again after a save
// that did not arrive. A text is known by its account, the page and its id; the other
// fields of a form that asks for it (data-draft) by its account and its address. The keys
// of a coach's phrases put them into the text at the caret; without this file a key sends
// the form, which comes back with the phrase at its end.

const player = document.body.dataset.player;
const texts = document.querySelectorAll("textarea.prose-input");
const under = (field) => `draft ${player} ${location.pathname} ${field.id}`;
const ofForm = (form) => `draft ${player} ${form.getAttribute("action")}`;
const pending = "draft sent"; // the drafts that the form which was sent last stands for

// A page that says that something was saved answers the form that was sent last.
const last = JSON.parse(sessionStorage.getItem(pending) ?? "[]");
if (new URLSearchParams(location.search).has("saved")) for (const key of last) localStorage.removeItem(key);
sessionStorage.removeItem(pending);

// came has the drafts of an earlier page that a form stands for: the server sent the form
// back, and what was kept of it before goes when it is saved at last.
const came = new WeakMap();
const sentBack = document.querySelector("main [aria-invalid=true], main .fault-summary") !== null;

function remember(form, key) {
  came.set(form, [...(came.get(form) ?? []), key]);
}

// say tells below a field that what is in it is not saved.
function say(field) {
  for (let fold = field.closest("details"); fold !== null; fold = fold.parentElement.closest("details")) fold.open = true;
  const said = document.createElement("p");
  said.className = "quiet";
  said.setAttribute("role", "status");
  said.textContent = "What you had written is back. It is not saved yet.";
  field.after(said);
}

for (const field of texts) {
  const key = under(field);
  const kept = localStorage.getItem(key);
  const own = last.find((other) => other !== key && other.endsWith(` ${field.id}`));
  if (own !== undefined && field.form && localStorage.getItem(own)?.trim() === field.defaultValue.trim()) remember(field.form, own);
  else if (kept !== null && field.value === field.defaultValue && field.getAttribute("aria-invalid") === null && kept !== field.value) {
    field.value = kept;
    say(field);
  }
  field.addEventListener("input", () => {
    if (field.value === field.defaultValue) localStorage.removeItem(key);
    else localStorage.setItem(key, field.value);
  });
  if (field.form) remember(field.form, key);
}

// fieldsOf are the fields of a form other than its texts, and nameOf what each is kept
// under. Hidden ones are kept where they say over what the others are typed (data-over),
// so that a draft never passes for newer than it is.
const kinds = /^(text|date|time|number|select-one|checkbox)$/;
const fieldsOf = (form) => [...form.elements].filter((field) => kinds.test(field.type) || "over" in field.dataset);
const nameOf = (field) => (field.type === "checkbox" ? `${field.name}=${field.value}` : field.name);
const now = (field) => (field.type === "checkbox" ? field.checked : field.value);

function before(field) {
  if (field.type === "checkbox") return field.defaultChecked;
  if (field.type === "select-one") return ([...field.options].find((option) => option.defaultSelected) ?? field.options[0])?.value;
  return field.defaultValue;
}

function changedIn(form) {
  const all = {};
  let changed = false;
  for (const field of fieldsOf(form)) {
    const over = "over" in field.dataset;
    if (over || now(field) !== before(field)) all[nameOf(field)] = now(field);
    changed ||= !over && now(field) !== before(field);
  }
  return changed ? all : null;
}

for (const form of document.querySelectorAll("form[data-draft]")) {
  const key = ofForm(form);
  const kept = sentBack ? null : JSON.parse(localStorage.getItem(key) ?? "null");
  let first = null;
  for (const field of kept === null ? [] : fieldsOf(form)) {
    const value = kept[nameOf(field)];
    if (value === undefined || value === now(field)) continue;
    if (field.type === "checkbox") field.checked = value;
    else field.value = value;
    if (!("over" in field.dataset)) first ??= field;
  }
  if (first !== null) say(first);
  const keep = () => {
    const all = changedIn(form);
    if (all === null) localStorage.removeItem(key);
    else localStorage.setItem(key, JSON.stringify(all));
  };
  form.addEventListener("input", keep);
  form.addEventListener("change", keep);
  remember(form, key);
}

document.addEventListener("submit", (event) => {
  const keys = came.get(event.target);
  if (keys !== undefined && !event.defaultPrevented) sessionStorage.setItem(pending, JSON.stringify(keys));
});

document.addEventListener("click", (event) => {
  const key = event.target.closest("button[name=phrase]");
  const area = key?.form?.elements.body;
  if (!area) return;
  event.preventDefault();
  const before = area.value.slice(0, area.selectionStart);
  const gap = before === "" || /\s$/.test(before) ? "" : " ";
  area.setRangeText(gap + key.dataset.phrase, area.selectionStart, area.selectionEnd, "end");
  area.dispatchEvent(new Event("input"));
  area.focus();
});
