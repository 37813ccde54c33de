// Estates for the generators' tests, written in the language and read the way users' files are.

import { readdirSync, readFileSync } from 'node:fs';
import { analyse } from '../../src/analysis/analyse.js';
import type { Conveyor } from '../../src/domain/model/conveyor.js';
import type { Estate } from '../../src/domain/model/estate.js';
import type { Job } from '../../src/domain/model/job.js';
import { parseDay, type CalendarDay } from '../../src/domain/units/calendar.js';
import type { Analysis } from '../../src/analysis/analysis.js';

export function read(...texts: readonly string[]): Analysis {
  return analyse(texts.map((text, index) => ({ uri: `memory:/${index}.trough`, text })));
}

/** The demo, as it stands in examples. */
export function tarnholt(change: (text: string) => string = (text) => text): Estate {
  return analyse(tarnholtTexts().map(({ uri, text }) => ({ uri, text: change(text) }))).estate;
}

export function tarnholtTexts(): readonly { readonly uri: string; readonly text: string }[] {
  const folder = new URL('../../examples/4-tarnholt/', import.meta.url);
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((file) => file.isFile());
  return files.map((file) => {
    const path = `${file.parentPath}/${file.name}`;
    return { uri: path.slice(folder.pathname.length), text: readFileSync(path, 'utf8') };
  });
}

export function theJob(analysis: Analysis, name = 'J1'): Job {
  const job = analysis.estate.jobs.find((each) => each.name === name);
  if (!job)
    throw new Error(`no job ${name}: ${analysis.findings.map((finding) => finding.message).join('; ')}`);
  return job;
}

export function theConveyor(analysis: Analysis, name = 'DG1'): Conveyor {
  const conveyor = analysis.estate.conveyors.find((each) => each.name === name);
  if (!conveyor)
    throw new Error(`no conveyor ${name}: ${analysis.findings.map((finding) => finding.message).join('; ')}`);
  return conveyor;
}

export function day(text: string): CalendarDay {
  const found = parseDay(text);
  if (found === undefined) throw new Error(`not a day: ${text}`);
  return found;
}

export interface EstateFacts {
  readonly plantTitle?: string;
  readonly jobTitle?: string;
  readonly conveyor?: string;
  readonly liner?: string;
  readonly screw?: string;
  readonly job?: string;
  readonly more?: string;
}

/**
 * A lift conveyor of 12 m at 25° with a gate at 7 m: trough radius 175 mm, 150 mm sides, 12 mm liner at 935 kg/m³ and a spiral
 * 300 by 300 mm of 60 by 20 mm bar, the sizes of the worked examples in handbooks that the tests check against.
 */
export function liftConveyor(facts: EstateFacts = {}): string {
  return `
plant Tarnholt "${facts.plantTitle ?? 'Tarnholt Organics'}" {
  duty 84 h/week
  gas test interval 2 h
  outage Spring27 2027-04-12 to 2027-04-16 "digester clean-out"
  crew Alpha 4 people skills fitting, welding
  access unit MP1 "mobile platform" reach 12 m
  crane C1 "mobile crane" chart 1000 kg at 6 m, 400 kg at 12 m
  shift 07:00 to 17:00
  lead time liner 10 week
}
liner TwoLayer12 {
  material PE1000
  layer ivory 6 mm
  layer teal 6 mm
  panel length 1000 mm ± 1 mm
  condemn at 3 mm
  density 935 kg/m3
  bolt M10 rows 2 pitch 300 mm countersink 4 mm
  joint butted
  ${facts.liner ?? ''}
}
screw Spiral300 {
  shaftless
  outside diameter 300 mm
  pitch 300 mm
  hand right
  flight 60 mm by 20 mm
  density 7850 kg/m3
  drive plate 6 bolts M16
  ${facts.screw ?? ''}
}
conveyor DG1 "Digestate cake to bay 2" {
  plant Tarnholt
  length 12 m
  incline 25 deg
  trough inside radius 175 mm side height 150 mm plate 4 mm
  screw Spiral300
  liner TwoLayer12
  drive at head power 4 kW speed 18 rpm
  worn sector 4:30 to 6:00
  confined space
  commissioned 2023-01-02 meter 0 h
  section S1 6 m
  section S2 6 m
  break Gate at 7 m to 7.5 m slide gate allowance 15 mm
  hold-down every 1 m from 0.5 m to 11.5 m both sides
  brace every 3 m from 1.6 m to 10.6 m
  cover every 1.5 m from 0 m to 12 m mass 18 kg
  access Yard at 0 m to 5 m ground
  access South at 5 m to 12 m mobile platform height 4 m
  isolation Q1 "local isolator" electrical at 11.5 m
  lifting point LP1 at 9 m limit 400 kg
  point P1 at 2.00 m clock 5:00
  point P2 at 4.00 m clock 5:00
  point P3 at 9.00 m clock 5:00
  ${facts.conveyor ?? ''}
}
job J1 "${facts.jobTitle ?? 'Reline above the gate'}" {
  conveyor DG1
  outage Spring27
  reline run above Gate
  crews Alpha
  access units MP1
  lift limit 250 kg
  crane C1 at 6 m offset 5 m
  ${facts.job ?? ''}
}
${facts.more ?? ''}
`;
}
