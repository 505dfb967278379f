/** tests/kit/local-storage.ts - a stand-in for the browser's storage, for tests that import the state of the window.
 *  Import it for its effect, before the first import from client. Each test file has its own, empty. */
const kept = new Map<string, string>();

globalThis.localStorage = {
  get length() {
    return kept.size;
  },
  clear: () => kept.clear(),
  getItem: (key) => kept.get(key) ?? null,
  key: (index) => [...kept.keys()][index] ?? null,
  removeItem: (key) => void kept.delete(key),
  setItem: (key, value) => void kept.set(key, value),
};
