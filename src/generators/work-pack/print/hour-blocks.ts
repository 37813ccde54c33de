// The plan by the hour as one table: hours in which no new step begins are one row, with what stands at its end.

import { formatNumber } from '../../../domain/units/format.js';
import type { HourRow, WorkPack } from '../pack.js';
import type { PrintBlock } from './blocks.js';

export function hourBlocks(pack: WorkPack): PrintBlock[] {
  const rows = spells(pack.hours);
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      dense: true,
      caption:
        'Hour by hour: who is where, what is fitted at its end, and what is off: covers, braces, hold-down blocks at so many places',
      columns: [
        { head: 'When', width: 36 },
        { head: 'Who, steps; where', width: 90 },
        { head: 'Off', width: 22 },
        { head: 'Liner', width: 39 },
      ],
      rows: rows.map(({ first, last }, index) => {
        const before = rows[index - 1]?.last;
        return [
          whenWords(first, last, before),
          whoWords(first, last, before),
          offWords(last.off),
          last.runs
            .filter((run) => run.fitted < run.panels || !wasFitted(before, run.run))
            .map(runWords)
            .join('; '),
        ];
      }),
    },
  ];
}

/** `8, 4, 24 at 12`. */
function offWords({ covers, braces, holdDowns }: HourRow['off']): string {
  const blocks =
    holdDowns === undefined
      ? 'some'
      : holdDowns.places === 0
        ? '0'
        : `${holdDowns.blocks} at ${holdDowns.places}`;
  return `${covers ?? 'some'}, ${braces ?? 'some'}, ${blocks}`;
}

interface Spell {
  readonly first: HourRow;
  readonly last: HourRow;
}

/** Hours of one day in a row in which no new step begins. */
export function spells(hours: readonly HourRow[]): readonly Spell[] {
  const found: Spell[] = [];
  for (const hour of hours) {
    const before = found.at(-1);
    if (before && goesOn(before, hour)) found[found.length - 1] = { first: before.first, last: hour };
    else found.push({ first: hour, last: hour });
  }
  return found;
}

function goesOn({ first, last }: Spell, next: HourRow): boolean {
  const known = new Set(first.doing.map(({ step }) => step));
  return (
    dayOf(last) === dayOf(next) &&
    !last.everybodyOut &&
    last.machine.join() === next.machine.join() &&
    next.doing.length > 0 &&
    next.doing.every(({ step }) => known.has(step))
  );
}

function dayOf({ startText, from }: HourRow): string {
  return startText?.split(' ')[0] ?? `${Math.floor(from / 8)}`;
}

function whenWords(first: HourRow, last: HourRow, before: HourRow | undefined): string {
  if (first.startText === undefined || last.finishText === undefined)
    return `hour ${formatNumber(first.from, 1)} to ${formatNumber(last.to, 1)}`;
  const [day = '', from = ''] = first.startText.split(' ');
  const to = last.finishText.split(' ')[1] ?? '';
  return before && dayOf(before) === day ? `${from}–${to}` : `${day} ${from}–${to}`;
}

/** Steps of the same people at the same place in one line; then how the machine stands, where that has changed. */
function whoWords(first: HourRow, last: HourRow, before: HourRow | undefined): string {
  const lines = new Map<string, { readonly steps: string[]; readonly at: string; readonly who: string }>();
  for (const { step, action, where, who: hands, standBy, unit } of first.doing) {
    const who = standBy === undefined ? hands : `${hands}, ${standBy} standing by`;
    const at = [action.startsWith('gate ') ? '' : placeWords(where), unit].filter(Boolean).join(', ');
    const known = lines.get(`${who};${at}`);
    if (known) known.steps.push(`${step} ${action}`);
    else lines.set(`${who};${at}`, { who, steps: [`${step} ${action}`], at });
  }
  const words = [...lines.values()].map(
    ({ who, steps, at }) => `${who}: ${steps.join(', ')}${at === '' ? '' : `; ${at}`}`,
  );
  const out = last.everybodyOut ? ['everybody out before the air is due for a test'] : [];
  const machine = last.machine.join(', ');
  const changed = machine === before?.machine.join(', ') ? [] : [`Then ${machine}`];
  if (words.length === 0) words.push('nobody: a platform moves, or a place dries or cools');
  return [...words, ...out, ...changed].join('. ');
}

/** A named stretch without its chainages, which stand with the step. */
function placeWords(where: string): string {
  if (/^(all isolation points|whole conveyor|whole length|drive plate)$/.test(where)) return '';
  const [named = ''] = where.replace(/, from the (head|tail) end$/, '').split(', ');
  return named;
}

/** Said once, when it is. */
function wasFitted(before: HourRow | undefined, number: number): boolean {
  return before?.runs.some(({ run, fitted, panels }) => run === number && fitted === panels) ?? false;
}

function runWords({ run, panels, bare, fitted }: HourRow['runs'][number]): string {
  if (fitted === panels) return `run ${run} fitted`;
  const words = [...(bare > 0 ? [`${bare} bare`] : []), ...(fitted > 0 ? [`${fitted} fitted`] : [])];
  return `run ${run}: ${words.join(', ')} of ${panels}`;
}
