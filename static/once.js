// A form is sent once: until the answer is there, or has not come for a while, another
// press of its buttons does nothing. Without this file two presses send it twice.
const patience = 10000; // ms
const sent = new WeakSet();

document.addEventListener("submit", (event) => {
  const form = event.target;
  if (event.defaultPrevented || form.method !== "post") return;
  if (sent.has(form)) {
    event.preventDefault();
    return;
  }
  sent.add(form);
  setTimeout(() => sent.delete(form), patience);
});

// A page that comes back with the browser's button can be sent again.
addEventListener("pageshow", (event) => {
  if (event.persisted) for (const form of document.forms) sent.delete(form);
});
