import { createIntl, createIntlCache, type IntlShape } from '@formatjs/intl';
import type { Answer, PlainAnswer } from '../answers/answer.ts';
import type { LimitInForce, Limits } from '../answers/limits.ts';
import type { Question } from '../flow/flow.ts';
import { sideNames, type Text } from '../flow/schema/base.ts';
import { metres, sayLength } from '../quantities/index.ts';
import { asOneList } from './as-one-list.ts';
import { onAllSides } from './on-all-sides.ts';
import type { Audience, TextId, UnitSystem, Value, Values } from './say.ts';

/** Who reads, and how. */
export interface Reader {
  readonly language: string;
  readonly audience: Audience;
  readonly units: UnitSystem;
  readonly limits: Limits;
  /** What is done to text that people typed, so that it cannot act as markup. */
  readonly escape?: (typed: string) => string;
}

/** Texts in words for one reader. */
export interface Wording {
  readonly reader: Reader;
  /** The text of an id with its values. Throws when there is none: a fault of the flow that its check should have met. */
  readonly text: (id: TextId, values?: Values) => string;
  readonly has: (id: TextId) => boolean;
  readonly value: (value: Value) => string;
  readonly length: (lengthMetres: number) => string;
}

/** What a wording is made from. */
export interface Texts {
  readonly catalogue: ReadonlyMap<TextId, Text>;
  readonly questions: ReadonlyMap<string, Question>;
}

function forAudience(text: Text, audience: Audience): string {
  return typeof text === 'string' ? text : (text[audience] ?? text.resident);
}

/** A slope as percent; people say "20 %". */
const percentText = (percent: number) => `${Math.round(percent * 10) / 10} %`;

function limitText({ dimension, value }: LimitInForce, say: (length: number) => string): string | number {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (dimension === 'length') return say(value);
  return dimension === 'slope' ? percentText(value) : value;
}

/** Groups equal answers: "bark: front and left; gravel: back". */
function bySideText(wording: Wording, answer: Answer & { status: 'bySide' }, question: Question): string {
  const groups = new Map<string, string[]>();
  for (const side of sideNames) {
    const one = answer.sides[side];
    if (!one) continue;
    const text = plainAnswerText(wording, one, question);
    groups.set(text, [...(groups.get(text) ?? []), wording.text(`words/side/${side}`)]);
  }
  const [only] = groups.keys();
  const labelled = question.kind === 'choice' || question.kind === 'several';
  const everywhere = sideNames.every((side) => answer.sides[side]);
  if (groups.size === 1 && only !== undefined && everywhere)
    return wording.text(labelled ? 'words/all-sides-are' : 'words/every-side', { answer: only });
  const list = (sides: string[]) => wording.value({ list: sides, join: 'and' });
  if (question.kind === 'yesNo' && Object.values(answer.sides).every((one) => one.status === 'given')) {
    const yes = groups.get(wording.text('words/yesNo/yes'));
    return yes ? list(yes) : wording.text('words/no-side');
  }
  return [...groups].map(([text, sides]) => `${list(sides)}: ${text}`).join('; ');
}

function optionText(wording: Wording, question: Question, id: string): string {
  if (question.kind === 'yesNo') return wording.text(`words/yesNo/${id}`);
  if (question.kind === 'sides') return wording.text(`words/side/${id}`);
  return wording.text(`option/${question.id}/${id}`);
}

function plainAnswerText(wording: Wording, answer: PlainAnswer, question: Question): string {
  if (answer.status !== 'given') return wording.text(`words/status/${answer.status}`);
  const { value } = answer;
  if (question.kind === 'count') return String(Array.isArray(value) ? value.length : value);
  if (Array.isArray(value))
    return wording.value({ list: asOneList(value.map((id) => optionText(wording, question, id))) });
  if (typeof value === 'number') {
    if (question.kind === 'length') return wording.length(value);
    return question.kind === 'slope' ? percentText(value) : String(value);
  }
  if (question.kind === 'text') return (wording.reader.escape ?? ((typed) => typed))(String(value));
  return optionText(wording, question, String(value));
}

function valueText(wording: Wording, intl: () => IntlShape<string>, texts: Texts, value: Value): string {
  if (typeof value === 'string') return value;
  if (typeof value === 'number') return String(value);
  if ('text' in value) return wording.text(value.text, value.values);
  if ('metres' in value) return wording.length(value.metres);
  if ('percent' in value) return percentText(value.percent);
  if ('money' in value) {
    const { money, currency, abroad } = value;
    const options = { style: 'currency', currency, maximumFractionDigits: 0 } as const;
    const text = intl().formatNumber(money, options);
    return abroad && currency === 'USD' && !text.includes('US') ? text.replace('$', 'US$') : text;
  }
  if ('sides' in value)
    return wording.value({ list: value.sides.map((side) => wording.text(`words/side/${side}`)) });
  if ('member' in value) {
    const one = wording.text(`group/${value.member.group}/one`);
    return `${one} ${value.member.number}`;
  }
  if ('list' in value) {
    const type = value.join === 'or' ? 'disjunction' : 'conjunction';
    return intl().formatList(
      value.list.map((one) => wording.value(one)),
      { type },
    ) as string;
  }
  const question = texts.questions.get(value.question);
  if (!question) return '';
  return value.answer.status === 'bySide'
    ? bySideText(wording, value.answer, question)
    : plainAnswerText(wording, value.answer, question);
}

const byLanguage = new Map<string, IntlShape<string>>();

function intlFor(language: string): IntlShape<string> {
  const known =
    byLanguage.get(language) ??
    createIntl(
      { locale: language, defaultLocale: language, messages: {}, timeZone: 'UTC' },
      createIntlCache(),
    );
  byLanguage.set(language, known);
  return known;
}

type Said = Readonly<Record<string, string | number>>;
const saidLimits = { imperial: new WeakMap<Limits, Said>(), metric: new WeakMap<Limits, Said>() };

/** The limits of a place in words, put together once: they are many, and most texts use none or one. */
function limitsIn(units: UnitSystem, limits: Limits, length: (metres: number) => string): Said {
  const known =
    saidLimits[units].get(limits) ??
    Object.fromEntries([...limits].map(([id, limit]) => [id, limitText(limit, length)]));
  saidLimits[units].set(limits, known);
  return known;
}

/** A text ready to be said, with the names of the values that it uses. */
interface Message {
  readonly format: ReturnType<IntlShape<string>['formatters']['getMessageFormat']>;
  readonly names: readonly string[];
}

const messages = new Map<IntlShape<string>, Map<string, Message>>();

/** Each text is read once for a language, however often it is said. */
function messageFor(intl: IntlShape<string>, written: string): Message {
  const known = messages.get(intl) ?? new Map<string, Message>();
  messages.set(intl, known);
  const before = known.get(written);
  if (before) return before;
  const names = [...new Set([...written.matchAll(/\{\s*(\w+)/g)].map((match) => match[1] ?? ''))];
  const message = { format: intl.formatters.getMessageFormat(written, intl.locale), names };
  known.set(written, message);
  return message;
}

/** Makes a wording for a reader. Every text may use the limits of the reader's place by their ids. */
export function createWording(texts: Texts, reader: Reader): Wording {
  // Made when first needed: the first question of a walk should not wait for what it does not say.
  const intl = () => intlFor(reader.language);
  const length = (lengthMetres: number) => sayLength(metres(lengthMetres), reader.units).text;
  const limits = () => limitsIn(reader.units, reader.limits, length);
  const wording: Wording = {
    reader,
    length,
    has: (id) => texts.catalogue.has(id),
    value: (value) => valueText(wording, intl, texts, value),
    text: (id, values) => {
      const text = texts.catalogue.get(id);
      if (text === undefined) throw new Error(`The flow has no text "${id}".`);
      const written = onAllSides(forAudience(text, reader.audience), texts.catalogue, values?.side);
      if (!written.includes('{')) return written;
      const { format, names } = messageFor(intl(), written);
      // A value that nobody gave shows its name: better than silence in the middle of a walk.
      const said: Record<string, string | number> = {};
      for (const name of names) {
        const value = values?.[name];
        said[name] =
          value === undefined
            ? (limits()[name] ?? `{${name}}`)
            : typeof value === 'number'
              ? value
              : wording.value(value);
      }
      return String(format.format(said));
    },
  };
  return wording;
}
