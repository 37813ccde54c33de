// The as-fitted form as a page for a phone or a desk: one file without a network that asks for what was really fitted and gives
// back the reline (and screw-change) block, ready to commit.

import { formStyles } from '../page/form-styles.js';
import { offlinePage } from '../page/offline-page.js';
import { formatNumber } from '../../domain/units/format.js';
import { asFittedScript } from '../page/generated/as-fitted.js';
import type { AsFittedData } from '../../protocol/offline-forms.js';
import type { WorkPack } from './pack.js';

export function asFittedPage(pack: WorkPack): string {
  return offlinePage({
    title: `${pack.number} as fitted`,
    styles: formStyles,
    script: asFittedScript,
    fallback: 'This page needs JavaScript. Use the as-fitted form of the printed pack instead.',
    data: asFittedData(pack),
  });
}

function asFittedData(pack: WorkPack): AsFittedData {
  const { asFitted } = pack;
  const { unit } = asFitted;
  return {
    // The job and its window: a form of another year finds none of these entries, one made again of this plan finds them.
    key: [asFitted.qualified, pack.number, pack.window?.from].filter(Boolean).join(' '),
    pack: `${pack.number}: ${pack.job.title ?? pack.job.name}`,
    name: pack.conveyor.name,
    qualified: asFitted.qualified,
    tonnes: asFitted.tonnes,
    unit,
    meter: { last: asFitted.meter?.value ?? null, date: asFitted.meter?.date ?? null },
    window: pack.window ? { from: pack.window.from, to: pack.window.to } : null,
    screw: asFitted.screw ?? null,
    relines: asFitted.relines.map((reline) => ({
      liner: reline.liner,
      thickness: inUnit(reline.thickness, unit, 2),
      nominal: reline.thickness,
      runs: reline.runs.map((run) => ({
        ...run,
        panels: run.panels.map((panel) => ({
          panel: panel.panel,
          planned: inUnit(panel.length, unit, 1),
          length: panel.length,
          from: panel.from,
          to: panel.to,
        })),
      })),
      points: reline.points.map((point) => ({
        ...point,
        at: unit === 'in' ? `${formatNumber(point.at / 304.8, 2)} ft` : `${formatNumber(point.at / 1000)} m`,
      })),
    })),
  };
}

/** Inches to a hundredth, as a tape and a gauge are read; millimetres to so many digits. */
function inUnit(mm: number, unit: 'mm' | 'in', digits: number): string {
  const step = 10 ** digits;
  return unit === 'in' ? formatNumber(mm / 25.4, 2) : formatNumber(Math.round(mm * step) / step);
}
