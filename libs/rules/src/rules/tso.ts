/** An authorisation without the letter of its edition: `C146d` to `C146`. The catalogue takes in no other form. */
export function tsoNumber(tso: string): string {
  return tso.replace(/[a-z]/, '');
}
