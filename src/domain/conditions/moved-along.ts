// Where does a tear or a crack lie after its panel was turned or exchanged? It is in the sheet, so it goes where the sheet goes: to
// the other end and the other side of a panel turned end for end, as far from the tail end of the place it was exchanged to. What
// is wrong with how a panel is held (lifted, shifted, loose bolts, an open joint, material behind it) is of the place: it stays
// open there until somebody says what became of it.

import type { Estate } from '../model/estate.js';
import { installedPanelEnds } from '../model/panels.js';
import type { ConditionKind, ConditionLine, PanelsMoved } from '../model/records.js';
import { intervalOf, type Interval } from '../model/runs.js';
import type { Stated } from '../model/stated.js';
import { unitOfMachine } from '../model/unit-of-machine.js';
import { formatDay } from '../units/calendar.js';
import { formatClock, mirrorClock } from '../units/clock.js';
import { chainageText } from '../units/length-words.js';
import { conditionWords } from './kinds.js';

const ofTheSheet: ReadonlySet<ConditionKind> = new Set<ConditionKind>(['panel torn', 'panel cracked']);

/** The line where it lies since the move; undefined where the move did not take it along. */
export function movedAlong(
  estate: Estate,
  moved: PanelsMoved,
  line: ConditionLine,
): ConditionLine | undefined {
  const { at } = line;
  if (!at || !ofTheSheet.has(line.kind)) return undefined;
  const { conveyor, date, moves } = moved;
  const ends = installedPanelEnds(estate, date.day);
  for (const { panel, other } of moves) {
    const here = intervalOf(conveyor, panel, ends);
    const there = other && intervalOf(conveyor, other, ends);
    if (!here || (other && !there)) continue;
    if (!there && isOn(here, at.value))
      return lyingAt(moved, turned(line), here.from + here.to - (line.to ?? at).value, mirrored(line));
    if (there && isOn(here, at.value)) return lyingAt(moved, line, there.from + at.value - here.from);
    if (there && isOn(there, at.value)) return lyingAt(moved, line, here.from + at.value - there.from);
  }
  return undefined;
}

/** The ends of a stretch change over with their panel. */
function turned(line: ConditionLine): ConditionLine {
  return line.at && line.to ? { ...line, at: line.to, to: line.at } : line;
}

function isOn({ from, to }: Interval, at: number): boolean {
  return at >= from && at <= to;
}

function mirrored({ clock }: ConditionLine): ConditionLine['clock'] {
  if (!clock) return undefined;
  const hours = mirrorClock(clock.hours);
  return { ...clock, hours, text: formatClock(hours) };
}

function lyingAt(
  { conveyor, date }: PanelsMoved,
  line: ConditionLine,
  value: number,
  clock = line.clock,
): ConditionLine {
  const { point: _, clock: __, panel: ___, at, to, ...rest } = line;
  const placed = (stated: Stated<'length'>, mm: number): Stated<'length'> => ({
    ...stated,
    value: mm,
    text: chainageText(mm, unitOfMachine(conveyor)),
  });
  // The first place it was seen at, however often it was moved since.
  const seenAt = line.movedFrom?.words ?? conditionWords(line);
  return {
    ...rest,
    ...(at && { at: placed(at, value) }),
    ...(at && to && { to: placed(to, value + Math.abs(to.value - at.value)) }),
    ...(clock && { clock }),
    movedFrom: { words: seenAt, day: formatDay(date.day) },
  };
}
