import { cleanText } from '../answers/reading/clean-text.ts';
import type { Reading } from '../answers/reading/reading.ts';
import { advance } from './advance.ts';
import { stopForEmergency } from './emergency.ts';
import { helpParts } from './explain.ts';
import { hello } from './hello.ts';
import type { Message } from './message.ts';
import type { Programme } from './programme.ts';
import { readFor } from './read.ts';
import type { WalkRecord } from './record.ts';
import { takeText } from './take-text.ts';
import { say, type Turned } from './turned.ts';

type Word = (Message & { kind: 'carrier' })['word'];

function speaking(record: WalkRecord): WalkRecord {
  const { silent: _, ...rest } = record;
  return rest;
}

/** Stops the messages: the walk pauses with every answer kept, and one line says how to have them again. */
function fallSilent(programme: Programme, record: WalkRecord): Turned {
  const { phase, key } = record.cursor;
  const underWay = phase === 'asking' || phase === 'readBack';
  const paused = underWay ? advance(programme, record, { type: 'PAUSE', at: key }) : record;
  return { record: { ...paused, silent: true }, parts: [say('carrier.stopped')] };
}

/** Does what a word asks for that the carriers of a channel reserve. */
export function takeCarrierWord(programme: Programme, record: WalkRecord, word: Word): Turned {
  switch (word) {
    case 'stop':
      return fallSilent(programme, record);
    case 'help':
      return { record, parts: [say('carrier.help'), ...helpParts(programme.checklist, record)] };
  }
}

const isForget = (reading: Reading) => reading.kind === 'command' && reading.command === 'forget';

/** Whoever asked for no more messages gets none, except an order to leave, and an answer when they ask who this is or to be erased. */
export function takeWhileSilent(programme: Programme, record: WalkRecord, message: Message): Turned {
  switch (message.kind) {
    case 'carrier':
      return { record, parts: message.word === 'help' ? [say('carrier.help')] : [] };
    case 'hello':
      return hello(programme, speaking(record));
    case 'emergency':
      return stopForEmergency(programme, speaking(record));
    case 'choose':
      return { record, parts: [] };
    case 'text': {
      const reading = readFor(programme.checklist, record, undefined, cleanText(message.text));
      if (reading.kind === 'emergency') return takeText(programme, speaking(record), message.text);
      const erasing = record.cursor.pending?.kind === 'forget' || isForget(reading);
      return erasing ? takeText(programme, record, message.text) : { record, parts: [] };
    }
  }
}
