// A guard that is off and a stop that does nothing come first wherever somebody reads: on the report's front page, on the next sheet
// before anything is looked at, and among the cautions of a pack; rated slight, a missing guard does too. Closed, they are gone.

import { describe, expect, test } from 'vitest';
import { inspectionSheetHtml } from '../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../src/generators/inspection-sheet/inspection-sheet.js';
import { remainingLifeHtml } from '../../src/generators/remaining-life/html.js';
import { remainingLifeMarkdown } from '../../src/generators/remaining-life/markdown.js';
import { remainingLife } from '../../src/generators/remaining-life/remaining-life.js';
import { workPackHtml } from '../../src/generators/work-pack/html.js';
import { workPack } from '../../src/generators/work-pack/work-pack.js';
import { estateOf, look, works } from './remaining-life/story.js';

const job = 'job Reline1 { conveyor DG1 outage Spring26 reline all }\n';
const seen = 'P1 thickness 11 mm; panel lifted at 4 m urgent; gearbox noise serious';

type Page = 'first' | 'front' | 'markdown' | 'sheet' | 'pack';

function pages(...records: readonly string[]): Readonly<Record<Page, string>> {
  const estate = estateOf(works, job, ...records);
  const report = remainingLife(estate, { depth: 'hand' });
  const [conveyor] = estate.conveyors;
  const [reline] = estate.jobs;
  if (!conveyor || !reline) throw new Error('no conveyor and job');
  return {
    first: report.conveyors.map(({ attention }) => attention.reasons[0]).join(),
    front: remainingLifeHtml(report).split('</section>')[0] ?? '',
    markdown: remainingLifeMarkdown(report),
    sheet: inspectionSheetHtml(inspectionSheet(estate, conveyor)),
    pack: workPackHtml(workPack(estate, reline)),
  };
}

describe('a safeguard that is out of order', () => {
  test.each([
    ['guard missing at drive slight', 'guard missing at drive'],
    ['emergency stop dead at tail', 'emergency stop dead at tail'],
    ['pull cord slack serious', 'pull cord slack'],
    ['interlock bypassed at 2 m', 'interlock bypassed at 2.00 m'],
    ['zero-speed sensor bypassed at tail slight', 'zero-speed sensor bypassed at tail'],
    ['finding blockage switch at head serious "paddle bent"', 'blockage switch at head: paddle bent'],
    ['finding interlock switch at 2 m serious "lever bent"', 'interlock at 2.00 m: lever bent'],
  ])('%s', (line, said) => {
    const out = `${said} (open since 2025-03-05)`;
    const now = pages(look(1500, `${seen}; ${line}`));
    expect(now.first).toBe(`safeguards out of order: ${out}`);
    expect(now.front).toContain(`<strong>Safeguards out of order. </strong>DG1: ${out}`);
    expect(now.markdown).toContain('**Safeguards out of order.** DG1: ');
    expect(now.sheet).toContain(`${out}. Count on none of them`);
    expect(now.pack).toContain(`Found and not closed: ${out}`);
    const later = pages(
      look(1500, `${seen}; ${line}`),
      look(1800, `closed ${line.replace(/ (slight|serious)/, '')}`),
    );
    for (const page of Object.values(later)) expect(page).not.toMatch(/safeguards (right|out)/i);
  });

  test.each(['guard loose at drive', 'pull cord slack slight', 'sign missing at tail serious'])(
    '%s is open and no more than that',
    (line) => {
      const { front, markdown, sheet, pack } = pages(look(1500, `${seen}; ${line}`));
      for (const page of [front, markdown, sheet, pack]) expect(page).not.toMatch(/safeguards out/i);
      expect(sheet).toContain(line.replace(/ (at|slight).*/, ''));
    },
  );
});
