// What the extension and its webviews say to each other: postMessage only, plain data.

/** Extension to page: the texts have changed since the page was made. */
export interface Stale {
  readonly type: 'stale';
}

/** Extension to page: no newer page can be made of the text as it is, and why; the one that stands is the last. */
export interface Kept {
  readonly type: 'kept';
  readonly reason: string;
}

export type ToPage = Stale | Kept;

export type FromPage =
  | { readonly type: 'ready' }
  /** Follow an element to the text; the key is its data-origin. */
  | { readonly type: 'open'; readonly origin: string }
  | { readonly type: 'refresh' }
  | { readonly type: 'save' };
