declare module 'fft.js' {
  /** Radix-4 complex transform of `size` points, a power of two; arrays interleave (re, im). */
  export default class FFT {
    constructor(size: number);
    /** out_k = Σ data_j e^{−2πijk/size}; `out` and `data` must differ. */
    transform(out: Float64Array, data: Float64Array): void;
    /** out_j = (1/size) Σ data_k e^{+2πijk/size}; `out` and `data` must differ. */
    inverseTransform(out: Float64Array, data: Float64Array): void;
  }
}
