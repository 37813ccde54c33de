// The sound estate that the rules' examples are put into, so that an example shows only the lines that matter.
// Scenario of our own; nothing in it gives a finding, which the catalogue tests prove.

import type { Around, Given, Rule, RuleCase, SoundBlock } from './rule.js';

/** An example as the language reads it, and where in it the finding must stand. */
export interface Example {
  readonly text: string;
  /** Undefined where nothing is to be found. */
  readonly marker?: { readonly start: number; readonly end: number };
}

export type Side = 'bad' | 'good';

/** The whole estate of a rule's bad or good example. */
export function exampleOf(rule: Rule, which: Side): Example {
  return unmarked(inSoundEstate(rule.given, sideOf(rule, which), aroundOn(rule, which)));
}

/** The whole estate of one of its further cases. */
export function caseOf(rule: Rule, { text }: RuleCase): Example {
  return unmarked(inSoundEstate(rule.given, text, aroundOn(rule, 'good')));
}

function unmarked(marked: string): Example {
  const start = marked.indexOf('«');
  const end = marked.indexOf('»') - 1;
  const text = marked.replace('«', '').replace('»', '');
  return start < 0 ? { text } : { text, marker: { start, end } };
}

/** The wrong or the right text, the spot of the finding still marked in the wrong one. */
function sideOf(rule: Rule, which: Side): string {
  if (!('example' in rule)) return rule[which];
  return textOn(rule.example, which);
}

function aroundOn({ around = {} }: Rule, which: Side): Around {
  return Object.fromEntries(Object.entries(around).map(([block, lines]) => [block, textOn(lines, which)]));
}

function textOn(text: string, which: Side): string {
  return which === 'bad'
    ? text.replace(/‹([^|›]*)\|[^›]*›/g, '$1').replace(/«([^|»]*)\|[^»]*»/g, '«$1»')
    : text.replace(/[‹«][^|›»]*\|([^›»]*)[›»]/g, '$1').replace(/[«»]/g, '');
}

/** The lines to show to a reader: the example's own, inside the head of the block they stand in. */
export function shownLines(rule: Rule, which: Side): string {
  return markedLines(rule, which).replace(/[«»]/g, '');
}

/** The same with the spot of the finding between « and ». */
export function markedLines(rule: Rule, which: Side): string {
  const { given } = rule;
  const around = aroundOn(rule, which);
  const own = sideOf(rule, which).replace(/^\n+|\s+$/g, '');
  const context = frames.flatMap((block) => {
    const lines = around[block];
    return lines === undefined || block === given ? [] : [shownIn(block, lines)];
  });
  return [...context, isBlock(given) ? shownIn(given, own) : own].join('\n');
}

function shownIn(block: SoundBlock, lines: string): string {
  const own = linesOf(lines).filter((line) => !line.startsWith('-'));
  return `${heads[block]} {\n${indent(['// …', ...own].join('\n'))}\n}`;
}

function isBlock(given: Given): given is Exclude<Given, 'whole' | 'estate' | 'specifications'> {
  return given !== 'whole' && given !== 'estate' && given !== 'specifications';
}

const heads: Readonly<Record<SoundBlock, string>> = {
  plant: 'plant Tarnholt "Tarnholt Organics"',
  liner: 'liner TwoLayer12',
  screw: 'screw Spiral400',
  conveyor: 'conveyor DG1 "Digestate cake to bay 2"',
  neighbour: 'conveyor DG2 "Digestate cake to bay 3"',
  inspection: 'inspection DG1 2025-03-10 meter 6000 h',
  job: 'job J1 "Reline above the gate"',
};

const facts: Readonly<Record<Exclude<SoundBlock, 'neighbour'>, string>> = {
  plant: `
fitting temperature 5 degC to 25 degC
service temperature 5 degC to 35 degC
duty 110 h/week ± 15 %
risk 5 %
outage Spring25 2025-04-14 to 2025-04-18
outage Autumn25 2025-09-15 to 2025-09-19
outage Spring26 2026-04-13 to 2026-04-17
outage Spring27 2027-04-12 to 2027-04-23
crew Alpha 4 people skills fitting, welding
crew Bravo 3 people skills fitting
crew Solo 1 person
access unit MP1 reach 12 m
crane C1 chart 2000 kg at 8 m, 1000 kg at 14 m
access unit Small reach 12 m platform load 230 kg for 2 people
lead time liner 10 week
rescue contact "control room, radio channel 1"
rescue means "tripod and winch at the tail"`,
  liner: `
material PE1000
layer ivory 6 mm
layer teal 6 mm
thickness tolerance 0.3 mm
panel length 1200 mm ± 1 mm
condemn at 3 mm
bolt M10 rows 2 pitch 250 mm countersink 4 mm
joint butted`,
  screw: `
shaftless
outside diameter 400 mm
pitch 350 mm
hand right
flight 80 mm by 25 mm
drive plate 8 bolts M20
condemn flight at 50 mm`,
  conveyor: `
plant Tarnholt
length 12 m
incline 20 deg
trough inside radius 226 mm side height 260 mm plate 4 mm
screw Spiral400
liner TwoLayer12
drive at head power 5.5 kW speed 18 rpm
confined space
commissioned 2024-01-08 meter 0 h
section S1 6 m
section S2 6 m
break Inlet at 0.3 m to 1.5 m inlet allowance 20 mm
break Gate at 7 m to 7.5 m slide gate allowance 20 mm
hold-down every 1.5 m from 2.25 m to 11.25 m both sides
cover every 1.2 m from 0 m to 12 m mass 18 kg
access A1 at 0 m to 12 m platform
isolation Q1 "local isolator" electrical at 11.5 m
isolation Feed "feed held off" material at 0.2 m
point P1 at 4 m clock 7:30
point P2 at 9 m clock 7:30`,
  inspection: `
by "day shift"
view downstream
gauge ultrasonic ± 0.2 mm`,
  job: `
conveyor DG1
outage Spring27
reline run above Gate
crews Alpha, Bravo
access units MP1
spiral held up by "chain hoist" rated 500 kg every 3 m`,
};

const specifications: readonly SoundBlock[] = ['plant', 'liner', 'screw'];
const always: readonly SoundBlock[] = [...specifications, 'conveyor'];
/** In the order in which they are written. */
const frames: readonly SoundBlock[] = [...always, 'neighbour', 'inspection', 'job'];

/**
 * The sound estate with these lines in their place; what stands between « and » is kept as it is. `around` says what else is
 * there: a block it names is in the estate, with these facts in place of its own that start with the same word. A line `- word`
 * takes such facts away.
 */
export function inSoundEstate(given: Given, lines: string, around: Around = {}): string {
  if (given === 'whole') return lines;
  const there = given === 'specifications' ? specifications : always;
  const blocks = frames.filter(
    (block) => there.includes(block) || block === given || around[block] !== undefined,
  );
  const written = blocks.map((block) =>
    write(block, [around[block] ?? '', ...(block === given ? [lines] : [])].join('\n')),
  );
  return written.join('') + (isBlock(given) ? '' : lines);
}

function write(block: SoundBlock, lines: string): string {
  const own = linesOf(lines);
  const replaced = new Set(own.map((line) => firstWord(line.replace(/^-\s*/, ''))));
  const usual = facts[block === 'neighbour' ? 'conveyor' : block].split('\n');
  const kept = usual.filter((line) => line !== '' && !replaced.has(firstWord(line)));
  const added = own.filter((line) => !line.startsWith('-'));
  return `${heads[block]} {\n${indent([...kept, ...added].join('\n'))}\n}\n`;
}

/** Lines as they are written, but for blank ones and for an indent that all share. */
function linesOf(lines: string): readonly string[] {
  return outdent(lines.replace(/^\n+/, ''))
    .split('\n')
    .filter((line) => line.trim() !== '');
}

function firstWord(line: string): string {
  return /^[\s«»]*([^\s«»]+)/.exec(line)?.[1] ?? '';
}

/** Own lines may or may not stand indented already. */
function outdent(lines: string): string {
  return lines.startsWith('  ')
    ? lines
        .split('\n')
        .map((line) => line.replace(/^ {2}/, ''))
        .join('\n')
    : lines;
}

function indent(lines: string): string {
  return lines
    .split('\n')
    .map((line) => (line.trim() === '' ? '' : `  ${line}`))
    .join('\n');
}
