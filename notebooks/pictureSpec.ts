import type { PictureInputs } from '../lib/design/pictureInputs.ts';
import type { ChoiceInput, FileInput, InputQuantity, NumberInput } from '../lib/graph/quantity.ts';
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

/** What the hand draws on that picture; `about` as in {@link PictureSpec}. */
export function drawnOn(inputs: PictureInputs, about: string): PictureSpec {
  const { picture, regionSource, regionLeft: left, regionTop: top } = inputs;
  const { scaleSource, barStartX: startX, barStartY: startY, barEndX: endX, barEndY: endY } = inputs;
  return {
    picture,
    about,
    region: { source: regionSource, left, top, width: inputs.regionWidth, height: inputs.regionHeight },
    bar: { source: scaleSource, startX, startY, endX, endY },
  };
}

/** Ends of the line along the scale bar, with the length it stands for. */
export const barInputsOf = ({ barLength, barStartX, barStartY, barEndX, barEndY }: PictureInputs) => [
  barLength,
  barStartX,
  barStartY,
  barEndX,
  barEndY,
];

export const regionInputsOf = ({ regionLeft, regionTop, regionWidth, regionHeight }: PictureInputs) => [
  regionLeft,
  regionTop,
  regionWidth,
  regionHeight,
];

/** The inputs of that picture in the order in which they are given. */
export function pictureControls(inputs: PictureInputs): readonly InputQuantity[] {
  const { picture, scaleSource, typedPitch, regionSource } = inputs;
  return [picture, scaleSource, typedPitch, ...barInputsOf(inputs), regionSource, ...regionInputsOf(inputs)];
}
