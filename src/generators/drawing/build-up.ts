// A liner's layers cut through at full size (half size where the sheet cannot hold that): plate, countersink of the bolt, condemn
// line. Beside the cross-section for one liner; where several lie along a machine, a sheet with all of them and where they lie.

import type { Conveyor } from '../../domain/model/conveyor.js';
import type { Interval } from '../../domain/model/runs.js';
import type { LinerSpecification } from '../../domain/model/specifications.js';
import type { Markup } from '../page/markup.js';
import { letters, lettering, line, lineWidth, polygon, rectangle } from '../page/svg.js';
import { drawingArea } from './drawing-sheet.js';
import { hatchFill, hatchOfLayer } from './hatch.js';
import { spreadLabels } from './labels.js';
import { alongWords, sizeWords, type Picture } from './picture.js';
import { scaleOf } from './scale.js';

export interface LyingLiner {
  readonly liner: LinerSpecification;
  /** Chainages, mm. */
  readonly stretches: readonly Interval[];
}

export interface BuildUpPlace {
  /** Prefix of the hatches' ids. */
  readonly id: string;
  /** Its top left corner, mm of paper. */
  readonly x: number;
  readonly y: number;
  /** Where the liner lies, where others lie there too. */
  readonly where?: string;
  /** Of the whole sheet; left out, the largest that fits. */
  readonly reduction?: 1 | 2;
}

/** Width of the cut, and the height that one with its labels takes at most, mm of paper. */
const width = 34;
const cell = { width: 124, height: 74 } as const;
const mostOnSheet = 4;

/** Full size where so much liner and plate leave room for what stands below; less of it where the place has a line of its own. */
function reductionFor(liner: LinerSpecification, plate: number, where?: string): 1 | 2 {
  return liner.thickness.value + plate > (where === undefined ? 42 : 36) ? 2 : 1;
}

/** `0.00 m to 8.00 m, 12.50 m to 18.90 m`. */
export function stretchWords(conveyor: Conveyor, { stretches }: Pick<LyingLiner, 'stretches'>): string {
  return stretches
    .map(({ from, to }) => `${alongWords(from, conveyor)} to ${alongWords(to, conveyor)}`)
    .join(', ');
}

/** Sheets with every liner that lies along the machine; none where there is but one, which stands beside the cross-section. */
export function linerBuildUps(conveyor: Conveyor, liners: readonly LyingLiner[]): readonly Picture[] {
  if (liners.length < 2) return [];
  const plate = conveyor.trough.plate.value;
  const reduction = liners.some(({ liner }) => reductionFor(liner, plate, 'along') === 2) ? 2 : 1;
  return Array.from({ length: Math.ceil(liners.length / mostOnSheet) }, (_, sheet) => {
    const shown = liners.slice(sheet * mostOnSheet, (sheet + 1) * mostOnSheet);
    return {
      title: `${conveyor.name}: liners along the machine`,
      documentType: 'Liner build-up',
      scale: scaleOf(reduction).text,
      description: `Liners of ${conveyor.name}: ${shown
        .map((along) => `${along.liner.name} from ${stretchWords(conveyor, along)}`)
        .join('; ')}.`,
      hatches: ['dots', 'left', 'level', 'cross', 'right', 'steel'],
      content: (id) =>
        shown.flatMap((along, index) =>
          paintBuildUp(conveyor, along.liner, {
            id,
            x: drawingArea.x + (index % 2) * cell.width,
            y: drawingArea.y + Math.floor(index / 2) * cell.height,
            where: stretchWords(conveyor, along),
            reduction,
          }),
        ),
    };
  });
}

interface Label {
  /** mm of paper. */
  readonly at: number;
  readonly text: string;
}

export function paintBuildUp(conveyor: Conveyor, liner: LinerSpecification, at: BuildUpPlace): Markup[] {
  const plate = conveyor.trough.plate.value;
  const reduction = at.reduction ?? reductionFor(liner, plate, at.where);
  const { id, x } = at;
  const top = at.y + (at.where === undefined ? 17 : 23);
  const marks = [
    letters([x, at.y + 6], `Liner ${liner.name}, ${reduction === 1 ? 'full size' : 'half size'}`, {
      size: lettering.large,
      bold: true,
    }),
    ...(at.where === undefined ? [] : [letters([x, at.y + 12.5], at.where, { bold: true })]),
    letters([x, top - 4.5], 'screw side'),
  ];
  const labels: Label[] = [];
  let y = top;
  liner.layers.forEach((layer, index) => {
    const depth = layer.thickness.value / reduction;
    const first = index === 0 && liner.layers.length > 1;
    const fill = hatchFill(id, hatchOfLayer(index));
    marks.push(rectangle(x, y, width, depth, { width: lineWidth.medium, fill }));
    labels.push({
      at: y + depth / 2,
      text: `${layer.name} ${sizeWords(layer.thickness.value, conveyor)}${first ? ', wears first' : ''}`,
    });
    y += depth;
  });
  const steel = y;
  marks.push(
    rectangle(x, steel, width, plate / reduction, {
      width: lineWidth.medium,
      fill: hatchFill(id, 'steel'),
    }),
  );
  labels.push({ at: steel + plate / reduction / 2, text: `trough plate ${sizeWords(plate, conveyor)}` });
  const condemn = steel - liner.condemn.value / reduction;
  marks.push(line([x - 2, condemn], [x + width + 1, condemn], { width: lineWidth.thick, dash: '2 1' }));
  labels.push({ at: condemn, text: `condemn at ${sizeWords(liner.condemn.value, conveyor)} left` });
  const foot = steel + plate / reduction;
  if (liner.bolt?.countersink) {
    const depth = liner.bolt.countersink.value / reduction;
    marks.push(countersink(x + width * 0.3, top, depth, foot));
    labels.push({
      at: top + depth,
      text: `countersink ${sizeWords(liner.bolt.countersink.value, conveyor)}`,
    });
  }
  return [...marks, ...paintLabels(labels, x + width, top, foot)];
}

function countersink(middle: number, top: number, depth: number, foot: number): Markup {
  return polygon(
    [
      [middle - depth - 1.6, top],
      [middle + depth + 1.6, top],
      [middle + 1.6, top + depth],
      [middle + 1.6, foot],
      [middle - 1.6, foot],
      [middle - 1.6, top + depth],
    ],
    { width: lineWidth.medium, fill: '#fff' },
  );
}

function paintLabels(labels: readonly Label[], x: number, top: number, foot: number): Markup[] {
  const sorted = [...labels].sort((a, b) => a.at - b.at);
  const middles =
    spreadLabels(
      sorted.map((label) => ({ at: label.at, width: 4.2 })),
      0.6,
      top - 6,
      foot + 12,
    ) ?? sorted.map((label) => label.at);
  return sorted.flatMap((label, index) => {
    const at = middles[index] ?? label.at;
    return [
      line([x + 0.5, label.at], [x + 4, at], { width: lineWidth.thin }),
      letters([x + 5, at + 1.2], label.text),
    ];
  });
}
