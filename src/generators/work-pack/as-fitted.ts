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
  return {
    key: pack.number,
    pack: `${pack.number}: ${pack.job.title ?? pack.job.name}`,
    name: pack.conveyor.name,
    qualified: asFitted.qualified,
    tonnes: asFitted.tonnes,
    screw: asFitted.screw ?? null,
    relines: asFitted.relines.map((reline) => ({
      liner: reline.liner,
      thickness: formatNumber(reline.thickness),
      runs: reline.runs.map((run) => ({
        ...run,
        panels: run.panels.map((panel) => ({
          panel: panel.panel,
          planned: formatNumber(Math.round(panel.length * 10) / 10),
          from: panel.from,
          to: panel.to,
        })),
      })),
      points: reline.points.map((point) => ({
        ...point,
        at: formatNumber(point.at / 1000),
      })),
    })),
  };
}
