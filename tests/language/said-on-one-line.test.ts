// Lines that people write as they speak: two facts of one thing on one line, the second colour without its name, a hatch without
// a name, liners by stretches that leave nothing over. Each means exactly what the longer way of writing it means.

import { expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import type { Analysis } from '../../src/analysis/analysis.js';
import { stretchText } from '../../src/domain/order/words.js';
import { historyOf } from '../../src/domain/model/history.js';
import { remainingLifeHtml } from '../../src/generators/remaining-life/html.js';
import { remainingLife } from '../../src/generators/remaining-life/remaining-life.js';
import { inSoundEstate } from '../../src/validation/example.js';
import type { Around } from '../../src/validation/rule.js';

const look = (...rows: readonly string[]): string =>
  `inspection DG1 2025-03-10 meter 6000 h {\n  view downstream\n  gauge ultrasonic ± 0.2 mm\n  ${rows.join('\n  ')}\n}`;

function read(block: string, around: Around = {}): Analysis {
  return analyse([{ uri: 'estate.trough', text: inSoundEstate('estate', block, around) }]);
}

/** Findings and report of an estate, without the places in the text. */
function meaning({ estate, findings }: Analysis): unknown {
  const page = remainingLifeHtml(remainingLife(estate, { depth: 'hand' })).replace(
    / data-origin="[^"]*"/g,
    '',
  );
  return [findings.map(({ code, message }) => [code, message]), page];
}

test.each([
  [
    'depth and outside diameter of a flight',
    ['flight at 4 m depth 70 mm outside diameter 392 mm'],
    ['flight at 4 m depth 70 mm', 'flight at 4 m outside diameter 392 mm'],
  ],
  [
    'what a bearing sounds like, and how warm it is',
    ['tail bearing noise serious temperature 71 degC'],
    ['tail bearing noise serious', 'tail bearing temperature 71 degC'],
  ],
  [
    'the same, the temperature first',
    ['gearbox oil dirty temperature 61 degC slight'],
    ['gearbox oil dirty slight', 'gearbox temperature 61 degC'],
  ],
  [
    'the current, loaded first',
    ['current loaded 8 A empty 4 A "wet"'],
    ['current empty 4 A loaded 8 A "wet"'],
  ],
  [
    'a measure at a point, an end, a panel and a stretch',
    [
      'plate at P1 thickness 3.6 mm',
      'flight at P2 depth 70 mm',
      'flight at 3 m to 4 m depth 71 mm',
      'worn at P1 clock 4:30 to 7:00',
      'not seen at P2 cover on',
      'plate at tail thickness 3.7 mm',
      'plate at Inlet thickness 3.5 mm',
      'hold-down at H2 gap 9 mm',
    ],
    [
      'plate at 4 m clock 7:30 thickness 3.6 mm',
      'flight at 9 m depth 70 mm',
      'flight from 3 m to 4 m depth 71 mm',
      'worn at 4 m clock 4:30 to 7:00',
      'not seen at 9 m cover on',
      'plate at 0 m thickness 3.7 mm',
      'plate at 0.3 m thickness 3.5 mm',
      'hold-down at 3.75 m gap 9 mm',
    ],
  ],
  [
    'a reading from one clock position to another',
    ['at 4.2 m clock 5:00 to 7:00 thickness 9 mm "rough"'],
    ['at 4.2 m clock 6:00 thickness 9 mm "clock 5:00 to 7:00: rough"'],
  ],
  ['the second colour', ['P1 second colour showing'], ['P1 colour teal']],
])('%s', (_, short, long) => {
  const said = read(look(...short));
  expect(said.findings.filter(({ code }) => code === 'TL101')).toEqual([]);
  expect(meaning(said)).toEqual(meaning(read(look(...long))));
});

test.each([
  ['how long it runs, said', 'duty 95 h per week ± 10 %', 'duty 95 h/week ± 10 %'],
  [
    'what moves a gate',
    'break Top at 8 m to 8.4 m slide gate by hand',
    'break Top at 8 m to 8.4 m slide gate driven by hand',
  ],
  [
    'what moves a gate, with its allowance',
    'break Top at 8 m to 8.4 m slide gate by hydraulics allowance 12 mm',
    'break Top at 8 m to 8.4 m slide gate driven by hydraulics allowance 12 mm',
  ],
])('%s', (_, short, long) => {
  const said = read(look('P1 thickness 9.1 mm'), { conveyor: `  ${short}` });
  expect(said.findings.filter(({ code }) => ['TL101', 'TL103'].includes(code))).toEqual([]);
  const [a, b] = [said, read(look('P1 thickness 9.1 mm'), { conveyor: `  ${long}` })].map(meaning);
  expect(JSON.parse(JSON.stringify(a).replaceAll('h per week', 'h/week'))).toEqual(b);
});

/** A look before, so that there is something to reline. */
const reline = (...rows: readonly string[]): string =>
  `${look('P1 thickness 9.1 mm')}\nreline DG1 2025-06-10 meter 6900 h {\n  liner TwoLayer12\n  ${rows.join('\n  ')}\n}`;

test.each([
  [
    'panels that do not lie side by side',
    ['scope panels 1, 3 to 4 and 2 of run 1', 'fitted panels 1 and 3 of run 1 thickness 12.2 mm'],
    [
      'scope panel 1 of run 1',
      'scope panels 3 to 4 of run 1',
      'scope panel 2 of run 1',
      'fitted panel 1 of run 1 thickness 12.2 mm',
      'fitted panel 3 of run 1 thickness 12.2 mm',
    ],
  ],
  [
    'an old panel by its number',
    ['scope run 2', 'old panel 4 of run 2 thickness 5.2 mm ± 0.2 mm "thin"'],
    ['scope run 2', 'old panel at 5.2 m thickness 5.2 mm ± 0.2 mm "thin"'],
  ],
])('of a reline: %s', (_, short, long) => {
  const said = read(reline(...short));
  expect(said.findings.filter(({ code }) => code === 'TL101')).toEqual([]);
  expect(meaning(said)).toEqual(meaning(read(reline(...long))));
});

test.each([
  ['panel 4 of run 2 clock 5:00 colour teal', 'at 5.2 m clock 5:00 colour teal "panel 4 of run 2"'],
  ['panel 3 of run 2 thickness 9 mm "thin"', 'P1 thickness 9 mm "panel 3 of run 2: thin"'],
  ['at panel 4 of run 2 second colour showing', 'at 5.2 m clock 6:00 colour teal "panel 4 of run 2"'],
])('seen on a panel: %s', (short, long) => {
  const said = read(look(short));
  expect(meaning(said)).toEqual(meaning(read(look(long))));
});

test('seen on a panel that is not there', () => {
  const found = read(look('panel 9 of run 2 colour teal')).findings;
  expect(found.map(({ message }) => message).join()).toContain('panel 9 of run 2');
});

test.each([
  ['P1 thickness 9 mm', 'at 4 m clock 7:30 thickness 9 mm'],
  ['P1 thickness 8.8 mm', 'at 4 m thickness 8.8 mm'],
])('of panels moved: %s', (named, placed) => {
  const moved = (row: string): Analysis =>
    read(
      `${look('P1 thickness 9.1 mm')}\npanels moved DG1 2025-06-10 meter 6900 h {\n` +
        `  panel 3 of run 2 turned end for end\n  ${row}\n}`,
      { liner: 'may be turned end for end' },
    );
  expect(meaning(moved(placed))).toEqual(meaning(moved(named)));
  // Beside the point it is measured too, and nothing else is; a thickness off the moved panel is told as such.
  const codes = (row: string) => moved(row).findings.map(({ code }) => code);
  expect([codes('at 4.3 m thickness 9 mm'), codes('at 8 m thickness 9 mm'), codes(named)]).toEqual([
    [],
    ['TL372', 'TL573'],
    [],
  ]);
});

test('the second colour of a liner of one layer is told as a colour that it does not have', () => {
  const found = read(look('P1 second colour showing'), { liner: '- layer\nlayer ivory 12 mm' });
  expect(found.findings.map(({ code }) => code)).toContain('TL117');
});

test.each([
  ['trough inside radius 226 mm side height 260 mm plate 4 mm', 'S235', []],
  ['trough inside radius 226 mm side height 260 mm plate 4 mm material S355', 'S355', ['TL112']],
])('a trough may say its material on a line of its own: %s', (trough, material, codes) => {
  const text = inSoundEstate('estate', '', { conveyor: `${trough}\ntrough material S235` });
  const { estate, findings } = analyse([{ uri: 'a.trough', text }]);
  expect(estate.conveyors[0]?.trough.material).toBe(material);
  expect(findings.map(({ code }) => code)).toEqual(codes);
});

test('a length of the spiral needs no word before its ends', () => {
  const changed = (ends: string): Analysis =>
    read(`${look('P1 thickness 9.1 mm')}\nscrew change DG1 2025-06-10 meter 6900 h {\n  ${ends}\n}`);
  const { estate } = changed('from 0 to 6 m');
  expect(estate.screwChanges[0]?.scope).toMatchObject({ from: { value: 0 }, to: { value: 6000 } });
  expect(meaning(changed('from 0 to 6 m'))).toEqual(meaning(changed('scope from 0 m to 6 m')));
});

test('a hatch needs no name', () => {
  const { estate, findings } = read('', { conveyor: 'hatch at 9 m to 9.6 m width 450 mm' });
  expect(findings.filter(({ code }) => code === 'TL101')).toEqual([]);
  expect(estate.conveyors[0]?.hatches.map(({ name, width }) => [name, width?.value])).toEqual([
    [undefined, 450],
  ]);
});

test('liners by stretches need no line for the rest where there is none, and one where there is', () => {
  const lines = (to: string): Around => ({
    conveyor: `- liner\nliner TwoLayer12 from 0 m to 5 m\nliner TwoLayer12 from 5 m to ${to}`,
  });
  const { estate, findings } = read('', lines('12 m'));
  expect(findings).toEqual([]);
  expect(historyOf(estate, estate.conveyors[0]!).linerSets.map(({ from, to }) => [from, to])).toEqual([
    [0, 5000],
    [5000, 12_000],
  ]);
  const gap = read('', lines('11 m'));
  expect(gap.estate.conveyors).toEqual([]);
  expect(gap.findings.map(({ message, todo }) => `${message} ${todo}`).join()).toContain('liner TwoLayer12');
  // What opens the trough has no liner.
  const { conveyor } = lines('11 m');
  expect(
    read('', { conveyor: `${conveyor ?? ''}\nbreak Out at 11 m to 12 m discharge` }).estate.conveyors,
  ).toHaveLength(1);
});

test.each([
  ['run below Gate', 'run above Gate', 1],
  ['run 1', 'run 2', 1],
  ['from 0 m to 7 m', 'run above Gate', 1],
  ['run below Gate', 'run below Gate', 0],
  ['run 1', 'run 3', 0],
])('liner of %s and of %s: no line for the rest where there is none', (one, other, conveyors) => {
  const found = read('', {
    conveyor: `- liner\n- break\nbreak Gate at 7 m to 7.5 m slide gate\nliner TwoLayer12 ${one}\nliner TwoLayer12 ${other}`,
  });
  expect(found.estate.conveyors).toHaveLength(conveyors);
});

test.each(['1 panel length 1200 mm', '1 panels length 1200 mm'])('on the shelf %s', (words) => {
  const { estate, findings } = read('', { plant: `on the shelf TwoLayer12 ${words} counted 2025-01-10` });
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  expect(
    estate.plants[0]?.shelf.map(({ item, count, length }) => [item, count.count, length?.value]),
  ).toEqual([['panels', 1, 1200]]);
});

test('an old panel by its number is measured where a point lies on it', () => {
  const { estate } = read(reline('scope run 2', 'old panel 3 of run 2 thickness 8.2 mm'));
  const row = estate.readings.value.indexOf(8.2);
  expect(estate.places[estate.readings.place[row] ?? -1]?.name).toBe('P1');
});

const order = (place: string): string =>
  `job J1 {\n  conveyor DG1\n  outage Spring27\n  reline panels 1 to 3 of run 2\n  crews Alpha, Bravo\n  access units MP1\n` +
  `  order {\n    isolate\n    prove dead\n    gas test all\n    covers off all by Alpha using MP1\n    restrain screw\n` +
  ['strip', 'clean', 'fit'].map((action) => `    ${action} ${place} by Alpha attended by Bravo\n`).join('') +
  `    release screw\n    covers on all by Alpha using MP1\n    remove isolation\n  }\n}`;

test.each([
  'panels 1, 2 and 3 of run 2',
  'panels 1 and 2 to 3 of run 2',
  'panels 3, 1 and 2 of run 2',
  'panels 1 to 2, 2 to 3 of run 2',
])('a step works on panels that are named one by one: %s', (place) => {
  const said = read(order(place));
  expect(said.findings.filter(({ code }) => ['TL101', 'TL107'].includes(code))).toEqual([]);
  const counts = ({ findings }: Analysis) => findings.map(({ code }) => code).sort();
  const long = read(order('panels 1 to 3 of run 2'));
  expect(long.findings.filter(({ code }) => code === 'TL101')).toEqual([]);
  expect(counts(said)).toEqual(counts(long));
  const places = ({ estate }: Analysis) =>
    estate.jobs[0]?.order?.steps.map(({ stretch }) => stretch && stretchText(stretch));
  expect(places(said)).toEqual(places(long));
});

test('panels apart are told on the step, and need one each', () => {
  const told = read(order('panels 1 and 3 of run 2')).findings.filter(({ code }) => code === 'TL107');
  expect(told.map(({ message }) => message)).toEqual(
    ['strip', 'clean', 'fit'].map(
      (action) =>
        `The place of the step \`${action}\` is given as panels 1 and 3 of run 2; it must be panels that lie side by side: ` +
        'panel 3 has to have a step of its own.',
    ),
  );
});

test('a discharge may have a slide gate below it: of conditions and of work at it, and no barrier above people', () => {
  const around: Around = {
    conveyor:
      '- break Discharge\nbreak Discharge at 11.4 m to 12 m discharge slide gate driven by air allowance 20 mm\n' +
      'isolation A1 "air" pneumatic',
  };
  const told = (steps: string): readonly string[] =>
    read(
      `${look('gate leaking at Discharge serious')}\njob J1 {\n  conveyor DG1\n  outage Spring27\n  crews Alpha\n  order {\n` +
        `    isolate\n    prove dead\n${steps}    remove isolation\n  }\n}`,
      around,
    ).findings.flatMap(({ code }) => (/TL101|TL485|TL524|TL552|TL556/.test(code) ? [code] : []));
  expect(told('    gate off Discharge by Alpha\n    gate on Discharge by Alpha\n')).toEqual([]);
  expect(told('    gate shut Discharge\n')).toEqual(['TL485']);
});

test('a meter that nobody read is said on a line of its own, in any block that has one', () => {
  const blocks = [
    (head: string, row: string) =>
      `inspection DG1 2025-03-10${head} {\n  view downstream\n  ${row}\n  P1 colour teal\n}`,
    (head: string, row: string) => `reline DG1 2025-03-10${head} {\n  scope run 2\n  ${row}\n}`,
    (head: string, row: string) => `screw change DG1 2025-03-10${head} {\n  ${row}\n  by "crew"\n}`,
  ];
  for (const block of blocks) {
    const said = read(block('', 'meter not read'));
    expect(said.findings.filter(({ code }) => /^TL1/.test(code))).toEqual([]);
    expect(meaning(said)).toEqual(meaning(read(block(' meter not read', ''))));
    const twice = read(block(' meter 6000 h', 'meter not read'));
    expect(twice.findings.map(({ code }) => code)).toContain('TL112');
  }
});
