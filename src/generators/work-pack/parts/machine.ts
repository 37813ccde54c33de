// The machine as the crew meets it: sizes as declared, the liner that lies there and the one that goes in. What lies there follows
// from the records: a reline with another liner, or two liners along one machine, are not what the conveyor declares.

import { presentDrive } from '../../../domain/model/present-drive.js';
import { formatDay, type CalendarDay } from '../../../domain/units/calendar.js';
import { formatPercent } from '../../../domain/units/format.js';
import type { Conveyor } from '../../../domain/model/conveyor.js';
import { runsOf } from '../../../domain/model/runs.js';
import { setsLying } from '../../../domain/model/exposure.js';
import { historyOf } from '../../../domain/model/history.js';
import type { Job } from '../../../domain/model/job.js';
import { bareAbove, linerSide } from '../../../domain/model/liner-side.js';
import { piecesOf } from '../../../domain/model/lying-liner.js';
import { screwAfter, screwsNow } from '../../../domain/model/lying-screw.js';
import { inTurn } from '../../../domain/model/turns.js';
import type { LinerSpecification, ScrewSpecification } from '../../../domain/model/specifications.js';
import type { WorkBefore } from '../../../domain/plan/jobs-before.js';
import type { Area } from '../../../domain/order/ground.js';
import type { LengthUnit } from '../../../domain/units/length-words.js';
import { chainageWords, lengthWords, toCentimetre } from '../../../domain/units/length-words.js';
import type { Fact } from '../pack.js';

/** `areas`: where panels are renewed, mm. */
export function machineFacts(
  before: WorkBefore,
  job: Job,
  areas: readonly Area[],
  unit: LengthUnit,
  asOf: CalendarDay | undefined,
): readonly Fact[] {
  const { conveyor } = job;
  const screw = screwAfter(job);
  const facts: Fact[] = [
    {
      name: 'Length, incline',
      value: `${chainageWords(conveyor.length.value, unit)}, ${conveyor.incline.text}`,
    },
    {
      name: 'Trough',
      value:
        `inside radius ${lengthWords(conveyor.trough.insideRadius.value, unit)}, ` +
        `straight side ${lengthWords(conveyor.trough.sideHeight.value, unit)}, ` +
        `plate ${lengthWords(conveyor.trough.plate.value, unit)}` +
        (conveyor.trough.material === undefined ? '' : ` of ${conveyor.trough.material}`),
    },
    ...linerFacts(before, job, areas, unit, asOf),
    {
      name: 'Screw',
      value:
        `${screw.name}: ${lengthWords(screw.outsideDiameter.value, unit)} outside, ` +
        `pitch ${screw.pitch.text}${pitchesWords(screw, unit)}${screw.hand ? `, ${screw.hand} hand` : ''}`,
    },
    ...screwLengths(before, job, unit, asOf),
  ];
  const drive = presentDrive(before.estate, conveyor, asOf);
  if (drive)
    facts.push({
      name: 'Drive',
      value: `at the ${drive.end}${drive.power ? `, ${drive.power.text}` : ''}${speedWords(before, job, asOf)}`,
    });
  if (conveyor.conveys) facts.push({ name: 'Conveys', value: conveyor.conveys.material });
  if (conveyor.fill) facts.push({ name: 'Fill', value: formatPercent(conveyor.fill.value) });
  return facts;
}

/** As declared, and since when it runs at another by the newest record of the duty that says a speed. */
function speedWords({ estate }: WorkBefore, { conveyor }: Job, asOf: CalendarDay | undefined): string {
  const declared = conveyor.drive?.speed;
  const last = inTurn(estate.dutyChanges).findLast(
    (each) => each.conveyor === conveyor && each.speed && each.from.day <= (asOf ?? Infinity),
  );
  if (!last?.speed || last.speed.value === declared?.value) return declared ? `, ${declared.text}` : '';
  return `, ${last.speed.text} since ${formatDay(last.from.day)}${declared ? ` (${declared.text} as declared)` : ''}`;
}

/** Where lengths of the spiral came in on different days; nothing where all of it is of one day. */
function screwLengths(
  { estate, jobs }: WorkBefore,
  { conveyor }: Job,
  unit: LengthUnit,
  asOf: CalendarDay | undefined,
): readonly Fact[] {
  const changed = jobs.some(({ screw }) => screw !== undefined);
  const lengths = screwsNow(historyOf(estate, conveyor, changed ? {} : { asOf }));
  if (lengths.length < 2) return [];
  const words = lengths.map(({ screw, fitted, from, to }) => {
    const since = fitted === undefined ? 'since when is not recorded' : `in since ${formatDay(fitted.day)}`;
    return `${chainageWords(from, unit)} to ${chainageWords(to, unit)}: ${screw.name}, ${since}`;
  });
  return [{ name: 'Screw in lengths', value: words.join('; ') }];
}

/** No panel is as short: so much two layouts differ by their gaps, mm (judgement). */
const sliver = 50;

/** Reckoned from gaps: nobody measures where panels meet to the millimetre. */
function jointAt(mm: number, unit: LengthUnit): string {
  return chainageWords(toCentimetre(mm), unit);
}

/** What lies there now, piece by piece from the tail, and what is to lie there. */
function linerFacts(
  { estate, jobs }: WorkBefore,
  job: Job,
  areas: readonly Area[],
  unit: LengthUnit,
  asOf: CalendarDay | undefined,
): readonly Fact[] {
  const { conveyor } = job;
  const renewed = job.relines.length > 0 ? areas : [{ from: 0, to: conveyor.length.value }];
  const planned = jobs.filter(({ renewed }) => renewed.length > 0);
  const history = historyOf(estate, conveyor, planned.length > 0 ? {} : { asOf });
  const lying = setsLying(history, undefined).flatMap((set) => {
    const shared = renewed.flatMap((area) => {
      const [from, to] = [Math.max(area.from, set.from), Math.min(area.to, set.to)];
      return to - from > sliver ? [from, to] : [];
    });
    return shared.length === 0 ? [] : [{ ...set, from: Math.min(...shared), to: Math.max(...shared) }];
  });
  const pieces = piecesOf(lying, true).flatMap((piece) => withinRuns(conveyor, piece));
  const old = pieces.map(({ liner, since: fitted, from, to }): string => {
    const where = pieces.length > 1 ? `${jointAt(from, unit)} to ${jointAt(to, unit)}: ` : '';
    const by = planned.find((each) => each.job.window?.to.day === fitted?.day);
    const since =
      fitted === undefined
        ? ''
        : by
          ? `, to be put in by job ${by.job.name} (planned, not done)`
          : `, in since ${formatDay(fitted.day)}`;
    return `${where}${buildWords(liner, unit)}${since}`;
  });
  const short =
    bareAbove(conveyor) > 0
      ? `; straight side ${lengthWords(linerSide(conveyor).value, unit)}, ${lengthWords(bareAbove(conveyor), unit)} below the top of the trough`
      : '';
  if (job.relines.length === 0) return [{ name: 'Liner', value: `${old.join('; ')}${short}` }];
  const fresh = [...new Set(job.relines.map(({ liner }) => liner))];
  return [
    { name: 'Liner, comes out', value: old.join('; ') || 'not known' },
    { name: 'Liner, goes in', value: `${fresh.map((liner) => buildWords(liner, unit)).join('; ')}${short}` },
  ];
}

/** At a break, as a gate or the discharge, no liner lies: a piece begins and ends in a run, and one that lies in none is none. */
function withinRuns<T extends Area>(conveyor: Conveyor, piece: T): readonly T[] {
  const lined = runsOf(conveyor).flatMap((run): number[] => {
    const [from, to] = [Math.max(piece.from, run.from), Math.min(piece.to, run.to)];
    return to - from > sliver ? [from, to] : [];
  });
  return lined.length === 0 ? [] : [{ ...piece, from: Math.min(...lined), to: Math.max(...lined) }];
}

function buildWords({ name, layers, bolt, joint }: LinerSpecification, unit: LengthUnit): string {
  const build = layers
    .map((layer) => `${layer.name} ${lengthWords(layer.thickness.value, unit)}`)
    .join(' + ');
  const joints = joint.policy === 'gap' ? `with a gap of ${lengthWords(joint.gap.value, unit)}` : 'butted';
  return `${name}: ${build}${bolt ? `, bolts ${bolt.size}` : ''}, joints ${joints}`;
}

/** ` (250 mm from 0.00 m to 2.00 m)`; empty where it is the same all along. */
function pitchesWords({ pitches = [] }: ScrewSpecification, unit: LengthUnit): string {
  const all = pitches.map(
    ({ pitch, along }) =>
      `${pitch.text} from ${chainageWords(along.from.value, unit)} to ${chainageWords(along.to.value, unit)}`,
  );
  return all.length === 0 ? '' : ` (${all.join(', ')})`;
}
