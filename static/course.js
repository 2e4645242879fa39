// The form of a course: while it is typed, the line under its rows says how
// much of the card is filled in. Without this file the line says how much was
// when the page was made.
const form = document.querySelector("form.course-form");
const count = form?.querySelector(".card-count");

const metre = 1 / 0.9144; // in yards
const lengthText = /^\s*([0-9]{1,4}(?:[.,][0-9]{1,9})?)\s*(m|met(?:re|er)s?|y|yds?|yards?)?\.?\s*$/i;

// yards reads a length as the server does; 0 for none.
function yards(text, unit) {
  const parts = lengthText.exec(text);
  if (!parts) return 0;
  const metres = (parts[2] ?? unit).toLowerCase().startsWith("m");
  return Number(parts[1].replace(",", ".")) * (metres ? metre : 1);
}

function say() {
  const unit = form.querySelector(".nine-pair").dataset.unit;
  const holes = Number(form.elements.holes.value);
  let filled = 0, par = 0, length = 0;
  for (let n = 1; n <= 18; n++) {
    const value = (name) => form.elements[`${name}-${n}`].value.trim();
    const long = yards(value("length"), unit);
    if (!/^[3-6]$/.test(value("par")) || !long) continue;
    filled++;
    par += Number(value("par"));
    length += long;
  }
  const sum = Math.round(unit === "m" ? length / metre : length).toLocaleString("en");
  count.textContent = `${filled} of ${holes} ${holes === 1 ? "hole" : "holes"}, par ${par}, ${sum} ${unit}`;
}

if (form) {
  form.addEventListener("input", say);
  say();
}
