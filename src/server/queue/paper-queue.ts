/** A paper that a worker is to make. */
export interface PaperTask {
  workroomId: string;
  paperId: string;
}

/** Where papers wait for a worker. */
export interface PaperQueue {
  /** Puts one in; one that gets lost on the way is found again by the upkeep. */
  send(task: PaperTask): void;
  close(): Promise<void>;
}
