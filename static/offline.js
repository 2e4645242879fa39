// Lists what can be used without a connection: rounds, each with a link to its first
// hole that is not entered, drills, and the card to carry.
const list = document.querySelector(".kept-rounds");

const pageOf = async (kept, at) => new DOMParser().parseFromString(await (await kept.match(at)).text(), "text/html");

function offer(at, text) {
  const link = document.createElement("a");
  link.className = "button main-button";
  link.href = at;
  link.textContent = text;
  const item = document.createElement("li");
  item.append(link);
  list.append(item);
}

for (const name of await caches.keys()) {
  if (!name.startsWith("holes ")) continue;
  const player = name.slice("holes ".length);
  const holes = await caches.open(name);
  const rounds = new Map();
  for (const request of await holes.keys()) {
    const at = new URL(request.url).pathname;
    if (at.includes("/drills/")) {
      const form = (await pageOf(holes, at)).querySelector("form.session-form[data-name]");
      if (form) offer(at, `Write down ${form.dataset.name}`);
      continue;
    }
    const round = at.slice(0, at.lastIndexOf("/holes/"));
    if (!rounds.has(round)) rounds.set(round, []);
    rounds.get(round).push(at);
  }
  for (const pages of rounds.values()) {
    const page = await pageOf(holes, pages[0]);
    const form = page.querySelector("form.entry-form");
    if (!form) continue;
    const base = pages[0].slice(0, pages[0].lastIndexOf("/") + 1);
    const known = (at) => localStorage.getItem(`wait ${player} ${at}`) ?? localStorage.getItem(`saved ${player} ${at}`);
    const open = form.dataset.order.split(" ").map((n) => base + n).find((at) => {
      const mark = page.querySelector(`.hole-strip a[href="${at}"] .score-mark`);
      return mark && (mark.classList.contains("no-mark") || mark.classList.contains("open-mark")) && !known(at);
    });
    offer(open ?? pages[0], `Continue ${form.dataset.name.replace(/^Hole \d+, /, "")}`);
  }
}

for (const name of await caches.keys()) {
  if (!name.startsWith("card ")) continue;
  for (const request of await (await caches.open(name)).keys()) offer(new URL(request.url).pathname, "Card to carry");
}
