/** Whether it is time to stop: a clock or a key of whoever runs a search, looked at between its short steps. */
export type ShouldStop = () => boolean;

export const NEVER: ShouldStop = () => false;
