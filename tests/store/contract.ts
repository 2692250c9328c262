/**
 * What the store promises, whatever IndexedDB is below it: run on fake-indexeddb by contract.test.ts and in Chromium by
 * harness.ts.
 */
import { aboutDays } from './contract-days';
import { aboutExchange } from './contract-exchange';
import { aboutLog } from './contract-log';
import { aboutStudents } from './contract-students';
import { aboutStudio } from './contract-studio';
import { aboutTrouble } from './contract-trouble';
import { aboutUnread } from './contract-unread';
import type { Promises } from './world';

export const contract: Promises = {
  ...aboutLog,
  ...aboutDays,
  ...aboutExchange,
  ...aboutStudents,
  ...aboutStudio,
  ...aboutTrouble,
  ...aboutUnread,
};
