import * as z from "zod";

/** Longest picture that a job carries, characters: about 300 kB. */
export const LARGEST_PHOTO_CHARS = 400_000;

/** A swatch tells a picture by so many colours across and down. */
export const SWATCH_SIDE = 32;

const place = z.number().min(0).max(1);
const part = z.number().min(0.01).max(1);

/** A picture of the cloth lying flat, with one repeat of its pattern marked in it, as shares of its width and height. */
export const clothPhotoSchema = z.strictObject({
  image: z
    .string()
    .max(LARGEST_PHOTO_CHARS)
    .regex(
      /^data:image\/(?:png|jpeg|webp);base64,[A-Za-z0-9+/]+={0,2}$/,
      "a picture as data URL: PNG, JPEG or WebP",
    )
    .meta({ description: "The picture itself, as a data URL" }),
  leftShare: place.meta({ description: "Left edge of one repeat, share of the picture's width" }),
  topShare: place.meta({ description: "Top edge of one repeat, share of the picture's height" }),
  widthShare: part.meta({ description: "Width of one repeat, share of the picture's width" }),
  heightShare: part.meta({ description: "Height of one repeat, share of the picture's height" }),
  swatch: z
    .string()
    .regex(
      new RegExp(`^[0-9a-f]{${6 * SWATCH_SIDE ** 2}}$`),
      `${SWATCH_SIDE} × ${SWATCH_SIDE} colours, six digits or letters from a to f each`,
    )
    .optional()
    .meta({
      description: `The picture in ${SWATCH_SIDE} × ${SWATCH_SIDE} colours, row by row, rrggbb each: what drawings on paper show of it`,
    }),
  straightened: z
    .strictObject({
      by: z.enum(["repeat", "square"]).meta({ description: "What its four marked corners are those of" }),
      errorShare: z.number().min(0).max(1).meta({
        description:
          "How far its scale may be out, as a share, where each corner is marked to about a pixel and a half",
      }),
    })
    .optional()
    .meta({ description: "Taken at a slant and straightened by four corners" }),
});

export type ClothPhoto = z.output<typeof clothPhotoSchema>;
