import { memo } from "react";
import type { Fact } from "../../drawing/index.ts";
import { useEnglish } from "../state/english.ts";

/** The drawing in words: the same facts for those who cannot see it, or would rather read. */
export const FactsTable = memo(function FactsTable({ facts }: { facts: readonly Fact[] }) {
  useEnglish();
  if (facts.length === 0) return null;
  return (
    <details className="facts">
      <summary>In words</summary>
      <table className="table">
        <caption className="hidden-words">Facts of the drawing</caption>
        <tbody>
          {facts.map((fact) => (
            <tr key={fact.label}>
              <th scope="row">{fact.label}</th>
              <td>{fact.text}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
});
