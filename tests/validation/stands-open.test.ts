// A line in words of its own that says that something is over is answered with what stands open there: exactly one condition of that part
// and place is what was meant; of several nobody but the author knows which, and where none does it is no more than a note.

import { describe, expect, test } from 'vitest';
import { analyse } from '../../src/analysis/analyse.js';
import type { Finding } from '../../src/validation/finding.js';
import { conveyor, specifications } from '../language/read.js';

const facts =
  'break Gate at 12.4 m to 12.9 m slide gate\n  hatch H2 at 5 m width 300 mm\n  pull cord from 0 m to 22.4 m both sides';
const machine = specifications + conveyor('DG1', facts);
/** A line of the conveyor that nobody can read: it is left out of the estate. */
const unread = specifications + conveyor('DG1', `${facts}\n  chute wide 3 m`);

const look = (day: string, meter: number, ...rows: readonly string[]): string =>
  `inspection DG1 ${day} meter ${meter} h {\n  ${rows.join('\n  ')}\n}\n`;

function told(open: string, line: string, built = machine): Finding | undefined {
  const later = /^(serviced|stopped) DG1/.test(line) ? `${line}\n` : look('2026-03-02', 90, line);
  const { findings } = analyse([
    { uri: 'a', text: built },
    { uri: 'b', text: look('2026-01-05', 10, ...open.split('; ')) },
    { uri: 'c', text: later },
  ]);
  return findings.find(({ code, message }) => code === 'TL101' && !message.includes('chute'));
}

const offered = (finding: Finding | undefined): string | undefined =>
  finding?.fixes?.find((fix) => fix.offered)?.title.replace('Write ', '');

describe('one condition stands open there', () => {
  const rows = [
    [
      'product blocked from 2 m to 4.5 m urgent',
      'serviced product blocked from 2 m to 4.5 m "chiselled out by hand, 6 h"',
      'serviced closed product blocked from 2 m to 4.5 m "chiselled out by hand, 6 h"',
    ],
    [
      'panel torn at 4 m serious',
      'serviced DG1 2026-03-02 panel torn at 4 m "glued with a strip"',
      'serviced DG1 2026-03-02 closed panel torn at 4 m "glued with a strip"',
    ],
    ['tail bearing noise slight', 'tail bearing quiet', 'closed tail bearing noise "quiet"'],
    [
      'tail bearing noise slight',
      'bearing tail runs smooth again',
      'closed tail bearing noise "runs smooth again"',
    ],
    ['pull cord dead left side urgent', 'pull cord ok', 'closed pull cord dead left side "ok"'],
    [
      'pull cord dead left side urgent',
      'pull cord tested ok left side',
      'closed pull cord dead left side "tested ok"',
    ],
    [
      'finding panel at 6.2 m serious "bowed 20 mm"',
      'panel bowed at 6.2 m gone',
      'closed finding panel at 6.2 m "bowed gone"',
    ],
    [
      'finding gate at Gate serious "rod bent"',
      'gate rod straightened at Gate by "fitter"',
      'closed finding gate at Gate "rod straightened" by "fitter"',
    ],
    [
      'spiral weld cracked at 4.8 m urgent; spiral bent at 9 m',
      'serviced DG1 2026-03-02 spiral weld cracked at 4.8 m welded by "outside welder"',
      'serviced DG1 2026-03-02 closed spiral weld cracked at 4.8 m "welded" by "outside welder"',
    ],
    [
      'panel lifted 8 mm at panel 2 of run 1 serious; panel lifted 5 mm at panel 4 of run 1',
      'serviced DG1 2026-03-02 panel 2 of run 1 screwed down, 6 bolts by "night shift"',
      'serviced DG1 2026-03-02 closed panel lifted 8 mm at panel 2 of run 1 "screwed down, 6 bolts" by "night shift"',
    ],
    [
      'finding from 1 m to 4 m serious "product frozen"',
      'serviced DG1 2026-03-02 product thawed by "crew 1" "hot air, 6 h"',
      'serviced DG1 2026-03-02 closed finding from 1 m to 4 m "product thawed: hot air, 6 h" by "crew 1"',
    ],
    [
      'finding gate at Gate serious "edge stands 3 mm proud"',
      'serviced DG1 2026-03-02 finding gate at Gate "edge ground flush" by "shift leader"',
      'serviced DG1 2026-03-02 closed finding gate at Gate "edge ground flush" by "shift leader"',
    ],
  ] as const;
  test.each(rows)('%s, then %s', (open, line, ending) => {
    const finding = told(open, line);
    expect(offered(finding)).toBe(ending);
    expect(finding?.message).toMatch(/^There is .*, open since 2026-01-05: /);
  });

  test.each(rows.filter(([open]) => !open.includes('Gate')))(
    'by the records alone, where the machine cannot be read: %s, then %s',
    (open, line, ending) => expect(offered(told(open, line, unread))).toBe(ending),
  );
});

describe('nothing is ended', () => {
  test.each([
    ['by what says it of another thing', 'spiral bent at 9 m', 'tail bearing quiet'],
    ['by work that does not end it', 'pull cord dead urgent', 'serviced pull cord hung up higher'],
    ['elsewhere', 'finding panel at 6.2 m serious "bowed"', 'panel bowed at 9 m gone'],
    ['by what is not yet so', 'tail bearing noise', 'tail bearing still not quiet'],
    [
      'by a note, which nothing stands open of',
      'finding panel at 6.2 m "bowed"',
      'panel bowed at 6.2 m gone',
    ],
    [
      'by a gate of which only the wiper is worn',
      'finding gate at Gate slight "wiper worn"',
      'gate at Gate ok',
    ],
    ['by a clean spiral', 'finding spiral at tail serious "end gap 34 mm"', 'spiral clean'],
    [
      'by a machine that stood',
      'motor noise',
      'stopped DG1 2026-03-20 to 2026-03-21 "motor at the workshop"',
    ],
    ['by a severity', 'finding hatch at H2 serious "stiff"', 'hatch H2 stiff serious "freed with a bar"'],
    [
      'where it is still to do',
      'finding gate at Gate serious "wiper worn"',
      'closed gate wiper worn at Gate "not closed, still to do"',
    ],
  ])('%s', (_, open, line) => expect(offered(told(open, line)) ?? '').not.toMatch(/^closed|closed finding/));

  test('of several, which all are shown', () => {
    const finding = told('spiral bent at 4 m; spiral cracked at 9 m', 'spiral ok');
    expect(offered(finding)).toBe('finding spiral "ok"');
    expect(finding?.message).toContain(
      '`closed spiral bent at 4 m "ok"` or `closed spiral cracked at 9 m "ok"`',
    );
  });
});

describe('a name that the conveyor has not is no place', () => {
  test.each([
    ['liner of WB1, planed to 15', 'finding liner "of WB1, planed to 15"'],
    ['hatch H9 squeaks', 'finding hatch "H9 squeaks"'],
    ['hatch H2 squeaks', 'finding hatch at H2 "squeaks"'],
  ])('%s', (line, offer) => expect(offered(told('finding "x"', line))).toBe(offer));

  test('nor is a machine that is called like this one, where this one cannot be read', () =>
    expect(offered(told('finding "x"', 'liner of DG2, planed to 15', unread))).toBe(
      'finding liner "of DG2, planed to 15"',
    ));
});

describe('a safeguard that is named is that one, however near another lies', () => {
  const near = specifications + conveyor('DG1', `${facts}\n  hatch H3 at 5.2 m`);

  test.each([
    'interlock at H3 ok',
    'interlock H3 put right',
    'interlock at H3 fixed',
    'interlock at H3 works',
    'wire of the interlock at H3 taken out',
  ])('%s', (line) => {
    for (const written of [line, `serviced DG1 2026-03-02 ${line}`]) {
      const ending = (words: string): string =>
        offered(told('interlock bypassed at H2 serious', words, near)) ?? '';
      expect(ending(written)).not.toContain('closed');
      expect(ending(written.replace('H3', 'H2'))).toContain('closed interlock bypassed at H2');
    }
  });
});
