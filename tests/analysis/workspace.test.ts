// A workspace after any edits says what a fresh analysis of the same texts would say.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { createWorkspace } from '../../src/analysis/workspace.js';
import { inspect, machine } from '../language/read.js';
import { edit, exampleEstate } from './texts.js';
import type { Analysis } from '../../src/analysis/analysis.js';

/** All that may be seen of an analysis, with places instead of the numbers of texts. */
function seen({ estate, findings, suppressed, locate, asOf }: Analysis): unknown {
  return {
    asOf,
    findings: findings.map((finding) => [
      locate(finding.origin),
      finding.code,
      finding.severity,
      finding.message,
      finding.todo,
    ]),
    suppressed: suppressed.map(({ finding, by }) => [locate(finding.origin), finding.code, by.reason]),
    counts: Object.values(estate).map((part) => (Array.isArray(part) ? part.length : 0)),
    conveyors: estate.conveyors.map((conveyor) => [
      conveyor.name,
      conveyor.plant.name,
      conveyor.liner.name,
      locate(conveyor.origin),
    ]),
    places: estate.places.map((place) => [place.conveyor.name, place.name, place.at, place.clock]),
    inspections: estate.inspections.map((inspection) => [
      inspection.conveyor.name,
      inspection.date.day,
      inspection.firstRow,
      inspection.endRow,
    ]),
    readings: [...'value error kind place inspection'.split(' ')].map((column) =>
      Array.from(estate.readings[column as 'value']),
    ),
  };
}

describe('after any edits', () => {
  it('equals a fresh analysis', () => {
    const start = exampleEstate('4-tarnholt');
    const action = fc.record({
      which: fc.nat(start.length - 1),
      what: fc.oneof(
        { weight: 6, arbitrary: edit },
        { weight: 1, arbitrary: fc.constant('delete' as const) },
        { weight: 1, arbitrary: fc.constant('restore' as const) },
      ),
    });
    fc.assert(
      fc.property(fc.array(action, { minLength: 1, maxLength: 12 }), (actions) => {
        const texts = new Map(start.map(({ uri, text }) => [uri, text]));
        const workspace = createWorkspace();
        for (const [uri, text] of texts) workspace.set(uri, { text });
        for (const { which, what } of actions) {
          const { uri, text } = start[which]!; // which is below start.length
          if (what === 'delete') {
            texts.delete(uri);
            workspace.delete(uri);
          } else {
            const next = what === 'restore' ? text : what(texts.get(uri) ?? '');
            texts.set(uri, next);
            workspace.set(uri, { text: next });
          }
          workspace.analyse();
        }
        expect(seen(workspace.analyse())).toEqual(
          seen(analyse([...texts].map(([uri, text]) => ({ uri, text })))),
        );
      }),
      { numRuns: 15 },
    );
  });
});

describe('what has not changed', () => {
  const workspace = createWorkspace();
  workspace.set('machine', { text: machine });
  workspace.set('look', { text: inspect('P1 colour ivory') });

  it('gives the same analysis again', () => {
    const before = workspace.analyse();
    workspace.set('look', { text: inspect('P1 colour ivory') });
    workspace.delete('not there');
    expect(workspace.analyse()).toBe(before);
  });
  it('gives another for another day', () => {
    expect(workspace.analyse({ asOf: workspace.analyse().asOf! })).not.toBe(workspace.analyse()); // there is a record, so there is a day
  });
  it('keeps its machines while an inspection is typed', () => {
    const before = workspace.analyse().estate.conveyors[0];
    workspace.set('look', { text: inspect('P1 colour teal') });
    expect(workspace.analyse().estate.conveyors[0]).toBe(before);
  });
  it('keeps the number of a text that goes and comes back', () => {
    const before = workspace.analyse().sourceOf('look');
    workspace.delete('look');
    expect(workspace.analyse().sourceOf('look')).toBeUndefined();
    workspace.set('look', { text: 'plant B { }' });
    expect(workspace.analyse().sourceOf('look')).toBe(before);
  });
});
