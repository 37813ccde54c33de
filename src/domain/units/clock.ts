// Clock positions round the trough: hours on a clock face, 12 at the top, as seen in the direction of flow; one hour is
// 30°, so half an hour is 15°. Times of day, for shifts, are read here too because they are written alike.

/** `7:30` → 7.5; `12:00` → 12, `12:30` → 0.5. Undefined unless it is on the face of a clock (1:00 … 12:59). */
export function parseClock(text: string): number | undefined {
  const [hour, minute] = hourMinute(text) ?? [];
  if (hour === undefined || minute === undefined || hour < 1 || hour > 12) return undefined;
  const hours = (hour % 12) + minute / 60;
  return hours === 0 ? 12 : hours;
}

/** The clock position a text that is not one surely means: `7.30` or `7` or `19:30` → `7:30`; undefined where unsure (`7.5`). */
export function proposeClock(text: string): string | undefined {
  const proposed = proposeTime(text);
  const [hour = -1, minute = 0] = (proposed === undefined ? undefined : hourMinute(proposed)) ?? [];
  if (hour < 0 || hour > 23) return undefined;
  return `${hour % 12 === 0 ? 12 : hour % 12}:${String(minute).padStart(2, '0')}`;
}

/** Hours after midnight, 0 ≤ h ≤ 24, of `07:00` or `24:00`; undefined where there is no such time. */
export function parseTimeOfDay(text: string): number | undefined {
  const [hour, minute] = hourMinute(text) ?? [];
  if (hour === undefined || minute === undefined) return undefined;
  const hours = hour + minute / 60;
  return hours <= 24 ? hours : undefined;
}

/** The time of day a text that is not one surely means: `7.30` or `7 h` → `07:30`, `07:00`; undefined where unsure. */
export function proposeTimeOfDay(text: string): string | undefined {
  const proposed = proposeTime(text);
  return proposed !== undefined && parseTimeOfDay(proposed) !== undefined ? proposed : undefined;
}

/** `7:30`; hours taken round the face, to the nearest minute, noon and midnight as `12:00`. Throws RangeError on NaN. */
export function formatClock(hours: number): string {
  if (!Number.isFinite(hours))
    throw new RangeError(`A clock position cannot be printed: ${hours} is not a number.`);
  const minutes = ((Math.round(hours * 60) % 720) + 720) % 720;
  const hour = Math.floor(minutes / 60);
  return `${hour === 0 ? 12 : hour}:${String(minutes % 60).padStart(2, '0')}`;
}

/** Time of day from hours after midnight: 7.5 → `07:30`, 24 → `24:00`. Throws RangeError outside 0 … 24. */
export function formatTimeOfDay(hours: number): string {
  if (!(hours >= 0 && hours <= 24))
    throw new RangeError(`There is no time of day ${hours} hours after midnight.`);
  const minutes = Math.round(hours * 60);
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
}

/** The same spot seen from the other side: 7:30 → 4:30; 12 and 6 stay. Applied twice it changes nothing. */
export function mirrorClock(hours: number): number {
  return hours === 12 ? 12 : 12 - hours;
}

/** Hours, 0 to 12, of a place looking in the direction of flow, as who looks the given way sees it; and back again. */
export function clockAsSeen(hours: number, look: 'downstream' | 'upstream' | undefined): number {
  return look === 'upstream' ? mirrorClock(hours) : hours;
}

/** Half way from one position to another, clockwise: 11:00 and 1:00 → 12. */
export function middleClock(from: number, to: number): number {
  const middle = (from + ((to - from + 12) % 12) / 2) % 12;
  return middle === 0 ? 12 : middle;
}

/** Hours between two clock positions the shorter way round the face, 0 … 6: 11:30 and 12:15 → 0.75. */
export function hoursApart(a: number, b: number): number {
  return Math.abs(((a - b + 18) % 12) - 6);
}

/** The bottom of the trough, hours: where what is said without a clock position was seen. */
export const bottom = 6;

/** Degrees from the bottom (6 o'clock), positive clockwise, towards 9 o'clock: 7:30 → 45, 3:00 → −90, 12:00 → 180. */
export function clockToAngle(hours: number): number {
  return (hours - bottom) * 30;
}

/** The inverse of clockToAngle, for any angle in degrees: 45 → 7.5, −90 → 3, 180 → 12. */
export function angleToClock(degrees: number): number {
  const hours = (((bottom + degrees / 30) % 12) + 12) % 12;
  return hours === 0 ? 12 : hours;
}

function hourMinute(text: string): readonly [number, number] | undefined {
  const parts = /^(\d{1,2}):(\d{2})$/.exec(text.trim());
  if (!parts || Number(parts[2]) > 59) return undefined;
  return [Number(parts[1]), Number(parts[2])];
}

/** Hour and two digits of minutes with another separator, or a whole hour; `7.5` could be 7:30 or 7:50 and is left alone. */
function proposeTime(text: string): string | undefined {
  const parts = /^(\d{1,2})(?:[:.,h](\d{2}))?(?:\s*h)?$/.exec(text.trim());
  if (!parts) return undefined;
  const proposed = `${(parts[1] ?? '').padStart(2, '0')}:${parts[2] ?? '00'}`;
  return hourMinute(proposed) ? proposed : undefined;
}
