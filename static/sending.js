// A long file: how much of it has been sent, and that it is being read.
// Without this file the form is sent as any other.
const form = document.querySelector("form.import-form");
form?.addEventListener("submit", (event) => {
  event.preventDefault();
  const said = form.querySelector(".sending-state");
  const request = new XMLHttpRequest();
  request.open("POST", form.action);
  request.upload.addEventListener("progress", (sent) => {
    if (sent.lengthComputable) said.textContent = `${Math.floor((100 * sent.loaded) / sent.total)}% sent`;
  });
  request.upload.addEventListener("load", () => { said.textContent = "Reading it…"; });
  request.addEventListener("load", () => {
    if (request.responseURL !== form.action) {
      location.assign(request.responseURL);
      return;
    }
    const page = new DOMParser().parseFromString(request.responseText, "text/html");
    document.querySelector("main").replaceWith(page.querySelector("main"));
    document.querySelector("main").focus();
  });
  request.addEventListener("error", () => { said.textContent = "The connection was lost. Upload the file again."; });
  request.send(new FormData(form));
});
