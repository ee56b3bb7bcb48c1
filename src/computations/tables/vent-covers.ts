import type { SourceId, Status } from './source-status.ts';

/** A cover over a vent and the gross opening it needs for each unit of net free area. */
export type VentCover = {
  readonly id: string;
  readonly label: string;
  readonly grossFactor: number;
  readonly source: SourceId;
  readonly status: Status;
};

const cover = (id: string, label: string, grossFactor: number): VentCover => ({
  id,
  label,
  grossFactor,
  source: 'jlc-vent-table',
  status: 'read',
});

/** Gross opening for a net free area by cover. Source: jlc-vent-table, a field guide; status read. */
export const VENT_COVERS: readonly VentCover[] = [
  cover('mesh-quarter', '1/4 in hardware cloth', 1),
  cover('mesh-eighth', '1/8 in mesh', 1.25),
  cover('mesh-sixteenth', 'No. 16 mesh (about 1/16 in)', 2),
  cover('metal-louvre-sixteenth', 'metal louvre with No. 16 mesh', 2),
  cover('wood-louvre-eighth', 'wood louvre with 1/8 in mesh', 2.25),
  cover('wood-louvre-sixteenth', 'wood louvre with No. 16 mesh', 3),
];
