// The keys of a coach's phrases put them into the text at the caret. Without this file a
// key sends the form, which comes back with the phrase at its end.
document.addEventListener("click", (event) => {
  const key = event.target.closest("button[name=phrase]");
  const area = key?.form?.elements.body;
  if (!area) return;
  event.preventDefault();
  const before = area.value.slice(0, area.selectionStart);
  const gap = before === "" || /\s$/.test(before) ? "" : " ";
  area.setRangeText(gap + key.dataset.phrase, area.selectionStart, area.selectionEnd, "end");
  area.focus();
});
