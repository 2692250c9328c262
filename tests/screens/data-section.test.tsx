import { cleanup, render, screen } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import type { EventBody } from '../../shared/log/events';
import { DataSection } from '../../src/screens/settings/data-section';
import { StoreContext } from '../../src/store-context';
import { fakeStore } from './fake-store';

afterEach(cleanup);

const run: EventBody = {
  kind: 'run',
  item: 'd.major-6.right.2',
  tempo: 160,
  fluency: 3,
  pedal: false,
  judge: 'player',
  entry: null,
};

test.each([
  [0, /^No run is on the record yet\./],
  [1, /^One run is on the record, on this device/],
  [2, /^2 runs are on the record, on this device/],
])('%i runs on the record are told', (count, text) => {
  const store = fakeStore(Array.from({ length: count }, () => run));
  render(
    <StoreContext.Provider value={store}>
      <DataSection />
    </StoreContext.Provider>,
  );
  expect(screen.getByText(text)).toBeDefined();
});
