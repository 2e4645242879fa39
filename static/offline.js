// Lists the rounds whose entry pages this phone keeps, each at its first open
// hole.
const list = document.querySelector(".kept-rounds");

for (const name of await caches.keys()) {
  if (!name.startsWith("holes ")) continue;
  const player = name.slice("holes ".length);
  const holes = await caches.open(name);
  const rounds = new Map();
  for (const request of await holes.keys()) {
    const at = new URL(request.url).pathname;
    const round = at.slice(0, at.lastIndexOf("/holes/"));
    if (!rounds.has(round)) rounds.set(round, []);
    rounds.get(round).push(at);
  }
  for (const pages of rounds.values()) {
    const page = new DOMParser().parseFromString(await (await holes.match(pages[0])).text(), "text/html");
    const form = page.querySelector("form.entry-form");
    if (!form) continue;
    const base = pages[0].slice(0, pages[0].lastIndexOf("/") + 1);
    const known = (at) => localStorage.getItem(`wait ${player} ${at}`) ?? localStorage.getItem(`saved ${player} ${at}`);
    const open = form.dataset.order.split(" ").map((n) => base + n).find((at) => {
      const mark = page.querySelector(`.hole-strip a[href="${at}"] .score-mark`);
      return mark && (mark.classList.contains("no-mark") || mark.classList.contains("open-mark")) && !known(at);
    });
    const link = document.createElement("a");
    link.className = "button main-button";
    link.href = open ?? pages[0];
    link.textContent = `Continue ${form.dataset.name.replace(/^Hole \d+, /, "")}`;
    const item = document.createElement("li");
    item.append(link);
    list.append(item);
  }
}
