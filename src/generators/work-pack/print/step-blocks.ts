// The steps to sign, each with its people and its time: what to do stands in full at the first step of its kind. Then what the
// time rests on.

import { formatHours, formatNumber } from '../../../domain/units/format.js';
import type { StepRow, WorkPack } from '../pack.js';
import type { PrintBlock } from './blocks.js';
import { hourBlocks } from './hour-blocks.js';

export function stepBlocks(pack: WorkPack): PrintBlock[] {
  const first = new Map<string, StepRow>();
  for (const step of pack.steps) if (!first.has(kindOf(step))) first.set(kindOf(step), step);
  return [
    { kind: 'heading', level: 2, text: 'Steps' },
    { kind: 'text', text: orderWords(pack) },
    {
      kind: 'table',
      columns: [
        { head: 'No.', number: true, width: 8 },
        { head: 'Step, where, who', width: 45 },
        { head: 'What to do, what to check' },
        { head: 'When', width: 32 },
        { head: 'Done by, time; checked by', write: 24 },
      ],
      origins: pack.steps.map(({ origin }) => origin),
      rows: pack.steps.map((step, index) => [
        `${step.number}`,
        [
          `${step.hold ? '■ ' : ''}${step.action}`,
          step.where,
          [peopleWords(step), step.access].filter(Boolean).join(', '),
          afterWords(step.after, step.number),
        ]
          .filter(Boolean)
          .join('\n'),
        [...step.measures, step.note, guidanceWords(step, first.get(kindOf(step)))]
          .filter(Boolean)
          .join('\n'),
        whenWords(pack, step, pack.steps[index - 1]),
        '',
      ]),
    },
  ];
}

function orderWords(pack: WorkPack): string {
  return `${
    pack.order === 'as written'
      ? 'In the order written for this job.'
      : 'Proposed order, as the job writes none.'
  } ■ marks a hold: nobody goes on before it is signed. Person-hours stand in brackets under the time.`;
}

function peopleWords({ who, people }: StepRow): string {
  return `${who}${people > 0 ? ` (${people})` : ''}`;
}

/** Hot and cold work of one name are two kinds. */
function kindOf({ action, work }: StepRow): string {
  return `${action}: ${work}`;
}

/** Said once for each kind of step: what repeats itself is not read. */
function guidanceWords(step: StepRow, first: StepRow | undefined): string {
  return first === undefined || first === step
    ? `${step.work}\nCheck: ${step.check}`
    : `Work and check as in step ${first.number}.`;
}

/** Said only where a step does not simply follow the one above it. */
function afterWords(after: readonly number[], number: number): string {
  if (after.length === 1 && after[0] === number - 1) return '';
  return after.length > 0 ? `after ${after.join(', ')}` : number > 1 ? 'any time' : '';
}

/** The day where it is a new one, from when to when, how long, and how far it may slip. */
function whenWords({ steps }: WorkPack, step: StepRow, before: StepRow | undefined): string {
  const allCritical = steps.every(({ critical }) => critical);
  const slip = allCritical ? [] : [step.critical ? 'critical' : `may slip ${timeShort(step.float)}`];
  return [...momentWords(step, before), `${timeShort(step.hours)} (${step.basis})`, ...slip].join('\n');
}

function momentWords(
  { startText, finishText, start, finish }: StepRow,
  before: StepRow | undefined,
): string[] {
  if (startText === undefined || finishText === undefined)
    return [`hour ${formatNumber(start, 1)} to ${formatNumber(finish, 1)}`];
  const [day = '', from = ''] = startText.split(' ');
  const [lastDay = '', to = ''] = finishText.split(' ');
  const heading = before?.startText?.startsWith(day) ? [] : [day];
  return day === lastDay ? [...heading, `${from} to ${to}`] : [...heading, `${from} to`, `${lastDay} ${to}`];
}

export function scheduleBlocks(pack: WorkPack): PrintBlock[] {
  const { schedule, steps } = pack;
  const items = [
    schedule.criticalPath.length === steps.length
      ? 'Every step waits for the one before it: a delay in any delays the end.'
      : `Longest chain: steps ${schedule.criticalPath.join(', ')}. A delay in any of them delays the end.`,
    `Lower bound ${formatHours(schedule.lowerBound)}: ${schedule.boundBecause}.`,
    ...schedule.shorten.map((each) => `With ${each.what} about ${formatHours(each.saves)} less.`),
    ...(schedule.repeatGasTests ? [againWords(schedule.repeatGasTests)] : []),
    ...(schedule.accessMoves > 0
      ? [
          `${schedule.accessMoves} ${schedule.accessMoves === 1 ? 'move of a mobile platform' : 'moves of mobile platforms'} in this plan; another of the same length may have fewer.`,
        ]
      : []),
    ...(schedule.defaults.length > 0 ? [schedule.defaults.join(' ')] : []),
  ];
  return [{ kind: 'heading', level: 2, text: 'Time' }, { kind: 'list', items }, ...hourBlocks(pack)];
}

/** Below an hour in minutes. */
function timeShort(hours: number): string {
  return hours < 0.995 ? `${Math.round(hours * 60)} min` : formatHours(hours);
}

function againWords({ every, times }: { readonly every?: number; readonly times: number }): string {
  const often = every === undefined ? '' : `every ${formatHours(every)} and `;
  return (
    `Air tested again ${often}before work goes on after a break: ` +
    `${times} ${times === 1 ? 'time' : 'times'} besides the first; all work on the machine stands still meanwhile.`
  );
}
