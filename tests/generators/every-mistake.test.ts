// A pack and a sheet are still made when the text is wrong: for every example of every rule, good and bad, and for machines of
// odd shapes. Nothing crashes, no number is missing or endless.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import { inspectionSheetHtml } from '../../src/generators/inspection-sheet/html.js';
import { inspectionSheet } from '../../src/generators/inspection-sheet/inspection-sheet.js';
import { inspectionPhonePage } from '../../src/generators/inspection-sheet/phone.js';
import { asFittedPage } from '../../src/generators/work-pack/as-fitted.js';
import { workPackCalendar } from '../../src/generators/work-pack/calendar.js';
import { workPackHtml } from '../../src/generators/work-pack/html.js';
import { workPackMarkdown } from '../../src/generators/work-pack/markdown.js';
import { workPack } from '../../src/generators/work-pack/work-pack.js';
import { rules } from '../../src/validation/catalogue.js';
import { exampleOf } from '../../src/validation/example.js';
import { liftConveyor, read } from './estate.js';
import type { Analysis } from '../../src/analysis/analysis.js';

const wrong = />[^<]*\b(NaN|undefined|Infinity)\b|"(NaN|undefined|Infinity)/;

function printEverything({ estate }: Analysis): void {
  for (const job of estate.jobs) {
    const pack = workPack(estate, job);
    expect(workPackHtml(pack)).not.toMatch(wrong);
    expect(
      workPackMarkdown(pack) +
        workPackCalendar(pack) +
        asFittedPage(pack).split('id="data"')[1]?.split('</script>')[0],
    ).not.toMatch(/\bNaN\b|Infinity/);
  }
  for (const conveyor of estate.conveyors) {
    const sheet = inspectionSheet(estate, conveyor);
    expect(inspectionSheetHtml(sheet)).not.toMatch(wrong);
    expect(inspectionPhonePage(sheet).split('id="data"')[1]?.split('</script>')[0]).not.toMatch(
      /\bNaN\b|Infinity/,
    );
  }
}

describe('every example of a rule', () => {
  for (const rule of rules) {
    test(`${rule.code} ${rule.title}`, () => {
      for (const kind of ['bad', 'good'] as const)
        printEverything(analyse([{ uri: 'memory:/example.trough', text: exampleOf(rule, kind).text }]));
    });
  }
});

describe('odd shapes', () => {
  const base = liftConveyor({ job: 'change screw' });
  const shapes: Readonly<Record<string, string>> = {
    'a hand’s breadth long': base.replace('length 12 m', 'length 120 mm'),
    'three hundred metres': base.replace('length 12 m', 'length 300 m'),
    'almost upright': base.replace('incline 25 deg', 'incline 89 deg'),
    'falling steeply': base.replace('incline 25 deg', 'incline -60 deg'),
    'a liner thicker than the trough is round': base.replace('layer ivory 6 mm', 'layer ivory 400 mm'),
    'a screw wider than the trough': base.replace('outside diameter 300 mm', 'outside diameter 900 mm'),
    'a flight wider than the screw': base.replace('flight 60 mm', 'flight 600 mm'),
    'no parts at all': base.replace(
      /^ {2}(section|break|hold-down|brace|cover|access|isolation|lifting|point) .*$/gm,
      '',
    ),
    'parts beyond the end': base
      .replace('from 0.5 m to 11.5 m', 'from 0.5 m to 40 m')
      .replace('at 9 m limit', 'at 90 m limit')
      .replace('P3 at 9.00 m', 'P3 at 90 m'),
    'gates over one another': base.replace(
      'break Gate at 7 m to 7.5 m',
      'break Other at 6 m to 8 m joint ring\n  break Gate at 7 m to 7.5 m',
    ),
    'panels longer than the run': base.replace('panel length 1000 mm', 'panel length 9000 mm'),
  };
  for (const [name, text] of Object.entries(shapes))
    test(name, () => {
      printEverything(read(text));
    });
});
