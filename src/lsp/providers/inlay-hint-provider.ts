// Facts the text leaves out, shown beside it: defaults that were assumed, where sections lie, how long the liner under an
// inspection had run, how fast a point wears. Each kind has its own setting.

import { InlayHintKind, type InlayHint, type Range } from 'vscode-languageserver';
import type { Stated } from '../../domain/model/stated.js';
import type { Origin } from '../../domain/model/origin.js';
import { exposureBetween, setSeen } from '../../domain/model/exposure.js';
import { historyOf, momentOf } from '../../domain/model/history.js';
import { runsOf } from '../../domain/model/runs.js';
import { installedPanels } from '../../domain/model/panels.js';
import { attempt } from '../hover/markdown.js';
import { exposureWords } from '../hover/records.js';
import { metres } from '../hover/stated.js';
import type { Session } from '../session.js';
import { keyOf } from '../forecasts.js';
import type { EstateDocument } from '../document.js';

export function inlayHints(session: Session, document: EstateDocument, range: Range): InlayHint[] {
  const { inlayHints: wanted } = session.settings;
  const from = document.offsetAt(range.start);
  const to = document.offsetAt(range.end);
  const hints: InlayHint[] = [];
  const hint = (offset: number, label: string, tooltip?: string): void => {
    if (offset < from || offset > to) return;
    const short = shortened(label);
    const more = [...(short === label ? [] : [label]), ...(tooltip ? [tooltip] : [])].join('\n');
    hints.push({
      position: document.positionAt(offset),
      label: short,
      kind: InlayHintKind.Parameter,
      paddingLeft: true,
      ...(more === '' ? {} : { tooltip: more }),
    });
  };
  const here = (origin: Origin): boolean => session.uriOf(origin) === document.uri;
  const headerEnd = (origin: Origin): number => {
    const brace = document.text.indexOf('{', origin.start);
    return brace < 0 || brace > origin.end ? origin.end : brace + 1;
  };
  const estate = session.estate();

  if (wanted.defaults) {
    const assumed = (origin: Origin, facts: Readonly<Record<string, Stated | undefined>>): void => {
      const list = Object.entries(facts).flatMap(([name, stated]) =>
        stated?.assumed === undefined ? [] : [`${name} ${stated.text}`],
      );
      const sources = Object.entries(facts).flatMap(([name, stated]) =>
        stated?.assumed === undefined ? [] : [`${name}: ${stated.assumed}`],
      );
      if (list.length > 0) hint(headerEnd(origin), `assumed: ${list.join(', ')}`, sources.join('\n'));
    };
    for (const liner of estate.liners.filter(({ origin }) => here(origin))) {
      assumed(liner.origin, {
        density: liner.density,
        expansion: liner.expansion,
        modulus: liner.modulus,
        'maximum temperature': liner.maximumTemperature,
        'layer tolerance': liner.layerTolerance,
        'condemn at': liner.condemn,
        'panel tolerance': liner.panelTolerance,
      });
    }
    for (const screw of estate.screws.filter(({ origin }) => here(origin)))
      assumed(screw.origin, { density: screw.density });
    for (const plant of estate.plants.filter(({ origin }) => here(origin)))
      assumed(plant.origin, { risk: plant.risk, 'risk of contact': plant.contactRisk });
    for (const job of estate.jobs.filter(({ origin }) => here(origin))) {
      assumed(job.origin, {
        'saw kerf': job.sawKerf,
        'minimum closing piece': job.minimumClosingPiece,
        'measuring tolerance': job.measuringTolerance,
        'joint clearance': job.jointClearance,
      });
    }
  }

  if (wanted.chainage) {
    for (const conveyor of estate.conveyors.filter(({ origin }) => here(origin))) {
      for (const section of conveyor.sections)
        hint(
          section.origin.end,
          `${metres(section.start)} to ${metres(section.start + section.length.value)}`,
        );
      for (const run of runsOf(conveyor)) {
        const { tailBreak } = run;
        const panels = attempt(() => installedPanels(estate, run).layout.panels);
        const anchor = tailBreak.implied ? headerEnd(conveyor.origin) : tailBreak.origin.end;
        hint(
          anchor,
          `run ${run.number}: ${metres(run.from)} to ${metres(run.to)}${panels ? `, ${panels.length} panels` : ''}`,
          [
            run.label,
            ...(panels ?? []).map(
              (panel) => `panel ${panel.number}: ${metres(panel.from)} to ${metres(panel.to)}`,
            ),
          ].join('\n'),
        );
      }
    }
  }

  if (wanted.wear) {
    for (const conveyor of session
      .symbols()
      .declared('conveyor')
      .filter((each) => each.document === document)) {
      const points = session.forecasts?.conveyors[keyOf(document.uri, conveyor.start)]?.points;
      for (const point of session.symbols().declared('point')) {
        if (point.owner !== conveyor || point.row) continue;
        const words = points?.[point.name];
        if (words && words.short !== '')
          hint(point.node.$cstNode?.end ?? point.end, words.short, words.long.join('\n'));
      }
    }
  }

  if (wanted.exposure) {
    for (const inspection of estate.inspections) {
      if (!here(inspection.origin)) continue;
      const history = historyOf(estate, inspection.conveyor);
      const moment = momentOf(history, inspection);
      const sets = history.linerSets.filter(
        (set) => setSeen(history, (set.from + set.to) / 2, inspection) === set,
      );
      const said = [
        ...new Set(
          sets
            .map((set) => exposureBetween(history, set, moment))
            .filter(({ known }) => known)
            .map(exposureWords),
        ),
      ];
      if (said.length > 0) hint(headerEnd(inspection.origin), `${said.join(' and ')} on the liner`);
    }
  }
  return hints;
}

/** VS Code shows 43 characters of the hints of a line; what is longer ends at a word, and all of it stands in the tooltip. */
export const longestHint = 43;

function shortened(label: string): string {
  if (label.length <= longestHint) return label;
  const cut = label.slice(0, longestHint - 1).replace(/[\s,]+\S*$/, '');
  return `${cut}…`;
}
