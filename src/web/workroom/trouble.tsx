/** Why the server did not do it. */
export function Trouble({ words }: { words: string | undefined }) {
  return words === undefined ? null : (
    <p className="field-error" role="alert">
      {words}
    </p>
  );
}
