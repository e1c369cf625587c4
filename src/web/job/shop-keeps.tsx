import { listed } from "../../words/index.ts";
import { editField, useCanEdit, useField } from "../state/fields.ts";
import { differingSettings, keepInShop, type ShopPart, useShop } from "../state/shop.ts";
import { useRoomShop } from "../workroom/room-shop.ts";

interface ShopKeepsProps {
  part: ShopPart;
  /** The name of a setting by its path in the part. */
  labelOf(path: string): string;
}

/** Settings that are named; more are counted. */
const MOST_NAMED = 6;

/** Whether new jobs on this device begin with what this one has, and what to do where they begin otherwise. */
export function ShopKeeps({ part, labelOf }: ShopKeepsProps) {
  const own = useField(`/${part}`);
  const device = useShop((kept) => kept[part]);
  const room = useRoomShop();
  const shop = room === undefined ? device : room.shop[part];
  const mine = useCanEdit();
  const differing = differingSettings(own, shop);
  const isOwn = differingSettings(own, undefined).length > 0;
  if (shop === undefined && !isOwn) return null;
  if (differing.length === 0)
    return (
      <p className="quiet small">
        {room === undefined ? "New jobs on this device begin with these." : "As in the workroom’s shop."}
      </p>
    );
  const names = [...new Set(differing.map(labelOf))];
  const more = names.length - MOST_NAMED;
  return (
    <div className="shop-keeps small">
      {shop === undefined ? null : (
        <p>
          {room === undefined
            ? "New jobs on this device begin otherwise"
            : "Otherwise in the workroom’s shop"}
          : {listed(more > 0 ? [...names.slice(0, MOST_NAMED), `${more} more`] : names)}.
        </p>
      )}
      <p className="page-actions">
        {room === undefined ? (
          <button
            type="button"
            className="button button-small"
            onClick={() => keepInShop(part, own as Parameters<typeof keepInShop>[1])}
          >
            Begin new jobs with these
          </button>
        ) : null}
        {shop === undefined ? null : (
          <button
            type="button"
            className="button button-small"
            disabled={!mine}
            onClick={() =>
              editField(`/${part}`, shop, room === undefined ? "Take this device’s own" : "Take the shop’s")
            }
          >
            Take {room === undefined ? "this device’s" : "the shop’s"} here
          </button>
        )}
      </p>
    </div>
  );
}
