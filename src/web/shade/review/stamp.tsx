import { SeverityIcon } from "../../frame/icons.tsx";
import { PlaceAndPurpose } from "../place-and-purpose.tsx";
import { useShade } from "../shade-context.tsx";
import "./rule-list.css";

/** What must be read before anything else on the page: a law that failed, or a place that was not said. */
export function Stamp() {
  const { plan, job } = useShade();
  const { stamp, stampText } = plan.safety;
  const { place, purpose } = job;
  return (
    <>
      {stamp ? (
        <p className="stamp" role="alert">
          <SeverityIcon severity="stop" /> {stampText}
        </p>
      ) : null}
      {place === undefined || purpose === undefined ? (
        <div className="ask-place">
          <p>
            Cords can strangle a child, and the rules differ from place to place. Say where this job will hang
            and whom it is for: the lift that is proposed follows.
          </p>
          <PlaceAndPurpose />
        </div>
      ) : null}
    </>
  );
}
