// Equipment types of the sample fleets. No such maker, product or manual exists.
const port = (name, signal, direction, standard, requiredFor = []) => ({
  name,
  signal,
  direction,
  standard,
  speed: standard === 'rs-232' ? 9600 : null,
  requiredFor,
});
const pair = (manual, family, signals) => ({ family, signals, software: null, document: manual, revision: 'A' });

/** What must be seen sits where the manual approves it. */
function viewOf(name, functions) {
  const shown = functions.some((each) => ['gnss', 'com', 'lateral-deviation', 'altimeter'].includes(each));
  if (!shown) return null;
  const approvedPlaces = ['pilot-panel', 'centre-stack'];
  return { approvedPlaces, maxHorizontalDeg: 35, maxOffsetIn: 14, document: `${name} installation manual, 2.2` };
}

function type(family, maker, name, part, functions, authorisations, size, details = {}) {
  const [mass, draw, width, height, depth] = size;
  return {
    family,
    maker,
    type_name: name,
    part_number: part,
    manual: `${name} installation manual`,
    manual_revision: 'A',
    type_functions: functions.join(' '),
    authorisations: authorisations.join(' | '),
    mass_lb: mass,
    draw_14v_a: draw,
    width_in: width,
    height_in: height,
    depth_in: depth,
    details: JSON.stringify({
      ports: [],
      pairs: [],
      databases: [],
      limitations: [],
      view: viewOf(name, functions),
      ...details,
    }),
  };
}

export const types = [
  type(
    'sn-40',
    'Quillon Works',
    'SN 40 navigator',
    'QW-4001',
    ['gnss', 'integrity-annunciation', 'approach-annunciation'],
    ['C146d:Gamma-3'],
    [4.2, 2.2, 6.25, 2.65, 10.1],
    {
      ports: [
        port('LAT OUT', 'lateral-deviation', 'out', 'analog'),
        port('VERT OUT', 'vertical-deviation', 'out', 'analog'),
        port('POS OUT', 'position', 'out', 'rs-232'),
      ],
      pairs: [
        pair('SN 40 installation manual', 'si-3', ['lateral-deviation', 'vertical-deviation']),
        pair('SN 40 installation manual', 'st-8', ['position']),
      ],
      databases: [{ kind: 'navigation', holdsNext: true }],
    },
  ),
  type(
    'sr-12',
    'Marrowby Radio',
    'SR 12 nav/com',
    'MR-1200',
    ['com', 'vor-receiver', 'loc-receiver', 'gs-receiver'],
    ['C169', 'C40c', 'C36e', 'C34e'],
    [3.8, 3.4, 6.25, 1.75, 10.8],
    {
      ports: [
        port('LAT OUT', 'lateral-deviation', 'out', 'analog'),
        port('VERT OUT', 'vertical-deviation', 'out', 'analog'),
      ],
      pairs: [pair('SR 12 installation manual', 'si-3', ['lateral-deviation', 'vertical-deviation'])],
    },
  ),
  type('sc-5', 'Marrowby Radio', 'SC 5 com', 'MR-0500', ['com'], ['C169a'], [2.1, 2.8, 6.25, 1.3, 9.5]),
  type(
    'si-3',
    'Fennick Instruments',
    'SI 3 course indicator',
    'FN-0300',
    ['lateral-deviation', 'vertical-deviation'],
    ['C36e', 'C34e'],
    [1.4, 0.2, 3.125, 3.125, 5.8],
    {
      ports: [
        port('LAT IN', 'lateral-deviation', 'in', 'analog', ['lateral-deviation']),
        port('VERT IN', 'vertical-deviation', 'in', 'analog'),
      ],
    },
  ),
  type(
    'st-8',
    'Ostermere',
    'ST 8 transponder',
    'OS-0800',
    ['transponder', 'ads-b-out-1090'],
    ['C112e:1', 'C166b:B1S'],
    [2.7, 1.8, 6.25, 1.65, 10],
    {
      ports: [
        port('ALT IN', 'altitude-serial', 'in', 'rs-232', ['transponder']),
        port('POS IN', 'position', 'in', 'rs-232', ['ads-b-out-1090']),
      ],
    },
  ),
  type('se-1', 'Ostermere', 'SE 1 encoder', 'OS-0100', ['altitude-reporting'], ['C88b'], [0.5, 0.3, '', '', ''], {
    ports: [port('SER OUT', 'altitude-serial', 'out', 'rs-232')],
    pairs: [pair('SE 1 installation manual', 'st-8', ['altitude-serial'])],
  }),
  type('sp-1', 'Ostermere', 'SP 1 position source', 'OS-0110', ['other'], ['C145e:Beta-1'], [0.6, 0.3, '', '', ''], {
    ports: [port('POS OUT', 'position', 'out', 'rs-232')],
    pairs: [pair('SP 1 installation manual', 'st-8', ['position'])],
  }),
  type(
    'sa-20',
    'Fennick Instruments',
    'SA 20 altimeter',
    'FN-2010',
    ['altimeter'],
    ['C10b'],
    [1.5, '', 3.125, 3.125, 4.6],
  ),
  type('sl-4', 'Pellwick Beacons', 'SL 4 emergency transmitter', 'PB-0400', ['elt'], ['C126b'], [2, '', '', '', '']),
];
