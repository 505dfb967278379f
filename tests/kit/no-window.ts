/** tests/kit/no-window.ts - what the state of the window asks of a browser as it is loaded: storage and an address. For
 *  tests that import it outside one: import this first, for its effect. Each test file has its own, empty. */
const kept = new Map<string, string>();

const localStorage: Storage = {
  get length() {
    return kept.size;
  },
  clear: () => kept.clear(),
  getItem: (key) => kept.get(key) ?? null,
  key: (index) => [...kept.keys()][index] ?? null,
  removeItem: (key) => void kept.delete(key),
  setItem: (key, value) => void kept.set(key, value),
};

Object.assign(globalThis, { localStorage, location: new URL("http://127.0.0.1/"), window: new EventTarget() });
