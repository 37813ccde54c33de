// Words that people of the trade write where the language has another one. A small table, of plain English and trade terms;
// it only ever proposes a word that may stand at that place.

/** By the word written, what the language has for it: the first that can stand there is meant. */
const meant: Readonly<Record<string, readonly string[]>> = {
  amps: ['current'],
  ampere: ['current'],
  amperage: ['current'],
  angle: ['incline', 'sling angle'],
  between: ['from'],
  bolts: ['bolt'],
  capacity: ['reach', 'platform load', 'limit'],
  carries: ['conveys'],
  chainage: ['at'],
  check: ['inspection'],
  comment: ['finding'],
  contact: ['risk of contact'],
  cracked: ['panel cracked'],
  depth: ['deep', 'countersink'],
  diameter: ['outside diameter'],
  date: ['counted', 'closed on'],
  done: ['by'],
  each: ['every'],
  every: ['pitch'],
  fitter: ['by'],
  fitters: ['people'],
  grade: ['material'],
  hours: ['meter'],
  hrs: ['meter'],
  inclination: ['incline'],
  inspected: ['by'],
  inspector: ['by'],
  load: ['limit', 'platform load'],
  location: ['at'],
  lubricant: ['oil low'],
  machine: ['conveyor'],
  make: ['liner'],
  mass: ['limit'],
  max: ['limit'],
  men: ['people'],
  missing: ['panel missing'],
  note: ['finding'],
  observed: ['finding'],
  observer: ['by'],
  outfit: ['crew'],
  persons: ['people'],
  picture: ['photo'],
  image: ['photo'],
  pieces: ['piece', 'panels'],
  position: ['at', 'clock'],
  product: ['conveys'],
  radius: ['inside radius', 'reach'],
  rate: ['cost', 'price'],
  reading: ['at'],
  remark: ['finding'],
  scaffolding: ['scaffold'],
  shutdown: ['outage'],
  size: ['bolt'],
  slope: ['incline'],
  spacing: ['pitch', 'every'],
  spaced: ['every'],
  spiral: ['screw'],
  stop: ['outage'],
  team: ['crew', 'crews'],
  thick: ['thickness'],
  till: ['to'],
  until: ['to'],
  torn: ['panel torn'],
  turned: ['panels moved', 'turned end for end'],
  moved: ['panels moved'],
  exchanged: ['panels moved', 'exchanged with'],
  corrected: ['correction'],
  old: ['old panel'],
  using: ['with'],
  weight: ['mass', 'limit'],
  welder: ['welded by'],
  workers: ['people'],
};

/** What somebody who writes this word means here, among the words that may stand here; `block` says where here is. */
export function tradeWord(block: string, image: string, words: readonly string[]): string | undefined {
  const word = image.toLowerCase();
  const own = inBlock[block]?.[word];
  // A text may hold any word, `constructor` too, which every object answers to.
  const known = Object.hasOwn(meant, word) ? (meant[word] ?? []) : [];
  return [...(own === undefined ? [] : [own]), ...known].find((each) => words.includes(each));
}

/** Where a block has a meaning of its own for a word. */
const inBlock: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  Conveyor: { material: 'conveys', density: 'bulk density', inclined: 'incline', motor: 'drive at' },
  Job: { shutdown: 'outage', crew: 'crews', team: 'crews', liner: 'reline' },
  Order: { weld: 'patch', lock: 'isolate', ventilate: 'gas test', test: 'gas test', remove: 'strip' },
};
