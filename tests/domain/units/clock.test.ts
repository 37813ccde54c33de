import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  angleToClock,
  clockToAngle,
  formatClock,
  formatTimeOfDay,
  hoursApart,
  mirrorClock,
  parseClock,
  parseTimeOfDay,
  proposeClock,
  proposeTimeOfDay,
} from '../../../src/domain/units/clock.js';

describe('a clock position', () => {
  test('is read from the face of a clock', () => {
    expect(['7:30', '07:30', '12:00', '12:30', '1:00'].map(parseClock)).toEqual([7.5, 7.5, 12, 0.5, 1]);
  });

  test.each(['0:30', '0:00', '13:00', '19:30', '7:60', '7.30', '7', '', 'x', '7:3'])('%j is none', (text) =>
    expect(parseClock(text)).toBeUndefined(),
  );

  test('is proposed where the meaning is sure', () => {
    expect(['7.30', '7,30', '7', '19:30', '0:30', '00:00', '7h30'].map(proposeClock)).toEqual([
      '7:30',
      '7:30',
      '7:00',
      '7:30',
      '12:30',
      '12:00',
      '7:30',
    ]);
    expect(['7.5', '7.75', '25:00', 'half past', '31'].map(proposeClock)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });

  test('seen from the other side lies at its mirror image', () => {
    expect([7.5, 12, 6, 3, 0.5].map(mirrorClock)).toEqual([4.5, 12, 6, 9, 11.5]);
  });

  test('lies as far from another as the minutes between them, the shorter way round, with no rounding in a bound', () => {
    const positions = Array.from({ length: 720 }, (_, minute) => parseClock(formatClock(minute / 60)) ?? NaN);
    const wrong = positions.flatMap((one, a) =>
      positions.flatMap((other, b) => {
        const minutes = Math.min(Math.abs(a - b), 720 - Math.abs(a - b));
        const far = hoursApart(one, other);
        const isRight =
          Math.abs(far * 60 - minutes) < 1e-9 && far > 0.25 === minutes > 15 && far > 0.5 === minutes > 30;
        return isRight ? [] : [`${a} and ${b}`];
      }),
    );
    expect(wrong).toEqual([]);
  });

  test('is an angle from the bottom, 15° for half an hour, clockwise positive', () => {
    expect([6, 6.5, 9, 3, 12].map(clockToAngle)).toEqual([0, 15, 90, -90, 180]);
  });

  test('every minute of the face survives printing, mirroring twice, and the way by its angle', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 720 }), (minutes) => {
        const hours = minutes / 60;
        const text = formatClock(hours);
        expect(parseClock(text)).toBeCloseTo(hours, 9);
        expect(mirrorClock(mirrorClock(hours))).toBeCloseTo(hours, 9);
        expect(formatClock(angleToClock(clockToAngle(hours)))).toBe(text);
        expect(proposeClock(text)).toBe(text);
        expect(Math.cos((clockToAngle(mirrorClock(hours)) * Math.PI) / 180)).toBeCloseTo(
          Math.cos((clockToAngle(hours) * Math.PI) / 180),
          9,
        );
      }),
    );
  });

  test('that is not a number cannot be printed', () => expect(() => formatClock(NaN)).toThrow(RangeError));
});

describe('a time of day', () => {
  test('is read from midnight to midnight', () => {
    expect(['00:00', '07:00', '17:30', '24:00'].map(parseTimeOfDay)).toEqual([0, 7, 17.5, 24]);
    expect(['24:01', '7.30', '7', '12:75'].map(parseTimeOfDay)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
    expect(['7.30', '7', '17 h', '7.5'].map(proposeTimeOfDay)).toEqual([
      '07:30',
      '07:00',
      '17:00',
      undefined,
    ]);
  });

  test('prints with two digits', () => {
    expect([0, 7.5, 24].map(formatTimeOfDay)).toEqual(['00:00', '07:30', '24:00']);
    expect(() => formatTimeOfDay(25)).toThrow(RangeError);
  });
});
