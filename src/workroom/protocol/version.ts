/**
 * How screens and server speak to each other. A screen tells its number with every request that changes something; the
 * server takes those from the oldest that it still understands to its own. A change that older screens would get wrong
 * raises both.
 */
export const PROTOCOL = 1;
export const OLDEST_PROTOCOL = 1;
export const PROTOCOL_HEADER = "shadewright-protocol";
