import { Link } from "wouter";
import { setPatch } from "../../../figures/index.ts";
import { PART_SCHEMAS } from "../../../job/index.ts";
import { LAYER_NAMES, LAYERS, type Layer } from "../../../shade-plan/index.ts";
import { STYLE_MODULES } from "../../../styles/index.ts";
import { arealMassText, clothLengthText, lengthText } from "../../../units/index.ts";
import { counted } from "../../../words/index.ts";
import { Fig, LengthFig } from "../../figures/fig.tsx";
import { FieldGroup } from "../../findings/field-findings.tsx";
import { More } from "../../frame/more.tsx";
import { Field } from "../../inputs/field.tsx";
import { part } from "../../inputs/spec.ts";
import { ClothFields } from "../../job/cloth-fields.tsx";
import { newId } from "../../persistence/new-id.ts";
import { screenSpelling } from "../../spelt/screen-english.ts";
import { useCanEdit, useField, useJob, useUnits } from "../../state/fields.ts";
import { useParts } from "../../state/parts.ts";
import { edit, look, openSection, usePlanner } from "../../state/store.ts";
import { MotifNudge } from "../motif-nudge.tsx";
import { Section } from "../section.tsx";
import { MoreSettings } from "../setting-group.tsx";
import { useShade } from "../shade-context.tsx";

const LAYER_SPECS: Record<Layer, ReturnType<typeof part>> = {
  face: part("Face", "cloths"),
  interlining: { ...part("Interlining", "cloths", "none"), hint: "bump, domett" },
  blackout: part("Blackout", "cloths", "none"),
  lining: part("Lining", "cloths", "none, unlined"),
};
const BANDING = part("Cloth of the banding", "cloths", "none of its own");
const BOTTOM_BAND = part("Cloth of the bottom band", "cloths", "none of its own");
const FALLBACK: Record<Layer, string | null> = {
  face: "plain-cotton",
  interlining: null,
  blackout: null,
  lining: "cotton-lining",
};

export function ClothSection() {
  const { pointer, plan, job } = useShade();
  const hasRepeat = plan.cloth.layers.some(({ motif }) => motif !== undefined);
  const motif = plan.cloth.layers.find(({ layer }) => layer === "face")?.motif;
  // A style that asks for its ribs has them with its shape.
  const ribsHere = !STYLE_MODULES[plan.style].asks.some(({ group }) => group === "ribs");
  return (
    <Section id="cloth" sentence={<ClothSentence />}>
      <FieldGroup>
        {LAYERS.map((layer) => (
          <Field
            key={layer}
            pointer={`${pointer}/shade/${layer}`}
            spec={LAYER_SPECS[layer]}
            fallback={FALLBACK[layer]}
            origin={<ClothFacts layer={layer} />}
          />
        ))}
      </FieldGroup>
      <OwnFace />
      <p className="page-actions">
        <AddFace />
        <Link href={`/job/${job.id}`} onClick={() => look({ jump: "cloths" })}>
          All cloths of the job
        </Link>
      </p>
      <CutSizes />
      <MoreSettings group="hems" />
      <MoreSettings group="lining" />
      {ribsHere ? <MoreSettings group="ribs" /> : null}
      {motif !== undefined && plan.form.across === "flat" ? <MotifNudge /> : null}
      {hasRepeat ? <MoreSettings group="pattern" /> : null}
      <MoreSettings
        group="banding"
        before={
          <>
            <Field pointer={`${pointer}/shade/banding`} spec={BANDING} fallback={null} />
            <Field pointer={`${pointer}/shade/bottomBand`} spec={BOTTOM_BAND} fallback={null} />
          </>
        }
      />
    </Section>
  );
}

/** The face where it is the maker’s own, to be measured here. */
function OwnFace() {
  const { pointer } = useShade();
  const { cloths } = useJob();
  const face = useField(`${pointer}/shade/face`);
  const at = cloths.findIndex(({ id }) => id === face);
  const own = cloths[at];
  if (own === undefined) return null;
  return (
    <More id={`part-${own.id}`} title={`${own.name}: width, weight, pattern, photo`}>
      <ClothFields pointer={`/cloths/${at}`} />
    </More>
  );
}

/** A new cloth, empty yet, taken for the face at once. */
function AddFace() {
  const { pointer } = useShade();
  const mine = useCanEdit();
  const add = () => {
    const { job } = usePlanner.getState();
    if (!job) return;
    const cloth = PART_SCHEMAS.cloths.parse({ id: newId("cloth"), name: screenSpelling()("My cloth") });
    const cloths = setPatch(job, "/cloths", [...job.cloths, cloth]);
    const face = setPatch(job, `${pointer}/shade/face`, cloth.id);
    edit({ label: `Add ${cloth.name}`, patch: [...cloths, ...face] });
    openSection(`part-${cloth.id}`, true);
  };
  return (
    <button type="button" className="button button-small" disabled={!mine} onClick={add}>
      Add a cloth of your own
    </button>
  );
}

function ClothSentence() {
  const { cloth } = useShade().plan;
  const units = useUnits();
  const [face, ...others] = cloth.layers;
  if (!face) return <>No cloth yet.</>;
  return (
    <>
      {face.clothName}, <Fig id="cloth.face-widths">{counted(face.widths, "width")}</Fig>, cut{" "}
      <LengthFig id="cloth.face-cut-width" mm={face.cutWidthMm} /> ×{" "}
      <LengthFig id="cloth.face-cut-length" mm={face.cutLengthMm} />
      {face.turned ? ", turned sideways on the bolt" : ""}; cut by itself, buy{" "}
      <Fig id="cloth.face-buy">{clothLengthText(face.buyMm, units)}</Fig>.
      {others.map((layer) => (
        <span key={layer.layer}>
          {" "}
          {LAYER_NAMES[layer.layer]} {layer.clothName}, buy{" "}
          <Fig id={`cloth.${layer.layer}-buy`}>{clothLengthText(layer.buyMm, units)}</Fig>.
        </span>
      ))}
      {others.length === 0 ? " Unlined." : null}
    </>
  );
}

/** Width, weight and repeat of the cloth that a layer is cut from. */
function ClothFacts({ layer }: { layer: Layer }) {
  const { plan } = useShade();
  const parts = useParts();
  const units = useUnits();
  const cut = plan.cloth.layers.find((one) => one.layer === layer);
  const cloth = parts.cloths.find((one) => one.id === cut?.clothId);
  if (!cloth) return null;
  return (
    <>
      {lengthText(cloth.usableWidthMm, units)} usable, {arealMassText(cloth.massGsm, units)}
      {cloth.repeat
        ? `, repeat ${lengthText(cloth.repeat.verticalMm, units)}${cloth.repeat.match === "half-drop" ? ", half drop" : ""}`
        : ", plain"}
    </>
  );
}

/** Every piece to cut. */
function CutSizes() {
  const { cloth } = useShade().plan;
  const units = useUnits();
  return (
    <div className="table-room">
      <table className="table">
        <caption>To cut</caption>
        <thead>
          <tr>
            <th scope="col">Piece</th>
            <th scope="col">Width</th>
            <th scope="col">Length</th>
          </tr>
        </thead>
        <tbody>
          {cloth.layers.flatMap((layer) =>
            layer.panels.map((panel) => (
              <tr key={panel.id}>
                <th scope="row">{panel.label}</th>
                <td>{lengthText(panel.widthMm, units)}</td>
                <td>{lengthText(panel.lengthMm, units)}</td>
              </tr>
            )),
          )}
          {cloth.trims.map((trim) => (
            <tr key={trim.id}>
              <th scope="row">{trim.count > 1 ? `${trim.label}, ${trim.count} of them` : trim.label}</th>
              <td>{lengthText(trim.widthMm, units)}</td>
              <td>{lengthText(trim.lengthMm, units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
