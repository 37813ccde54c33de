// Which letters are these bytes? A byte order mark says so; without one, text that is valid UTF-8 is UTF-8 (RFC 3629: other
// encodings are hardly ever valid by accident), zero bytes at every other place are UTF-16, and the rest is taken for
// windows-1252, which old spreadsheets and gauges write. What was taken is always said.

import { encodings, type Encoding } from './table.js';

export type DecodedText =
  | { readonly ok: true; readonly text: string; readonly encoding: Encoding; readonly marked: boolean }
  | { readonly ok: false; readonly message: string };

/** `stated`: what the mapping says, which is then not guessed. */
export function decodeText(bytes: Uint8Array, stated?: Encoding): DecodedText {
  const mark = byteOrderMark(bytes);
  if (mark && stated && mark !== stated)
    return { ok: false, message: `the mapping says ${stated}, and the file is marked as ${mark}` };
  const encoding = mark ?? stated ?? likely(bytes);
  if (encoding === undefined)
    return {
      ok: false,
      message: `is no text in ${encodings.join(', ')}; save it as CSV in UTF-8, or as .xlsx`,
    };
  const text = decode(bytes, encoding);
  if (text === undefined || (encoding !== 'windows-1252' && text.includes('\0')))
    return { ok: false, message: `does not read as ${encoding}; save it as CSV in UTF-8, or as .xlsx` };
  return { ok: true, text, encoding, marked: mark !== undefined };
}

function byteOrderMark(bytes: Uint8Array): Encoding | undefined {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return 'utf-8';
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  return undefined;
}

function likely(bytes: Uint8Array): Encoding | undefined {
  const some = bytes.subarray(0, 4096);
  const zeros = [0, 0];
  for (const [i, byte] of some.entries()) if (byte === 0) zeros[i % 2] = (zeros[i % 2] ?? 0) + 1;
  const [even = 0, odd = 0] = zeros;
  if (odd > some.length / 4 && even === 0) return 'utf-16le';
  if (even > some.length / 4 && odd === 0) return 'utf-16be';
  if (bytes.includes(0)) return undefined;
  if (decode(bytes, 'utf-8') !== undefined) return 'utf-8';
  // Bytes that windows-1252 gives no letter to, and control characters, are no text that anybody typed.
  const foreign = bytes.some(
    (byte) => [0x81, 0x8d, 0x8f, 0x90, 0x9d].includes(byte) || (byte < 32 && !blank(byte)),
  );
  return foreign ? undefined : 'windows-1252';
}

function blank(byte: number): boolean {
  return byte === 9 || byte === 10 || byte === 13;
}

function decode(bytes: Uint8Array, encoding: Encoding): string | undefined {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}
