// The field of the time zone: the browser knows where it is. An empty field is filled
// in, and saved with the form; beside another zone stands a button that takes the
// browser's. Without this file the name is typed, with suggestions.
const field = document.querySelector("input#zone");
const here = Intl.DateTimeFormat().resolvedOptions().timeZone;

function offer() {
  const button = document.createElement("button");
  button.type = "button";
  button.className = "small-button";
  button.textContent = `Use ${here}, the time zone of this device`;
  button.addEventListener("click", () => {
    field.value = here;
    button.remove();
    field.focus();
  });
  field.closest(".form-field").append(button);
}

if (field && here) {
  if (field.value === "") field.value = here;
  else if (field.value !== here) offer();
}
