// What a key of the pad does to the line: text in, text out, at the caret.
// It knows words and letters, never what a line means; that is the server's.
// Without script the server does the same at the end of the line; one table of
// cases, testdata/pad.json, holds the two together.

const lies = "frbvg";

// state is { line, start, end }: the text and what is selected of it.

// wordAt finds the word that the caret stands in or at the end of.
function wordAt(line, caret) {
  let from = caret, to = caret;
  while (from > 0 && line[from - 1] !== " ") from--;
  while (to < line.length && line[to] !== " ") to++;
  return { from, to, text: line.slice(from, to) };
}

// growing tells whether a digit belongs to what stands before it: a letter or a
// number with no mark behind it, or yards of green.
function growing(word) {
  if (word === "" || /[/=\-+h]/.test(word)) return word === "=" || /^=\d+$/.test(word);
  return /[\d.]$/.test(word) || (word.length > 1 && word.endsWith("s")) || /^[frbvgt]~?$/.test(word);
}

const replace = (line, from, to, text, caret = from + text.length) => ({ line: line.slice(0, from) + text + line.slice(to), start: caret, end: caret });

// another puts a word after the one at the caret.
function another(line, word, text) {
  const gap = word.text === "" && (word.from === 0 || line[word.from - 1] === " ") ? "" : " ";
  const rest = line.slice(word.to);
  const done = replace(line, word.to, word.to, gap + text);
  if (rest !== "" && rest[0] !== " ") done.line = done.line.slice(0, done.end) + " " + done.line.slice(done.end);
  return done;
}

// lieOf is the letter of the lie that the shot of a word was played from.
function lieOf(line, word) {
  const words = line.slice(0, word.to).split(" ").reverse();
  for (const w of words) {
    if (/^[frbvgt]/.test(w)) return lies.includes(w[0]) ? w[0] : "";
  }
  return "";
}

const keep = (state) => state;

// inWord replaces a lie or a number in a word that is selected whole.
function inWord(line, word, key) {
  if (lies.includes(key)) {
    const lie = /^[frbvgt]/.test(word.text) ? 1 : 0;
    return replace(line, word.from, word.from + lie, key, word.to + 1 - lie);
  }
  const number = /\d[\d.,]*/.exec(word.text);
  if (!number) return null;
  const from = word.from + number.index;
  return replace(line, from, from + number[0].length, key);
}

const marks = ["s", "x", "w", "u", "u2", "d"];

// end does the keys that stand at the end of the line, wherever the caret is.
function end(state, key) {
  const line = state.line.trimEnd();
  const last = wordAt(line, line.length);
  switch (key) {
    case "h":
      if (last.text === "") return another(line, last, "h");
      if (/[h-]$|^=|^[frbvgt]$/.test(last.text)) return state;
      return last.text.includes("/") ? another(line, last, "h") : replace(line, line.length, line.length, "h");
    case "-":
      return last.text.endsWith("-") ? state : another(line, last, "-");
    default:
      return /^=|\s=/.test(line) ? state : another(line, last, "=");
  }
}

// press returns the line and the selection after a key; a key that it does not
// know leaves them as they are.
export function press(state, key) {
  const { line, start, end: to } = state;
  const word = wordAt(line, to);
  const selected = start < to && start === word.from && to === word.to;
  const digit = /^[\d.]$/.test(key);
  if (selected && (digit || (key.length === 1 && lies.includes(key)))) {
    const done = inWord(line, word, key);
    if (done) return done;
  }
  if (start < to && key === "back") return replace(line, start, to, "");
  if (key.length === 1 && lies.includes(key)) {
    return word.text.length === 1 && lies.includes(word.text) ? replace(line, word.from, word.to, key) : another(line, word, key);
  }
  if (digit) return growing(line.slice(word.from, to)) ? replace(line, to, to, key) : another(line, word, key);
  if (marks.includes(key)) {
    return word.text === "" || word.text.includes("/") ? another(line, word, key) : replace(line, word.to, word.to, key);
  }
  switch (key) {
    case "next": {
      const lie = lieOf(line, word);
      return lie === "" || word.text === lie ? keep(state) : another(line, word, lie);
    }
    case "t":
      return /^\s*t/.test(line) ? state : replace(line, 0, 0, line.trim() === "" ? "t" : "t ", 1);
    case "/":
      if (word.text.includes("/")) return state;
      return word.text === "" ? another(line, word, "/") : replace(line, word.to, word.to, "/");
    case "~": {
      const found = /^([frbvgt]?)(~?)/.exec(word.text);
      if (word.text === "" || found[2] !== "") return state;
      return replace(line, word.from + found[1].length, word.from + found[1].length, "~", to + 1);
    }
    case "back": {
      const done = to === 0 ? state : replace(line, to - [...line.slice(0, to)].at(-1).length, to, "");
      return done.end === done.line.length ? { line: done.line.trimEnd(), start: done.line.trimEnd().length, end: done.line.trimEnd().length } : done;
    }
    case "undo": // the last word; the page has a longer memory
      return replace(line, wordAt(line.trimEnd(), line.trimEnd().length).from, line.length, "");
    case "h":
    case "-":
    case "=":
      return end(state, key);
    default:
      return state;
  }
}
