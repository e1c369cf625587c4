import { boughtLengthMm } from "../../cost/index.ts";
import { type StockPiece, stockPieces } from "../../job/index.ts";
import { allCutPatch, type CuttingPlan } from "../../plan/index.ts";
import { counted } from "../../words/index.ts";
import { goesByLength, may } from "../../workroom/protocol/index.ts";
import { newId } from "../persistence/new-id.ts";
import { useDeviceStock } from "../state/device-stock.ts";
import { useCanEdit, useJob } from "../state/fields.ts";
import { edit, usePlanner } from "../state/store.ts";
import { useReadShop } from "../workroom/room-shop.ts";
import { useRoom } from "../workroom/room-state.ts";
import { useCuttingStore } from "./cutting-store.ts";

/** Once all is cut: what is left lies in the shop, the workroom’s or this device’s, for the next job. */
export function WhatIsLeft({ cutting }: { cutting: CuttingPlan }) {
  const job = useJob();
  const mine = useCanEdit();
  const stale = useCuttingStore((one) => one.job !== job);
  const cost = useCuttingStore(({ progress }) => progress?.cost);
  const isShared = usePlanner(({ room }) => room !== undefined);
  const isMaker = useRoom(({ me }) => me?.state === "signed-in" && may(me.person.role, "change-shop"));
  const roomShop = useReadShop();
  const deviceShop = useDeviceStock();
  const shop = isShared ? roomShop?.shop.stock : deviceShop.stock;
  const { leftOver } = job;
  const isCut = cutting.cloths.every(({ problem }) => problem.pieces.length === 0);
  if (leftOver !== undefined && isCut)
    return (
      <section className="cutting-cloth screen-only">
        <h3>All is cut</h3>
        <p>
          What was left lies in the {isShared ? "workroom’s shop" : "shop of this device"}:{" "}
          {counted(leftOver.cloth?.length ?? 0, "piece")} of cloth,{" "}
          {counted(leftOver.lengths?.length ?? 0, "length")}.
        </p>
      </section>
    );
  const layIn = () => {
    const inShop = new Set(stockPieces(shop ?? {}).map(({ id }) => id));
    const isOfShop = ({ id }: StockPiece) => inShop.has(id);
    const patch = allCutPatch(job, cutting, {
      boughtMm: (clothId) => {
        const line = cost?.shopping.find(({ id }) => id === `cloth-${clothId}`);
        return line && boughtLengthMm(line);
      },
      isOfShop,
      isShared: (piece) => isShared && isOfShop(piece) && goesByLength(piece),
      newId: () => newId("left"),
    });
    edit({ label: "All is cut", patch });
  };
  return (
    <section className="cutting-cloth screen-only">
      <h3>When all is cut</h3>
      <p>
        <button
          type="button"
          className="button button-small"
          disabled={!mine || stale || shop === undefined || (isShared && !isMaker)}
          onClick={layIn}
        >
          All is cut: lay what is left into the shop
        </button>{" "}
        <span className="quiet small">
          Remnants and bolts worth keeping, with their lots; lengths of bars, boards and cord.
        </span>
      </p>
    </section>
  );
}
