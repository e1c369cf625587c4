/**
 * Id of the document that the whole workroom shares: parts, cloths, stock, rates and habits, as a job without rooms.
 * It is read and changed as every job is, and is not on the shelf. Apart from the schemas, which no first screen needs.
 */
export const SHOP_ID = "shop";
