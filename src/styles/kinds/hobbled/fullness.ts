/** Cloth between two tape marks over the tape between them: from lean to full. */
export const LEAST_FULLNESS = 1.5;
export const MOST_FULLNESS = 2;
