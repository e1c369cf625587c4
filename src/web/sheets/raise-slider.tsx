import { Slider, SliderThumb, SliderTrack } from "react-aria-components/Slider";
import { Label } from "react-aria-components/TextField";
import { setRaise, usePlanner } from "../state/store.ts";

/** Pulls the shade up and lets it down, like the cord itself. */
export function RaiseSlider() {
  const raise = usePlanner((planner) => planner.view.raise);
  return (
    <Slider
      className="raise screen-only"
      orientation="vertical"
      minValue={0}
      maxValue={1}
      step={0.01}
      value={raise}
      onChange={setRaise}
      formatOptions={{ style: "percent" }}
    >
      <Label className="raise-label">Raise</Label>
      <SliderTrack className="raise-track">
        <div className="raise-fill" style={{ transform: `scaleY(${raise})` }} />
        <SliderThumb className="raise-thumb" />
      </SliderTrack>
    </Slider>
  );
}
