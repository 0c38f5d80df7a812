/** Ids hold signs that mean something in an address. */
export function pathOf(id: string, what?: 'copy' | 'revise'): string {
  return `/catalogue/${encodeURIComponent(id)}${what ? `/${what}` : ''}`;
}

/** The job screen of an aircraft, which offers to record one of its units with this version. */
export function moveJobOf(aircraftId: string, unitId: string, typeId: string): string {
  return `/aircraft/${aircraftId}/job?${new URLSearchParams({ unit: unitId, type: typeId })}`;
}
