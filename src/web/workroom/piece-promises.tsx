import { LEAST_PIECE_MM, type StockPiece, stockPieces } from "../../job/index.ts";
import { clothLengthText } from "../../units/index.ts";
import { goesByLength, SHOP_ID } from "../../workroom/protocol/index.ts";
import { useCanEdit, useJob, useUnits } from "../state/fields.ts";
import { edit } from "../state/store.ts";
import { useRoom } from "./room-state.ts";
import {
  type PiecePromise,
  promisesOf,
  type StockPromises,
  takenByPlanMm,
  useCuttingOf,
} from "./stock-promises.ts";

/** Lengths that differ by less are the same, mm. */
const SAME_MM = 0.05;

/** What of a piece is promised to which job, in the shop and on the stock of a job that took it from there. */
export function PiecePromises({
  piece,
  pointer,
  promises,
}: {
  piece: StockPiece;
  pointer: string;
  promises: StockPromises;
}) {
  const job = useJob();
  const isShop = job.id === SHOP_ID;
  const its = isShop ? piece : stockPieces(promises.room.shop.stock).find(({ id }) => id === piece.id);
  if (its === undefined) return null;
  const { own, others, leftMm } = promisesOf(its, promises.room.reservations, job.id);
  if (isShop) return <InShop promises={others} leftMm={leftMm} isShared={goesByLength(its)} />;
  if (!goesByLength(its)) return others.length === 0 ? null : <TakenByOther promises={others} />;
  return <Shared piece={piece} pointer={pointer} own={own} others={others} leftMm={leftMm} />;
}

function TakenByOther({ promises }: { promises: readonly PiecePromise[] }) {
  const names = useJobNames(promises);
  return (
    <p role="alert" className="notice notice-stop">
      The workroom promised this piece to {names}: settle who gets it, and take it out of the other’s stock.
    </p>
  );
}

function InShop({
  promises,
  leftMm,
  isShared,
}: {
  promises: readonly PiecePromise[];
  leftMm: number;
  isShared: boolean;
}) {
  const words = usePromiseWords(promises, isShared);
  const units = useUnits();
  if (promises.length === 0) return null;
  return (
    <p className="small piece-promises">
      {words}
      {isShared ? (
        <>; {leftMm < SAME_MM ? "nothing" : <b>{clothLengthText(leftMm, units)}</b>} is free</>
      ) : null}
      .
    </p>
  );
}

/** A bolt that other jobs have some of: how much is left for this one, and whether its plan comes through with it. */
function Shared({
  piece,
  pointer,
  own,
  others,
  leftMm,
}: {
  piece: StockPiece;
  pointer: string;
  own: PiecePromise | undefined;
  others: readonly PiecePromise[];
  leftMm: number;
}) {
  const job = useJob();
  const units = useUnits();
  const mine = useCanEdit();
  const cutting = useCuttingOf(job);
  const words = usePromiseWords(others, true);
  const takenMm = takenByPlanMm(cutting, piece);
  const isShort = takenMm !== undefined && takenMm > leftMm + SAME_MM;
  const isOff = Math.abs(piece.lengthMm - leftMm) > SAME_MM && leftMm >= LEAST_PIECE_MM;
  const left = clothLengthText(leftMm, units);
  return (
    <>
      {isShort ? (
        <p role="alert" className="notice notice-stop">
          The cutting plan takes {clothLengthText(takenMm, units)} of it, and {left} is left: {words}.
        </p>
      ) : null}
      <p className="small piece-promises">
        {own === undefined
          ? takenMm === 0
            ? "The cutting plan takes nothing of it"
            : "Nothing of it is promised to this job yet"
          : `${clothLengthText(own.lengthMm, units)} promised to this job, as its cutting plan takes it`}
        {others.length === 0 ? null : `; ${words}`}.
        {isOff ? (
          <>
            {" "}
            <button
              type="button"
              className="button-plain small"
              disabled={!mine}
              onClick={() =>
                edit({
                  label: "Plan with what is left",
                  patch: [{ op: "replace", path: `${pointer}/lengthMm`, value: leftMm }],
                })
              }
            >
              Plan with {left}, which is free
            </button>
          </>
        ) : null}
      </p>
    </>
  );
}

/** “2 m promised to Bay and 1 m to Hall”. */
export function usePromiseWords(promises: readonly PiecePromise[], isShared: boolean): string {
  const jobs = useRoom((room) => room.jobs);
  const units = useUnits();
  return promises
    .map(({ jobId, lengthMm }, at) => {
      const name = nameOf(jobs, jobId);
      const amount = isShared ? `${clothLengthText(lengthMm, units)} ` : "";
      return at === 0 ? `${amount}promised to ${name}` : `${amount}to ${name}`;
    })
    .join(", ");
}

function useJobNames(promises: readonly PiecePromise[]): string {
  const jobs = useRoom((room) => room.jobs);
  return promises.map(({ jobId }) => nameOf(jobs, jobId)).join(", ");
}

function nameOf(jobs: readonly { id: string; name: string }[] | undefined, jobId: string): string {
  return jobs?.find(({ id }) => id === jobId)?.name ?? "another job";
}
