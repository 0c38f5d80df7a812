import { recordKind } from '../src/dossier/status.js';
import type { Dossier } from '../src/dossier/dossier.js';
import { approvalOf, linkOf, recordOf, unitOf } from './builders.js';

const long = { date: '1975-01-01', at: null };
const paper = { title: 'Approved data', revision: 'A', date: '1975-01-01' };

/**
 * The dossier with equipment that has nothing to do with any other: two joined units and a portable one, fitted long ago, with papers,
 * placard, antenna, supplement and entries of their own. What is about something else must stay as it was.
 */
export function withBystanders(dossier: Dossier, day: string): Dossier {
  const { configuration, status } = dossier;
  const approval = approvalOf({ document: paper, approvedOn: '1974-12-01', releasedOn: '1975-01-01' });
  // What is on adds to a sum of loads.
  const deactivated = configuration.electrical === null ? null : { since: long, placarded: true, recorded: true };
  const unit = (name: string, functions: Parameters<typeof unitOf>[0]['functions'] = ['audio']) =>
    unitOf({ id: name, functions, fitted: long, approval, massLb: 1, armIn: 40, place: 'remote', deactivated });
  return {
    ...dossier,
    configuration: {
      ...configuration,
      units: [
        unit('bystander-1'),
        ...configuration.units,
        unit('bystander-2'),
        unit('bystander-3', ['portable-display']),
      ],
      links: [
        linkOf('bystander-1', 'audio', 'bystander-2', 'audio', { fitted: long }),
        ...configuration.links,
        linkOf('bystander-2', 'control', 'bystander-1', 'control', { fitted: long }),
      ],
      antennas: [
        ...configuration.antennas,
        { id: 'bystander-antenna', kind: 'marker', units: ['bystander-1'], approved: true, xIn: 9000, yIn: 9000 },
      ],
      placards: [
        ...configuration.placards,
        { id: 'bystander-placard', kind: 'other', unitId: 'bystander-1', inView: true, text: 'Something else' },
      ],
      supplements: [
        ...configuration.supplements,
        {
          id: 'bystander-papers',
          units: ['bystander-1'],
          document: paper,
          aboard: true,
          currentDataRequired: false,
          grants: [],
        },
      ],
    },
    status: {
      ...status,
      records: [
        ...status.records,
        // An entry about the emergency transmitter is about that, whatever it names.
        ...recordKind.options
          .filter((kind) => !kind.startsWith('elt-'))
          .map((kind) => recordOf({ kind, on: day, id: `bystander-${kind}`, subjects: ['bystander-1'] })),
      ],
    },
  };
}
