// Asks the service worker to keep the card to carry, and says when it is kept.
const card = document.querySelector(".carry-card");
const said = document.querySelector(".kept-words");

function kept(event) {
  if (event.data.kept !== location.pathname) return;
  said.textContent = "Kept on this phone: it opens without a connection. Signing out removes it.";
  said.hidden = false;
}

navigator.serviceWorker?.addEventListener("message", kept);
navigator.serviceWorker?.startMessages();
navigator.serviceWorker?.register("/worker.js").then(() => navigator.serviceWorker.ready)
  .then((worker) => worker.active?.postMessage({ player: document.body.dataset.player, card: location.pathname, needed: card.dataset.needed.split(" ") }))
  .catch(() => {}); // without TLS there is none
