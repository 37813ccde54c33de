// Which units an author may write, and what each is worth in the base unit of its dimension.
// Factors are exact decimals or exact fractions: SI Brochure (9th ed., tables 2, 4, 8), NIST SP 811 (2008) appendix B for
// the inch-pound ones, which rest on the international yard and pound of 1959 (1 in = 25.4 mm, 1 lb = 0.453 592 37 kg).

import type { Dimension } from './dimension.js';

export interface Unit {
  readonly dimension: Dimension;
  /** The spelling we print. */
  readonly name: string;
  /** Base value = (number + shift) × times / over; exact decimals, so that 12 in is 304.8 mm and not 304.799 999. */
  readonly times: string;
  readonly over?: string;
  readonly shift?: string;
}

/** Commonest first; other spellings that mean the same follow the name. */
type Row = readonly [spellings: string, times: string, over?: string, shift?: string];

const rows: Readonly<
  Record<Exclude<Dimension, 'money' | 'money a duration' | 'money a length'>, readonly Row[]>
> = {
  length: [
    ['mm', '1'],
    ['m', '1000'],
    ['in inch inches "', '25.4'],
    ['cm', '10'],
    ['ft foot feet', '304.8'],
    ['um µm μm', '0.001'],
  ],
  angle: [
    ['deg °', '1'],
    ['rad', '57.29577951308232087679815481410517'],
  ],
  duration: [
    ['h', '1'],
    ['week weeks', '168'],
    ['d day days', '24'],
    ['min', '1', '60'],
    ['s', '1', '3600'],
  ],
  mass: [
    ['kg', '1'],
    ['t', '1000'],
    ['g', '0.001'],
    ['lb', '0.45359237'],
  ],
  temperature: [
    ['degC °C', '1'],
    ['degF °F', '5', '9', '-32'],
    ['K', '1', '1', '-273.15'],
  ],
  force: [
    ['N', '1'],
    ['kN', '1000'],
    ['lbf', '4.4482216152605'],
  ],
  power: [
    ['kW', '1'],
    ['W', '0.001'],
    ['hp', '0.74569987158227022'],
  ],
  rotation: [
    ['rpm', '1'],
    ['1/min /min r/min', '1'],
  ],
  density: [
    ['kg/m3 kg/m³', '1'],
    ['t/m3 t/m³', '1000'],
    ['g/cm3 g/cm³', '1000'],
    ['lb/ft3 lb/ft³', '0.45359237', '0.028316846592'],
  ],
  volume: [
    ['m3 m³', '1'],
    ['l litre litres', '1', '1000'],
    ['ft3 ft³', '0.028316846592'],
  ],
  ratio: [
    ['%', '0.01'],
    ['1', '1'],
  ],
  'mass flow': [
    ['t/h', '1'],
    ['kg/h', '0.001'],
    ['t/d t/day', '1', '24'],
    ['t/week', '1', '168'],
    ['lb/h', '0.00045359237'],
  ],
  current: [
    ['A', '1'],
    ['mA', '0.001'],
  ],
  duty: [
    ['h/week', '1', '7'],
    ['h/d h/day', '1'],
  ],
  expansion: [
    ['um/m/K µm/m/K μm/m/K', '0.000001'],
    ['1/K /K', '1'],
    ['mm/m/K', '0.001'],
    ['ppm/K', '0.000001'],
  ],
  stress: [
    ['MPa', '1'],
    ['GPa', '1000'],
    ['N/mm2 N/mm²', '1'],
    ['psi', '4.4482216152605', '645.16'],
  ],
  torque: [
    ['N·m Nm', '1'],
    ['lbf·ft', '1.3558179483314004'],
    ['lbf·in', '1.3558179483314004', '12'],
  ],
  velocity: [
    ['m/s', '1'],
    ['mm/s', '0.001'],
    ['m/min', '1', '60'],
    ['ft/s', '0.3048'],
  ],
  'labour a length': [
    ['h/m', '1'],
    ['min/m', '1', '60'],
    ['h/ft', '1', '0.3048'],
  ],
};

/** Money rates are a currency and one of these; a day or week of labour is not a fixed number of hours, so only `/h`. */
const rates: readonly (readonly [ending: string, dimension: Dimension, times: string, over?: string])[] = [
  ['/h', 'money a duration', '1'],
  ['/m', 'money a length', '1'],
  ['/ft', 'money a length', '1', '0.3048'],
];

/** ISO 4217 alphabetic codes of currencies in use (list from memory; the tests hold it against the platform's own). */
const currencies: ReadonlySet<string> = new Set(
  (
    'AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BGN BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CLP CNY COP ' +
    'CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF GTQ GYD HKD HNL HTG HUF IDR ILS INR IQD ' +
    'IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD KZT LAK LBP LKR LRD LSL LYD MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR ' +
    'MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD OMR PAB PEN PGK PHP PKR PLN PYG QAR RON RSD RUB RWF SAR SBD SCR SDG SEK SGD SHP ' +
    'SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TND TOP TRY TTD TWD TZS UAH UGX USD UYU UZS VES VND VUV WST XAF XCD XOF XPF ' +
    'YER ZAR ZMW ZWG'
  ).split(' '),
);

export function isCurrency(code: string): boolean {
  return currencies.has(code);
}

const bySpelling = new Map<string, Unit>();
const spellings = new Map<Dimension, string[]>();
for (const [dimension, units] of Object.entries(rows) as [Dimension, readonly Row[]][]) {
  // Object.entries widens the keys of `rows` to string
  for (const [names, times, over, shift] of units) {
    const [name = '', ...others] = names.split(' ');
    const unit: Unit = {
      dimension,
      name,
      times,
      ...(over === undefined ? {} : { over }),
      ...(shift === undefined ? {} : { shift }),
    };
    for (const spelling of [name, ...others]) bySpelling.set(spelling, unit);
  }
  const all = units.map(([names]) => names.split(' '));
  spellings.set(dimension, [
    ...all.map((names) => names[0] ?? ''),
    ...all.flatMap((names) => names.slice(1)),
  ]);
}

/** The unit of a spelling, of whatever dimension; undefined where there is none. Money comes with its currency. */
export function findUnit(spelling: string): { readonly unit: Unit; readonly currency?: string } | undefined {
  const unit = bySpelling.get(spelling);
  if (unit) return { unit };
  const said = asRate(spelling);
  if (said !== spelling) return findUnit(said);
  const code = spelling.slice(0, 3);
  if (!currencies.has(code)) return undefined;
  const ending = spelling.slice(3);
  if (ending === '') return { unit: { dimension: 'money', name: code, times: '1' }, currency: code };
  const rate = rates.find(([end]) => end === ending);
  if (!rate) return undefined;
  const [, dimension, times, over] = rate;
  return {
    unit: { dimension, name: spelling, times, ...(over === undefined ? {} : { over }) },
    currency: code,
  };
}

/** In a rate that is said in words there is one unit that such a word can be. */
const inRates: Readonly<Record<string, string>> = { hour: 'h', hours: 'h', metre: 'm', meter: 'm' };

/** `h/week` of `h per week` or `hours a week`; as it stands where nobody says it so. */
export function asRate(spelling: string): string {
  const [, above, below] = /^([^\s/]+)\s+(?:per|an?)\s+([^\s/]+)$/.exec(spelling) ?? [];
  if (above === undefined || below === undefined) return spelling;
  const [name, by] = [above, below].map((each) => inRates[each] ?? bySpelling.get(each)?.name ?? each);
  return `${name}/${by}`;
}

/** Spellings an author may use for a dimension, commonest first; for money with a few currencies as examples. */
export function unitsOf(dimension: Dimension): readonly string[] {
  const known = spellings.get(dimension);
  if (known) return known;
  const endings =
    dimension === 'money' ? [''] : rates.filter(([, of]) => of === dimension).map(([ending]) => ending);
  return endings.flatMap((ending) => ['EUR', 'GBP', 'USD', 'CHF', 'SEK', 'PLN'].map((code) => code + ending));
}
