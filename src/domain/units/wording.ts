// How lists and counts read in a sentence, wherever one is written: messages, pages, hovers.

/** `a`, `a and b`, `a, b and c`; at most `most` of them, then `and 4 more`. Nothing for no words. */
export function list(words: readonly string[], joint: 'and' | 'or' = 'and', most = Infinity): string {
  if (words.length <= 1) return words[0] ?? '';
  if (words.length > most) return `${words.slice(0, most).join(', ')} ${joint} ${words.length - most} more`;
  return `${words.slice(0, -1).join(', ')} ${joint} ${words.at(-1) ?? ''}`;
}

/** `1 panel`, `3 panels`; the number as it is. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** `a liner`, `an inlet`. */
export function withArticle(noun: string): string {
  return `${/^[aeiou]/i.test(noun) ? 'an' : 'a'} ${noun}`;
}

/** A duration as it was written, as a sentence has it: `10 week` → `10 weeks`; `1 week` and `60 h` stay. */
export function spoken(duration: string): string {
  return duration.replace(/^(\d[\d.,]*) (hour|day|week|year)$/, (all, count: string, unit: string) =>
    Number(count) === 1 ? all : `${count} ${unit}s`,
  );
}

/** A sentence begins with it. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A sentence that goes on after a colon. */
export function lowered(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
