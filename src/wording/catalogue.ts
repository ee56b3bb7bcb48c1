import type { Flow } from '../flow/flow.ts';
import type { Text } from '../flow/schema/base.ts';
import type { TextId } from './say.ts';

type Entry = readonly [TextId, Text];

function questionTexts(flow: Flow): Entry[] {
  return flow.questions.flatMap((one): Entry[] => [
    [`question/${one.id}/short`, one.short ?? one.ask],
    [`question/${one.id}/ask`, one.ask],
    [`question/${one.id}/look`, one.look],
    [`question/${one.id}/good`, one.good],
    [`question/${one.id}/why`, one.why],
    [`question/${one.id}/say`, one.call.say],
    [`question/${one.id}/listen`, one.call.listen],
    [`question/${one.id}/cannotTell`, one.call.cannotTell],
    ...(one.options ?? []).map((option): Entry => [`option/${one.id}/${option.id}`, option.label]),
    ...(one.picks ?? []).map((pick): Entry => [`option/${one.id}/${pick.value}`, pick.label]),
  ]);
}

function actionTexts(flow: Flow): Entry[] {
  return flow.actions.flatMap((one): Entry[] => [
    [`action/${one.id}/do`, one.do],
    [`action/${one.id}/why`, one.why],
    ...one.how.map((step, position): Entry => [`action/${one.id}/how.${position}`, step]),
    ...one.laneWhen.map((lane, position): Entry => [`action/${one.id}/because.${position}`, lane.because]),
    ...(one.demandedWhen ? [[`action/${one.id}/demandedBy`, one.demandedWhen.by] as Entry] : []),
    ...(one.contractor?.ask ?? []).map((ask, position): Entry => [`action/${one.id}/ask.${position}`, ask]),
    ...(one.contractor ? [[`action/${one.id}/permit`, one.contractor.permit] as Entry] : []),
  ]);
}

function ruleTexts(flow: Flow): Entry[] {
  return flow.rulebooks.flatMap((book): Entry[] => [
    [`rulebook/${book.id}/authority`, book.authority],
    ...Object.entries(book.limits).map(([id, limit]): Entry => [`limit/${book.id}/${id}/what`, limit.what]),
    ...Object.entries(book.limits).flatMap(([id, limit]): Entry[] =>
      limit.note ? [[`limit/${book.id}/${id}/note`, limit.note]] : [],
    ),
    ...book.notes.map((note, position): Entry => [`rulebook/${book.id}/note.${position}`, note.say]),
  ]);
}

/** Every text of a flow under its id; a language laid over it uses the same ids. */
export function catalogueOf(flow: Flow): ReadonlyMap<TextId, Text> {
  return new Map<TextId, Text>([
    ['walk/title', flow.walk.title],
    ...flow.stops.flatMap((one): Entry[] => [
      [`stop/${one.id}/title`, one.title],
      [`stop/${one.id}/arrive`, one.arrive],
    ]),
    ...flow.groups.flatMap((one): Entry[] => [
      [`group/${one.id}/one`, one.one],
      [`group/${one.id}/many`, one.many],
    ]),
    ...questionTexts(flow),
    ...flow.findings.flatMap((one): Entry[] => [
      [`finding/${one.id}/say`, one.say],
      [`finding/${one.id}/why`, one.why],
      ...(one.noAction ? [[`finding/${one.id}/noAction`, one.noAction] as Entry] : []),
    ]),
    ...flow.elements.map((one): Entry => [`element/${one.id}`, one.what]),
    ...flow.waysIn.map((one): Entry => [`way/${one.id}`, one.say]),
    ...actionTexts(flow),
    ...flow.cautions.map((one): Entry => [`caution/${one.id}`, one.say]),
    ...flow.costs.map((one): Entry => [`cost/${one.id}`, one.what]),
    ...flow.upkeep.map((one): Entry => [`upkeep/${one.id}`, one.do]),
    ...ruleTexts(flow),
    ...Object.entries(flow.phrases),
  ]);
}
