import { createMemoryStore } from '../../src/storage/memory/memory-store.ts';
import { describeStore } from './store-contract.ts';

describeStore('memory', async (labelOf) => ({
  store: createMemoryStore(labelOf),
  cleanUp: async () => undefined,
}));
