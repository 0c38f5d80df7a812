import './caution.css';

/** Stands on every surface that states a verdict, on screen and on paper. */
export function Caution() {
  return (
    <p className="tw-caution" role="note">
      Tallywing approves nothing. The approved data, the flight manual and its supplements, the aircraft’s records and
      the licensed people who sign them decide; local rules may differ.
    </p>
  );
}
