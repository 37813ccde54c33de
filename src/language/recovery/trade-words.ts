// Words that people of the trade write where the language has another one. A small table, of plain English and trade terms;
// it only ever proposes a word that may stand at that place.

/** By the word written, what the language has for it: the first that can stand there is meant. */
const meant: Readonly<Record<string, readonly string[]>> = {
  amps: ['current'],
  ampere: ['current'],
  amperage: ['current'],
  angle: ['incline', 'sling angle'],
  between: ['from'],
  bolts: ['bolt', 'fixings'],
  bolt: ['fixings'],
  capacity: ['reach', 'platform load', 'limit'],
  carries: ['conveys'],
  chainage: ['at'],
  check: ['inspection'],
  comment: ['finding'],
  contact: ['risk of contact'],
  depth: ['deep', 'countersink'],
  diameter: ['outside diameter'],
  date: ['counted', 'closed on'],
  done: ['by'],
  electric: ['driven by electricity'],
  electrical: ['driven by electricity'],
  each: ['every'],
  every: ['pitch'],
  fitter: ['by'],
  fitters: ['people'],
  grade: ['material'],
  handwheel: ['driven by hand'],
  hours: ['meter'],
  hrs: ['meter'],
  hydraulic: ['driven by hydraulics'],
  inclination: ['incline'],
  inspected: ['by'],
  inspector: ['by'],
  load: ['limit', 'platform load'],
  location: ['at'],
  machine: ['conveyor'],
  make: ['liner'],
  mass: ['limit'],
  manual: ['driven by hand'],
  manually: ['driven by hand'],
  max: ['limit'],
  men: ['people'],
  note: ['finding'],
  observed: ['finding'],
  observer: ['by'],
  outfit: ['crew'],
  persons: ['people'],
  pneumatic: ['driven by air'],
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
  showing: ['colour'],
  size: ['bolt'],
  slope: ['incline'],
  spacing: ['pitch', 'every'],
  spaced: ['every'],
  spiral: ['screw'],
  stop: ['outage'],
  team: ['crew', 'crews'],
  thick: ['thickness'],
  thk: ['thickness'],
  thck: ['thickness'],
  clk: ['clock'],
  pos: ['clock'],
  ccw: ['counter-clockwise'],
  cw: ['clockwise'],
  temp: ['temperature'],
  till: ['to'],
  until: ['to'],
  torn: ['panel torn'],
  turned: ['panels moved', 'turned end for end'],
  moved: ['panels moved'],
  exchanged: ['panels moved', 'exchanged with'],
  corrected: ['correction'],
  old: ['old panel'],
  using: ['with'],
  walkway: ['platform'],
  catwalk: ['platform'],
  gallery: ['platform'],
  gantry: ['platform'],
  floor: ['ground'],
  steps: ['stairs'],
  staircase: ['stairs'],
  weight: ['mass', 'limit'],
  x: ['by'],
  welder: ['welded by'],
  workers: ['people'],
};

/** Two words of the trade that have one sense, by what the language has for it. */
const phrases: Readonly<Record<string, string>> = {
  'bearing leaking': 'seal leaking',
  'bolt loose': 'bolts loose',
  'bolt missing': 'bolts missing',
  'bolts gone': 'bolts missing',
  'brace gone': 'brace missing',
  'cover dented': 'cover bent',
  'cover gone': 'cover missing',
  'cover leak': 'cover leaking',
  'hatch leak': 'hatch leaking',
  'gate leak': 'gate leaking',
  'trough leak': 'trough leaking',
  'cover jammed': 'cover stuck',
  'cover seized': 'cover stuck',
  'cover warped': 'cover bent',
  'gate jammed': 'gate stuck',
  'gate seized': 'gate stuck',
  'hatch dented': 'hatch bent',
  'hatch gone': 'hatch missing',
  'hatch jammed': 'hatch stuck',
  'hatch seized': 'hatch stuck',
  'lid stuck': 'hatch stuck',
  'oil leaking': 'oil leak',
  'panel gone': 'panel missing',
  'panel loose': 'panel lifted',
  'weld cracked': 'spiral weld cracked',
};

/** The language's words for two words of the trade, where they may stand here. */
export function tradePhrase(written: string, words: readonly string[]): string | undefined {
  const plain = written.toLowerCase().replace(/\s+/g, ' ');
  const phrase = Object.hasOwn(phrases, plain) ? phrases[plain] : undefined;
  return phrase !== undefined && words.includes(phrase) ? phrase : undefined;
}

/** Whether a word of the trade, alone or in a phrase, may stand for what the language says. */
export function isSameSense(written: string, put: string): boolean {
  const word = written.toLowerCase();
  const known = Object.hasOwn(meant, word) ? (meant[word] ?? []) : [];
  if (known.includes(put) || Object.values(inBlock).some((own) => own[word] === put)) return true;
  return Object.entries(phrases).some(([phrase, sense]) => sense === put && phrase.split(' ').includes(word));
}

/** What the language has for a word of the trade, in any block. */
export function tradeSenses(written: string): readonly string[] {
  const own = Object.values(inBlock).flatMap((each) => (Object.hasOwn(each, written) ? [each[written]] : []));
  const known = Object.hasOwn(meant, written) ? (meant[written] ?? []) : [];
  return [...own.filter((each) => each !== undefined), ...known];
}

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
  Inspection: { us: 'ultrasonic', ut: 'ultrasonic' },
  Reline: { with: 'liner' },
  ScrewChange: { to: 'screw', spiral: 'screw', new: 'screw' },
  Job: { shutdown: 'outage', crew: 'crews', team: 'crews', liner: 'reline' },
  Order: { lock: 'isolate', remove: 'strip' },
};
