// Screens are drawn anew after every answer; whoever goes by keyboard or screen reader stays where they were: the same button or
// field is found again by what it is called, with the cursor where it stood.

export function keepingFocus(within: HTMLElement, redraw: () => void): void {
  const before = document.activeElement;
  const held = before instanceof HTMLElement && within.contains(before) ? before : undefined;
  const mark = held && markOf(held);
  const cursor = held instanceof HTMLInputElement && held.type === 'text' ? held.selectionStart : null;
  redraw();
  if (mark === undefined) return;
  const again = [...within.querySelectorAll<HTMLElement>('button, input, select, textarea')].find(
    (node) => markOf(node) === mark,
  );
  again?.focus({ preventScroll: true });
  if (again instanceof HTMLInputElement && cursor !== null) again.setSelectionRange(cursor, cursor);
}

function markOf(node: HTMLElement): string {
  const words = node.closest('label')?.querySelector('span')?.textContent ?? node.textContent;
  const name = node.getAttribute('aria-label') ?? words.replace(/^✓ /, '');
  return [node.tagName, node.id, node.id === '' ? name : '', JSON.stringify(node.dataset)].join(' ');
}
