// Two orders as somebody on site would write them, a reline of a machine that rises at 28° and a new spiral for one that falls,
// and one mistake at a time planted in them: each is told by its rule.

import { expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';

const specifications = `
plant Tarnholt {
  fitting temperature 5 degC to 25 degC
  duty 60 h/week ± 15 %
  gas test interval 2 h
  rescue contact "control room, radio channel 3"
  rescue means "two trained rescuers with tripod and winch beside the trough"
  meeting point "gate of the hall"
  outage Autumn27 2027-09-06 to 2027-10-01
  crew Alpha 4 people skills fitting, lifting
  crew Bravo 3 people skills fitting, welding
  crew Watch 1 person skills attending
  crane Yard chart 2500 kg at 10 m, 1200 kg at 18 m, 600 kg at 24 m
  access unit MP1 reach 12 m platform load 400 kg for 4 people
  shift 07:00 to 17:00 on mon, tue, wed, thu, fri
  unit time gas test 0.25 h
  unit time weld 2 h
}
liner TwoLayer12 {
  material PE1000
  layer ivory 6 mm
  layer teal 6 mm
  panel length 1200 mm ± 1 mm
  stock length 3000 mm
  condemn at 3 mm
  bolt M10 pitch 200 mm countersink 4 mm
}
screw Spiral400 {
  shaftless
  outside diameter 400 mm
  pitch 350 mm
  hand left
  flight 80 mm by 25 mm
  drive plate 8 bolts M16
}
`;
const machine = (name: string, incline: number, drive: string): string => `
conveyor ${name} "Sludge" {
  plant Tarnholt
  length 18 m
  incline ${incline} deg
  conveys "dewatered sludge"
  bulk density 950 kg/m3
  fill 35 %
  trough inside radius 220 mm side height 260 mm plate 4 mm
  clearance 4 mm to 20 mm
  screw Spiral400
  liner TwoLayer12
  drive at ${drive} power 5.5 kW speed 18 rpm
  rotation clockwise
  service temperature 5 degC to 45 degC
  confined space
  commissioned 2021-09-06 meter 0 h
  section S1 6 m
  section S2 6 m
  section S3 6 m
  break Foot at 0 m to 0.1 m joint ring allowance 20 mm
  break Low at 6.2 m to 6.7 m slide gate driven by hydraulics allowance 20 mm
  break High at 12.2 m to 12.7 m slide gate driven by hand allowance 20 mm
  hold-down every 1.5 m from 1.8 m to 16.8 m both sides
  brace every 3 m from 2.2 m to 17.2 m
  cover every 1.5 m from 0 m to 18 m mass 20 kg
  access Gantry at 0 m to 18 m platform height 4 m
  isolation Q12 "local isolator beside the drive" electrical at 17.5 m
  isolation Feed "feed conveyor held off" material at 0.5 m
  isolation H1 "gate power pack" hydraulic at 6.4 m
  lifting point L1 at 3 m limit 500 kg
  lifting point L2 at 9 m limit 500 kg
  lifting point L3 at 15 m limit 500 kg
  point P1 at 3.00 m clock 7:30
  point P2 at 11.00 m clock 7:30
}`;
const reline = `
job FullReline "Full reline" {
  conveyor SL28
  outage Autumn27
  reline all
  crews Alpha, Bravo, Watch
  fitting temperature 12 degC
  spiral held up by "chain hoist" rated 500 kg every 2.5 m
  lift limit 500 kg
  tool "torque wrench"
  order {
    empty by Alpha
    gate shut Low by Alpha
    gate shut High by Alpha
    isolate by Alpha
    prove dead by Alpha
    gas test all by Watch every 2 h
    covers off all by Alpha
    braces off all by Alpha
    hold-downs off all by Alpha
    strip run 3 by Alpha attended by Watch
    strip run 2 by Alpha attended by Watch
    strip run 1 by Alpha attended by Watch
    clean run 3 by Alpha attended by Watch
    patch from 9 m to 10 m by Bravo attended by Watch hot work shielded wet fire watch 60 min
    fire watch from 9 m to 10 m by Bravo takes 60 min
    clean run 2 by Alpha attended by Watch
    clean run 1 by Alpha attended by Watch
    fit run 3 starting at head by Alpha attended by Watch
    fit run 2 starting at head by Alpha attended by Watch
    fit run 1 starting at head by Alpha attended by Watch
    hold-downs on all by Alpha
    braces on all by Alpha
    clear up all by Alpha
    covers on all by Alpha
    gate open High by Alpha
    remove isolation by Alpha
    gate open Low by Alpha
    run empty by Alpha
    run loaded by Alpha
  }
}`;
const screwChange = `
job NewScrew "Screw change" {
  conveyor SD15
  outage Autumn27
  change screw welded joints cut hot
  crews Alpha, Bravo, Watch
  crane Yard at 9 m offset 4 m
  lift limit 500 kg
  sling angle 30 deg
  tool "welding set"
  order {
    empty by Alpha
    gate shut Low by Alpha
    gate shut High by Alpha
    isolate by Alpha
    prove dead by Alpha
    gas test all by Watch every 2 h
    covers off all by Alpha
    braces off all by Alpha
    hold-downs off all by Alpha
    restrain screw by Alpha
    unbolt drive by Alpha
    remove screw from 0 m to 6 m by Bravo attended by Watch hot work shielded wet fire watch 60 min
    remove screw from 6 m to 12 m by Bravo attended by Watch hot work shielded wet fire watch 60 min
    remove screw from 12 m to 18 m by Bravo attended by Watch hot work shielded wet fire watch 60 min
    fire watch all by Bravo takes 60 min
    insert screw from 0 m to 6 m by Alpha attended by Watch cold work
    insert screw from 6 m to 12 m by Alpha attended by Watch cold work
    insert screw from 12 m to 18 m by Alpha attended by Watch cold work
    join screw from 0 m to 9 m by Bravo attended by Watch hot work shielded wet fire watch 60 min
    join screw from 9 m to 18 m by Bravo attended by Watch hot work shielded wet fire watch 60 min
    fire watch all by Bravo takes 60 min
    bolt drive by Alpha
    release screw by Alpha
    hold-downs on all by Alpha
    braces on all by Alpha
    clear up all by Alpha
    covers on all by Alpha
    gate open High by Alpha
    remove isolation by Alpha
    gate open Low by Alpha
    run empty by Alpha
    run loaded by Alpha
  }
}`;

type Edit = (text: string) => string;

/** The line that begins so is left out. */
function del(start: string): Edit {
  return (text) => {
    const line = lineOf(text, start);
    return text.replace(line, '');
  };
}

/** The line that begins so stands before another. */
function put(start: string, before: string): Edit {
  return (text) => {
    const line = lineOf(text, start);
    const rest = text.replace(line, '');
    const other = lineOf(rest, before);
    return rest.replace(other, line + other);
  };
}

function say(was: string, is: string): Edit {
  return (text) => {
    if (!text.includes(was)) throw new RangeError(`No "${was}" to change.`);
    return text.replace(was, is);
  };
}

function lineOf(text: string, start: string): string {
  const line = text.split('\n').find((each) => each.trim().startsWith(start));
  if (line === undefined) throw new RangeError(`No line "${start}".`);
  return `${line}\n`;
}

function codesIn(job: string): readonly string[] {
  const estate = specifications + machine('SL28', 28, 'head') + machine('SD15', -15, 'head');
  return analyse([{ uri: 'file:///orders.trough', text: estate + job }])
    .findings.filter(({ severity }) => severity === 'error' || severity === 'warning')
    .map(({ code }) => code);
}

test.each([
  ['a reline at 28°', reline],
  ['a new spiral on a machine that falls', screwChange],
])('%s is sound as written', (_, job) => expect(codesIn(job)).toEqual([]));

const planted: readonly (readonly [string, string, string, ...Edit[]])[] = [
  ['Low is never shut', reline, 'TL552', del('gate shut Low'), del('gate open Low')],
  [
    'High is shut when the run below it is stripped already',
    reline,
    'TL552',
    put('gate shut High', 'strip run 1'),
  ],
  ['a hydraulic gate is shut after isolation', reline, 'TL554', put('gate shut Low', 'prove dead')],
  [
    'a hydraulic gate is opened before its energy is back',
    reline,
    'TL554',
    put('gate open Low', 'remove isolation'),
  ],
  ['High is opened while there is fitting below it', reline, 'TL553', put('gate open High', 'fit run 2')],
  ['High is never opened', reline, 'TL412', del('gate open High')],
  ['the trough is run empty against shut gates', reline, 'TL413', put('empty', 'isolate')],
  ['it is never emptied', reline, 'TL492', del('empty')],
  ['it is never proved dead', reline, 'TL406', del('prove dead')],
  ['the air is never tested', reline, 'TL407', del('gas test')],
  ['the air is tested too seldom', reline, 'TL475', say('every 2 h', 'every 6 h')],
  [
    'nobody stays outside at one step',
    reline,
    'TL550',
    say('fit run 1 starting at head by Alpha attended by Watch', 'fit run 1 starting at head by Alpha'),
  ],
  ['a weld is watched too briefly', reline, 'TL473', say('takes 60 min', 'takes 20 min')],
  ['a weld is watched after other work', reline, 'TL473', put('fire watch from', 'clean run 1')],
  [
    'a weld by who cannot weld',
    reline,
    'TL466',
    say('patch from 9 m to 10 m by Bravo', 'patch from 9 m to 10 m by Alpha'),
  ],
  ['braces never go back', reline, 'TL412', del('braces on')],
  ['covers go on over tools', reline, 'TL490', put('covers on', 'clear up')],
  ['isolation comes off under open covers', reline, 'TL412', put('remove isolation', 'covers on')],
  ['liner comes out under hold-downs', reline, 'TL408', put('hold-downs off', 'strip run 1')],
  ['nothing holds the spiral up', reline, 'TL551', del('spiral held up by')],
  [
    'what holds the spiral up is too weak',
    reline,
    'TL454',
    say('rated 500 kg every 2.5 m', 'rated 100 kg every 6 m'),
  ],
  ['loaded before it has run empty', reline, 'TL413', put('run loaded', 'run empty')],
  [
    'a run is fitted upward from a gate',
    reline,
    'TL405',
    say('fit run 3 starting at head', 'fit run 3 starting at tail'),
  ],
  [
    'a run is renewed whole of which the job asks for a part',
    reline,
    'TL536',
    say('reline all', 'reline panels 1 to 3 of run 1\n  reline run 2\n  reline run 3'),
  ],
  [
    'a run is renewed that the job does not name',
    reline,
    'TL536',
    say('reline all', 'reline run 1\n  reline run 2'),
  ],
  [
    'a part is renewed of what the job asks for',
    reline,
    'TL424',
    say('strip run 1', 'strip panels 1 to 3 of run 1'),
    say('clean run 1', 'clean panels 1 to 3 of run 1'),
    say('fit run 1', 'fit panels 1 to 3 of run 1'),
  ],
  [
    'a stretch goes across a gate',
    reline,
    'TL537',
    say('reline all', 'reline run 1\n  reline from 6.7 m to 14 m'),
  ],
  ['nothing restrains the spiral', screwChange, 'TL414', del('restrain screw'), del('release screw')],
  ['it is restrained once it is loose', screwChange, 'TL414', put('restrain screw', 'remove screw from 0')],
  ['it is never let go', screwChange, 'TL495', del('release screw')],
  ['the middle piece comes first', screwChange, 'TL483', put('remove screw from 6', 'remove screw from 0')],
  ['it is cut while the drive is bolted', screwChange, 'TL415', put('unbolt drive', 'fire watch all')],
  ['what was cut hot is not watched', screwChange, 'TL473', del('fire watch all by Bravo')],
  [
    'a joint is welded without shields',
    screwChange,
    'TL416',
    say(
      'join screw from 0 m to 9 m by Bravo attended by Watch hot work shielded wet',
      'join screw from 0 m to 9 m by Bravo attended by Watch hot work wet',
    ),
  ],
  [
    'a joint by who cannot weld',
    screwChange,
    'TL466',
    say('join screw from 0 m to 9 m by Bravo', 'join screw from 0 m to 9 m by Alpha'),
  ],
  ['the drive is bolted to loose pieces', screwChange, 'TL415', put('bolt drive', 'join screw from 0')],
  [
    'on a machine that falls the gate above is the one nearer the tail',
    screwChange,
    'TL552',
    del('gate shut Low'),
    del('gate open Low'),
  ],
  [
    'one person joins alone',
    screwChange,
    'TL474',
    say('join screw from 0 m to 9 m by Bravo attended by Watch', 'join screw from 0 m to 9 m by Watch'),
  ],
  ['hold-downs go on over loose pieces', screwChange, 'TL415', put('hold-downs on', 'join screw from 0')],
  [
    'back in after a break without a test',
    screwChange,
    'TL407',
    say('    insert screw from 0 m', '    pause takes 60 min\n    insert screw from 0 m'),
  ],
  ['slings too flat', screwChange, 'TL438', say('sling angle 30 deg', 'sling angle 70 deg')],
  [
    'cold work where the job cuts hot',
    screwChange,
    'TL557',
    say(
      'remove screw from 0 m to 6 m by Bravo attended by Watch hot work shielded wet fire watch 60 min',
      'remove screw from 0 m to 6 m by Bravo attended by Watch cold work',
    ),
  ],
];

for (const [mistake, job, code, ...edits] of planted)
  test(`${mistake}: ${code}`, () => {
    expect(codesIn(edits.reduce((text, edit) => edit(text), job))).toContain(code);
  });

/** The reline of one run alone, after a look that found something at a gate. */
function oneRun(run: number, found: string): string {
  const others = [1, 2, 3].filter((each) => each !== run);
  const lines = reline
    .split('\n')
    .filter((line) => !others.some((each) => line.includes(` run ${each} `)))
    .filter((line) => !/ from 9 m/.test(line))
    .join('\n');
  const look = `\ninspection SL28 2026-09-07 meter 15000 h {\n  view downstream\n  ${found}\n}`;
  return lines.replaceAll(' all by', ` run ${run} by`).replace('reline all', `reline run ${run}`) + look;
}

test.each([
  ['gate stuck at Low', 'TL556'],
  ['gate leaking at Low', 'TL556'],
  ['finding gate at Low serious "creeps open under load"', 'TL538'],
])('%s is told where people are below it, and not where all are above it', (found, code) => {
  expect(codesIn(oneRun(1, found))).toContain(code);
  expect(codesIn(oneRun(2, found))).not.toContain(code);
  expect(codesIn(oneRun(2, found.replace('Low', 'High')))).toContain(code);
  expect(codesIn(oneRun(3, found.replace('Low', 'High')))).not.toContain(code);
});

test('what an earlier job takes is told with its spares, and what is then cut from another length too: TL535', () => {
  const stocked = specifications.replace(
    '  outage Autumn27',
    '  outage Spring27 2027-04-12 to 2027-04-23\n  on the shelf TwoLayer12 8 panels counted 2026-08-31\n  outage Autumn27',
  );
  const job = (name: string, outage: string, scope: string): string =>
    `\njob ${name} {\n  conveyor SL28\n  outage ${outage}\n  reline ${scope}\n  crews Alpha\n}`;
  const look = '\ninspection SL28 2026-09-07 meter 15000 h {\n  view downstream\n  P1 thickness 8.8 mm\n}';
  const text =
    stocked +
    machine('SL28', 28, 'head') +
    look +
    job('J1', 'Spring27', 'panels 1 to 3 of run 1') +
    job('J2', 'Autumn27', 'panels 1 to 5 of run 2');
  const told = analyse([{ uri: 'file:///two.trough', text }]).findings.filter(({ code }) => code === 'TL535');
  expect(told.map(({ message }) => message)).toEqual([
    'job J1 before job J2 takes 4 of TwoLayer12, 1.20 m (1 of them spare) from the shelf of Tarnholt, and both count on it: ' +
      'job J2 needs 6 (1 of them spare) and finds 4, so 2 of TwoLayer12 sheet, 3.00 m are to be ordered.',
  ]);
});
