/** What the SDK and its crypto look for in a browser: IndexedDB and its classes. There is no local storage, and Node need not warn of that. */
import "fake-indexeddb/auto";

Object.defineProperty(globalThis, "localStorage", { value: undefined, configurable: true, writable: true });
