import type { Stock } from "../../job/index.ts";
import { counted } from "../../words/index.ts";
import { Chapter } from "../frame/chapter.tsx";
import { Field } from "../inputs/field.tsx";
import { choice, part, run, size, text } from "../inputs/spec.ts";
import { newId } from "../persistence/new-id.ts";
import { addToList, useCanEdit, useJob } from "../state/fields.ts";
import { useParts } from "../state/parts.ts";
import { edit, usePlanner } from "../state/store.ts";
import { PiecePromises } from "../workroom/piece-promises.tsx";
import { ShopStock } from "../workroom/shop-stock.tsx";
import { type StockPromises, useStockPromises } from "../workroom/stock-promises.ts";
import { Trouble } from "../workroom/trouble.tsx";
import { DeviceStockList, InDeviceShop, useFollowStock } from "./device-stock-list.tsx";

const CLOTH = part("Cloth", "cloths");
const NAME = text("Name", 120);
const WIDTH = size("Width", "where it is not the full width");
const LENGTH = run("Length", 1, 1_000_000);

type Kind = keyof Stock;

/** What is in stock already, so that it need not be bought. */
export function StockChapter() {
  const { stock } = useJob();
  const cloth = stock.cloth?.length ?? 0;
  const lengths = stock.lengths?.length ?? 0;
  const atHand = [
    ...(cloth > 0 ? [`${counted(cloth, "piece")} of cloth`] : []),
    ...(lengths > 0 ? [`${counted(lengths, "length")} of cord, bar or board`] : []),
  ];
  const promises = useStockPromises();
  useFollowStock(usePlanner(({ room }) => room === undefined));
  return (
    <Chapter
      id="stock"
      sentence={
        atHand.length === 0 ? "Nothing is at hand; everything is bought." : `At hand: ${atHand.join(", ")}.`
      }
    >
      <Trouble words={promises?.trouble} />
      <StockList kind="cloth" title="Bolts and remnants" promises={promises} />
      <StockList kind="lengths" title="Cord, bars, ribs and boards" promises={promises} />
    </Chapter>
  );
}

interface StockListProps {
  kind: Kind;
  title: string;
  promises: StockPromises | undefined;
}

function StockList({ kind, title, promises }: StockListProps) {
  const { stock } = useJob();
  const parts = useParts();
  const mine = useCanEdit();
  const inRoom = usePlanner(({ room }) => room !== undefined);
  const list = stock[kind] ?? [];
  const pointer = `/stock/${kind}`;
  const runs = [...parts.cords, ...parts.bars, ...parts.ribs, ...parts.boards];
  const PART = choice("What it is", Object.fromEntries(runs.map((one) => [one.id, one.name])));
  const add = () => {
    const first = kind === "cloth" ? { cloth: parts.cloths[0]?.id } : { part: runs[0]?.id };
    addToList(pointer, { id: newId("piece"), ...first, lengthMm: 1000 }, "Add to stock");
  };
  return (
    <div>
      <h3>{title}</h3>
      {list.map((piece, at) => (
        <div key={piece.id} className="part-card">
          {promises === undefined ? null : (
            <PiecePromises piece={piece} pointer={`${pointer}/${at}`} promises={promises} />
          )}
          <div className="fields">
            {kind === "cloth" ? (
              <>
                <Field pointer={`${pointer}/${at}/cloth`} spec={CLOTH} needed="choose one" />
                <Field pointer={`${pointer}/${at}/widthMm`} spec={WIDTH} />
              </>
            ) : (
              <Field pointer={`${pointer}/${at}/part`} spec={PART} needed="choose one" />
            )}
            <Field pointer={`${pointer}/${at}/lengthMm`} spec={LENGTH} needed="a length is needed here" />
            {kind === "cloth" ? <Field pointer={`${pointer}/${at}/name`} spec={NAME} /> : null}
          </div>
          {inRoom ? null : <InDeviceShop kind={kind} piece={piece} />}
          <button
            type="button"
            className="button-plain small"
            disabled={!mine}
            onClick={() =>
              edit({ label: "Take out of stock", patch: [{ op: "remove", path: `${pointer}/${at}` }] })
            }
          >
            Take out of stock
          </button>
        </div>
      ))}
      <button type="button" className="button-plain" disabled={!mine} onClick={add}>
        Add a {kind === "cloth" ? "piece of cloth" : "length"}
      </button>
      {inRoom ? null : <DeviceStockList kind={kind} />}
      {promises === undefined ? null : <ShopStock kind={kind} promises={promises} />}
    </div>
  );
}
