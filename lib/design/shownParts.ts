import { formatQuantity, formatReadable } from '../graph/units.ts';
import { glassById } from '../materials/glasses.ts';
import { reachOf } from '../numerics/panelledFunction.ts';
import type { FieldKernel } from '../optics/focalField.ts';
import type { ProfileKind } from '../optics/profileMetrics.ts';
import type { RadialProfile } from '../optics/radialProfile.ts';
import type { Zone } from '../optics/zones.ts';

/** A profile in a few words; its radii are metres on the workpiece. */
export function profileText(profile: RadialProfile): string {
  return `profile: ${profile.nodes.length} radii up to ${formatReadable(reachOf(profile), 'm', 'um')}`;
}

/** A Bessel matrix by its size. */
export function kernelText({ field }: { readonly field: FieldKernel }): string {
  return `${field.radii.length} radii × ${field.nodes.length} places on the plate`;
}

/** Zones of a plate from the axis outward, as "radius 5 mm: 0.5 waves". */
export function zonesText(zones: readonly Zone[]): string {
  const show = ({ outer, phase }: Zone) =>
    `radius ${formatReadable(outer, 'm', 'mm')}: ${formatQuantity(phase, 'rad', 'waves')}`;
  return zones.map(show).join(', ');
}

/** Coefficients of a glass as TeX and text, B₁ C₁ B₂ …: all that its formula takes besides the wavelength. */
export function sellmeierTable(glass: string): (readonly [symbol: string, shown: string])[] {
  const { B, C } = glassById(glass);
  return B.flatMap((strength, i) => [
    [`B_${i + 1}`, String(strength)] as const,
    [`C_${i + 1}`, `${C[i]}\u202fµm²`] as const,
  ]);
}

/** How many of each kind of profile, in the order they first come: "4 flat-tops, 2 rings, 1 peaked". */
export function kindsText(planes: readonly { readonly kind: ProfileKind }[]): string {
  const counts = new Map<ProfileKind, number>();
  for (const { kind } of planes) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  const text = [...counts].map(([kind, n]) => `${n} ${kind}${n > 1 && kind !== 'peaked' ? 's' : ''}`);
  return text.join(', ') || 'none';
}
