declare module 'jpeg-js/lib/decoder.js' {
  /** Pixels of a baseline or progressive JPEG, interleaved red, green and blue. Throws where the file breaks the format. */
  export default function decode(
    bytes: Uint8Array,
    options: {
      readonly useTArray: true;
      readonly formatAsRGBA: false;
      readonly tolerantDecoding: boolean;
      readonly maxResolutionInMP: number;
      readonly maxMemoryUsageInMB: number;
    },
  ): { readonly width: number; readonly height: number; readonly data: Uint8Array };
}
