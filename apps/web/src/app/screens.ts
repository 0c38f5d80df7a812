/** The screens of the navigation, in order, and who has a use for each. The server decides what anyone may see. */
export interface Screen {
  readonly path: string;
  readonly title: string;
  readonly roles: 'all' | readonly string[];
}

const screens: readonly Screen[] = [
  { path: '/', title: 'Ready board', roles: 'all' },
  { path: '/findings', title: 'Findings', roles: 'all' },
  { path: '/due', title: 'Due ahead', roles: 'all' },
  { path: '/databases', title: 'Databases', roles: 'all' },
  { path: '/catalogue', title: 'Catalogue', roles: ['manager', 'technician', 'auditor'] },
  { path: '/rules', title: 'Rules', roles: 'all' },
  { path: '/import', title: 'Import', roles: ['manager'] },
];

/** Role in either spelling, as the API or the core writes it. */
export function screensFor(role: string): Screen[] {
  return screens.filter((screen) => screen.roles === 'all' || screen.roles.includes(role.toLowerCase()));
}
