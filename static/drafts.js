// Keeps what is being written about a round, a lesson or a question until the server
// has it: a text comes back into its field when the page is opened again after a save
// that did not arrive. A field is known by its account, the page and its id. The keys of
// a coach's phrases put them into the text at the caret; without this file a key sends
// the form, which comes back with the phrase at its end.

const player = document.body.dataset.player;
const fields = document.querySelectorAll("textarea.prose-input");
const under = (field) => `draft ${player} ${location.pathname} ${field.id}`;

// A page that says that something was saved answers the text that was sent last.
const sent = sessionStorage.getItem("draft sent");
if (sent !== null && new URLSearchParams(location.search).has("saved")) localStorage.removeItem(sent);
if (document.readyState !== "loading" && sent !== null) sessionStorage.removeItem("draft sent");

for (const field of fields) {
  const key = under(field);
  const kept = localStorage.getItem(key);
  if (kept !== null && field.value === field.defaultValue && field.getAttribute("aria-invalid") === null && kept !== field.value) {
    field.value = kept;
    for (let fold = field.closest("details"); fold !== null; fold = fold.parentElement.closest("details")) fold.open = true;
    const said = document.createElement("p");
    said.className = "quiet";
    said.setAttribute("role", "status");
    said.textContent = "What you had written is back. It is not saved yet.";
    field.after(said);
  }
  field.addEventListener("input", () => {
    if (field.value === field.defaultValue) localStorage.removeItem(key);
    else localStorage.setItem(key, field.value);
  });
  field.form?.addEventListener("submit", () => sessionStorage.setItem("draft sent", key));
}

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
