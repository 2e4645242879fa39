// Cuts the two typefaces down to the letters that pages use, and writes them to
// the folder named on the command line with their licences. Each weight comes in
// two files: what English needs, and the further letters of names, which a
// browser fetches only when a page has one (see static/fonts.css).
//
// The licences reserve the names of the originals, so the smaller ones have names
// of their own.

import { copyFile, readFile, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { convert } from "fontverter";
import subset from "subset-font";

const here = dirname(fileURLToPath(import.meta.url));
const target = process.argv[2];

const range = (from, to) => String.fromCodePoint(...Array.from({ length: to - from + 1 }, (_, i) => from + i));

// sets are the letters of the two files, by the name that the source has for them.
const sets = {
  latin: { ending: "", letters: range(0x20, 0x7e) + "\u00a0£©°±½·×÷¡¿«»" + range(0xc0, 0xd6) + range(0xd8, 0xf6) + range(0xf8, 0xff) + "Œœ–—‘’‚“”„…‹›−€" },
  "latin-ext": { ending: "-more", letters: range(0x100, 0x131) + range(0x134, 0x137) + range(0x139, 0x13e) + range(0x141, 0x148) + range(0x14a, 0x151) + range(0x154, 0x17e) + "Șșț" },
};

// The features that stay: figures of one height and one width, and in sentences
// the spaces between letters.
const faces = [
  { name: "Book", source: "source-serif-4", features: { latin: ["kern", "lnum", "tnum"], "latin-ext": ["lnum"] } },
  { name: "Column", source: "ibm-plex-sans-condensed", features: { latin: ["lnum", "tnum"], "latin-ext": ["lnum"] } },
];

// notices are the copyright, the licence and its address in a font's own table of names.
const notices = [0, 13, 14];

// nameTable reads the notices of an old table and writes a new one, under a new name.
function nameTable(old, family, weight) {
  const kept = new Map([[1, family], [2, weight], [4, `${family} ${weight}`], [6, `${family}-${weight}`]]);
  for (let i = 0, at = 6; i < old.readUInt16BE(2); i++, at += 12) {
    const id = old.readUInt16BE(at + 6);
    const from = old.readUInt16BE(4) + old.readUInt16BE(at + 10);
    if (old.readUInt16BE(at) === 3 && notices.includes(id)) {
      kept.set(id, Buffer.from(old.subarray(from, from + old.readUInt16BE(at + 8))).swap16().toString("utf16le"));
    }
  }
  const ids = [...kept.keys()].sort((a, b) => a - b);
  const texts = ids.map((id) => Buffer.from(kept.get(id), "utf16le").swap16());
  const head = Buffer.alloc(6 + 12 * ids.length);
  head.writeUInt16BE(ids.length, 2);
  head.writeUInt16BE(head.length, 4);
  let offset = 0;
  ids.forEach((id, i) => {
    [3, 1, 0x409, id, texts[i].length, offset].forEach((value, k) => head.writeUInt16BE(value, 6 + 12 * i + 2 * k));
    offset += texts[i].length;
  });
  return Buffer.concat([head, ...texts]);
}

// renamed puts another table of names into a font. Sums over tables are left to
// the packing, which works them out anew.
function renamed(font, family, weight) {
  const tables = Array.from({ length: font.readUInt16BE(4) }, (_, i) => {
    const at = 12 + 16 * i;
    const from = font.readUInt32BE(at + 8);
    return { at, tag: font.toString("latin1", at, at + 4), data: font.subarray(from, from + font.readUInt32BE(at + 12)) };
  });
  const directory = Buffer.from(font.subarray(0, 12 + 16 * tables.length));
  const parts = [directory];
  let end = directory.length;
  for (const { at, tag, data } of tables) {
    const table = tag === "name" ? nameTable(data, family, weight) : data;
    directory.writeUInt32BE(end, at + 8);
    directory.writeUInt32BE(table.length, at + 12);
    const padding = Buffer.alloc(-table.length & 3);
    parts.push(table, padding);
    end += table.length + padding.length;
  }
  return Buffer.concat(parts);
}

for (const { name, source, features } of faces) {
  const from = join(here, "node_modules", "@fontsource", source);
  for (const [set, { ending, letters }] of Object.entries(sets)) {
    for (const weight of ["400", "700"]) {
      const whole = await readFile(join(from, "files", `${source}-${set}-${weight}-normal.woff2`));
      const cut = await subset(whole, letters, { targetFormat: "sfnt", noHinting: true, keepFeatures: features[set], preserveNameIds: notices });
      const packed = await convert(renamed(cut, `Strokeledger ${name}`, weight), "woff2");
      await writeFile(join(target, `${name.toLowerCase()}${ending}-${weight}.woff2`), packed);
    }
  }
  await copyFile(join(from, "LICENSE"), join(target, `${name.toLowerCase()}-licence.txt`));
}
