// Walks a round's trouble: "d" goes to the next double, "r" to where the next began,
// with shift to the one before. The keys work while the focus is in the list of
// trouble, or on what they led to, so that they take no key from anybody else.

const nav = document.querySelector(".trouble-links");
const lists = { d: [...nav.querySelectorAll('[data-walk="d"]')], r: [...nav.querySelectorAll('[data-walk="r"]')] };
const at = { d: -1, r: -1 };
let reached = null;

function go(key, step) {
  const links = lists[key];
  if (links.length === 0) return;
  at[key] = at[key] < 0 && step < 0 ? links.length - 1 : (at[key] + step + links.length) % links.length;
  const to = document.getElementById(links[at[key]].hash.slice(1));
  const more = to.closest("details") ?? to.querySelector("details");
  if (more) more.open = true;
  location.replace(links[at[key]].hash);
  to.tabIndex = -1;
  to.focus();
  reached = to;
}

for (const [key, name] of [["d", "Next double"], ["r", "Next start"]]) {
  if (lists[key].length === 0) continue;
  const button = document.createElement("button");
  button.className = "small-button";
  button.textContent = `${name} (${key})`;
  button.addEventListener("click", () => go(key, 1));
  nav.append(button);
}

document.addEventListener("keydown", (e) => {
  const key = e.key.toLowerCase();
  const here = document.activeElement;
  if (!(key in lists) || e.ctrlKey || e.altKey || e.metaKey || !(nav.contains(here) || (reached !== null && here === reached))) return;
  e.preventDefault();
  go(key, e.shiftKey ? -1 : 1);
});
