// The service worker: keeps the pages on which the holes of a round and the sessions
// of a drill are entered, and the files that they need, so that a round that was
// begun can be entered to its last hole, and a drill be written down, without a
// connection. It keeps nothing else, answers from what
// it keeps only when the network does not, and forgets when another player signs
// in; the page that signs out makes it forget as well.

const files = "files";
const pagesOf = (player) => `holes ${player}`;
const entryPage = /^\/rounds\/\d+\/holes\/\d+$|^\/players\/\d+\/drills\/[a-z0-9-]+$/;
const offlinePage = "/offline";

addEventListener("install", () => skipWaiting());
addEventListener("activate", (event) => event.waitUntil(clients.claim()));

const isPages = (name) => name.startsWith("holes ");

// only forgets the pages of every player but one.
async function only(player) {
  for (const name of await caches.keys()) if (isPages(name) && name !== pagesOf(player)) await caches.delete(name);
}

// fetched gets a page of this site that may be kept: not an error, and not the
// front page in the place of one that needs signing in.
async function fetched(address) {
  const answer = await fetch(address, { credentials: "same-origin" });
  return answer.ok && !answer.redirected ? answer : null;
}

// keepAll keeps pages of a player that are not kept yet, and files.
async function keepAll({ player, pages, needed }) {
  await only(player);
  const kept = await caches.open(files);
  const have = (await kept.keys()).map((request) => new URL(request.url).pathname);
  const wanted = [offlinePage, ...needed];
  if (wanted.some((file) => !have.includes(file))) { // another version of the app: pages of the old one would miss their files
    for (const file of have) if (!wanted.includes(file)) await kept.delete(file);
    for (const file of wanted) {
      const answer = await fetched(file);
      if (answer) await kept.put(file, answer);
    }
    await caches.delete(pagesOf(player));
  }
  const holes = await caches.open(pagesOf(player));
  for (const page of pages) {
    if (await holes.match(page)) continue;
    const answer = await fetched(page);
    if (answer) await holes.put(page, answer);
  }
}

addEventListener("message", (event) => {
  const { player, pages } = event.data;
  if (pages) event.waitUntil(keepAll(event.data).catch(() => {})); // the connection went: next time
  else if (player) event.waitUntil(only(player));
});

// patience is how long the network may take before a kept page is shown, in ms.
const patience = 5000;

// entry answers with a page from the network, and from what is kept when there is
// no connection or one that hangs.
async function entry(request) {
  const address = new URL(request.url).pathname;
  const plain = !address.includes("/drills/") || new URL(request.url).search === ""; // not what was just saved
  const network = fetch(request).then(async (answer) => {
    if (plain && answer.ok && !answer.redirected && answer.type === "basic") {
      const copy = answer.clone();
      for (const name of await caches.keys()) if (isPages(name)) await (await caches.open(name)).put(address, copy.clone());
    }
    return answer;
  });
  const hanging = new Promise((done) => setTimeout(() => kept(address).then(done), patience));
  try {
    return (await Promise.race([network, hanging])) ?? (await network);
  } catch {
    return (await kept(address)) ?? offline();
  }
}

const kept = (address) => caches.match(address, { ignoreSearch: true, ignoreVary: true });

const offline = async () => (await kept(offlinePage)) ?? Response.error();

addEventListener("fetch", (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== "GET" || address.origin !== location.origin) return;
  if (request.mode === "navigate") {
    event.respondWith(entryPage.test(address.pathname) ? entry(request) : fetch(request).catch(offline));
  } else if (address.pathname.startsWith("/static/")) {
    event.respondWith(caches.match(request, { ignoreVary: true }).then((found) => found ?? fetch(request)));
  }
});
