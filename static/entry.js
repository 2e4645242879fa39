// Entering a hole: keys of the pad edit the line in the browser, the echo
// follows as it is typed, and what could not be sent is kept and sent again.
// Without this file the same keys post the form.
const form = document.querySelector("form.enter");

// Drafts: what this account typed and the server has not taken, by address.
const prefix = form ? `draft ${form.dataset.player} ` : "";
const draftOf = (address) => JSON.parse(localStorage.getItem(prefix + address) ?? "null");
const keep = (address, draft) => localStorage.setItem(prefix + address, JSON.stringify(draft));
const forget = (address) => localStorage.removeItem(prefix + address);
const kept = () => Object.keys(localStorage).filter((key) => key.startsWith(prefix)).map((key) => key.slice(prefix.length));

const send = (address, { sent, ...fields }) => fetch(address, {
  method: "POST",
  body: new URLSearchParams({ ...fields, press: "save" }),
});

// resend sends what waits, once each: the server takes a save of the same
// version and line that comes twice for one.
async function resend() {
  for (const address of kept()) {
    const draft = draftOf(address);
    if (!draft?.sent) continue;
    try {
      const answer = await send(address, draft);
      if (answer.ok) forget(address);
      if (answer.ok && address === form.getAttribute("action")) location.assign(answer.url);
    } catch {
      return; // still no connection
    }
  }
}

if (form) {
  const line = form.querySelector("#line");
  const echo = form.querySelector(".understood");
  const state = form.querySelector(".state");
  const address = form.getAttribute("action");
  const version = form.elements.version.value;
  const fields = () => Object.fromEntries(new FormData(form));
  let waiting, asked = 0;

  const ask = async (press) => {
    const mine = ++asked;
    const body = new URLSearchParams({ ...fields(), press });
    try {
      const answer = await fetch(form.dataset.echo, { method: "POST", body });
      if (!answer.ok || mine !== asked) return;
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      echo.replaceChildren(...page.querySelector(".understood").childNodes);
      if (press) {
        line.value = page.querySelector("#line").value;
        keep(address, fields());
      }
    } catch {
      // No connection: the text stays in the field, and the next key asks again.
    }
  };

  const draft = draftOf(address);
  if (draft && draft.version !== version) forget(address);
  else if (draft && draft.line !== line.value) {
    line.value = draft.line;
    state.textContent = "What you typed before and did not save is in the field again.";
    ask("");
  }
  line.setSelectionRange(line.value.length, line.value.length);

  line.addEventListener("input", () => {
    keep(address, fields());
    clearTimeout(waiting);
    waiting = setTimeout(() => ask(""), 150);
  });

  form.addEventListener("submit", async (event) => {
    if ((event.submitter?.value ?? "save") !== "save") {
      event.preventDefault();
      ask(event.submitter.value);
      return;
    }
    event.preventDefault();
    const saving = { ...fields(), sent: true };
    keep(address, saving);
    try {
      const answer = await send(address, saving);
      if (!answer.ok) {
        keep(address, fields());
        form.submit(); // the answer says what is wrong
        return;
      }
      forget(address);
      location.assign(answer.url);
    } catch {
      state.textContent = "Not saved: the connection dropped. What you typed is kept on this device and sent again when it is back.";
      state.classList.add("flash", "bad");
    }
  });

  addEventListener("online", resend);
  setInterval(resend, 15000);
  resend();
}
