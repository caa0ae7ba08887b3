// A CSV file cut into its records: a line break inside quotation marks does not end one.

/** The text of a file, whatever wrote it: UTF-8 or UTF-16 with a mark, else Windows-1252. */
export async function text(file) {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const mark = bytes[0] === 0xff && bytes[1] === 0xfe ? "utf-16le" : bytes[0] === 0xfe && bytes[1] === 0xff ? "utf-16be" : "utf-8";
  try {
    return new TextDecoder(mark, { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** Records as `{line, text}`, the header first; lines are counted from 1, blank ones left out. */
export function records(whole) {
  const found = [];
  let start = 0;
  let line = 1;
  let startLine = 1;
  let quoted = false;
  const end = (at) => {
    const record = whole.slice(start, at);
    if (record.trim() !== "") found.push({ line: startLine, text: record });
  };
  for (let i = 0; i < whole.length; i++) {
    const sign = whole[i];
    if (sign === '"') quoted = !quoted;
    if (sign !== "\n" && sign !== "\r") continue;
    const length = sign === "\r" && whole[i + 1] === "\n" ? 2 : 1;
    line++;
    if (!quoted) {
      end(i);
      start = i + length;
      startLine = line;
    }
    i += length - 1;
  }
  end(whole.length);
  return found;
}

/** A file of some of the records; the record of each of its lines, by line number. */
export function part(header, some) {
  const byLine = new Map();
  let line = header.text.split(/\r\n|\r|\n/).length + 1;
  for (const record of some) {
    byLine.set(line, record);
    line += record.text.split(/\r\n|\r|\n/).length;
  }
  return { text: `${[header, ...some].map((record) => record.text).join("\n")}\n`, byLine };
}
