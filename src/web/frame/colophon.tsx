import { Segments } from "../inputs/segments.tsx";
import { prefer, type ThemeChoice, usePreferences } from "../state/preferences.ts";
import { usePlanner } from "../state/store.ts";
import { useRoom } from "../workroom/room-state.ts";
import { UnitsSwitch } from "./units-switch.tsx";
import "./colophon.css";

const THEMES: Record<ThemeChoice, string> = { device: "as the device", light: "light", dark: "dark" };

/** The foot of every page: units, paper, and what the planner is not. */
export function Colophon() {
  const theme = usePreferences((preferences) => preferences.theme);
  const hasJob = usePlanner((planner) => planner.job !== undefined);
  const isInRoom = useRoom((room) => room.me?.state === "signed-in");
  return (
    <footer className="colophon screen-only">
      <hr className="thread" />
      <div className="colophon-row">
        <Segments
          label="Light or dark"
          options={THEMES}
          value={theme}
          onChange={(chosen) => prefer({ theme: chosen })}
        />
        {hasJob ? (
          <div>
            <span className="segments-label" aria-hidden="true">
              Units of the job
            </span>
            <UnitsSwitch />
          </div>
        ) : null}
        <p className="quiet small">
          Cords can strangle a child. The planner names the usual rules and where a shade fails them; it
          proves nothing. Follow the law of your place, and leave fixing to heavy or doubtful walls to those
          licensed for it.{" "}
          {isInRoom ? "Only what you share leaves this device." : "Everything stays on this device."}
        </p>
      </div>
    </footer>
  );
}
