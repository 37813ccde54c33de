// Readings that are known to the last digit, and the many ways people lay them out. It shares no code with the import: what is
// written here as text is put together from the numbers by hand, so that both can only agree by meaning the same.

import fc from 'fast-check';

export interface TrueReading {
  readonly conveyor: string;
  readonly point: string;
  /** YYYY-MM-DD */
  readonly day: string;
  /** Hours of the meter on that day. */
  readonly meter: number;
  /** Hundredths of a millimetre or thousandths of an inch, as the layout has it; or a word. */
  readonly said: { readonly digits: number } | { readonly colour: string } | { readonly notSeen: string };
}

export const days = [
  '2021-02-03',
  '2021-11-12',
  '2022-05-06',
  '2023-01-25',
  '2023-12-04',
  '2024-07-31',
  '2025-03-09',
];

/** Two conveyors with five points each, read on some of the days; what wears gets thinner, and the meter only runs forward. */
export function truths(unit: 'mm' | 'in'): fc.Arbitrary<readonly TrueReading[]> {
  const spot = fc.record({
    start: fc.integer({ min: 0, max: 60 }),
    steps: fc.array(fc.integer({ min: 11, max: 60 }), { minLength: days.length, maxLength: days.length }),
    kinds: fc.array(fc.constantFrom('thickness', 'thickness', 'thickness', 'none', 'not seen'), {
      minLength: days.length,
      maxLength: days.length,
    }),
  });
  return fc.array(spot, { minLength: 10, maxLength: 10 }).map((spots) =>
    spots.flatMap(({ start, steps, kinds }, i) => {
      let worn = start + i;
      return days.flatMap((day, j): TrueReading[] => {
        worn += steps[j] ?? 0;
        const reading = {
          conveyor: i < 5 ? 'AB1' : 'AB2',
          point: `P${(i % 5) + 1}`,
          day,
          meter: 400 + j * 1310 + (i < 5 ? 0 : 37),
        };
        const hundredths = 1200 - worn;
        switch (kinds[j]) {
          case 'thickness':
            // Of inches the thousandth; 12 mm are 0.472 in.
            return [
              {
                ...reading,
                said: { digits: unit === 'mm' ? hundredths : Math.round((hundredths / 25.4) * 10) },
              },
            ];
          case 'not seen':
            return [
              {
                ...reading,
                said: j % 2 === 0 ? { notSeen: 'buried' } : { colour: hundredths > 600 ? 'grey' : 'orange' },
              },
            ];
          default:
            return [];
        }
      });
    }),
  );
}

/** A plant with one liner and one screw, and no conveyor yet. */
export const partsText = `plant Tarnholt "Tarnholt Organics" {
  duty 60 h/week
}
liner TwoLayer12 {
  layer grey 6 mm
  layer orange 6 mm
  panel length 1200 mm ± 1 mm
  condemn at 3 mm
}
screw Spiral400 {
  shaftless
  outside diameter 400 mm
  pitch 350 mm
}
`;

export const estateText = `${partsText}${['AB1', 'AB2']
  .map(
    (name) => `conveyor ${name} {
  plant Tarnholt
  length 12 m
  incline 20 deg
  trough inside radius 220 mm side height 230 mm plate 4 mm
  screw Spiral400
  liner TwoLayer12
  commissioned 2021-01-01 meter 0 h
  access Floor at 0 m to 12 m ground
  isolation Q1 "motor" electrical
  isolation Feed "material" material
${[1, 2, 3, 4, 5].map((n) => `  point P${n} at ${n * 2} m clock 6:00`).join('\n')}
}
`,
  )
  .join('')}`;

export interface Layout {
  readonly form: 'long' | 'dates across' | 'points across';
  readonly unit: 'mm' | 'in';
  readonly unitStands: 'head' | 'cell' | 'column';
  readonly decimal: '.' | ',';
  readonly separator: ';' | 'tab' | '|' | ',';
  readonly dates: 'day-month-year' | 'month-day-year' | 'year-month-day' | 'iso' | 'words' | 'short';
  readonly encoding: 'utf-8' | 'utf-8 with mark' | 'utf-16le' | 'windows-1252';
  readonly nothing: string;
  readonly titleRows: number;
  readonly sparse: boolean;
  readonly repeated: boolean;
}

export const layouts: fc.Arbitrary<Layout> = fc.record({
  form: fc.constantFrom('long', 'dates across', 'points across'),
  unit: fc.constantFrom('mm', 'in'),
  unitStands: fc.constantFrom('head', 'cell', 'column'),
  decimal: fc.constantFrom('.', ','),
  separator: fc.constantFrom(';', 'tab', '|', ','),
  dates: fc.constantFrom('day-month-year', 'month-day-year', 'year-month-day', 'iso', 'words', 'short'),
  encoding: fc.constantFrom('utf-8', 'utf-8 with mark', 'utf-16le', 'windows-1252'),
  nothing: fc.constantFrom('', 'n/a', '-', '—'),
  titleRows: fc.integer({ min: 0, max: 2 }),
  sparse: fc.boolean(),
  repeated: fc.boolean(),
});

const monthNames = [
  'Jan',
  'February',
  'Mar',
  'Apr',
  'may',
  'Jun',
  'July',
  'Aug',
  'Sept',
  'Oct',
  'November',
  'Dec',
];

function dateText(day: string, form: Layout['dates']): string {
  const [year = '', month = '', date = ''] = day.split('-');
  switch (form) {
    case 'iso':
      return day;
    case 'day-month-year':
      return `${date}.${month}.${year}`;
    case 'short':
      return `${Number(date)}.${Number(month)}.${year.slice(2)}`;
    case 'month-day-year':
      return `${Number(month)}/${Number(date)}/${year}`;
    case 'year-month-day':
      return `${year}/${month}/${date}`;
    case 'words':
      return `${Number(date)} ${monthNames[Number(month) - 1] ?? ''} ${year}`;
  }
}

/** The sheet as rows of texts, and the mapping that a person would write for it. */
export function laidOut(
  truth: readonly TrueReading[],
  layout: Layout,
): { rows: string[][]; mapping: string } {
  const { form, unit, unitStands, decimal, dates, titleRows } = layout;
  const number = (value: string): string => value.replace('.', decimal);
  const saidText = ({ said }: TrueReading): string => {
    if ('colour' in said) return said.colour === 'grey' ? 'the light one' : 'Orange';
    if ('notSeen' in said) return 'under material';
    const digits = unit === 'mm' ? (said.digits / 100).toFixed(2) : (said.digits / 1000).toFixed(3);
    const inCell = unitStands === 'cell' || (unitStands === 'column' && form !== 'long');
    return number(digits) + (inCell ? (unit === 'in' ? '"' : ' mm') : '');
  };
  const head = unitStands === 'head' ? `Wall [${unit}]` : 'Wall';
  const order =
    dates === 'iso' || dates === 'words' ? [] : [`dates: ${dates === 'short' ? 'day-month-year' : dates}`];
  const top = Array.from({ length: titleRows }, (_, i) => [`Wall thickness, sheet ${i + 1}`]);
  const thickness = unitStands === 'head' ? `thickness in ${unit}` : 'thickness';
  const shared = [
    ...order,
    ...(dates === 'short' ? ['century: 2000'] : []),
    `decimal: "${decimal}"`,
    `separator: "${layout.separator}"`,
    ...(layout.encoding.startsWith('utf-8') ? [] : [`encoding: ${layout.encoding}`]),
    'view: downstream',
    'gauge: ultrasonic ± 0.2 mm',
    'words:',
    '  the light one: layer 1',
    '  Under Material: not seen buried',
    '  n/a: no reading',
    '  "-": no reading',
    '  —: no reading',
  ];
  const heads = `heads: ${titleRows + 1}`;
  const looks = [...new Set(truth.map(({ conveyor, day, meter }) => `${conveyor} ${day} ${meter}`))].map(
    (key) => {
      const [conveyor = '', day = '', meter = ''] = key.split(' ');
      return { conveyor, day, meter };
    },
  );
  const at = (conveyor: string, day: string, point: string): string => {
    const found = truth.find((one) => one.conveyor === conveyor && one.day === day && one.point === point);
    return found ? saidText(found) : layout.nothing;
  };
  const spots = ['P1', 'P2', 'P3', 'P4', 'P5'];
  if (form === 'long') {
    const names = ['Screw', 'Date', 'Where', head, 'Hours', ...(unitStands === 'column' ? ['Unit'] : [])];
    let before = '';
    const rows = truth.map((one) => {
      const same = layout.sparse && before === `${one.conveyor} ${one.day}`;
      before = `${one.conveyor} ${one.day}`;
      return [
        same ? '' : one.conveyor,
        same ? '' : dateText(one.day, dates),
        one.point.toLowerCase(),
        saidText(one),
        same ? '' : String(one.meter),
        ...(unitStands === 'column' ? [unit] : []),
      ];
    });
    if (layout.repeated) rows.splice(Math.floor(rows.length / 2), 0, names);
    const mapping = [
      heads,
      ...shared,
      'columns:',
      '  Screw: conveyor',
      '  Date: date',
      '  Where: point',
      `  "${head}": ${thickness}`,
      '  Hours: meter in h',
      ...(unitStands === 'column' ? ['  Unit: unit'] : []),
      ...(layout.sparse ? ['as above: [Screw, Date]'] : []),
    ];
    return { rows: [...top, names, ...rows], mapping: mapping.join('\n') };
  }
  if (form === 'points across') {
    const rows = looks.map(({ conveyor, day, meter }) => [
      conveyor,
      dateText(day, dates),
      meter,
      ...spots.map((point) => at(conveyor, day, point)),
    ]);
    const mapping = [
      heads,
      ...shared,
      'across: point',
      `reading: ${thickness}`,
      'columns:',
      '  Screw: conveyor',
      '  Inspected: date',
      '  Run: meter in h',
    ];
    return { rows: [...top, ['Screw', 'Inspected', 'Run', ...spots], ...rows], mapping: mapping.join('\n') };
  }
  const rows = ['AB1', 'AB2'].flatMap((conveyor) => [
    [
      conveyor,
      'Hours',
      ...days.map((day) => looks.find((one) => one.conveyor === conveyor && one.day === day)?.meter ?? ''),
    ],
    ...spots.map((point) => [conveyor, point, ...days.map((day) => at(conveyor, day, point))]),
  ]);
  const mapping = [
    heads,
    ...shared,
    'across: date',
    `reading: ${thickness}`,
    'columns:',
    '  Screw: conveyor',
    '  Point: point',
    'points:',
    '  hours: meter in h',
  ];
  return {
    rows: [...top, ['Screw', 'Point', ...days.map((day) => dateText(day, dates))], ...rows],
    mapping: mapping.join('\n'),
  };
}

/** RFC 4180 by hand, in the bytes of the layout's encoding. */
export function csvBytes(rows: readonly (readonly string[])[], { separator, encoding }: Layout): Uint8Array {
  const mark = separator === 'tab' ? '\t' : separator;
  const quoted = (text: string): string =>
    /["\r\n]/.test(text) || text.includes(mark) ? `"${text.replaceAll('"', '""')}"` : text;
  const text = rows.map((row) => row.map(quoted).join(mark)).join('\r\n');
  switch (encoding) {
    case 'utf-8':
      return Buffer.from(text, 'utf8');
    case 'utf-8 with mark':
      return Buffer.from(`\uFEFF${text}`, 'utf8');
    case 'utf-16le':
      return Buffer.from(`\uFEFF${text}`, 'utf16le');
    case 'windows-1252':
      // Of what stands in these sheets only the long dash lies elsewhere than in Latin 1 (0x97).
      return Buffer.from(text.replaceAll('—', '\u0097'), 'latin1');
  }
}
