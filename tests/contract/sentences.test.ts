import { expect, it } from 'vitest';
import { messageOf } from '../../libs/rules/src/assess/message.js';
import { readWorked, workedIds } from './worked-files.js';

/** Ids that the rules' own tests give to antennas; an aircraft's record has names for them. */
const ids = /^a-[a-z-]+$/;

it.each(workedIds())('%s: no sentence shows a code, nor a day as the record writes it', (ruleId) => {
  for (const { name, message, data } of readWorked(ruleId).cases) {
    if (message === null) continue;
    const antennas = Object.values(data).filter((value) => typeof value === 'string' && ids.test(value));
    const names = Object.fromEntries(antennas.map((id) => [id, 'the antenna']));
    const text = messageOf({ ruleId, messageId: message, data }, { zone: 'UTC', names });
    for (const [key, value] of Object.entries(data)) {
      if (typeof value !== 'string' || ids.test(value) || key === 'number') continue;
      const raw = /^[a-z0-9]+(-[a-z0-9]+)+$/.test(value) ? [value] : (value.match(/\d{4}-\d{2}-\d{2}/g) ?? []);
      const fault = `${name}: "${text}" shows {${key}} as recorded; give {${key}} its kind in assess/message.ts`;
      for (const each of raw) expect(text.includes(each), fault).toBe(false);
    }
  }
});
