// What the trough's steel does, from its name: how it grows with heat (a liner grows against it), and what welding it asks for.
// Families by the designations of EN 10027: S235 and its kin or 1.0xxx unalloyed; 1.4xxx stainless; trade numbers 3xx austenitic,
// 4xx ferritic. Growth from memory of EN 10088-1 and handbooks, rounded: 12, 16 and 10e-6/K.

export type SteelFamily = 'carbon' | 'galvanised' | 'austenitic' | 'ferritic';

export interface TroughSteel {
  readonly family: SteelFamily;
  /** 1/K. */
  readonly expansion: number;
  /** Left bare and wet it rusts as well as wears. */
  readonly rusts: boolean;
  /** False where no name is given, or none that is known here: carbon steel is then taken. */
  readonly named: boolean;
}

const families: Readonly<Record<SteelFamily, { readonly expansion: number; readonly rusts: boolean }>> = {
  carbon: { expansion: 12e-6, rusts: true },
  galvanised: { expansion: 12e-6, rusts: true },
  austenitic: { expansion: 16e-6, rusts: false },
  ferritic: { expansion: 10e-6, rusts: false },
};

/** The first that fits; numbers of ferritic and martensitic steels (1.40xx, 1.41xx, 1.4509 to 1.4521) before the austenitic ones. */
const names: readonly (readonly [RegExp, SteelFamily])[] = [
  [/galvani[sz]ed|zinc/i, 'galvanised'],
  [/ferritic|\b1\.4(0|1[0-2]|509|51|52)|\b4[0-4]\d[a-z]?\b/i, 'ferritic'],
  [/stainless|austenitic|\b1\.4\d{3}\b|(^|[^\d.])3(0[1-9]|1[0-7]|21)(l|ln|ti|h)?\b|\bx\d+cr/i, 'austenitic'],
  [/^s\d{3}|carbon|mild|structural|\b1\.0\d{3}\b|corten|weathering|wear plate|^steel$/i, 'carbon'],
];

export function troughSteel(material: string | undefined): TroughSteel {
  const found = material === undefined ? undefined : names.find(([pattern]) => pattern.test(material));
  const family = found?.[1] ?? 'carbon';
  return { family, ...families[family], named: found !== undefined };
}
