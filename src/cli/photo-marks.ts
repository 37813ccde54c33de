// What the photos of a compared state are, so that one that was exchanged under its name is seen: from the disk by their bytes, from
// a revision by the names that git has for them, without reading a picture. What a large-file store keeps elsewhere has its own sum.

import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { LedgerBlock } from '../domain/model/ledger.js';
import { photosNamed, type PhotoMark, type PhotoMarks } from '../generators/change-summary/photo-edits.js';
import { photoFile } from '../lsp/photo-files.js';
import { readBlobs, sizesOf, type RevisionFile } from './git/revision.js';

/** @param placeOf where a text lies, by its name below the estate */
export function marksOnDisk(
  ledger: readonly LedgerBlock[],
  placeOf: ReadonlyMap<string, string>,
): PhotoMarks {
  const marks = new Map<string, PhotoMark>();
  for (const { name, block } of photosNamed(ledger)) {
    const text = placeOf.get(block.uri);
    const below = name.slice(block.uri.split('/').slice(0, -1).join('/').length).replace(/^\//, '');
    const file = text === undefined || marks.has(name) ? undefined : photoFile(text, below);
    if (file) marks.set(name, markOf(readFileSync(file.full)));
  }
  return marks;
}

function markOf(bytes: Buffer): PhotoMark {
  const head = `blob ${bytes.length}\0`;
  const sum = (kind: 'sha1' | 'sha256', before: string): string =>
    createHash(kind).update(before).update(bytes).digest('hex');
  return {
    content: sum('sha256', ''),
    gitSha1: sum('sha1', head),
    gitSha256: sum('sha256', head),
    size: bytes.length,
  };
}

/** Bytes; a file of less may only say where the picture is kept. */
const tooSmall = 1024;

/** @param folder of the repository */
export function marksOfRevision(
  ledger: readonly LedgerBlock[],
  photos: readonly RevisionFile[],
  folder: string,
): PhotoMarks {
  const named = new Set(photosNamed(ledger).map(({ name }) => name));
  const wanted = photos.filter(({ path }) => named.has(path));
  if (wanted.length === 0) return new Map();
  const sizes = sizesOf(
    wanted.map(({ blob }) => blob),
    folder,
  );
  const small = wanted.map(({ blob }) => blob).filter((blob) => (sizes.get(blob) ?? tooSmall) < tooSmall);
  const bytes = readBlobs(small, folder) ?? [];
  const elsewhere = new Map(
    small.map((blob, i) => [blob, keptElsewhere(Buffer.from(bytes[i] ?? []).toString('utf8'))]),
  );
  return new Map(
    wanted.flatMap(({ path, blob }): readonly [string, PhotoMark][] => {
      const size = sizes.get(blob);
      const own = { [blob.length === 40 ? 'gitSha1' : 'gitSha256']: blob };
      return size === undefined ? [] : [[path, elsewhere.get(blob) ?? { ...own, size }]];
    }),
  );
}

/** A pointer of git's large-file store names the SHA-256 and the size of what it stands for. */
function keptElsewhere(text: string): PhotoMark | undefined {
  const [, content, size] = /^version \S+\noid sha256:([0-9a-f]{64})\nsize (\d+)\n/.exec(text) ?? [];
  return content === undefined || size === undefined ? undefined : { content, size: Number(size) };
}
