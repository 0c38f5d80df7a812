import { AppError } from '../common/errors.js';

export const roles = ['manager', 'technician', 'dispatcher', 'auditor'] as const;
export type Role = (typeof roles)[number];

/** On whose behalf something is asked. Everything a service needs to decide is here. */
export interface Actor {
  readonly organisationId: string;
  readonly memberId: string;
  readonly name: string;
  readonly role: Role;
  /** Set for a dispatcher tied to one operator: other operators' aircraft do not exist for them. */
  readonly operatorId?: string;
}

/** Who may do what. What is not listed nobody may do. */
const access = {
  'fleet.read': ['manager', 'technician', 'dispatcher', 'auditor'],
  'aircraft.read': ['manager', 'technician', 'dispatcher', 'auditor'],
  'aircraft.dossier': ['manager', 'technician', 'auditor'],
  'aircraft.history': ['manager', 'technician', 'auditor'],
  'aircraft.record': ['manager', 'technician'],
  // Whoever doubts an aircraft may keep it on the ground; letting it fly again is another matter.
  'hold.place': ['manager', 'technician', 'dispatcher'],
  'hold.lift': ['manager', 'technician'],
  // A hold that a job placed ends with its release; lifting it by hand lets work go out unreleased.
  'hold.lift-job': ['manager'],
  // The house's policy narrows this down further.
  'source.say-so': ['manager', 'technician', 'dispatcher'],
  'jobs.use': ['manager', 'technician'],
  'rules.read': ['manager', 'technician', 'dispatcher', 'auditor'],
  'catalogue.read': ['manager', 'technician', 'dispatcher', 'auditor'],
  'catalogue.write': ['manager', 'technician'],
  'labour.read': ['manager', 'technician', 'auditor'],
  'labour.write': ['manager'],
  'organisation.read': ['manager', 'auditor'],
  'organisation.write': ['manager'],
  'workshop.read': ['manager', 'technician', 'auditor'],
  'workshop.write': ['manager'],
  'audit.read': ['manager'],
  'people.read': ['manager', 'auditor'],
  'people.write': ['manager'],
  'sessions.own': ['manager', 'technician', 'dispatcher', 'auditor'],
  'import.check': ['manager', 'technician'],
  'import.load': ['manager'],
  'export.aircraft': ['manager', 'technician', 'auditor'],
  'export.house': ['manager', 'auditor'],
} as const satisfies Readonly<Record<string, readonly Role[]>>;

export type Action = keyof typeof access;

/**
 * The first line of every public method of a service.
 * @throws AppError SIGNED_OUT without an actor, FORBIDDEN when the role is not listed
 */
export function authorise(actor: Actor | null, action: Action): asserts actor is Actor {
  if (actor === null) throw new AppError({ code: 'SIGNED_OUT' });
  if (!mayDo(actor, action)) throw new AppError({ code: 'FORBIDDEN', action });
}

/** For answers that leave a part out where a role may not see it. */
export function mayDo(actor: Actor, action: Action): boolean {
  const listed: readonly Role[] | undefined = access[action];
  return listed?.includes(actor.role) ?? false;
}

/** Everything this actor may do, so that screens offer nothing that would be refused. */
export function permissions(actor: Actor): readonly Action[] {
  return (Object.keys(access) as Action[]).filter((action) => mayDo(actor, action));
}
