// Draws the photos of the demo estate: grey pictures of a torn panel, bare steel and a gate, made here so that they show no real
// machine. `node examples/draw-photos.mjs` writes the same bytes every time.

import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { crc32, deflateSync } from 'node:zlib';

const width = 320;
const height = 200;

/** A PNG of 8-bit grey; `shade` gives 0 (black) to 255 for a place. */
function png(shade) {
  const rows = Buffer.alloc((width + 1) * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      rows[y * (width + 1) + 1 + x] = Math.max(0, Math.min(255, Math.round(shade(x, y))));
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header[8] = 8;
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(type, data) {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const sum = Buffer.alloc(4);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, sum]);
}

/** The trough from above: lighter in the middle, a joint every 110 px, two rows of bolts. */
function panels(x, y) {
  const across = 1 - ((y - height / 2) / (height / 2)) ** 2;
  const bolt = Math.hypot(((x + 40) % 55) - 27, Math.min(Math.abs(y - 30), Math.abs(y - 170))) < 5;
  const joint = x % 110 < 2;
  return joint ? 40 : bolt ? 70 : 110 + 110 * across;
}

function torn(x, y) {
  const edge = 100 + 14 * Math.sin(x / 9) + 6 * Math.sin(x / 3.1);
  const inside = x > 120 && x < 215;
  if (inside && Math.abs(y - edge) < 9 - Math.abs(x - 167) / 9) return 25;
  if (inside && y > edge && y < edge + 26) return panels(x, y) + 30;
  return panels(x, y);
}

function bare(x, y) {
  if (x < 112 || x > 218) return panels(x, y);
  const scratch = (x * 7 + Math.floor(y / 3) * 13) % 29 < 3;
  return scratch ? 175 : 95 + 20 * Math.sin(y / 14);
}

function gate(x, y) {
  if (x > 146 && x < 176) return y % 40 < 4 ? 20 : 60;
  return panels(x, y);
}

/** A plate let into the bottom, a bead of weld round it. */
function patch(x, y) {
  const out = Math.max(Math.abs(x - 160) - 70, Math.abs(y - 100) - 45);
  if (Math.abs(out) < 4) return 60 + 25 * Math.sin((x + y) / 1.6);
  return out < 0 ? 165 + 6 * Math.sin(y / 2) : 105 + 20 * Math.sin(y / 14);
}

const photos = {
  'DG1/photos/2026-08-17-torn-panel.png': torn,
  'GT5/photos/2026-07-20-bare-steel.png': bare,
  'SL4/photos/2026-08-31-gate.png': gate,
};
const folder = fileURLToPath(new URL('4-tarnholt/inspections/', import.meta.url));
const another = {
  '../history/photos/GT5-2025-03-14-patch.png': patch,
  '../../7-five-years/photos/2026-02-09-P1.png': torn,
};
for (const [name, shade] of Object.entries({ ...photos, ...another })) {
  mkdirSync(dirname(folder + name), { recursive: true });
  writeFileSync(folder + name, png(shade));
}
