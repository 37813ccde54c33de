// Facts the text leaves out, shown beside it: defaults that were assumed, where sections lie, how long the liner under an
// inspection had run, how fast a point wears. Each kind has its own setting.

import { unitOfMachine } from '../../domain/model/unit-of-machine.js';
import { InlayHintKind, type InlayHint, type Range } from 'vscode-languageserver';
import type { Estate } from '../../domain/model/estate.js';
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
  const page = hintPage(session, document, range);
  if (wanted.defaults) defaultHints(session.estate(), page);
  if (wanted.chainage) chainageHints(session.estate(), page);
  if (wanted.wear) wearHints(session, document, page);
  if (wanted.exposure) exposureHints(session.estate(), page);
  return page.hints;
}

/** The part of a text that hints are asked for. */
interface HintPage {
  readonly hints: InlayHint[];
  add(offset: number, label: string, tooltip?: string): void;
  /** True for what is written in this text. */
  here(written: { readonly origin: Origin }): boolean;
  /** Behind the brace that opens a block. */
  headerEnd(origin: Origin): number;
}

function hintPage(session: Session, document: EstateDocument, range: Range): HintPage {
  const from = document.offsetAt(range.start);
  const to = document.offsetAt(range.end);
  const hints: InlayHint[] = [];
  return {
    hints,
    add(offset, label, tooltip) {
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
    },
    here: ({ origin }) => session.uriOf(origin) === document.uri,
    headerEnd(origin) {
      const brace = document.text.indexOf('{', origin.start);
      return brace < 0 || brace > origin.end ? origin.end : brace + 1;
    },
  };
}

function defaultHints(estate: Estate, page: HintPage): void {
  const assumed = (
    written: { readonly origin: Origin },
    facts: Readonly<Record<string, Stated | undefined>>,
  ): void => {
    if (!page.here(written)) return;
    const taken = Object.entries(facts).flatMap(([name, stated]) =>
      stated?.assumed === undefined ? [] : [{ name, text: stated.text, because: stated.assumed }],
    );
    if (taken.length === 0) return;
    page.add(
      page.headerEnd(written.origin),
      `assumed: ${taken.map(({ name, text }) => `${name} ${text}`).join(', ')}`,
      taken.map(({ name, because }) => `${name}: ${because}`).join('\n'),
    );
  };
  for (const liner of estate.liners)
    assumed(liner, {
      density: liner.density,
      expansion: liner.expansion,
      modulus: liner.modulus,
      'maximum temperature': liner.maximumTemperature,
      'layer tolerance': liner.layerTolerance,
      'condemn at': liner.condemn,
      'panel tolerance': liner.panelTolerance,
    });
  for (const screw of estate.screws) assumed(screw, { density: screw.density });
  for (const plant of estate.plants)
    assumed(plant, { risk: plant.risk, 'risk of contact': plant.contactRisk });
  for (const job of estate.jobs)
    assumed(job, {
      'saw kerf': job.sawKerf,
      'minimum closing piece': job.minimumClosingPiece,
      'measuring tolerance': job.measuringTolerance,
      'joint clearance': job.jointClearance,
    });
}

/** Where sections and runs lie, and where their panels are. */
function chainageHints(estate: Estate, page: HintPage): void {
  for (const conveyor of estate.conveyors.filter(page.here)) {
    const unit = unitOfMachine(conveyor);
    for (const { origin, start, length } of conveyor.sections)
      page.add(origin.end, `${metres(unit, start)} to ${metres(unit, start + length.value)}`);
    for (const run of runsOf(conveyor)) {
      const { tailBreak } = run;
      const panels = attempt(() => installedPanels(estate, run).layout.panels);
      const many = panels ? `, ${panels.length} panels` : '';
      page.add(
        tailBreak.implied ? page.headerEnd(conveyor.origin) : tailBreak.origin.end,
        `run ${run.number}: ${metres(unit, run.from)} to ${metres(unit, run.to)}${many}`,
        [
          run.label,
          ...(panels ?? []).map(
            (panel) => `panel ${panel.number}: ${metres(unit, panel.from)} to ${metres(unit, panel.to)}`,
          ),
        ].join('\n'),
      );
    }
  }
}

function wearHints(session: Session, document: EstateDocument, page: HintPage): void {
  const symbols = session.symbols();
  for (const conveyor of symbols.declared('conveyor')) {
    if (conveyor.document !== document) continue;
    const points = session.forecasts?.conveyors[keyOf(document.uri, conveyor.start)]?.points;
    for (const point of symbols.declared('point')) {
      if (point.owner !== conveyor || point.row) continue;
      const words = points?.[point.name];
      if (words && words.short !== '')
        page.add(point.node.$cstNode?.end ?? point.end, words.short, words.long.join('\n'));
    }
  }
}

/** How long the liner under an inspection had run. */
function exposureHints(estate: Estate, page: HintPage): void {
  for (const inspection of estate.inspections.filter(page.here)) {
    const history = historyOf(estate, inspection.conveyor);
    const moment = momentOf(history, inspection);
    const said = history.linerSets
      .filter((set) => setSeen(history, (set.from + set.to) / 2, inspection) === set)
      .map((set) => exposureBetween(history, set, moment))
      .filter(({ known }) => known)
      .map(exposureWords);
    if (said.length > 0)
      page.add(page.headerEnd(inspection.origin), `${[...new Set(said)].join(' and ')} on the liner`);
  }
}

/** VS Code shows 43 characters of the hints of a line; what is longer ends at a word, and all of it stands in the tooltip. */
export const longestHint = 43;

function shortened(label: string): string {
  if (label.length <= longestHint) return label;
  const cut = label.slice(0, longestHint - 1).replace(/[\s,]+\S*$/, '');
  return `${cut}…`;
}
