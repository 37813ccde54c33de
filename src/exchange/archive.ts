// Is it safe to unpack this workbook? A zip archive says in its directory how large its parts are (APPNOTE 4.3.12), and may lie.
// So the directory is judged first, and then each part is unpacked in a stream that keeps nothing and stops as soon as it gives
// more than was declared. Only what passed both is handed to the library that reads workbooks.

export interface ArchivePart {
  readonly name: string;
}

export type Inspected =
  | { readonly ok: true; readonly parts: readonly ArchivePart[] }
  | { readonly ok: false; readonly message: string };

export interface ArchiveLimits {
  /** Unpacked bytes of all parts together. */
  readonly bytes: number;
  /** Times its packed size that a part of more than a megabyte may grow; sheets of numbers pack to a tenth, rarely a fiftieth. */
  readonly ratio: number;
  readonly parts: number;
}

export const archiveLimits: ArchiveLimits = { bytes: 128 * 1024 * 1024, ratio: 200, parts: 2_000 };

interface Entry extends ArchivePart {
  readonly packed: number;
  readonly unpacked: number;
  readonly method: number;
  readonly encrypted: boolean;
  readonly header: number;
}

const megabyte = 1024 * 1024;

export async function inspectArchive(
  bytes: Uint8Array,
  limits: ArchiveLimits = archiveLimits,
): Promise<Inspected> {
  const entries = directoryOf(bytes, limits.parts);
  if (typeof entries === 'string') return { ok: false, message: entries };
  const wrong = judged(entries, limits) ?? (await unpackedWrong(bytes, entries));
  return wrong === undefined ? { ok: true, parts: entries } : { ok: false, message: wrong };
}

/** By what the directory declares. */
function judged(entries: readonly Entry[], { bytes, ratio }: ArchiveLimits): string | undefined {
  const total = entries.reduce((sum, { unpacked }) => sum + unpacked, 0);
  if (total > bytes)
    return `unpacks to ${Math.round(total / megabyte)} MB, and at most ${bytes / megabyte} MB are read; split the workbook`;
  const dense = entries.find(({ packed, unpacked }) => unpacked > megabyte && unpacked > packed * ratio);
  if (dense)
    return `its part ${dense.name} is packed more than ${ratio} times, as no sheet of readings is; it is not unpacked`;
  if (entries.some(({ encrypted }) => encrypted))
    return 'is protected by a password; take it away and save the workbook again';
  const strange = entries.find(({ method }) => method !== 0 && method !== 8);
  return (
    strange && `its part ${strange.name} is packed in a way that workbooks are not; save the workbook again`
  );
}

/** By what comes out. */
async function unpackedWrong(bytes: Uint8Array, entries: readonly Entry[]): Promise<string | undefined> {
  for (const entry of entries) {
    const data = dataOf(bytes, entry);
    if (data === undefined)
      return `its part ${entry.name} lies outside of the file; it is cut short or damaged`;
    const size = entry.method === 0 ? data.length : await unpackedSize(data, entry.unpacked);
    if (size === undefined) return `its part ${entry.name} does not unpack; the file is damaged`;
    if (size !== entry.unpacked)
      return `its part ${entry.name} unpacks to another size than the file declares; it is not read`;
  }
  return undefined;
}

/** Stops one byte behind the declared size. */
async function unpackedSize(data: Uint8Array<ArrayBuffer>, declared: number): Promise<number | undefined> {
  const reader = new Blob([data]).stream().pipeThrough(new DecompressionStream('deflate-raw')).getReader();
  let size = 0;
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return size;
      size += value.length;
      if (size > declared) {
        await reader.cancel();
        return size;
      }
    }
  } catch {
    return undefined;
  }
}

function dataOf(bytes: Uint8Array, { header, packed }: Entry): Uint8Array<ArrayBuffer> | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (header + 30 > bytes.length || view.getUint32(header, true) !== 0x04034b50) return undefined;
  const start = header + 30 + view.getUint16(header + 26, true) + view.getUint16(header + 28, true);
  return start + packed > bytes.length ? undefined : new Uint8Array(bytes.subarray(start, start + packed));
}

/** The central directory, or why there is none that could be trusted. */
function directoryOf(bytes: Uint8Array, most: number): readonly Entry[] | string {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = endOfDirectory(view);
  if (end === undefined) return 'is cut short or damaged: the directory of the archive is missing';
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  if (count === 0xffff || at === 0xffffffff) return 'is an archive of more parts than a workbook has';
  if (count > most) return `has ${count} parts, and a workbook of readings has at most ${most}`;
  const entries: Entry[] = [];
  for (let i = 0; i < count; i++) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== 0x02014b50)
      return 'is damaged: the directory of the archive does not fit';
    const [name, extra, comment] = [28, 30, 32].map((offset) => view.getUint16(at + offset, true));
    const nameEnd = at + 46 + (name ?? 0);
    entries.push({
      name: new TextDecoder().decode(bytes.subarray(at + 46, nameEnd)),
      packed: view.getUint32(at + 20, true),
      unpacked: view.getUint32(at + 24, true),
      method: view.getUint16(at + 10, true),
      encrypted: (view.getUint16(at + 8, true) & 1) === 1,
      header: view.getUint32(at + 42, true),
    });
    at = nameEnd + (extra ?? 0) + (comment ?? 0);
  }
  return entries;
}

/** Behind it only a comment of at most 65,535 bytes may stand. */
function endOfDirectory(view: DataView): number | undefined {
  const last = view.byteLength - 22;
  for (let at = last; at >= Math.max(0, last - 0xffff); at--)
    if (view.getUint32(at, true) === 0x06054b50) return at;
  return undefined;
}
