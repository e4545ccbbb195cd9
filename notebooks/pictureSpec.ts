import type { ChoiceInput, FileInput, NumberInput } from '../lib/graph/quantity.ts';
import type { CameraImage } from '../lib/measured/cameraImage.ts';

/** A picture given to an input, on which the hand draws a part of it and a line along its scale bar. */
export interface PictureSpec {
  readonly picture: FileInput<CameraImage>;
  /** What the part is drawn about: "the mark". */
  readonly about: string;
  /** Edges in pixels; drawing sets the choice to `part`, and a button to `whole`. */
  readonly region: {
    readonly source: ChoiceInput<'whole' | 'part'>;
    readonly left: NumberInput;
    readonly top: NumberInput;
    readonly width: NumberInput;
    readonly height: NumberInput;
  };
  /** Ends in pixels; drawing sets the choice to `bar`. */
  readonly bar: {
    readonly source: ChoiceInput<'unknown' | 'typed' | 'bar'>;
    readonly startX: NumberInput;
    readonly startY: NumberInput;
    readonly endX: NumberInput;
    readonly endY: NumberInput;
  };
}
