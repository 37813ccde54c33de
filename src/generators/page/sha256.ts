// SHA-256 (FIPS 180-4) of a text in UTF-8, as base64: what a page's content security policy needs to allow exactly its own script
// and style. Ours because generators run where neither Node's crypto nor a synchronous Web Crypto is at hand.

export function sha256Base64(text: string): string {
  return base64(sha256(new TextEncoder().encode(text)));
}

/** First 32 bits of the fractional parts of the square (1) or cube (2) roots of the first primes. */
function roots(count: number, power: number): Uint32Array {
  const found: number[] = [];
  for (let n = 2; found.length < count; n++) {
    if (found.length < count && isPrime(n)) found.push(n);
  }
  return Uint32Array.from(found, (prime) => {
    const root = prime ** (1 / power);
    return Math.floor((root - Math.floor(root)) * 2 ** 32);
  });
}

function isPrime(n: number): boolean {
  for (let d = 2; d * d <= n; d++) if (n % d === 0) return false;
  return true;
}

function sha256(message: Uint8Array): Uint8Array {
  const constants = roots(64, 3);
  const state = roots(8, 2);
  const padded = new Uint8Array((((message.length + 8) >> 6) + 1) << 6);
  padded.set(message);
  padded[message.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(message.length / 2 ** 29));
  view.setUint32(padded.length - 4, message.length << 3);

  const w = new Uint32Array(64);
  // Indices below stay inside the arrays of 64 and 8 words: the `!` only says so.
  for (let at = 0; at < padded.length; at += 64) {
    for (let i = 0; i < 16; i++) w[i] = view.getUint32(at + 4 * i);
    for (let i = 16; i < 64; i++) w[i] = small1(w[i - 2]!) + w[i - 7]! + small0(w[i - 15]!) + w[i - 16]!;
    let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state;
    for (let i = 0; i < 64; i++) {
      const t1 =
        (h + (turn(e, 6) ^ turn(e, 11) ^ turn(e, 25)) + ((e & f) ^ (~e & g)) + constants[i]! + w[i]!) | 0;
      const t2 = ((turn(a, 2) ^ turn(a, 13) ^ turn(a, 22)) + ((a & b) ^ (a & c) ^ (b & c))) | 0;
      [h, g, f, e, d, c, b, a] = [g, f, e, (d + t1) | 0, c, b, a, (t1 + t2) | 0];
    }
    [a, b, c, d, e, f, g, h].forEach((word, i) => {
      state[i] = state[i]! + word;
    });
  }
  const out = new Uint8Array(32);
  const outView = new DataView(out.buffer);
  state.forEach((word, i) => outView.setUint32(4 * i, word));
  return out;
}

function turn(word: number, by: number): number {
  return (word >>> by) | (word << (32 - by));
}

function small0(word: number): number {
  return turn(word, 7) ^ turn(word, 18) ^ (word >>> 3);
}

function small1(word: number): number {
  return turn(word, 17) ^ turn(word, 19) ^ (word >>> 10);
}

function base64(bytes: Uint8Array): string {
  const digits = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
  let text = '';
  for (let i = 0; i < bytes.length; i += 3) {
    const [a = 0, b = 0, c = 0] = bytes.subarray(i, i + 3);
    const word = (a << 16) | (b << 8) | c;
    text += [18, 12, 6, 0]
      .map((shift) => digits[(word >> shift) & 63])
      .slice(0, bytes.length - i + 1)
      .join('');
  }
  return text + '='.repeat((3 - (bytes.length % 3)) % 3);
}
