import { useState } from "react";
import { askLock } from "../../diagnose/index.ts";
import { CATALOGUE, type CordLock } from "../../job/index.ts";
import { fineText, trimmed } from "../../units/index.ts";
import { Typed } from "../inputs/typed.tsx";
import { askedNumber, readCount, reasonOf } from "./asked-number.ts";

interface WhichLockProps {
  /** The maker's own before those of the catalogue. */
  locks?: readonly CordLock[];
}

/** “Eight cords of 1.4 mm: which lock?” answered from two numbers. */
export function WhichLock({ locks = CATALOGUE.locks }: WhichLockProps) {
  const [cords, setCords] = useState("8");
  const [diameter, setDiameter] = useState("1.4");
  const count = readCount(cords, 1, 60);
  const mm = askedNumber(diameter);
  const mmOk = mm >= 0.3 && mm <= 6;
  const answers = count.ok && mmOk ? askLock(count.value, mm, locks) : [];
  return (
    <section className="chapter ask-part" aria-labelledby="which-lock">
      <h2 id="which-lock">Which lock takes my cords?</h2>
      <div className="fields">
        <Typed label="Cords" value={cords} onChange={setCords} error={reasonOf(count)} />
        <Typed
          label="Diameter of one"
          hint="turns side by side round a pencil: their width by their number"
          unit="mm"
          value={diameter}
          onChange={setDiameter}
          error={mmOk ? undefined : `0.3 to 6 mm, not “${diameter}”`}
        />
      </div>
      <ul className="ask-answers" aria-live="polite">
        {answers.map(({ lock, takes, remarks }) => (
          <li key={lock.id} className="ask-answer" data-takes={takes || undefined}>
            <h3>
              {lock.name}: {takes ? "takes them" : "does not"}
            </h3>
            <p>
              {lock.dividerWires} divider wires make {lock.dividerWires + 1} slots
              {lock.cordsMax === undefined
                ? ""
                : `; ${lock.cordsMax} cords at most, ${Math.ceil(lock.cordsMax / (lock.dividerWires + 1))} in a slot`}
              {lock.cordMinMm === undefined || lock.cordMaxMm === undefined
                ? ""
                : `, made for ${fineText(lock.cordMinMm)} to ${fineText(lock.cordMaxMm)}`}
              {takes && count.ok && lock.cordsMax !== undefined
                ? `; ${count.value} cords fill ${trimmed((100 * count.value) / lock.cordsMax, 0)} % of it`
                : ""}
              .
            </p>
            {remarks.map(({ text }) => (
              <p key={text}>{text}</p>
            ))}
            {lock.demo ? <p className="quiet small">An invented part: measure your own.</p> : null}
          </li>
        ))}
      </ul>
    </section>
  );
}
