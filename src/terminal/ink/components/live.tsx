import { Box, Text, useCursor } from 'ink';
import { useLayoutEffect } from 'react';
import { displayWidth } from '../../display-width.ts';
import type { LiveFrame, LiveRow, Piece } from '../frame.ts';
import type { FrameWidths } from '../screen.ts';

export interface LiveProps {
  readonly frame: LiveFrame;
  readonly colour: boolean;
  /** Told the columns of each row that was drawn. */
  readonly drawn: (widths: FrameWidths) => void;
}

/** The part of the screen that is drawn again with each key. The terminal's own cursor is used, for input methods. */
export function Live({ frame, colour, drawn }: LiveProps) {
  const { setCursorPosition } = useCursor();
  setCursorPosition(frame.cursor);
  useLayoutEffect(() => drawn(frame.rows.map(rowWidth)));
  return (
    <Box flexDirection="column">
      {numbered(frame.rows).map(([row, key]) => (
        <LiveLine key={key} row={row} colour={colour} />
      ))}
    </Box>
  );
}

function LiveLine({ row, colour }: { readonly row: LiveRow; readonly colour: boolean }) {
  return (
    <Text wrap="truncate-end">
      {row.length === 0
        ? ' '
        : numbered(row).map(([piece, key]) => <Styled key={key} piece={piece} colour={colour} />)}
    </Text>
  );
}

function Styled({ piece, colour }: { readonly piece: Piece; readonly colour: boolean }) {
  const { text, look } = piece;
  if (look === 'plain') return text;
  if (look === 'quiet') return <Text dimColor={true}>{text}</Text>;
  if (look === 'accent' && colour)
    return (
      <Text bold={true} color="cyan">
        {text}
      </Text>
    );
  return <Text bold={true}>{text}</Text>;
}

/** Blanks at the end of a row are not written. */
function rowWidth(row: LiveRow): number {
  return displayWidth(
    row
      .map((piece) => piece.text)
      .join('')
      .trimEnd(),
  );
}

/** Rows and pieces are known by nothing but their place. */
function numbered<T>(items: readonly T[]): readonly (readonly [T, string])[] {
  return items.map((item, place) => [item, String(place)]);
}
