/** A usual caution, with the source that it leans on. */
export interface Caution {
  id: string;
  title: string;
  text: string;
}
