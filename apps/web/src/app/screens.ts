/** The screens of the navigation, in order, and what a person must be allowed to do to have a use for each. */
export interface Screen {
  readonly path: string;
  readonly title: string;
  /** An action as the API names it in `viewer.may`. */
  readonly needs: string;
}

const screens: readonly Screen[] = [
  { path: '/', title: 'Ready board', needs: 'fleet.read' },
  { path: '/findings', title: 'Findings', needs: 'fleet.read' },
  { path: '/due', title: 'Due ahead', needs: 'fleet.read' },
  { path: '/meters', title: 'Meters', needs: 'aircraft.record' },
  { path: '/databases', title: 'Databases', needs: 'fleet.read' },
  { path: '/catalogue', title: 'Catalogue', needs: 'catalogue.read' },
  { path: '/rules', title: 'Rules', needs: 'rules.read' },
  { path: '/hours', title: 'Hours and prices', needs: 'labour.read' },
  { path: '/import', title: 'Import', needs: 'import.check' },
  { path: '/taking-on', title: 'Taking on', needs: 'aircraft.dossier' },
  { path: '/workshop', title: 'Test sets', needs: 'workshop.read' },
  { path: '/people', title: 'People', needs: 'people.read' },
  { path: '/house', title: 'House', needs: 'organisation.read' },
  { path: '/audit', title: 'Who did what', needs: 'audit.read' },
];

/** Whether a person of these rights has a use for the screen at this address; what is not in the navigation says so itself. */
export function isFor(path: string, may: readonly string[]): boolean {
  const screen = screens.find((each) => each.path === path.replace(/(.)\/$/, '$1'));
  return screen === undefined || may.includes(screen.needs);
}

/** The server decides what anyone may see; this only keeps doors out of the way that would not open. */
export function screensFor(may: readonly string[]): Screen[] {
  return screens.filter((screen) => may.includes(screen.needs));
}
