// Entering a hole: keys of the pad edit the line in the browser, and the echo
// follows as it is typed. Without this file the same keys post the form.
const form = document.querySelector("form.enter");
if (form) {
  const line = form.querySelector("#line");
  const echo = form.querySelector(".understood");
  let waiting, asked = 0;
  line.setSelectionRange(line.value.length, line.value.length);

  const ask = async (press) => {
    const mine = ++asked;
    const body = new URLSearchParams({ line: line.value, version: form.elements.version.value, press });
    try {
      const answer = await fetch(form.dataset.echo, { method: "POST", body });
      if (!answer.ok || mine !== asked) return;
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      echo.replaceChildren(...page.querySelector(".understood").childNodes);
      if (press) line.value = page.querySelector("#line").value;
    } catch {
      // No connection: the text stays in the field, and the next key asks again.
    }
  };

  line.addEventListener("input", () => {
    clearTimeout(waiting);
    waiting = setTimeout(() => ask(""), 150);
  });
  form.addEventListener("click", (event) => {
    const key = event.target.closest("button.key");
    if (!key || key.value === "save") return;
    event.preventDefault();
    ask(key.value);
  });
}
