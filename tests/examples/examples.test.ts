// The examples say what they are there to say: sound ones are silent, and the others show what they promise.

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { troughline } from '../cli/console.js';

const examples = fileURLToPath(new URL('../../examples', import.meta.url));

async function findings(estate: string): Promise<{ exit: number; found: string[] }> {
  const { exit, out } = await troughline(['check', `${estate}`, '--format', 'json'], { cwd: examples });
  const { findings: list } = JSON.parse(out) as {
    findings: { code: string; severity: string; file: string; line: number }[];
  };
  return {
    exit,
    found: list.map(
      ({ code, severity, file, line }) => `${severity} ${code} ${file.split('/').slice(1).join('/')}:${line}`,
    ),
  };
}

describe('sound estates are silent', () => {
  test.each(['1-first-conveyor', '2-inches', '6-screw-change', '7-five-years', '8-spreadsheet'])(
    '%s',
    async (estate) => {
      expect(await findings(estate)).toEqual({ exit: 0, found: [] });
    },
  );
});

test('all but the unfinished one are laid out as the formatter does', async () => {
  const ran = await troughline(['format', '--check', '.'], { cwd: examples });
  expect(
    ran.out
      .trim()
      .split('\n')
      .filter((file) => file !== '' && !file.startsWith('5-every-mistake/')),
  ).toEqual([]);
});

test('the degradation test: exactly the components past 30 percent are past the limit', async () => {
  // NIST/SEMATECH e-Handbook 8.4.2.3: 85 °C unit 5 and 105 °C units 1, 2, 4 and 5 exceed 30 percent by 1000 h.
  const text = readFileSync(`${examples}/3-degradation/degradation.trough`, 'utf8').split('\n');
  const { found } = await findings('3-degradation');
  const past = found
    .filter((f) => f.startsWith('error TL310'))
    .map((f) => text[Number(f.split(':')[1]) - 1]!.trim().split(' ')[0]);
  expect(past).toEqual(['U5', 'U1', 'U2', 'U4', 'U5']);
});

test('the screw change is planned with four shielded and watched welds, each whole and all in the shift of their watch', async () => {
  interface Row {
    readonly action: string;
    readonly startText: string;
    readonly finishText: string;
    readonly measures: readonly string[];
  }
  const made = await troughline(['pack', 'NewSpiral', '6-screw-change', '--format', 'json'], {
    cwd: examples,
  });
  const pack = JSON.parse(made.out) as { steps: Row[]; obstacles: unknown[]; hours: unknown[] };
  expect([made.exit, pack.obstacles]).toEqual([0, []]);
  const welds = pack.steps.filter(({ action }) => action === 'join screw');
  expect(welds).toHaveLength(4);
  for (const { measures } of welds)
    expect(measures.join(' ')).toContain('liner shielded, kept wet, fire watch 60 min after it ends');
  const watch = pack.steps.filter(({ action }) => action === 'fire watch').at(-1);
  expect(watch?.startText).toBe(welds.at(-1)?.finishText);
  const days = [...welds, ...(watch ? [watch] : [])].flatMap((row) => [row.startText, row.finishText]);
  expect(new Set(days.map((text) => text.split(' ')[0])).size).toBe(1);
  // The liner is in before the spiral is, and the air is tested again all the while.
  const at = (action: string): number => pack.steps.findIndex((row) => row.action === action);
  expect(at('fit')).toBeLessThan(at('insert screw'));
  expect(pack.steps.filter(({ action }) => action === 'gas test').length).toBeGreaterThan(5);
  expect(pack.hours.length).toBeGreaterThan(20);
});

describe('the demo estate', () => {
  test('has the one job that cannot be built, a liner that will not last to the next outage, a conveyor whose wear doubled, and nothing else that is wrong', async () => {
    const { exit, found } = await findings('4-tarnholt');
    expect(exit).toBe(1);
    const wrong = found.filter((f) => !f.startsWith('information'));
    expect(wrong.filter((f) => !f.includes('jobs/SL4-spring.trough'))).toEqual([
      'warning TL510 inspections/CP3/2026-09-14.trough:1',
      'warning TL501 inspections/DG1/2026-08-17.trough:5',
    ]);
    expect(wrong.filter((f) => f.includes('TL402'))).toHaveLength(1);
  });
});

test('every mistake is told: at least forty findings of at least thirty-five kinds, one of them on the unfinished file', async () => {
  const { exit, found } = await findings('5-every-mistake');
  expect(exit).toBe(1);
  expect(found.length).toBeGreaterThanOrEqual(40);
  expect(new Set(found.map((f) => f.split(' ')[1])).size).toBeGreaterThanOrEqual(35);
  expect(found).toContain('error TL101 5-unfinished.trough:3');
});
