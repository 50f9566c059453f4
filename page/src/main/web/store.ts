// SPDX-License-Identifier: Apache-2.0
import { useEffect, useState } from "preact/hooks";

/** A value that tells when it changes. */
export class Store<T extends object> {
  private readonly hearers = new Set<() => void>();
  private value: T;

  constructor(value: T) {
    this.value = value;
  }

  get(): T {
    return this.value;
  }

  set(part: Partial<T>): void {
    this.value = { ...this.value, ...part };
    this.hearers.forEach((hear) => hear());
  }

  hear(hearer: () => void): () => void {
    this.hearers.add(hearer);
    return () => this.hearers.delete(hearer);
  }
}

/** The value, drawn again when it changes. */
export function useStore<T extends object>(store: Store<T>): T {
  const [value, setValue] = useState(store.get());
  useEffect(() => {
    setValue(store.get());
    return store.hear(() => setValue(store.get()));
  }, [store]);
  return value;
}
