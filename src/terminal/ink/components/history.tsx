import { Box, Static, Text } from 'ink';
import type { Row } from '../../lay-out-turn.ts';

/** Everything said so far: each item is written once and then belongs to the terminal's own scrollback. */
export function History({ items }: { readonly items: readonly (readonly Row[])[] }) {
  return (
    <Static items={[...items]}>
      {(rows, index) => (
        <Box key={index} flexDirection="column">
          {rows.map(toLine)}
        </Box>
      )}
    </Static>
  );
}

function toLine(row: Row, place: number) {
  return (
    <Text key={place} bold={row.look === 'strong'} dimColor={row.look === 'quiet'} wrap="truncate-end">
      {row.text === '' ? ' ' : row.text}
    </Text>
  );
}
