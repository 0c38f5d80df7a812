import type { Role } from '../identity/access.js';

/** An account of the demo. The password is no secret: start-up prints it, and only while nobody else can reach the port. */
export interface DemoAccount {
  readonly organisationId: string;
  readonly organisation: string;
  readonly email: string;
  readonly name: string;
  readonly role: Role;
  readonly operatorId: string | null;
  readonly password: string;
  readonly certificate: Readonly<Record<string, string>>;
}

const password = 'wing-and-tally';
const shop = { organisationId: 'wendle', organisation: 'Wendle Avionics', password };
const second = { organisationId: 'nethercray', organisation: 'Nether Cray Flying Works', password };

/** Everybody is invented; the addresses end in a name that no network can hold (RFC 2606). */
export const demoAccounts: readonly DemoAccount[] = [
  { ...shop, email: 'manager@wendle.example', name: 'Maud Wendle', role: 'manager', operatorId: null, certificate: {} },
  {
    ...shop,
    email: 'technician@wendle.example',
    name: 'Jory Pellam',
    role: 'technician',
    operatorId: null,
    certificate: { kind: 'mechanic', number: 'TW-M-0417', ratings: 'airframe powerplant' },
  },
  {
    ...shop,
    email: 'dispatcher@wendle.example',
    name: 'Ines Halloway',
    role: 'dispatcher',
    operatorId: 'saltmarsh',
    certificate: {},
  },
  { ...shop, email: 'auditor@wendle.example', name: 'Piet Ansgar', role: 'auditor', operatorId: null, certificate: {} },
  {
    ...second,
    email: 'manager@nethercray.example',
    name: 'Odile Cray',
    role: 'manager',
    operatorId: null,
    certificate: {},
  },
  {
    ...second,
    email: 'dispatcher@nethercray.example',
    name: 'Tobin Vale',
    role: 'dispatcher',
    operatorId: null,
    certificate: {},
  },
];
