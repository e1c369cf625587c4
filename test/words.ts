/**
 * Words that no text of a plan may use of a shade: a rule is failed, not shown to fail, not proven, or
 * does not apply. “Safety” is the name of a subject and not a verdict.
 */
const VERDICTS =
  /\b(?:un)?safe(?:r|st|ly)?\b|\bsafeguard|\bcomplian(?:t|ce)\b|\bcompl(?:y|ies)\b|\bapproved?\b|\bcertif|\bguarantee|\bchild-?proof|\bhazard-free/i;

export function verdictIn(text: string): string | undefined {
  return VERDICTS.exec(text)?.[0];
}
