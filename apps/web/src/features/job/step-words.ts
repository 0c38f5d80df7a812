import { dateWords, codeWords } from '@tallywing/rules';
import { jointWords } from '../../trade/units.js';
import { subjectName, unitName } from './options.js';
import { valueAt } from '../../form/tree.js';
import type { JudgedStep } from './plan.js';

/** What a step is about, in one line: the unit, the joint, the entry. Empty while that is not chosen. */
export function stepWords({ step, before }: Pick<JudgedStep, 'step' | 'before'>): string {
  const at = (path: string) => valueAt(step.value, path);
  const text = (path: string) => String(at(path) ?? '');
  switch (step.kind) {
    case 'unit.install':
    case 'unit.amend':
      return text('unit.name');
    case 'link.connect': {
      const link = at('link') as Parameters<typeof jointWords>[0];
      return link.fromUnit && link.toUnit ? jointWords(link, before.configuration.units) : '';
    }
    case 'link.disconnect': {
      const link = before.configuration.links.find((each) => each.id === at('linkId'));
      return link ? jointWords(link, before.configuration.units) : '';
    }
    case 'record.add':
    case 'record.correct': {
      const subjects = (at('record.subjects') as string[]).map((id) => subjectName(id, before)).join(', ');
      const kind = text('record.kind');
      return kind === ''
        ? ''
        : `${codeWords(kind)}${subjects ? ` of ${subjects}` : ''}, ${dateWords(text('record.done.date'))}`;
    }
    case 'database.load':
      return at('load.unitId') ? `${unitName(text('load.unitId'), before)}, cycle ${text('load.cycle')}` : '';
    case 'defect.raise':
      return text('defect.text');
    case 'hold.place':
      return text('hold.reason');
    default:
      return at('unitId') ? unitName(text('unitId'), before) : '';
  }
}
