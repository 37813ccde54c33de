// Pages and forecasts take seconds on a large estate, and nobody should wait for a hover meanwhile. They are made elsewhere:
// in a worker that holds a copy of the texts, or, where there is no worker, here and between other work.

import type { MakePreview, MakePreviewAnswer } from '../protocol/messages.js';
import type { Analyser, Desk } from './desk.js';
import { makeDesk } from './desk.js';
import { preview } from './features/preview.js';
import { forecasts, type Forecasts } from './forecasts.js';
import type { Text } from './texts.js';

export interface Background {
  preview(desk: Desk, wanted: MakePreview): Promise<MakePreviewAnswer>;
  forecasts(desk: Desk): Promise<Forecasts>;
  end(): void;
}

/** For a process without workers: the work is done here, after what is waiting. */
export function backgroundHere(): Background {
  const later = async <T>(work: () => T): Promise<T> => {
    await new Promise((resolve) => setTimeout(resolve, 0));
    return work();
  };
  return {
    preview: (desk, wanted) => later(() => preview(desk, wanted)),
    forecasts: (desk) => later(() => forecasts(desk)),
    end: () => undefined,
  };
}

/** One end of a line to a worker or back. */
export interface Port {
  send(message: unknown): void;
  listen(receive: (message: unknown) => void): void;
  end(): void;
}

type Task = { readonly kind: 'preview'; readonly wanted: MakePreview } | { readonly kind: 'forecasts' };

interface Order {
  readonly number: number;
  readonly desk: number;
  readonly put: readonly { readonly uri: string; readonly text: string }[];
  readonly remove: readonly string[];
  readonly revision: number;
  readonly task: Task;
}

interface Delivery {
  readonly number: number;
  readonly result?: unknown;
  readonly fault?: string;
}

/** Hands the work to a worker on the other end of `port`, with the texts that changed since the last order. */
export function backgroundThere(port: Port): Background {
  const desks = new Map<Desk, { readonly number: number; readonly sent: Map<string, Text> }>();
  const open = new Map<number, { resolve(value: unknown): void; reject(reason: Error): void }>();
  let count = 0;

  port.listen((message) => {
    const { number, result, fault } = message as Delivery; // from the worker that this file started
    const waiting = open.get(number);
    open.delete(number);
    if (fault === undefined) waiting?.resolve(result);
    else waiting?.reject(new Error(fault));
  });

  const order = <T>(desk: Desk, task: Task): Promise<T> => {
    const known = desks.get(desk) ?? { number: desks.size, sent: new Map<string, Text>() };
    desks.set(desk, known);
    const put = desk.texts().filter((text) => known.sent.get(text.uri)?.text !== text.text);
    const remove = [...known.sent.keys()].filter((uri) => !desk.text(uri));
    for (const text of put) known.sent.set(text.uri, text);
    for (const uri of remove) known.sent.delete(uri);
    const number = (count += 1);
    const message: Order = {
      number,
      desk: known.number,
      put: put.map(({ uri, text }) => ({ uri, text })),
      remove,
      revision: desk.revision,
      task,
    };
    return new Promise<T>((resolve, reject) => {
      open.set(number, { resolve: (value) => resolve(value as T), reject }); // the worker answers a task with its own kind of result
      port.send(message);
    });
  };

  return {
    preview: (desk, wanted) => order(desk, { kind: 'preview', wanted }),
    forecasts: (desk) => order(desk, { kind: 'forecasts' }),
    end: () => port.end(),
  };
}

/** The worker's side. */
export function serveBackground(port: Port, makeAnalyser: () => Analyser): void {
  const desks = new Map<number, Desk>();
  port.listen((message) => {
    const { number, desk: name, put, remove, revision, task } = message as Order; // from backgroundThere
    const desk = desks.get(name) ?? makeDesk(makeAnalyser());
    desks.set(name, desk);
    for (const { uri, text } of put) desk.put(uri, text);
    for (const uri of remove) desk.remove(uri);
    let delivery: Delivery;
    try {
      const result =
        task.kind === 'preview'
          ? { ...preview(desk, task.wanted), revision }
          : { ...forecasts(desk), revision };
      delivery = { number, result };
    } catch (fault) {
      delivery = { number, fault: fault instanceof Error ? (fault.stack ?? fault.message) : String(fault) };
    }
    port.send(delivery);
  });
}
