// .config/bench/turn.ts
import { spawnSync } from "node:child_process";
import { copyFileSync, existsSync, mkdirSync, readFileSync as readFileSync2 } from "node:fs";
import { pathToFileURL } from "node:url";
import { resolve as resolve2 } from "node:path";

// src/answers/answer.ts
function answerKey(questionId, group, member) {
  return group === void 0 || member === void 0 ? questionId : `${group}/${member}/${questionId}`;
}

// src/answers/path.ts
function given(answer2) {
  return answer2?.status === "given" ? answer2 : void 0;
}
function membersOf(index, sheet, group) {
  const count2 = index.countQuestions.get(group);
  const value2 = count2 && given(sheet[count2.id])?.value;
  return Array.isArray(value2) ? value2 : [];
}
function rulebookOf(index, sheet) {
  const place = index.roles.get("place");
  const value2 = place && given(sheet[place.id])?.value;
  return typeof value2 === "string" && index.limits.has(value2) ? value2 : index.flow.walk.generalRulebook;
}
function sidesOf(index, sheet, onPath2) {
  const question = index.roles.get("sides");
  const answer2 = question && sheet[question.id];
  if (!onPath2 || answer2?.status !== "bySide") return index.sides;
  return index.sides.filter((side) => given(answer2.sides[side])?.value !== "no");
}
var nothing = [];
function sideAnswer(step, sheet, spot) {
  const answer2 = sheet[step.key];
  if (!step.sides) return answer2?.status === "bySide" ? void 0 : answer2;
  if (spot.side === void 0 || !step.sides.includes(spot.side)) return "offPath";
  if (answer2 === void 0) return void 0;
  return answer2.status === "bySide" ? answer2.sides[spot.side] : answer2;
}
function layOutPath(index, sheet) {
  const rulebook = rulebookOf(index, sheet);
  const limits = index.limits.get(rulebook) ?? /* @__PURE__ */ new Map();
  const byKey = /* @__PURE__ */ new Map();
  const sidesQuestion = index.roles.get("sides")?.id ?? "";
  const members = new Map(index.flow.groups.map((group) => [group.id, membersOf(index, sheet, group.id)]));
  let sides = index.sides;
  const facts = {
    answer: (question, spot) => {
      const key = answerKey(question.id, question.of, question.of === void 0 ? void 0 : spot.member);
      const step = byKey.get(key);
      return step ? sideAnswer(step, sheet, spot) : "offPath";
    },
    limit: (id) => limits.get(id),
    finding: () => "unknown",
    computed: () => void 0,
    get sides() {
      return sides;
    },
    members: (group) => byKey.has(index.countQuestions.get(group)?.id ?? "") ? members.get(group) ?? [] : [],
    memberSides: (group, member) => {
      const key = answerKey(index.groups.get(group)?.sides ?? "", group, member);
      const value2 = byKey.has(key) ? given(sheet[key])?.value : void 0;
      return Array.isArray(value2) ? value2.filter((side) => sides.includes(side)) : nothing;
    }
  };
  const groups = /* @__PURE__ */ new Set();
  for (const question of index.flow.questions) {
    if (question.of !== void 0) {
      if (groups.has(question.of)) continue;
      groups.add(question.of);
      layOutGroup(index, question.of, facts, byKey);
      continue;
    }
    const step = stepOf(index, question, facts, {});
    if (step) byKey.set(step.key, step);
    if (question.id === sidesQuestion) sides = sidesOf(index, sheet, step !== void 0);
  }
  return { sheet, steps: [...byKey.values()], byKey, rulebook, limits, sides, facts };
}
var laidOut = /* @__PURE__ */ new WeakMap();
function pathOf(index, sheet) {
  const known = laidOut.get(index) ?? /* @__PURE__ */ new WeakMap();
  laidOut.set(index, known);
  const before = known.get(sheet);
  if (before) return before;
  const path = layOutPath(index, sheet);
  known.set(sheet, path);
  return path;
}
function layOutGroup(index, group, facts, byKey) {
  const count2 = index.countQuestions.get(group);
  if (!count2 || !byKey.has(count2.id)) return;
  const questions = index.flow.questions.filter((one) => one.of === group);
  for (const member of facts.members(group)) {
    for (const question of questions) {
      const step = stepOf(index, question, facts, { group, member });
      if (step) byKey.set(step.key, step);
    }
  }
}
function stepOf(index, question, facts, spot) {
  const when = index.when.get(question.id);
  if (when && when(facts, spot) !== "yes") return void 0;
  const key = answerKey(question.id, spot.group, spot.member);
  const member = spot.group === void 0 || spot.member === void 0 ? {} : { group: spot.group, member: spot.member };
  if (question.by === void 0) return { key, question, ...member };
  const where = index.where.get(question.id);
  const sides = where ? facts.sides.filter((side) => where(facts, { ...spot, side }) === "yes") : facts.sides;
  return sides.length === 0 ? void 0 : { key, question, sides, ...member };
}
function openSides(step, sheet) {
  const answer2 = sheet[step.key];
  if (!step.sides || answer2 && answer2.status !== "bySide") return nothing;
  return step.sides.filter((side) => answer2?.sides[side] === void 0);
}
function isOpen(step, sheet) {
  const answer2 = sheet[step.key];
  if (answer2 === void 0) return true;
  return answer2.status === "bySide" && openSides(step, sheet).length > 0;
}

// src/conversation/new-walk.ts
function newWalk(programme2, id, now2, reader = {}) {
  const { flow } = programme2.checklist;
  return {
    id,
    flow: flow.fingerprint,
    audience: reader.audience ?? "resident",
    language: reader.language ?? flow.walk.language,
    ...reader.units === void 0 ? {} : { units: reader.units },
    sheet: {},
    cursor: { phase: "asking" },
    revision: 0,
    startedAt: now2.toISOString(),
    updatedAt: now2.toISOString(),
    notes: []
  };
}

// src/flow/schema/base.ts
import * as z from "zod";
var Id = z.string().regex(
  /^[a-z][a-zA-Z0-9]*(?:[.-][a-zA-Z0-9]+)*$/,
  'an id is words of letters and digits joined by "." or "-", starting with a small letter'
);
var Text = z.union([
  z.string().min(1),
  z.strictObject({
    resident: z.string().min(1),
    volunteer: z.string().min(1).optional(),
    trainee: z.string().min(1).optional()
  })
]);
var sideNames = ["front", "left", "back", "right"];
var Side = z.enum(sideNames);
var KnownBy = z.enum(["read", "reported", "memory", "practice", "judgement"]);
var Lane = z.enum(["hand", "shop", "trade"]);
var Season = z.enum(["spring", "summer", "autumn", "winter"]);
var Quantity = z.union([z.number(), z.string().min(1)]);
var Per = z.union([z.literal("house"), z.literal("side"), Id]);

// src/quantities/conversions.ts
var FOOT = 0.3048;
var INCH = 0.0254;
var YARD = 0.9144;
var CUBIC_INCH = INCH ** 3;
var GALLON = 231 * CUBIC_INCH;
var POUND = 0.45359237;
var BTU_JOULES = 1055.05585262;
var unit = (dimension, factor, symbol, offset = 0) => ({
  dimension,
  factor,
  offset,
  symbol
});
var CONVERSIONS = {
  mm: unit("length", 1e-3, "mm"),
  cm: unit("length", 0.01, "cm"),
  m: unit("length", 1, "m"),
  km: unit("length", 1e3, "km"),
  in: unit("length", INCH, "in"),
  ft: unit("length", FOOT, "ft"),
  yd: unit("length", YARD, "yd"),
  mi: unit("length", 1609.344, "mi"),
  sqmm: unit("area", 1e-6, "sq mm"),
  sqcm: unit("area", 1e-4, "sq cm"),
  sqm: unit("area", 1, "sq m"),
  sqin: unit("area", INCH ** 2, "sq in"),
  sqft: unit("area", FOOT ** 2, "sq ft"),
  sqyd: unit("area", YARD ** 2, "sq yd"),
  acre: unit("area", 43560 * FOOT ** 2, "acres"),
  ha: unit("area", 1e4, "ha"),
  ml: unit("volume", 1e-6, "ml"),
  litre: unit("volume", 1e-3, "litres"),
  cum: unit("volume", 1, "cu m"),
  cuin: unit("volume", CUBIC_INCH, "cu in"),
  cuft: unit("volume", FOOT ** 3, "cu ft"),
  cuyd: unit("volume", YARD ** 3, "cu yd"),
  floz: unit("volume", GALLON / 128, "fl oz"),
  gal: unit("volume", GALLON, "gal"),
  degree: unit("angle", 1, "degrees"),
  percent: unit("slope", 1, "%"),
  W: unit("power", 1, "W"),
  kW: unit("power", 1e3, "kW"),
  MW: unit("power", 1e6, "MW"),
  "Btu/h": unit("power", BTU_JOULES / 3600, "Btu/h"),
  "Btu/s": unit("power", BTU_JOULES, "Btu/s"),
  "W/m2": unit("heatFlux", 1, "W/sq m"),
  "kW/m2": unit("heatFlux", 1e3, "kW/sq m"),
  "Btu/h/ft2": unit("heatFlux", BTU_JOULES / 3600 / FOOT ** 2, "Btu/h per sq ft"),
  K: unit("temperature", 1, "K"),
  C: unit("temperature", 1, "C", 273.15),
  F: unit("temperature", 5 / 9, "F", 459.67),
  kg: unit("mass", 1, "kg"),
  lb: unit("mass", POUND, "lb"),
  tonne: unit("mass", 1e3, "t"),
  ton: unit("mass", 2e3 * POUND, "short tons"),
  s: unit("time", 1, "s"),
  min: unit("time", 60, "min"),
  h: unit("time", 3600, "h"),
  "m/s": unit("speed", 1, "m/s"),
  "ft/min": unit("speed", FOOT / 60, "ft/min"),
  mph: unit("speed", 1609.344 / 3600, "mph"),
  Pa: unit("pressure", 1, "Pa"),
  fraction: unit("fraction", 1, ""),
  each: unit("count", 1, "")
};
var dimensionOf = (id) => CONVERSIONS[id].dimension;

// src/quantities/number-words.ts
var SMALL = [
  "zero|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen",
  "seventeen|eighteen|nineteen"
].join("|");
var TENS = "twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety";
var numbers = { fourty: 40, oh: 0 };
for (const [value2, word] of SMALL.split("|").entries()) numbers[word] = value2;
for (const [index, word] of TENS.split("|").entries()) numbers[word] = 20 + 10 * index;
var list = (words) => words.split("|");
var ENGLISH_NUMBER_WORDS = {
  numbers,
  multipliers: { hundred: 100, thousand: 1e3, dozen: 12 },
  fractions: {
    half: 1 / 2,
    halves: 1 / 2,
    third: 1 / 3,
    thirds: 1 / 3,
    quarter: 1 / 4,
    quarters: 1 / 4,
    fourth: 1 / 4,
    fourths: 1 / 4,
    fifth: 1 / 5,
    fifths: 1 / 5,
    eighth: 1 / 8,
    eighths: 1 / 8,
    tenth: 1 / 10,
    tenths: 1 / 10,
    sixteenth: 1 / 16,
    sixteenths: 1 / 16,
    "thirty-second": 1 / 32,
    "thirty second": 1 / 32
  },
  vague: { couple: [2, 2], pair: [2, 2], few: [3, 5], several: [4, 7] },
  articles: list("a|an"),
  and: list("and|&|n"),
  of: list("of|of a|of an"),
  to: list("to|or|through|till|until|but"),
  between: list("between|from|anywhere from|anywhere between|somewhere between"),
  minus: list("minus|negative"),
  about: list(
    [
      "~|\u2248|about|around|roughly|approx|approximately|circa|ca|maybe|perhaps|probably|or so|ish|give or take|-ish",
      "more or less|i think|i guess|i would say|i would guess|id say|id guess|looks like|looks to be|say|guessing",
      "my guess is|it looks|some|could be|might be|must be|should be|est|estimated|i believe|kind of|sort of"
    ].join("|")
  ),
  lessThan: list(
    "<|less than|under|below|fewer than|smaller than|closer than|shorter than|narrower than|before"
  ),
  moreThan: list(
    ">|more than|over|above|greater than|larger than|bigger than|beyond|past|farther than|further than|taller than|wider than|longer than|after|upwards of|in excess of|well over"
  ),
  atMost: list(
    "<=|\u2264|at most|up to|no more than|not more than|within|or less|or under|or closer|or below|or fewer|max|maximum|inside of|not over|no bigger than|no wider than|no taller than|or smaller"
  ),
  atLeast: list(
    ">=|\u2265|+|at least|no less than|not less than|or more|or over|or better|or farther|or further|or above|plus|min|minimum|and up|and over|or taller|or wider|or bigger|or larger"
  ),
  nearly: list(
    "nearly|almost|not quite|just under|just below|a bit under|a little under|slightly under|a bit less than|a little less than|a hair under|just shy of|close to"
  ),
  justOver: list(
    "just over|a bit over|a hair over|a little over|slightly over|a bit more than|a little more than|just above"
  ),
  nothing: list(
    [
      "none|nothing|nil|touching|touching it|touching the house|touching the wall|touching the roof|touching the siding|touches|it touches|it is touching|they touch|no gap|no gap at all|no space|no distance|in contact",
      "right against it|against it|against the wall|right against the wall|up against it|up against the wall|flush",
      "they are touching|right on it|attached|right up against it|none at all|no clearance"
    ].join("|")
  ),
  rise: list("in|:|per|over|every|for each|for every|in every|to|on|out of|across"),
  by: list("x|\xD7|by|*"),
  flat: list(
    "flat|level|none|no slope|it is flat|it is level|flat ground|all flat|dead flat|completely flat|dead level"
  ),
  fractionEndings: list("th|ths|s|rd|rds|nd|nds|st"),
  places: list(
    "on|behind|beside|near|nearest|against|next to|toward|towards|into|in front of|where|between the|over by|by the"
  ),
  fillers: list(
    [
      "it|is|its|the|that|they|are|theyre|thats|were|there|away|off|out|high|tall|wide|long|deep|thick|apart|across|up|down|total|overall|mesh|gap|hole|holes",
      "distance|space|clear|clearance|far|in total|all together|altogether|from the wall|from the house|from it|from the roof|or thereabouts",
      "i|would|be|was|built|built in|in the year|year|years old|rises|rise|drops|drop|falls|goes|up by|down by|run|slope|grade|gradient|steep|each|at|just|only|exactly|very|well|yeah|yes|um|uh|hmm|oh about|like|measured|we|have|has|got|of them|left|per side|from the ground|above the ground|above ground|off the ground|from the trunk|from the fence|.|!|?|(|)|="
    ].join("|")
  ),
  units: {
    mm: list("mm|millimetre|millimetres|millimeter|millimeters|mil|mils"),
    cm: list("cm|cms|centimetre|centimetres|centimeter|centimeters"),
    m: list("m|metre|metres|meter|meters|mtr|mtrs"),
    km: list("km|kilometre|kilometres|kilometer|kilometers"),
    in: list('in|ins|inch|inches|inchs|"'),
    ft: list("ft|feet|foot|foots|feets|fts|'"),
    yd: list("yd|yds|yard|yards"),
    mi: list("mi|mile|miles"),
    sqmm: list("mm2|mm\xB2|sq mm|square millimetres|square millimeters"),
    sqcm: list("cm2|cm\xB2|sq cm|square centimetres|square centimeters|square centimetre|square centimeter"),
    sqm: list("m2|m\xB2|sq m|sqm|sq metres|sq meters|square metres|square meters|square metre|square meter"),
    sqin: list("in2|in\xB2|sq in|sqin|sq inches|sq inch|square inches|square inch|square in"),
    sqft: list("ft2|ft\xB2|sq ft|sqft|sf|sq feet|sq foot|square feet|square foot|square ft"),
    sqyd: list("yd2|yd\xB2|sq yd|sq yds|square yards|square yard"),
    acre: list("acre|acres"),
    ha: list("ha|hectare|hectares"),
    litre: list("l|litre|litres|liter|liters"),
    cum: list("m3|m\xB3|cu m|cubic metres|cubic meters|cubic metre|cubic meter"),
    cuft: list("ft3|ft\xB3|cu ft|cubic feet|cubic foot"),
    cuyd: list("yd3|yd\xB3|cu yd|cu yds|cubic yards|cubic yard"),
    gal: list("gal|gals|gallon|gallons"),
    degree: list("\xB0|deg|degs|degree|degrees"),
    percent: list("%|percent|per cent|pct"),
    cuin: list("cu in|cubic inches|cubic inch|in3|in\xB3"),
    floz: list("fl oz|floz|fluid ounce|fluid ounces|oz|ounce|ounces"),
    ml: list("ml|millilitre|millilitres|milliliter|milliliters"),
    W: list("w|watt|watts"),
    MW: list("mw|megawatt|megawatts"),
    "W/m2": list("w/m2|w/m\xB2|watts per square metre|watts per square meter|w/sq m"),
    "m/s": list("m/s|metres per second|meters per second|metres a second|meters a second"),
    "ft/min": list("ft/min|fpm|feet per minute|feet a minute"),
    mph: list("mph|miles per hour|miles an hour"),
    K: list("k|kelvin|kelvins"),
    tonne: list("t|tonne|tonnes"),
    ton: list("ton|tons|short tons"),
    "Btu/h": list("btu/h|btuh"),
    kW: list("kw|kilowatt|kilowatts"),
    "kW/m2": list(
      "kw/m2|kw/m\xB2|kw/sq m|kw per square metre|kw per square meter|kilowatts per square metre|kilowatts per square meter"
    ),
    C: list("c|celsius|\xB0c|degrees c|degrees celsius"),
    F: list("f|fahrenheit|\xB0f|degrees f|degrees fahrenheit"),
    kg: list("kg|kgs|kilo|kilos|kilogram|kilograms"),
    lb: list("lb|lbs|pound|pounds"),
    s: list("sec|secs|second|seconds"),
    min: list("minute|minutes"),
    h: list("hr|hrs|hour|hours")
  }
};

// src/quantities/split-answer.ts
var FRACTION_SIGNS = {
  "\xBD": "1/2",
  "\u2153": "1/3",
  "\u2154": "2/3",
  "\xBC": "1/4",
  "\xBE": "3/4",
  "\u2155": "1/5",
  "\u215B": "1/8",
  "\u215C": "3/8",
  "\u215D": "5/8",
  "\u215E": "7/8"
};
function plainSigns(text) {
  return text.toLowerCase().replace(/[½⅓⅔¼¾⅕⅛⅜⅝⅞]/g, (sign) => ` ${FRACTION_SIGNS[sign]} `).replace(/[‘’ʼ′`´]/g, "'").replace(/[“”″]|''/g, '"').replace(/[‐-―−]/g, "-").replace(/⁄/g, "/").replace(new RegExp("(\\p{L})'(\\p{L})", "gu"), "$1$2").trim();
}
function digitsValue(digits) {
  const lastDot = digits.lastIndexOf(".");
  const lastComma = digits.lastIndexOf(",");
  if (lastComma === -1) return digits.split(".").length > 2 ? Number.NaN : Number(digits);
  if (/^[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/.test(digits)) return Number(digits.replaceAll(",", ""));
  if (/^[1-9]\d{0,2}(\.\d{3})+,\d+$/.test(digits))
    return Number(digits.replaceAll(".", "").replace(",", "."));
  if (lastDot === -1 && /^\d+,\d+$/.test(digits)) return Number(digits.replace(",", "."));
  return Number.NaN;
}
var PIECE = /\d+(?:[.,]\d+)*|\.\d+|[\p{L}²³°]+|<=|>=|[^\s]/gu;
function splitAnswer(text) {
  const raw = plainSigns(text).match(PIECE) ?? [];
  const pieces = [];
  for (let index = 0; index < raw.length; index += 1) {
    const word = raw[index] ?? "";
    const isNumber = /^\.?\d/.test(word);
    const below = raw[index + 2] ?? "";
    if (isNumber && raw[index + 1] === "/" && /^\d/.test(below)) {
      const value2 = digitsValue(word) / digitsValue(below);
      pieces.push({ type: "ratio", text: `${word}/${below}`, value: value2 });
      index += 2;
    } else if (isNumber) {
      pieces.push({ type: "number", text: word, value: digitsValue(word) });
    } else {
      pieces.push({ type: "word", text: word });
    }
  }
  return pieces;
}

// src/quantities/mark-pieces.ts
var cache = /* @__PURE__ */ new WeakMap();
function plainEntries(words) {
  return [
    ["article", words.articles],
    ["and", words.and],
    ["of", words.of],
    ["to", words.to],
    ["between", words.between],
    ["minus", words.minus],
    ["about", words.about],
    ["lessThan", words.lessThan],
    ["moreThan", words.moreThan],
    ["atMost", words.atMost],
    ["atLeast", words.atLeast],
    ["nearly", words.nearly],
    ["justOver", words.justOver],
    ["nothing", words.nothing],
    ["by", words.by],
    ["flat", words.flat],
    ["hyphen", ["-"]],
    ["comma", [","]],
    ["place", words.places],
    ["fractionEnding", words.fractionEndings],
    ["filler", words.fillers]
  ];
}
function unitAllowed(unit2, phrase, dimension) {
  return dimensionOf(unit2) === dimension || !/\d/.test(phrase);
}
function buildLexicon(words, dimension) {
  const lexicon = /* @__PURE__ */ new Map();
  const add = (phrase, role, value2 = Number.NaN, most = value2, unit2) => {
    const parts2 = splitAnswer(phrase).map((piece) => piece.text);
    const mark = { role, text: phrase, value: value2, most, ...unit2 === void 0 ? {} : { unit: unit2 } };
    const first = parts2[0] ?? "";
    lexicon.set(first, [...lexicon.get(first) ?? [], { words: parts2, mark }]);
  };
  for (const [word, value2] of Object.entries(words.numbers)) add(word, "cardinal", value2);
  for (const [word, value2] of Object.entries(words.multipliers)) add(word, "multiplier", value2);
  for (const [word, value2] of Object.entries(words.fractions)) add(word, "fraction", value2);
  for (const [word, [least, most]] of Object.entries(words.vague)) add(word, "vague", least, most);
  for (const [unit2, phrases] of Object.entries(words.units)) {
    for (const phrase of phrases) {
      if (unitAllowed(unit2, phrase, dimension)) add(phrase, "unit", Number.NaN, Number.NaN, unit2);
    }
  }
  for (const [role, phrases] of plainEntries(words)) for (const phrase of phrases) add(phrase, role);
  for (const entries of lexicon.values()) entries.sort((a, b) => b.words.length - a.words.length);
  return lexicon;
}
function lexiconFor(words, dimension) {
  const known = cache.get(words) ?? /* @__PURE__ */ new Map();
  cache.set(words, known);
  const found = known.get(dimension) ?? buildLexicon(words, dimension);
  known.set(dimension, found);
  return found;
}
function plainMark(piece) {
  if (piece.type === "word")
    return { role: "unknown", text: piece.text, value: Number.NaN, most: Number.NaN };
  return { role: piece.type, text: piece.text, value: piece.value, most: piece.value };
}
function markPieces(pieces, words, dimension) {
  const lexicon = lexiconFor(words, dimension);
  const marked = [];
  for (let index = 0; index < pieces.length; ) {
    const piece = pieces[index];
    const entry = lexicon.get(piece.text)?.find(({ words: parts2 }) => parts2.every((part, step) => pieces[index + step]?.text === part));
    const mark = entry?.mark ?? plainMark(piece);
    const ending = mark.role === "fractionEnding" && marked.at(-1)?.role === "ratio";
    if (!ending) marked.push(mark);
    index += entry?.words.length ?? 1;
  }
  return marked;
}

// src/quantities/parse-amount.ts
function skip(pieces, from, ...roles) {
  let at = from;
  while (at < pieces.length && roles.includes(pieces[at].role)) at += 1;
  return at;
}
var exactly = (value2, next) => ({ least: value2, most: value2, next });
function readCardinal(pieces, from) {
  let at = from;
  let total = 0;
  let group;
  for (; ; ) {
    const piece = pieces[at];
    if (piece?.role === "cardinal") {
      if (group === void 0) group = piece.value;
      else if (group >= 20 && group < 100 && group % 10 === 0 && piece.value < 10) group += piece.value;
      else if (group % 100 === 0 && group + total > 0) group += piece.value;
      else if (group >= 16 && group <= 20 && (piece.value >= 10 || piece.value === 0))
        group = group * 100 + piece.value;
      else if (group >= 1600 && group % 10 === 0 && piece.value < 10) group += piece.value;
      else break;
    } else if (piece?.role === "multiplier" && group !== void 0) {
      if (piece.value === 1e3) {
        total += group * 1e3;
        group = 0;
      } else group *= piece.value;
    } else break;
    at += 1;
    const joined = skip(pieces, at, "hyphen");
    const nextIsPart = pieces[joined]?.role === "cardinal" && joined > at && group !== void 0 && group >= 20;
    if (nextIsPart) at = joined;
    else if (pieces[at]?.role === "and" && pieces[at + 1]?.role === "cardinal" && (group ?? 1) % 100 === 0)
      at += 1;
  }
  return group === void 0 ? void 0 : exactly(total + group, at);
}
function readFraction(pieces, from) {
  const start2 = skip(pieces, from, "article");
  const piece = pieces[start2];
  if (piece?.role === "ratio") return exactly(piece.value, start2 + 1);
  if (piece?.role === "fraction") return exactly(piece.value, start2 + 1);
  if (piece?.role !== "cardinal" && piece?.role !== "number") return void 0;
  const part = pieces[skip(pieces, start2 + 1, "hyphen")];
  return part?.role === "fraction" ? exactly(piece.value * part.value, skip(pieces, start2 + 1, "hyphen") + 1) : void 0;
}
function withTail(pieces, whole) {
  const bare = pieces[skip(pieces, whole.next, "hyphen")];
  if (bare?.role === "ratio" && bare.value < 1 && Number.isInteger(whole.least)) {
    return exactly(whole.least + bare.value, skip(pieces, whole.next, "hyphen") + 1);
  }
  if (pieces[whole.next]?.role !== "and") return whole;
  const part = readFraction(pieces, whole.next + 1);
  return part === void 0 || part.least >= 1 ? whole : exactly(whole.least + part.least, part.next);
}
function readDigits(pieces, at, piece) {
  const following = pieces[at + 1];
  const grouped = following?.role === "number" && /^\d{3}$/.test(following.text) && /^[1-9]\d{0,2}$/.test(piece.text);
  if (grouped) return exactly(piece.value * 1e3 + following.value, at + 2);
  if (following?.role === "multiplier") return exactly(piece.value * following.value, at + 2);
  return exactly(piece.value, at + 1);
}
function readAmount(pieces, from) {
  const at = skip(pieces, from, "article");
  const piece = pieces[at];
  if (piece === void 0) return void 0;
  const part = readFraction(pieces, at);
  if (part !== void 0) return { ...part, next: skip(pieces, part.next, "of", "article") };
  switch (piece.role) {
    case "vague":
      return { least: piece.value, most: piece.most, next: skip(pieces, at + 1, "of", "article") };
    case "number":
      return withTail(pieces, readDigits(pieces, at, piece));
    case "cardinal": {
      const whole = readCardinal(pieces, at);
      return whole === void 0 ? void 0 : withTail(pieces, whole);
    }
    case "multiplier":
      return at > from ? exactly(piece.value, at + 1) : void 0;
    case "unit":
      return at > from ? exactly(1, at) : void 0;
    default:
      return void 0;
  }
}

// src/quantities/units.ts
var metres = (value2) => value2;
var degrees = (value2) => value2;
var percent = (value2) => value2;
function toBase(value2, unit2) {
  const { factor, offset } = CONVERSIONS[unit2];
  return Number(((value2 + offset) * factor).toPrecision(15));
}
function fromBase(value2, unit2) {
  const { factor, offset } = CONVERSIONS[unit2];
  return value2 / factor - offset;
}

// src/quantities/parse-measure.ts
var SMALLER = { ft: "in", yd: "ft", m: "cm" };
function smallerUnit(unit2, other) {
  return dimensionOf(unit2) === dimensionOf(other) && toBase(1, other) < toBase(1, unit2);
}
function unitAfter(pieces, amount) {
  const at = skip(pieces, amount.next, "hyphen", "of", "article");
  const unit2 = pieces[at]?.unit;
  return unit2 === void 0 ? { unit: unit2, next: amount.next } : { unit: unit2, next: at + 1 };
}
function bareSmaller(measure3, unit2, amount) {
  const smaller = SMALLER[unit2];
  if (smaller === void 0) return void 0;
  const fits2 = unit2 === "m" ? amount.least >= 10 && amount.least < 100 : toBase(amount.most, smaller) < toBase(1, unit2);
  return fits2 ? { ...measure3, extra: measure3.extra + toBase(amount.least, smaller), next: amount.next } : void 0;
}
function addSmaller(pieces, measure3, allowAnd) {
  const { unit: unit2 } = measure3;
  if (unit2 === void 0) return void 0;
  const joiner = pieces[measure3.next]?.role;
  const joined = joiner === "comma" || joiner === "hyphen" || allowAnd && joiner === "and";
  const start2 = joined ? measure3.next + 1 : measure3.next;
  if (allowAnd && joiner === "and") {
    const part = readFraction(pieces, start2);
    if (part !== void 0 && unitAfter(pieces, part).unit === void 0) {
      return { ...measure3, extra: measure3.extra + toBase(part.least, unit2), next: part.next };
    }
  }
  const amount = readAmount(pieces, start2);
  if (amount === void 0) return void 0;
  const { unit: second, next } = unitAfter(pieces, amount);
  if (second === void 0)
    return joined && joiner !== "and" ? void 0 : bareSmaller(measure3, unit2, amount);
  const adds = smallerUnit(unit2, second) && toBase(amount.most, second) < toBase(1, unit2);
  return adds ? { ...measure3, unit: unit2, extra: measure3.extra + toBase(amount.least, second), next } : void 0;
}
function readMeasure(pieces, from, allowAnd = true) {
  const amount = readAmount(pieces, from);
  if (amount === void 0) return void 0;
  const { unit: unit2, next } = unitAfter(pieces, amount);
  let measure3 = { least: amount.least, most: amount.most, unit: unit2, extra: 0, next };
  for (; ; ) {
    const longer = addSmaller(pieces, measure3, allowAnd);
    if (longer === void 0) return measure3;
    measure3 = { ...longer, unit: measure3.unit };
    if (measure3.extra === 0) return measure3;
  }
}

// src/quantities/read-quantity.ts
var BEYOND = 0.01;
var NEARLY = 0.1;
var HEDGES = [
  "about",
  "lessThan",
  "moreThan",
  "atMost",
  "atLeast",
  "nearly",
  "justOver",
  "filler"
];
var CARRIERS = ["number", "ratio", "cardinal", "fraction", "vague", "multiplier", "unit"];
var notRead = (reason, detail) => detail === void 0 ? { kind: "notRead", reason } : { kind: "notRead", reason, detail };
var PLACE_ROLES = ["place", "to", "between", "lessThan", "moreThan", "by"];
function withoutPlace(marked) {
  const lastCarrier = marked.findLastIndex((piece) => CARRIERS.includes(piece.role));
  const start2 = marked.findIndex((piece, index) => index > lastCarrier && PLACE_ROLES.includes(piece.role));
  return lastCarrier === -1 || start2 === -1 ? marked : marked.slice(0, start2);
}
function readEnds(pieces) {
  const between = pieces[0]?.role === "between";
  const low = readMeasure(pieces, between ? 1 : 0, !between);
  if (low === void 0) return void 0;
  const joiner = pieces[low.next]?.role;
  const joins = joiner === "to" || joiner === "hyphen" || between && joiner === "and";
  const high = joins ? readMeasure(pieces, low.next + 1) : void 0;
  if (high === void 0) return between ? void 0 : { low, high: low, next: low.next };
  return { low, high, next: high.next };
}
function leftover(pieces, next) {
  const rest = pieces.slice(next);
  const first = rest.find((piece) => piece.role !== "comma");
  if (first === void 0) return void 0;
  const another = rest.some((piece) => CARRIERS.includes(piece.role) && piece.role !== "unit");
  return notRead(another ? "severalValues" : "notUnderstood", first.text);
}
function applyHedges(least, most, roles, floor) {
  const approximate = roles.has("about");
  if (roles.has("nearly")) return { least: least * (1 - NEARLY), most, approximate: true };
  if (roles.has("justOver")) return { least, most: most * (1 + NEARLY), approximate: true };
  const under = roles.has("lessThan") || roles.has("atMost");
  const over = roles.has("moreThan") || roles.has("atLeast");
  if (least < most || under === over) return { least, most, approximate };
  return under ? { least: Math.min(floor, least), most, approximate } : { least, most: void 0, approximate };
}
function takeEnd(bounds2, unsafeEnd) {
  if (unsafeEnd === "low") return bounds2.least;
  return bounds2.most ?? bounds2.least * (1 + BEYOND);
}
function measureBase(measure3, unit2) {
  return {
    least: toBase(measure3.least, unit2) + measure3.extra,
    most: toBase(measure3.most, unit2) + measure3.extra
  };
}
function readBounds(pieces, roles, said, options) {
  if (pieces[0]?.role === "minus" || pieces[0]?.role === "hyphen") return notRead("negative");
  if (!pieces.some((piece) => CARRIERS.includes(piece.role))) return notRead("noNumber", pieces[0]?.text);
  const ends = readEnds(pieces);
  if (ends === void 0)
    return notRead("notUnderstood", pieces.find((piece) => piece.role === "unknown")?.text);
  const rest = leftover(pieces, ends.next);
  if (rest !== void 0) return rest;
  const saidUnit = ends.low.unit ?? ends.high.unit;
  const lowUnit = saidUnit ?? options.unit;
  const highUnit = ends.high.unit ?? lowUnit;
  for (const unit2 of [lowUnit, highUnit]) {
    if (dimensionOf(unit2) !== options.dimension) return notRead("otherDimension", unit2);
  }
  const low = measureBase(ends.low, lowUnit);
  const high = measureBase(ends.high, highUnit);
  const bounds2 = applyHedges(
    Math.min(low.least, high.least),
    Math.max(low.most, high.most),
    roles,
    options.least ?? 0
  );
  const value2 = takeEnd(bounds2, options.unsafeEnd);
  if (!Number.isFinite(value2)) return notRead("notFinite");
  if (bounds2.least < (options.least ?? 0)) return notRead("tooSmall");
  if (Math.max(value2, bounds2.most ?? value2) > options.most) return notRead("tooLarge");
  const assumed = saidUnit === void 0 && value2 !== 0 ? { assumedUnit: options.unit } : {};
  const kind = bounds2.most === void 0 || bounds2.least < bounds2.most ? "range" : "exact";
  return {
    kind,
    value: value2,
    least: bounds2.least,
    most: bounds2.most,
    said,
    approximate: bounds2.approximate,
    ...assumed
  };
}
function readQuantity(text, options) {
  const said = text.trim();
  if (said === "") return notRead("empty");
  const words = options.words ?? ENGLISH_NUMBER_WORDS;
  const all3 = withoutPlace(markPieces(splitAnswer(said), words, options.dimension));
  const roles = new Set(all3.map((piece) => piece.role));
  const spoken = all3.filter((piece) => !HEDGES.includes(piece.role));
  const pieces = options.dimension === "count" && spoken[0]?.role === "unit" ? spoken.slice(1) : spoken;
  const meaning = pieces.filter((piece) => piece.role !== "comma");
  if (meaning.length > 0 && meaning.every((piece) => piece.role === "nothing")) {
    const zero = Math.max(0, options.least ?? 0);
    return { kind: "exact", value: zero, least: zero, most: zero, said, approximate: false };
  }
  return readBounds(pieces, roles, said, options);
}

// src/quantities/read-length.ts
function readLength(text, options) {
  const unit2 = options.unit ?? "ft";
  const read = readQuantity(text, {
    dimension: "length",
    unit: unit2,
    unsafeEnd: options.unsafeEnd,
    least: options.leastMetres ?? 0,
    most: options.mostMetres ?? 1e4,
    ...options.words === void 0 ? {} : { words: options.words }
  });
  if (read.kind === "notRead") return { ...read, kind: "notALength" };
  const assumed = read.assumedUnit === void 0 ? {} : { assumedUnit: unit2 };
  const shared = { metres: metres(read.value), said: read.said, approximate: read.approximate, ...assumed };
  if (read.kind === "exact") return { kind: "length", ...shared };
  const top = read.most === void 0 ? {} : { highMetres: metres(read.most) };
  return { kind: "range", lowMetres: metres(read.least), ...top, ...shared };
}

// src/quantities/read-number.ts
function readNumber(text, options) {
  const read = readQuantity(text, {
    dimension: "count",
    unit: "each",
    unsafeEnd: options.unsafeEnd,
    least: options.least ?? 0,
    most: options.most ?? 1e9,
    ...options.words === void 0 ? {} : { words: options.words }
  });
  if (read.kind === "notRead") return { ...read, kind: "notANumber" };
  const { value: value2, said, approximate } = read;
  if (read.kind === "exact") return { kind: "number", value: value2, said, approximate };
  return {
    kind: "range",
    value: value2,
    low: read.least,
    ...read.most === void 0 ? {} : { high: read.most },
    said,
    approximate
  };
}
var DECADE = /^(?:(?:the|in|early|mid|middle|late|built|sometime|about|around|from|i|we|think|guess|believe|it|its|it's|it’s|was|is|a|an|of|back)[\s-]+)*(?:'|’)?((?:1[6-9]|20)?\d0)(?:'|’)?s(?:[\s-]+(?:house|home|ranch|rancher|bungalow|place|build|built|i|we|think|guess))*$/i;
function decadeStart(text) {
  const digits = DECADE.exec(text.trim())?.[1];
  if (digits === void 0) return void 0;
  return digits.length === 2 ? 1900 + Number(digits) : Number(digits);
}
function readYear(text, options) {
  const least = options.least ?? 1600;
  const start2 = decadeStart(text);
  if (start2 !== void 0) {
    const high2 = Math.min(start2 + 9, options.most);
    if (start2 < least || start2 > options.most)
      return { kind: "notANumber", reason: "notUnderstood", detail: text };
    const value2 = options.unsafeEnd === "low" ? start2 : high2;
    return { kind: "range", value: value2, low: start2, high: high2, said: text.trim(), approximate: true };
  }
  const read = readNumber(text, { ...options, least, most: options.most * 1.02 });
  if (read.kind === "notANumber") return read;
  if (read.kind === "number") {
    if (read.value > options.most) return { kind: "notANumber", reason: "tooLarge" };
    return Number.isInteger(read.value) ? read : { kind: "notANumber", reason: "notUnderstood" };
  }
  const low = Math.ceil(read.low);
  const high = Math.min(Math.floor(read.high ?? options.most), options.most);
  return { ...read, low, high, value: options.unsafeEnd === "low" ? low : high };
}

// src/quantities/slope.ts
var slopeDegrees = (slopePercent2) => degrees(Math.atan(slopePercent2 / 100) * 180 / Math.PI);
var slopePercent = (angle) => percent(Math.tan(angle * Math.PI / 180) * 100);

// src/quantities/read-slope.ts
var MOST_PERCENT = 500;
function slope(value2, said, approximate, most) {
  if (!Number.isFinite(value2)) return { kind: "notASlope", reason: "notFinite" };
  if (value2 > most) return { kind: "notASlope", reason: "tooLarge" };
  const steepness = percent(value2);
  return { kind: "slope", percent: steepness, degrees: slopeDegrees(steepness), said, approximate };
}
function wholeMeasure(text, words) {
  const marked = markPieces(splitAnswer(text), words, "length").filter(
    ({ role }) => role !== "filler" && role !== "about"
  );
  const start2 = marked[0]?.role === "unit" ? { ...marked[0], role: "article", text: "" } : void 0;
  const pieces = start2 === void 0 || marked[0] === void 0 ? marked : [start2, ...marked];
  const measure3 = readMeasure(pieces, 0);
  return measure3 !== void 0 && measure3.next === pieces.length ? measure3 : void 0;
}
var measured = (measure3, unit2) => unit2 === void 0 ? measure3.most : toBase(measure3.most, unit2) + measure3.extra;
var escaped = (text) => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
function readRatio(text, words) {
  const plain2 = text.toLowerCase().trim();
  const pattern = new RegExp(
    words.rise.map((word) => new RegExp("^\\p{L}", "u").test(word) ? `(?<=\\s|\\d)${escaped(word)}(?=\\s|\\d)` : escaped(word)).join("|"),
    "gu"
  );
  for (const match of plain2.matchAll(pattern)) {
    const rise = wholeMeasure(plain2.slice(0, match.index), words);
    const run = wholeMeasure(plain2.slice(match.index + match[0].length), words);
    if (rise === void 0 || run === void 0) continue;
    const riseUnit = rise.unit ?? run.unit;
    const runUnit = run.unit ?? rise.unit;
    return { rise: measured(rise, riseUnit), run: measured(run, runUnit), signed: match[0] === ":" };
  }
  const bare = /^(\d+)\s*\/\s*(\d+)$/.exec(plain2);
  return bare === null ? void 0 : { rise: Number(bare[1]), run: Number(bare[2]), signed: false };
}
function readUnits(text, unit2, options, most) {
  const words = options.words === void 0 ? {} : { words: options.words };
  const unsafeEnd = options.unsafeEnd ?? "high";
  const dimension = unit2 === "percent" ? "slope" : "angle";
  const limit = unit2 === "percent" ? most : slopeDegrees(percent(most));
  const read = readQuantity(text, { dimension, unit: unit2, unsafeEnd, most: limit, ...words });
  if (read.kind === "notRead") return { ...read, kind: "notASlope" };
  const steepness = unit2 === "percent" ? percent(read.value) : slopePercent(degrees(read.value));
  return {
    kind: read.kind === "exact" ? "slope" : "range",
    percent: steepness,
    degrees: unit2 === "degree" ? degrees(read.value) : slopeDegrees(steepness),
    said: read.said,
    approximate: read.approximate,
    ...read.assumedUnit === void 0 ? {} : { assumedUnit: unit2 }
  };
}
function readSlope(text, options = {}) {
  const words = options.words ?? ENGLISH_NUMBER_WORDS;
  const most = options.mostPercent ?? MOST_PERCENT;
  const said = text.trim();
  const marked = markPieces(splitAnswer(said), words, "slope").filter(({ role }) => role !== "filler");
  const approximate = marked.some(({ role }) => role === "about");
  const meaning = marked.filter(({ role }) => role !== "about" && role !== "comma");
  if (meaning.length > 0 && meaning.every(({ role }) => role === "flat" || role === "nothing")) {
    return slope(0, said, approximate, most);
  }
  if (!marked.some(({ unit: unit3 }) => unit3 === "percent" || unit3 === "degree")) {
    const ratio = readRatio(said, words);
    if (ratio?.signed && ratio.rise > ratio.run) return { kind: "notASlope", reason: "ambiguousRatio" };
    if (ratio !== void 0) return slope(100 * ratio.rise / ratio.run, said, approximate, most);
  }
  const unit2 = marked.some((piece) => piece.unit === "degree") ? "degree" : options.unit ?? "percent";
  return readUnits(said, marked.some((piece) => piece.unit === "percent") ? "percent" : unit2, options, most);
}

// src/quantities/say-length.ts
function roundToStep(value2, step, { round = "nearest" } = {}) {
  const steps = value2 / step;
  const slack = 1e-9 * Math.max(1, Math.abs(steps));
  const whole = {
    nearest: Math.floor(steps + 0.5 + slack),
    up: Math.ceil(steps - slack),
    down: Math.floor(steps + slack)
  }[round];
  return Number((whole * step).toPrecision(12));
}
function withSymbol(value2, unit2) {
  const number10 = value2.toLocaleString("en-US", { maximumFractionDigits: 6 });
  return { value: value2, unit: unit2, text: `${number10} ${CONVERSIONS[unit2].symbol}`.trim() };
}
function fractionText(value2, parts2) {
  const whole = Math.floor(value2 + 1e-9);
  let top = Math.round((value2 - whole) * parts2);
  let bottom = parts2;
  if (top === 0) return `${whole}`;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}
function sayInches(value2, options) {
  for (const parts2 of [16, 32]) {
    const rounded2 = roundToStep(value2, 1 / parts2, options);
    if (rounded2 > 0 && Math.abs(rounded2 - value2) <= 0.02 * value2) {
      return { value: rounded2, unit: "in", text: `${fractionText(rounded2, parts2)} in` };
    }
  }
  if (value2 === 0) return withSymbol(0, "in");
  const step = value2 >= 1 ? 1 / 8 : 10 ** (Math.floor(Math.log10(value2)) - 1);
  const rounded = roundToStep(value2, step, options);
  if (value2 >= 1) return { value: rounded, unit: "in", text: `${fractionText(rounded, 8)} in` };
  return withSymbol(rounded, "in");
}
function sayFeet(lengthFeet, options) {
  const step = lengthFeet < 20 ? 1 / 12 : 1;
  const rounded = roundToStep(lengthFeet, step, options);
  const wholeFeet = Math.floor(rounded + 1e-9);
  const restInches = Math.round((rounded - wholeFeet) * 12);
  const number10 = wholeFeet.toLocaleString("en-US");
  const text = restInches === 0 ? `${number10} ft` : `${number10} ft ${restInches} in`;
  return { value: rounded, unit: "ft", text };
}
function sayMetric(length, options) {
  const millimetres = length * 1e3;
  if (millimetres === 0) return withSymbol(0, "mm");
  if (millimetres < 1) {
    const step = 10 ** (Math.floor(Math.log10(millimetres)) - 1);
    return withSymbol(roundToStep(millimetres, step, options), "mm");
  }
  if (millimetres < 9.95) return withSymbol(roundToStep(millimetres, 0.1, options), "mm");
  if (millimetres < 299.5) return withSymbol(roundToStep(millimetres, 1, options), "mm");
  if (length < 2) return withSymbol(roundToStep(length, 0.05, options), "m");
  return withSymbol(roundToStep(length, length < 100 ? 0.1 : 1, options), "m");
}
function sayLength(length, system, options = {}) {
  if (system === "metric") return sayMetric(length, options);
  const lengthInches = fromBase(length, "in");
  return lengthInches < 11.94 ? sayInches(lengthInches, options) : sayFeet(fromBase(length, "ft"), options);
}

// src/flow/bound.ts
function readBound(written, kind) {
  if (kind === "length") {
    if (typeof written === "number") return { problem: `a length needs a unit, such as "${written} ft".` };
    const read = readLength(written, { unsafeEnd: "low" });
    return read.kind === "length" && read.assumedUnit === void 0 ? read.metres : { problem: `"${written}" is not a length with a unit, such as "4 ft" or "1/8 in".` };
  }
  if (typeof written === "number") return written;
  if (kind === "slope") {
    const read = readSlope(written);
    return read.kind === "slope" ? read.percent : { problem: `"${written}" is not a slope, such as "20 %".` };
  }
  const number10 = Number(written);
  return Number.isFinite(number10) ? number10 : { problem: `"${written}" is not a number.` };
}

// src/answers/truth.ts
function all(parts2, truth) {
  let result = "yes";
  for (const part of parts2) {
    const one = truth(part);
    if (one === "no") return "no";
    if (one === "unknown") result = "unknown";
  }
  return result;
}
function any(parts2, truth) {
  let result = "no";
  for (const part of parts2) {
    const one = truth(part);
    if (one === "yes") return "yes";
    if (one === "unknown") result = "unknown";
  }
  return result;
}
function not(truth) {
  if (truth === "unknown") return "unknown";
  return truth === "yes" ? "no" : "yes";
}

// src/answers/condition.ts
function compileCondition(raw, questionOf2) {
  const test = compileShape(raw, questionOf2);
  const { whenUnknown } = raw;
  if (whenUnknown === void 0) return test;
  return (facts, spot) => {
    const truth = test(facts, spot);
    return truth === "unknown" ? whenUnknown : truth;
  };
}
function compileShape(raw, questionOf2) {
  const compile = (one) => compileCondition(one, questionOf2);
  if (raw.all) {
    const parts2 = raw.all.map(compile);
    return (facts, spot) => all(parts2, (part) => part(facts, spot));
  }
  if (raw.any) {
    const parts2 = raw.any.map(compile);
    return (facts, spot) => any(parts2, (part) => part(facts, spot));
  }
  if (raw.not) {
    const part = compile(raw.not);
    return (facts, spot) => not(part(facts, spot));
  }
  if (raw.where) return compileOver(raw, compile(raw.where));
  if (raw.finding !== void 0) {
    const id = raw.finding;
    return (facts, spot) => facts.finding(id, spot);
  }
  if (raw.computed !== void 0) return compileComputed(raw, raw.computed);
  if (raw.limit !== void 0) return compileLimit(raw, raw.limit);
  return compileQuestion(raw, questionOf2);
}
function compileOver(raw, where) {
  const over = raw.some ?? raw.every ?? "";
  const join2 = raw.some === void 0 ? all : any;
  if (over === "side") {
    return (facts, spot) => join2(facts.sides, (side) => where(facts, { ...spot, side }));
  }
  return (facts, spot) => {
    const standing = facts.members(over).filter((member) => spot.side === void 0 || facts.memberSides(over, member).includes(spot.side));
    return join2(standing, (member) => where(facts, { ...spot, group: over, member }));
  };
}
var comparisons = {
  atLeast: (value2, bound) => value2 >= bound,
  atMost: (value2, bound) => value2 <= bound,
  above: (value2, bound) => value2 > bound,
  below: (value2, bound) => value2 < bound
};
var sameWithin = 1e-9;
function compileCompare(raw, kind) {
  const key = Object.keys(comparisons).find(
    (one) => raw[one] !== void 0
  );
  const bound = key && raw[key];
  if (key === void 0 || bound === void 0) return () => "unknown";
  const holds = (value2, limit) => {
    const same = Math.abs(value2 - limit) <= sameWithin * Math.max(1, Math.abs(limit));
    return comparisons[key](same ? limit : value2, limit) ? "yes" : "no";
  };
  if (typeof bound === "object") {
    return (value2, facts) => {
      const limit = facts.limit(bound.limit)?.value;
      return typeof limit === "number" ? holds(value2, limit) : "unknown";
    };
  }
  const read = readBound(bound, kind);
  return (value2) => typeof read === "number" ? holds(value2, read) : "unknown";
}
function compileComputed(raw, id) {
  const compare = compileCompare(raw, "number");
  return (facts, spot) => {
    const value2 = facts.computed(id, spot);
    return value2 === void 0 ? "unknown" : compare(value2, facts);
  };
}
function compileLimit(raw, id) {
  if (raw.is === void 0 && raw.oneOf === void 0) {
    const compare = compileCompare(raw, "number");
    return (facts) => {
      const value2 = facts.limit(id)?.value;
      return typeof value2 === "number" ? compare(value2, facts) : "unknown";
    };
  }
  const wanted = (raw.oneOf ?? [raw.is]).map((one) => one === "yes" ? true : one === "no" ? false : one);
  return (facts) => {
    const value2 = facts.limit(id)?.value;
    return value2 === void 0 ? "unknown" : wanted.includes(value2) ? "yes" : "no";
  };
}
function compileQuestion(raw, questionOf2) {
  const question = questionOf2(raw.question ?? raw.answered ?? "");
  if (!question) return () => "unknown";
  if (raw.answered !== void 0) {
    return (facts, spot) => {
      const answer2 = facts.answer(question, spot);
      return answer2 !== "offPath" && answer2?.status === "given" ? "yes" : "no";
    };
  }
  const named = raw.is === void 0 ? raw.oneOf?.map(String) : [String(raw.is)];
  const compare = named ? void 0 : compileCompare(raw, question.kind);
  return (facts, spot) => {
    const answer2 = facts.answer(question, spot);
    if (answer2 === "offPath") return "no";
    if (answer2?.status !== "given") return "unknown";
    const { value: value2 } = answer2;
    if (compare) return compare(typeof value2 === "number" ? value2 : value2.length, facts);
    if (typeof value2 === "object") return value2.some((one) => named?.includes(one)) ? "yes" : "no";
    return named?.includes(String(value2)) ? "yes" : "no";
  };
}

// src/answers/limits.ts
function inForce(id, limit, rulebook) {
  const { value: value2 } = limit;
  const base = { id, limit, rulebook };
  if (typeof value2 === "boolean") return { ...base, value: value2, dimension: "flag" };
  if (typeof value2 === "number") return { ...base, value: value2, dimension: "number" };
  const metres2 = readBound(value2, "length");
  if (typeof metres2 === "number") return { ...base, value: metres2, dimension: "length" };
  const percent2 = readBound(value2, "slope");
  return { ...base, value: typeof percent2 === "number" ? percent2 : Number.NaN, dimension: "slope" };
}
function layers(flow, id) {
  const own2 = flow.rulebooks.find((one) => one.id === id);
  if (!own2 || own2.id === flow.walk.generalRulebook) return [];
  return [...layers(flow, own2.over ?? flow.walk.generalRulebook), own2];
}
function limitsOf(flow, rulebookId) {
  const general = flow.rulebooks.find((one) => one.id === flow.walk.generalRulebook);
  const books2 = [...general ? [general] : [], ...layers(flow, rulebookId)];
  return new Map(
    books2.flatMap(
      (book) => Object.entries(book.limits).map(([id, limit]) => [id, inForce(id, limit, book.id)])
    )
  );
}

// src/answers/flow-index.ts
function indexFlow(flow) {
  const questions = new Map(flow.questions.map((one) => [one.id, one]));
  const kindOf2 = (id) => questions.get(id);
  const compiled = (key) => new Map(
    flow.questions.flatMap((one) => {
      const raw = one[key];
      return raw ? [[one.id, compileCondition(raw, kindOf2)]] : [];
    })
  );
  return {
    flow,
    questions,
    groups: new Map(flow.groups.map((one) => [one.id, one])),
    countQuestions: new Map(
      flow.questions.flatMap((one) => one.counts === void 0 ? [] : [[one.counts, one]])
    ),
    roles: new Map(flow.questions.flatMap((one) => one.role === void 0 ? [] : [[one.role, one]])),
    when: compiled("when"),
    where: compiled("where"),
    limits: new Map(flow.rulebooks.map((one) => [one.id, limitsOf(flow, one.id)])),
    sides: sideNames
  };
}

// src/findings/rules.ts
function compileRules(index) {
  const compile = (raw) => compileCondition(raw, (id) => index.questions.get(id));
  const maybe = (raw) => raw ? compile(raw) : void 0;
  const { flow } = index;
  return {
    findings: new Map(flow.findings.map((finding) => [finding.id, { finding, when: compile(finding.when) }])),
    elements: flow.elements.map((element) => ({ element, when: compile(element.when) })),
    actions: flow.actions.map((action) => ({
      action,
      when: maybe(action.when),
      laneWhen: action.laneWhen.map((one) => ({
        test: compile(one.if),
        lane: one.lane,
        because: one.because
      })),
      cautionsWhen: action.cautionsWhen.map((one) => ({ test: compile(one.if), cautions: one.cautions })),
      demanded: maybe(action.demandedWhen?.if)
    })),
    upkeep: flow.upkeep.map((upkeep) => ({ upkeep, when: maybe(upkeep.when) })),
    cautions: new Map(flow.cautions.map((one) => [one.id, one]))
  };
}

// src/assess/checklist.ts
function prepareChecklist(flow) {
  const index = indexFlow(flow);
  return { flow, index, rules: compileRules(index) };
}

// src/machine/compile-machine.ts
import { assign, createMachine } from "xstate";
var stateOf = (questionId) => questionId.replaceAll(/[.-]/g, "_");
var idOf = (questionId) => `#${stateOf(questionId)}`;
var eachOf = (group) => `each_${group}`;
function keyAt(question, context) {
  return answerKey(question.id, question.of, context.member);
}
function isNeeded(question, context) {
  const key = keyAt(question, context);
  const step = pathOf(context.index, context.sheet).byKey.get(key);
  return step !== void 0 && (context.again === key || isOpen(step, context.sheet));
}
function isOpenAnywhere({ context }) {
  return pathOf(context.index, context.sheet).steps.some((step) => isOpen(step, context.sheet));
}
function openMember(group, context) {
  const path = pathOf(context.index, context.sheet);
  return path.steps.find((step) => step.group === group && isOpen(step, context.sheet))?.member;
}
var keep = assign(({ context, event }) => {
  if (event.type !== "ANSWER") return {};
  const sheet = { ...context.sheet, [event.key]: event.answer };
  return { sheet, again: context.again === event.key ? void 0 : context.again };
});
var forgetAll = assign({ sheet: {}, member: void 0, again: void 0 });
function moves(index, keyOf2) {
  return index.flow.questions.map((question) => ({
    target: idOf(question.id),
    guard: (at) => questionOf(keyOf2(at)) === question.id && isOnPath(at, keyOf2(at)),
    actions: assign((at) => ({ again: keyOf2(at), member: memberOf(keyOf2(at)) }))
  }));
}
var questionOf = (key) => key?.split("/").at(-1);
var memberOf = (key) => key?.includes("/") ? key.split("/")[1] : void 0;
function isOnPath({ context }, key) {
  return key !== void 0 && pathOf(context.index, context.sheet).byKey.has(key);
}
function statesOfStop(questions, after) {
  const states = {};
  questions.forEach((question, position) => {
    const next = questions[position + 1];
    const group = question.of;
    const startsGroup = group !== void 0 && questions[position - 1]?.of !== group;
    if (startsGroup)
      states[eachOf(group)] = eachMember(group, question, afterGroup(questions, position, after));
    const leaves = group !== void 0 && next?.of !== group;
    const target = leaves ? `#${eachOf(group)}` : next ? entryOf(next, question) : after;
    states[stateOf(question.id)] = {
      id: stateOf(question.id),
      always: { guard: ({ context }) => !isNeeded(question, context), target }
    };
  });
  return states;
}
function entryOf(question, from) {
  return question.of === void 0 || question.of === from?.of ? idOf(question.id) : `#${eachOf(question.of)}`;
}
function afterGroup(questions, from, after) {
  const next = questions.slice(from).find((one) => one.of !== questions[from]?.of);
  return next ? entryOf(next) : after;
}
function eachMember(group, first, after) {
  return {
    id: eachOf(group),
    always: [
      {
        guard: ({ context }) => openMember(group, context) !== void 0,
        target: idOf(first.id),
        actions: assign(({ context }) => ({ member: openMember(group, context) }))
      },
      { target: after, actions: assign({ member: void 0 }) }
    ]
  };
}
function asking(index) {
  const stops = index.flow.stops.map((stop) => ({
    id: stop.id,
    questions: index.flow.questions.filter((one) => one.stop === stop.id)
  }));
  const states = stops.map(({ id, questions }, position) => {
    const next = stops[position + 1]?.questions[0];
    const inner = statesOfStop(questions, next ? entryOf(next) : "#end");
    return [id, { initial: Object.keys(inner)[0], states: inner }];
  });
  const first = stops[0]?.questions[0];
  const end = {
    id: "end",
    always: [
      { guard: isOpenAnywhere, target: first ? entryOf(first) : "#readBack" },
      { target: "#readBack" }
    ]
  };
  return { id: "asking", initial: stops[0]?.id, states: { ...Object.fromEntries(states), end } };
}
function compileMachine(index) {
  const goOn = [...moves(index, ({ context }) => context.stoppedAt), { target: "#asking" }];
  const stop = (target) => ({
    target,
    actions: assign(({ event }) => "at" in event ? { stoppedAt: event.at } : {})
  });
  const config = {
    id: "walk",
    initial: "asking",
    context: ({ input }) => input,
    on: {
      ANSWER: { actions: keep },
      GO: moves(index, ({ event }) => event.type === "GO" ? event.key : void 0),
      FINISH: { target: "#readBack" },
      PAUSE: stop("#paused"),
      EMERGENCY: stop("#emergency"),
      START_OVER: { target: "#asking", actions: forgetAll }
    },
    states: {
      asking: asking(index),
      readBack: { id: "readBack", on: { CONFIRM: { target: "#finished" } } },
      finished: { id: "finished" },
      paused: { id: "paused", on: { RESUME: goOn } },
      emergency: { id: "emergency", on: { RESUME: goOn, GO: {}, FINISH: {}, PAUSE: {} } }
    }
  };
  return createMachine(config);
}

// src/conversation/programme.ts
function buildProgramme(flow) {
  const checklist = prepareChecklist(flow);
  return { checklist, machine: compileMachine(checklist.index) };
}

// src/machine/place.ts
import { createActor } from "xstate";
function firstOpen(index, sheet) {
  return pathOf(index, sheet).steps.find((step) => isOpen(step, sheet));
}
function placeOnMachine(machine, index, position) {
  const { sheet, phase } = position;
  const path = pathOf(index, sheet);
  const stopped = phase === "paused" || phase === "emergency";
  const asked3 = (position.key === void 0 ? void 0 : path.byKey.get(position.key)) ?? firstOpen(index, sheet);
  const context = {
    index,
    sheet,
    member: asked3?.member,
    again: asked3 && !stopped && !isOpen(asked3, sheet) ? asked3.key : void 0,
    stoppedAt: stopped ? position.key : void 0
  };
  const value2 = phase === "asking" && asked3 ? { asking: { [asked3.question.stop]: stateOf(asked3.question.id) } } : phase === "asking" ? "readBack" : phase;
  return machine.resolveState({ value: value2, context });
}
var byState = /* @__PURE__ */ new WeakMap();
function questionsByState(index) {
  const known = byState.get(index) ?? new Map(index.flow.questions.map((one) => [stateOf(one.id), one]));
  byState.set(index, known);
  return known;
}
function positionOf(snapshot) {
  const { value: value2 } = snapshot;
  const context = snapshot.context;
  if (typeof value2 === "string") {
    const stopped = value2 === "paused" || value2 === "emergency";
    return { phase: value2, key: stopped ? context.stoppedAt : void 0, sheet: context.sheet };
  }
  const stop = value2.asking ?? {};
  const [state] = Object.values(stop);
  const question = questionsByState(context.index).get(state ?? "");
  const key = question && answerKey(question.id, question.of, question.of === void 0 ? void 0 : context.member);
  return { phase: "asking", key, sheet: context.sheet };
}
var scopes = /* @__PURE__ */ new WeakMap();
var nothing2 = () => {
};
function inertScope(machine, index) {
  const known = scopes.get(machine);
  if (known) return known;
  const input = { index, sheet: {}, member: void 0, again: void 0, stoppedAt: void 0 };
  const self = createActor(machine, { input });
  const scope = {
    self,
    system: self.system,
    id: "",
    sessionId: "",
    logger: nothing2,
    defer: nothing2,
    emit: nothing2,
    stopChild: nothing2,
    actionExecutor: nothing2
  };
  scopes.set(machine, scope);
  return scope;
}
function stepWalk(machine, index, position, event) {
  const placed = placeOnMachine(machine, index, position);
  const next = machine.transition(placed, event, inertScope(machine, index));
  return positionOf(next);
}

// src/conversation/advance.ts
var positionOf2 = (record7) => ({
  phase: record7.cursor.phase,
  key: record7.cursor.key,
  sheet: record7.sheet
});
function advance(programme2, record7, event) {
  const { machine, checklist } = programme2;
  const { phase, key, sheet } = stepWalk(machine, checklist.index, positionOf2(record7), event);
  return { ...record7, sheet, cursor: key === void 0 ? { phase } : { phase, key } };
}
function withPending(record7, pending) {
  return { ...record7, cursor: { ...record7.cursor, pending } };
}
function withoutPending(record7) {
  const { pending: _, ...cursor } = record7.cursor;
  return { ...record7, cursor };
}

// src/flow/did-you-mean.ts
function editDistance(from, to, limit = 3) {
  if (Math.abs(from.length - to.length) > limit) return limit + 1;
  let before = [];
  let last = Array.from({ length: to.length + 1 }, (_, index) => index);
  for (let row = 1; row <= from.length; row++) {
    const now2 = [row];
    for (let column = 1; column <= to.length; column++) {
      const same = from[row - 1] === to[column - 1];
      let best2 = Math.min(
        (last[column] ?? 0) + 1,
        (now2[column - 1] ?? 0) + 1,
        (last[column - 1] ?? 0) + (same ? 0 : 1)
      );
      const swapped = row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      if (swapped) best2 = Math.min(best2, (before[column - 2] ?? 0) + 1);
      now2.push(best2);
    }
    before = last;
    last = now2;
  }
  return Math.min(last[to.length] ?? limit + 1, limit + 1);
}
function nearest(word, known) {
  const limit = word.length <= 4 ? 1 : word.length <= 8 ? 2 : 3;
  let best2;
  let bestDistance = limit + 1;
  for (const candidate of known) {
    const distance = editDistance(word.toLowerCase(), candidate.toLowerCase(), limit);
    if (distance < bestDistance) {
      best2 = candidate;
      bestDistance = distance;
    }
  }
  return best2;
}
function didYouMean(word, known) {
  const found = nearest(word, known);
  return found === void 0 ? void 0 : `Did you mean "${found}"?`;
}

// src/flow/located.ts
function gather(files, key) {
  return files.flatMap(
    ({ file, document }) => (file[key] ?? []).map((item, index) => ({ item, document, path: [key, index] }))
  );
}
function problemAt(located, inside2, problem, suggestion) {
  const path = [...located.path, ...inside2];
  return {
    path: located.document.path,
    ...located.document.positionOf(path),
    at: path.join("."),
    problem,
    ...suggestion === void 0 ? {} : { suggestion }
  };
}

// src/flow/checks/references.ts
var ids = (parts2) => new Set(parts2.map((part) => part.item.id));
var byId = (parts2) => new Map(parts2.map((part) => [part.item.id, part.item]));
function indexParts(parts2, computations) {
  const walk = parts2.walks[0]?.item;
  const general = parts2.rulebooks.find((one) => one.item.id === walk?.generalRulebook);
  return {
    stops: new Set(walk?.stops.map((stop) => stop.id)),
    groups: byId(parts2.groups),
    questions: byId(parts2.questions),
    findings: byId(parts2.findings),
    elements: byId(parts2.elements),
    sets: new Map(parts2.sets.map(({ item }) => [item.id, item.members])),
    actions: ids(parts2.actions),
    cautions: ids(parts2.cautions),
    costs: ids(parts2.costs),
    sources: ids(parts2.sources),
    limits: new Set(Object.keys(general?.item.limits ?? {})),
    rulebooks: ids(parts2.rulebooks),
    computations: new Set(computations)
  };
}
function reference(located, inside2, what, id, known) {
  if (known.has(id)) return [];
  return [problemAt(located, inside2, `there is no ${what} "${id}".`, didYouMean(id, known.keys()))];
}
function references(located, inside2, what, list4, known) {
  return list4.flatMap((id, index) => reference(located, [inside2, index], what, id, known));
}
function duplicateIds(what, parts2) {
  const first = /* @__PURE__ */ new Map();
  return parts2.flatMap((part) => {
    const before = first.get(part.item.id);
    if (!before) {
      first.set(part.item.id, part);
      return [];
    }
    const { line: line2 } = before.document.positionOf([...before.path, "id"]);
    const where = `${before.document.path}:${line2}`;
    return [problemAt(part, ["id"], `the ${what} "${part.item.id}" is already at ${where}.`)];
  });
}

// src/flow/checks/check-condition.ts
function scopeOf(per) {
  return { side: per === "side", group: per === "house" || per === "side" ? void 0 : per };
}
var optionKinds = /* @__PURE__ */ new Set(["choice", "yesNo", "several", "sides"]);
var measuredKinds = /* @__PURE__ */ new Set(["length", "number", "slope", "count"]);
function optionIds(question) {
  if (question.kind === "yesNo") return ["yes", "no"];
  if (question.kind === "sides") return [...sideNames];
  return (question.options ?? []).map((option) => option.id);
}
function checkCondition(at, inside2, raw, scope) {
  const { located, lookup } = at;
  const deeper = (list4, key2) => list4.flatMap((one, index) => checkCondition(at, [...inside2, key2, index], one, scope));
  if (raw.all) return deeper(raw.all, "all");
  if (raw.any) return deeper(raw.any, "any");
  if (raw.not) return checkCondition(at, [...inside2, "not"], raw.not, scope);
  if (raw.some !== void 0 || raw.every !== void 0) return checkOver(at, inside2, raw, scope);
  if (raw.finding !== void 0)
    return reference(located, [...inside2, "finding"], "finding", raw.finding, lookup.findings);
  if (raw.computed !== void 0)
    return reference(located, [...inside2, "computed"], "computation", raw.computed, lookup.computations);
  if (raw.limit !== void 0)
    return reference(located, [...inside2, "limit"], "limit", raw.limit, lookup.limits);
  const key = raw.question === void 0 ? "answered" : "question";
  const id = raw.question ?? raw.answered ?? "";
  const question = lookup.questions.get(id);
  if (!question) return reference(located, [...inside2, key], "question", id, lookup.questions);
  return [...checkScope(at, [...inside2, key], question, scope), ...checkTest(at, inside2, raw, question)];
}
function checkOver(at, inside2, raw, scope) {
  const key = raw.some === void 0 ? "every" : "some";
  const over = raw[key] ?? "";
  const known = /* @__PURE__ */ new Set(["side", ...at.lookup.groups.keys()]);
  const missing = reference(at.located, [...inside2, key], "group", over, known);
  if (missing.length > 0 || !raw.where) return missing;
  const inner = over === "side" ? { ...scope, side: true } : { ...scope, group: over };
  return checkCondition(at, [...inside2, "where"], raw.where, inner);
}
function checkScope(at, inside2, question, scope) {
  if (question.by === "side" && !scope.side) {
    const text = `"${question.id}" has an answer for each side: ask it under "some: side" or "every: side".`;
    return [problemAt(at.located, inside2, text)];
  }
  if (question.of !== void 0 && question.of !== scope.group) {
    const text = `"${question.id}" is asked of each of ${question.of}: ask it under "some: ${question.of}" or "every: ${question.of}".`;
    return [problemAt(at.located, inside2, text)];
  }
  return [];
}
function checkTest(at, inside2, raw, question) {
  if (raw.answered !== void 0) return [];
  const named = raw.is !== void 0 ? [raw.is] : raw.oneOf;
  if (named) return checkOptions(at, inside2, raw, question, named);
  if (!measuredKinds.has(question.kind)) {
    const text = `"${question.id}" is a ${question.kind}: compare it with "is" or "oneOf".`;
    return [problemAt(at.located, inside2, text)];
  }
  const key = ["atLeast", "atMost", "above", "below"].find((one) => raw[one] !== void 0);
  const bound = key && raw[key];
  if (!key || bound === void 0) return [];
  if (typeof bound === "object")
    return reference(at.located, [...inside2, key, "limit"], "limit", bound.limit, at.lookup.limits);
  const read = readBound(bound, question.kind);
  return typeof read === "number" ? [] : [problemAt(at.located, [...inside2, key], read.problem)];
}
function checkOptions(at, inside2, raw, question, named) {
  if (!optionKinds.has(question.kind)) {
    const text = `"${question.id}" is a ${question.kind}: compare it with atLeast, atMost, above or below.`;
    return [problemAt(at.located, inside2, text)];
  }
  const options = optionIds(question);
  const wrong = named.map(String).filter((id) => !options.includes(id));
  const key = raw.is !== void 0 ? "is" : "oneOf";
  return wrong.map(
    (id) => problemAt(
      at.located,
      [...inside2, key],
      `"${question.id}" has no option "${id}".`,
      didYouMean(id, options) ?? (options.length > 0 ? `It has: ${options.join(", ")}.` : void 0)
    )
  );
}

// src/conversation/ask.ts
var letters = "abcdefghijklmnopqrstuvwxyz";
function stepValues(checklist, record7, step) {
  if (step.group === void 0 || step.member === void 0) return {};
  const members = pathOf(checklist.index, record7.sheet).facts.members(step.group);
  const number10 = members.indexOf(step.member) + 1;
  return { member: { member: { group: step.group, key: step.member, number: number10 } } };
}
function choicesOf(step) {
  const { question } = step;
  const ids2 = question.picks?.map((pick) => String(pick.value)) ?? optionIds(question);
  const kind = question.kind === "yesNo" ? "yesNo" : question.kind === "sides" ? "side" : void 0;
  return ids2.map((id, position) => ({
    id,
    // A bare number is a measure here: such a choice is taken by its letter.
    number: question.picks ? 0 : position + 1,
    letter: letters[position] ?? "",
    label: { text: kind ? `words/${kind}/${id}` : `option/${question.id}/${id}` }
  }));
}
function hintOf(step, sides) {
  const { kind, by } = step.question;
  if (by === "side") {
    if (kind === "yesNo") return "hint.which-sides";
    if (kind === "length") return "hint.length-by-side";
    return kind === "several" ? "hint.several-by-side" : sides.length === 1 ? "hint.choice" : "hint.choice-by-side";
  }
  if (kind === "length" || kind === "slope")
    return step.question.picks ? "hint.measure-or-pick" : `hint.${kind}`;
  return `hint.${kind}`;
}
function askOf(checklist, record7) {
  const { key, phase, pending } = record7.cursor;
  if (phase !== "asking" || key === void 0 || pending) return void 0;
  const step = pathOf(checklist.index, record7.sheet).byKey.get(key);
  if (!step) return void 0;
  const open = openSides(step, record7.sheet);
  const sides = open.length > 0 ? open : step.sides ?? [];
  const values = stepValues(checklist, record7, step);
  const { question } = step;
  const byWhichSides = question.by === "side" && question.kind === "yesNo";
  const sideChoices = sides.map((side, position) => ({
    id: side,
    number: position + 1,
    letter: letters[position] ?? "",
    label: { text: `words/side/${side}` }
  }));
  return {
    key,
    question: question.id,
    kind: question.kind,
    say: { text: `question/${question.id}/ask`, values: { ...values, sides: { sides } } },
    choices: byWhichSides ? sideChoices : choicesOf(step),
    several: question.kind === "several" || question.kind === "sides" || byWhichSides,
    sides,
    hint: { text: hintOf(step, sides), values: { sides: { sides } } }
  };
}

// src/answers/reading/clean-text.ts
var MOST_CHARACTERS = 1e3;
var ESCAPE = "\\u001b";
var STRING_END = `(?:\\u0007|${ESCAPE}\\\\|\\u009c)?`;
var ESCAPES = new RegExp(
  [
    `(?:${ESCAPE}[\\]PX^_]|\\u009d)[^\\u0007\\u001b\\u009c]*${STRING_END}`,
    `(?:${ESCAPE}\\[|\\u009b)[0-?]*[ -/]*[@-~]?`,
    `${ESCAPE}[ -/]*[0-~]?`
  ].join("|"),
  "g"
);
var UNSEEN = /[\p{Cf}\p{Co}\p{Cn}\p{Cs}]/gu;
var SPACE = /[\p{Cc}\p{Z}]+/gu;
var PLAIN = {
  "\u2018": "'",
  "\u2019": "'",
  "\u201A": "'",
  "\u201B": "'",
  "\u2032": "'",
  \u02BC: "'",
  "`": "'",
  "\xB4": "'",
  "\u201C": '"',
  "\u201D": '"',
  "\u201E": '"',
  "\u201F": '"',
  "\u2033": '"',
  "\u2010": "-",
  "\u2011": "-",
  "\u2012": "-",
  "\u2013": "-",
  "\u2014": "-",
  "\u2212": "-"
};
var SIGNS = /[‘’‚‛′ʼ`´“”„‟″‐‑‒–—−]/g;
var PLAIN_ALREADY = /^[!-_a-~]+(?: [!-_a-~]+)*$/;
function cleanText(raw, most = MOST_CHARACTERS) {
  if (raw.length <= most && PLAIN_ALREADY.test(raw)) return raw;
  const bounded = raw.length > most * 8 ? raw.slice(0, most * 8) : raw;
  const clean = bounded.replace(ESCAPES, " ").normalize("NFC").replace(UNSEEN, "").replace(SIGNS, (sign) => PLAIN[sign] ?? sign).replace(SPACE, " ").trim();
  if (clean.length <= most) return clean;
  return Array.from(clean).slice(0, most).join("").trimEnd();
}

// src/conversation/turned.ts
function say(text, values, tone = "plain") {
  return { kind: "say", tone, text, ...values ? { values } : {} };
}

// src/conversation/emergency.ts
function emergencyNumbers(flow, rulebook, placeKnown) {
  const books2 = placeKnown ? flow.rulebooks.filter((one) => one.id === rulebook) : flow.rulebooks;
  return [...new Set(books2.flatMap((one) => one.emergencyNumber.split(" or ")))];
}
function leaveParts(programme2, record7) {
  const { index, flow } = programme2.checklist;
  const place = index.roles.get("place");
  const answer2 = place && record7.sheet[place.id];
  const known = answer2?.status === "given" && answer2.value !== flow.walk.generalRulebook;
  const numbers4 = emergencyNumbers(flow, pathOf(index, record7.sheet).rulebook, known);
  return [
    say("emergency.leave", void 0, "emergency"),
    say("emergency.call", { numbers: { list: numbers4, join: "or" }, count: numbers4.length }, "emergency"),
    say("emergency.kept", void 0, "emergency")
  ];
}
function stopForEmergency(programme2, record7) {
  const at = record7.cursor.key;
  const stopped = record7.cursor.phase === "emergency" ? record7 : advance(programme2, record7, { type: "EMERGENCY", at });
  return { record: withPending(stopped, { kind: "safe" }), parts: leaveParts(programme2, record7) };
}
function askSafe(record7) {
  return {
    record: withPending(record7, { kind: "safe" }),
    parts: [say("emergency.safe-now", void 0, "emergency")]
  };
}
function goOnSafe(programme2, record7) {
  const danger = programme2.checklist.index.roles.get("danger");
  const resumed = advance(programme2, record7, { type: "RESUME" });
  const answer2 = danger && resumed.sheet[danger.id];
  const told = answer2?.status === "given" && answer2.value === "yes";
  const cleared = danger && told ? advance(programme2, resumed, {
    type: "ANSWER",
    key: danger.id,
    answer: { status: "given", value: "no" }
  }) : resumed;
  return { record: cleared, parts: [say("emergency.go-on")] };
}

// src/conversation/progress.ts
function progressOf(checklist, record7) {
  const path = pathOf(checklist.index, record7.sheet);
  const { key, phase } = record7.cursor;
  const here = phase === "asking" && key !== void 0 ? path.byKey.get(key)?.question.stop : void 0;
  const open = new Set(
    path.steps.filter((step) => isOpen(step, record7.sheet)).map((step) => step.question.stop)
  );
  const stops = checklist.flow.stops.map((stop) => ({
    id: stop.id,
    title: `stop/${stop.id}/title`,
    state: stop.id === here ? "here" : open.has(stop.id) ? "ahead" : "done"
  }));
  const answered = path.steps.filter((step) => !isOpen(step, record7.sheet)).length;
  return { stop: here, stops, answered, asked: path.steps.length };
}

// src/conversation/explain.ts
function stepOf2(checklist, record7) {
  const { key } = record7.cursor;
  return key === void 0 ? void 0 : pathOf(checklist.index, record7.sheet).byKey.get(key);
}
function helpParts(checklist, record7) {
  const step = stepOf2(checklist, record7);
  if (!step || record7.cursor.phase !== "asking") return [say(`help.${record7.cursor.phase}`)];
  const id = step.question.id;
  return [
    say("help.look", { text: { text: `question/${id}/look` } }),
    say("help.good", { text: { text: `question/${id}/good` } }),
    ...step.question.cautions.map((caution) => say(`caution/${caution}`, void 0, "warning")),
    say("help.commands", void 0, "quiet")
  ];
}
function whyParts(checklist, record7) {
  const step = stepOf2(checklist, record7);
  if (!step || record7.cursor.phase !== "asking") return [say(`help.${record7.cursor.phase}`)];
  return [say(`question/${step.question.id}/why`)];
}
function whereParts(checklist, record7) {
  const { stops, stop, answered, asked: asked3 } = progressOf(checklist, record7);
  const ahead = stops.filter((one) => one.state === "ahead").map((one) => ({ text: one.title }));
  const here = stop === void 0 ? [] : [say("walk.where", { stop: { text: `stop/${stop}/title` }, answered, asked: asked3 })];
  const left = ahead.length > 0 ? [say("walk.still-ahead", { stops: { list: ahead, join: "and" } })] : [];
  return here.length + left.length > 0 ? [...here, ...left] : [say("walk.all-answered", { answered })];
}

// src/conversation/read-back.ts
function line(checklist, record7, step) {
  const answer2 = record7.sheet[step.key];
  if (!answer2) return [];
  const values = stepValues(checklist, record7, step);
  const label = { text: `question/${step.question.id}/short`, values };
  return [
    { text: "read-back.line", values: { ...values, label, answer: { answer: answer2, question: step.question.id } } }
  ];
}
function readBackParts(checklist, record7) {
  const path = pathOf(checklist.index, record7.sheet);
  const answered = path.steps.filter((step) => !isOpen(step, record7.sheet));
  const open = path.steps.length - answered.length;
  const parts2 = checklist.flow.stops.flatMap((stop) => {
    const lines = answered.filter((step) => step.question.stop === stop.id).flatMap((step) => line(checklist, record7, step));
    return lines.length > 0 ? [{ kind: "readBack", stop: stop.id, lines }] : [];
  });
  return [
    say("read-back.intro", void 0, "heading"),
    ...parts2,
    ...open > 0 ? [say("read-back.open", { open })] : [],
    say("read-back.confirm")
  ];
}

// src/conversation/edits.ts
function go(programme2, record7, key) {
  return advance(programme2, record7, { type: "GO", key });
}
function goBack(programme2, record7) {
  const { steps } = pathOf(programme2.checklist.index, record7.sheet);
  const { key, phase } = record7.cursor;
  const here = phase === "asking" ? steps.findIndex((step) => step.key === key) : steps.length;
  const before = steps[here - 1];
  if (!before) return { record: record7, parts: [say("walk.at-the-start")] };
  return { record: go(programme2, record7, before.key), parts: [] };
}
function jumpTo(programme2, record7, stop) {
  const path = pathOf(programme2.checklist.index, record7.sheet);
  const there = path.steps.filter((step) => step.question.stop === stop);
  const target = there.find((step) => isOpen(step, record7.sheet)) ?? there[0];
  const values = { stop: { text: `stop/${stop}/title` } };
  if (!target) return { record: record7, parts: [say("walk.nothing-there", values)] };
  return { record: go(programme2, record7, target.key), parts: [] };
}
function stepFor(programme2, record7, question) {
  const { steps, byKey } = pathOf(programme2.checklist.index, record7.sheet);
  const here = record7.cursor.key === void 0 ? void 0 : byKey.get(record7.cursor.key);
  const same = steps.filter((step) => step.question.id === question);
  return same.find((step) => step.member === here?.member) ?? same[0];
}
function changeAnswer(programme2, record7, wanted) {
  if (wanted.question !== void 0) {
    const step = stepFor(programme2, record7, wanted.question);
    if (step) return { record: go(programme2, record7, step.key), parts: [say("walk.again")] };
    return {
      record: record7,
      parts: [say("walk.not-on-path", { question: { text: `question/${wanted.question}/ask` } })]
    };
  }
  if (wanted.stop !== void 0) {
    const first = pathOf(programme2.checklist.index, record7.sheet).steps.find(
      (one) => one.question.stop === wanted.stop
    );
    if (first) return { record: go(programme2, record7, first.key), parts: [say("walk.again")] };
  }
  const stops = programme2.checklist.flow.stops.map((stop) => ({ text: `stop/${stop.id}/title` }));
  return { record: record7, parts: [say("walk.change-what", { stops: { list: stops, join: "or" } })] };
}
function removeMember(programme2, record7, wanted) {
  const { index } = programme2.checklist;
  const here = record7.cursor.key === void 0 ? void 0 : pathOf(index, record7.sheet).byKey.get(record7.cursor.key);
  const group = wanted.group ?? here?.group;
  const member = wanted.member ?? here?.member;
  const count2 = group === void 0 ? void 0 : index.countQuestions.get(group);
  if (group === void 0 || member === void 0 || !count2)
    return { record: record7, parts: [say("walk.remove-what")] };
  const members = membersOf(index, record7.sheet, group);
  if (!members.includes(member)) return { record: record7, parts: [say("walk.remove-what")] };
  const step = pathOf(index, record7.sheet).steps.find((one) => one.member === member && one.group === group);
  const values = step ? stepValues(programme2.checklist, record7, step) : {};
  const value2 = members.filter((one) => one !== member);
  const answer2 = { status: "given", value: value2 };
  return {
    record: advance(programme2, record7, { type: "ANSWER", key: count2.id, answer: answer2 }),
    parts: [say("walk.removed", values)]
  };
}

// src/conversation/mark-done.ts
function withoutDone({ done: _, earlier: __, ...record7 }) {
  return record7;
}

// src/conversation/not-understood.ts
function optionLabel(step, id) {
  const { question } = step;
  if (question.kind === "yesNo") return { text: `words/yesNo/${id}` };
  if (question.kind === "sides") return { text: `words/side/${id}` };
  const known = question.picks?.some((pick) => String(pick.value) === id) || optionIds(question).includes(id);
  return known ? { text: `option/${question.id}/${id}` } : id;
}
function measure(step, value2) {
  if (step?.question.kind === "length") return { metres: value2 };
  return step?.question.kind === "slope" ? { percent: value2 } : value2;
}
function problemValues(step, { problem, nearest: nearest2 }) {
  const values = {};
  const labels = step && nearest2 ? nearest2.map((id) => optionLabel(step, id)) : [];
  if (labels.length > 0) values["nearest"] = { list: labels, join: "or" };
  if ("sides" in problem) values["sides"] = { sides: problem.sides };
  if ("side" in problem) values["sides"] = { sides: [problem.side] };
  if ("last" in problem) Object.assign(values, { number: problem.number, last: problem.last });
  if ("count" in problem) Object.assign(values, { count: problem.count, max: problem.max });
  if (problem.code === "outside") {
    values["value"] = problem.value === void 0 ? { text: "words/that" } : measure(step, problem.value);
    if (problem.min !== void 0) values["min"] = measure(step, problem.min);
    if (problem.max !== void 0) values["max"] = measure(step, problem.max);
  }
  if ("said" in problem) values["said"] = problem.said;
  return values;
}
function phraseOf({ problem, nearest: nearest2 }) {
  if (problem.code === "outside") {
    const ends = `${problem.min === void 0 ? "" : "-min"}${problem.max === void 0 ? "" : "-max"}`;
    return `not-understood.outside${ends}`;
  }
  if (problem.code === "noMatch" && nearest2?.length) return "not-understood.did-you-mean";
  return `not-understood.${problem.code}`;
}
function notUnderstoodParts(step, reading) {
  const line2 = say(phraseOf(reading), problemValues(step, reading));
  const { kind } = step?.question ?? {};
  const measured4 = kind === "length" || kind === "slope" || kind === "number";
  return measured4 && reading.problem.code === "noMatch" ? [say("not-understood.notAMeasure")] : [line2];
}

// src/answers/reading/tokens.ts
var PIECE2 = /^-\d+(?:\.\d+)?|\d+\/\d+(?:th|nd|rd|st)?s?|\d+(?:st|nd|rd|th)(?![\p{L}\d])|\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?|\.\d+|[\p{L}\p{M}]+(?:'[\p{L}\p{M}]+)*|[½¼¾⅛⅜⅝⅞⅓⅔]|[^\s]/gu;
var MARKS = ",;:=.!?-/&+|";
var FRACTIONS = {
  "\xBD": "1/2",
  "\xBC": "1/4",
  "\xBE": "3/4",
  "\u215B": "1/8",
  "\u215C": "3/8",
  "\u215D": "5/8",
  "\u215E": "7/8",
  "\u2153": "1/3",
  "\u2154": "2/3"
};
var INCHES = /* @__PURE__ */ new Set(["in", "ins", "inch", "inches"]);
var FEET = /* @__PURE__ */ new Set(["ft", "feet", "foot"]);
function stemOf(word) {
  const { length } = word;
  if (length < 4 || word.charCodeAt(length - 1) !== 115) return word;
  if (word.endsWith("ss") || word.endsWith("us") || word.endsWith("is")) return word;
  if (length > 4 && word.endsWith("ies")) return `${word.slice(0, -3)}y`;
  return /(?:x|ch|sh|ss|zz)es$/.test(word) ? word.slice(0, -2) : word.slice(0, -1);
}
var token = (kind, text, start2, end, value2 = Number.NaN) => ({
  kind,
  text,
  stem: kind === "word" ? stemOf(text) : text,
  value: value2,
  start: start2,
  end
});
function unitWord(text, after, rest) {
  if (after === void 0 || after.kind !== "number" && after.kind !== "fraction") return void 0;
  if (text === '"' || INCHES.has(text) && !(text === "in" && /^ +[a-z]/.test(rest))) return "inch";
  return text === "'" || FEET.has(text) ? "foot" : void 0;
}
function parts(before, rest) {
  if (before?.kind === "number") return /^ ?\d/.test(rest);
  return before?.kind === "word" && before.text.length === 1 && /^ ?[a-z](?![a-z])/.test(rest);
}
function readPiece(text, start2, lower, tokens) {
  const end = start2 + text.length;
  const before = tokens.at(-1);
  const unit2 = unitWord(text, before, lower.slice(end, end + 3));
  if (unit2 !== void 0) return token("word", unit2, start2, end);
  const sign = FRACTIONS[text];
  if (sign !== void 0) return token("fraction", sign, start2, end);
  const first = text.charCodeAt(0);
  if (first >= 48 && first <= 57 || (first === 46 || first === 45) && text.length > 1) {
    if (text.includes("/")) return token("fraction", text.replace(/[a-z]+$/, ""), start2, end);
    const digits = /[a-z]/.test(text);
    const value2 = Number.parseFloat(text.replaceAll(",", ""));
    return token(digits ? "ordinal" : "number", text, start2, end, value2);
  }
  if (MARKS.includes(text)) {
    return text === "-" && !parts(before, lower.slice(end, end + 3)) ? void 0 : token("mark", text, start2, end);
  }
  return /^[\p{L}\p{M}]/u.test(text) ? token("word", squeeze(text.replaceAll("'", "")), start2, end) : void 0;
}
var squeeze = (word) => word.length > 3 ? word.replace(/(.)\1{2,}/gu, "$1") : word;
function tokenise(lower) {
  const tokens = [];
  for (const match of lower.matchAll(PIECE2)) {
    const found = readPiece(match[0], match.index, lower, tokens);
    if (found !== void 0) tokens.push(found);
  }
  return tokens;
}
function stemsOf(phrase) {
  const stems = tokenise(phrase.normalize("NFC").replace(/[‘’]/g, "'").toLowerCase()).filter((one) => one.kind !== "mark" || one.text === "&").map((one) => one.stem);
  return stems.length > 0 ? stems : [phrase.trim()];
}

// src/answers/reading/phrase-book.ts
function buildPhraseBook(phrases, join2 = (first) => first) {
  const known = /* @__PURE__ */ new Map();
  for (const [phrase, item] of phrases) {
    const stems = stemsOf(phrase);
    const key = stems.join(" ");
    const before = known.get(key);
    known.set(key, { stems, item: before === void 0 ? item : join2(before.item, item) });
  }
  const book = /* @__PURE__ */ new Map();
  for (const entry of known.values()) {
    const first = entry.stems[0] ?? "";
    const list4 = book.get(first);
    if (list4 === void 0) book.set(first, [entry]);
    else list4.push(entry);
  }
  for (const list4 of book.values()) list4.sort((a, b) => b.stems.length - a.stems.length);
  return book;
}
var LONG_PHRASE = 4;
var passes = (mark, length) => mark === "-" || mark === "," && length >= LONG_PHRASE;
function endOf(stems, tokens, from) {
  let at = from;
  for (const stem of stems) {
    if (at > from && stem !== "-" && passes(tokens[at]?.text, stems.length)) at += 1;
    if (tokens[at]?.stem !== stem) return void 0;
    at += 1;
  }
  return at;
}
function phraseAt(book, tokens, from) {
  const entries = book.get(tokens[from]?.stem ?? "");
  if (entries === void 0) return void 0;
  for (const entry of entries) {
    const next = endOf(entry.stems, tokens, from);
    if (next !== void 0) return { item: entry.item, next };
  }
  return void 0;
}

// src/answers/reading/talk-words.ts
var list2 = (words) => words.split("|");
var ENGLISH_TALK_WORDS = {
  fillers: list2(
    [
      "a|an|the|of|on|in|at|to|for|by|from|it|its|it is|they|they are|theyre|them|is|are|was|were|am|be|been|i|we|you|my|our|your|me|us",
      "have|has|had|got|ive got|we have|we have got|weve got|i have|there|there is|there are|theres|here|this|that|thats|these|those|that is|which|what",
      "house|home|side|sides|kind|kinds|type|types|sort|option|options|answer|choice|number|letter|pick|no.|please|thanks|thank you|whole|entire|part|corner|corners|any|over|near|beside|outside|about",
      "um|uh|hmm|er|well|oh|so|ok then|hi|hello|hey|just|only|really|actually|basically|mostly|mainly|pretty|very|quite|too|already|still|now|then|lol|haha",
      "see|i see|i can see|we can see|can see|call it|called|would be|id go with|ill go with|go with|lets say|put|mark|made of|made from|made out of|as well|as",
      "do|does|did|can|will|would|around|along|up|down|out|facing|toward|towards|em|one of|of them|of it|sorry|dear|honey|sir|maam|mate|most of it|most|more or less all"
    ].join("|")
  ),
  or: list2("or|or maybe|or else|either"),
  negators: list2(
    "not|isnt|arent|wasnt|dont|doesnt|didnt|havent|hasnt|aint|cant|cannot|wont|dont have|do not have|does not have|doesnt have|have no|has no|havent got|is not|are not|its not|theres no|there is no|there are no|not any|without any|never|no longer"
  ),
  absences: list2("no|not|without|nothing|none|never"),
  echoYes: list2(
    "it is|it does|they are|they do|there is|there are|i do|we do|we have|i have|it has|they have|does|some|some of it|some of them|a few|a little|a little bit|a bit|a couple|several|lots|plenty|many|loads|tons|a lot"
  ),
  echoNo: list2(
    "it isnt|it is not|its not|it doesnt|it does not|they arent|they are not|they dont|there isnt|there arent|there is not|there are not|i dont|we dont|we havent|we havent got|i havent|it hasnt|not any|not yet|not anymore|not at all|not really|not here|hardly any|hardly"
  ),
  guessYes: list2(
    "i think so|i believe so|i guess so|i suppose so|i would think so|id think so|think so|probably|probably so|most likely|very likely|likely|i expect so|should be|must be|looks like it|seems so|it seems so|seems like it|presumably|i assume so|i reckon so|i reckon|pretty sure|i hope so"
  ),
  guessNo: list2(
    "i dont think so|i do not think so|i dont believe so|i doubt it|doubt it|doubtful|unlikely|not likely|probably not|dont think so|i think not|i dont think|dont think|i hope not|hope not|i guess not|not that i know of|not that i know|not that i can see|not that i see|not as far as i can see|not as far as i know|i dont see any|dont see any|i cant see any|cant see any|shouldnt be"
  ),
  guess: list2(
    "i think|i guess|i believe|i suppose|i would say|id say|i would guess|id guess|guessing|my guess is|my guess|probably|most likely|likely|presumably|maybe|perhaps|possibly|could be|might be|must be|should be|looks like|it looks like|looks|seems|seems like|seems to be|it seems|i reckon|as far as i know|as far as i can tell|i assume|pretty sure|fairly sure|kind of|sort of|from memory|if i remember right"
  ),
  told: list2(
    "my husband says|my wife says|my partner says|my son says|my daughter says|my dad says|my mom says|my mum says|my neighbor says|my neighbour says|the neighbor says|the neighbour says|the landlord says|my landlord says|the owner says|she says|he says|they say|he said|she said|they said|they told me|i was told|we were told|was told|im told|i am told|told me|according to|the inspector said|the roofer said|the seller said|the realtor said|says|apparently|supposedly"
  ),
  rest: list2(
    "rest|the rest|rest of it|rest of them|all the rest|elsewhere|everywhere else|everything else|all else|all others|all the others|all other sides|the other sides|other sides|other side|the other side|others|the others|other ones|the other ones|other three|other two|the other three|the other two|remaining|remaining sides|the remaining sides|remainder|anywhere else|any other side|all the other sides"
  ),
  allSides: list2(
    "both|all|all of it|all of them|all sides|all the sides|all four|all four sides|all 4|all 4 sides|all three|all 3|all round|all around|all the way round|all the way around|all over|everywhere|everything|every side|every one|each|each side|each one|on every side|on all sides|on each side|whole house|the whole house|whole thing|entire house|the entire house|round the house|around the house|any side"
  ),
  bothSides: list2(
    "both sides|on both sides|at both sides|to both sides|the sides|on the sides|at the sides|either side|on either side|left and right both"
  ),
  notSides: list2(
    "right against|right next to|right next|right up against|right up to|right on it|right there|right here|right now|right away|left from|left behind|left there|left lying|left standing|left out|right above|right below|right under|right by it|right behind it|all right|alright|thats right|left over|left to do|right at the wall|right at the house"
  ),
  sideLetters: { front: "f", left: "l", back: "b", right: "r" },
  sideThings: list2(
    "door|porch|deck|yard|garden|wall|half|end|steps|stairs|entrance|patio|lawn|fence|gate|window|windows|gutter|gutters|eave|eaves|roof|bit|section|face"
  ),
  same: list2(
    "same|the same|same again|same as before|same thing|ditto|likewise|same for|same for the|same on|same with|as before"
  ),
  ordinals: list2("first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth"),
  last: list2("last|the last|last one|the last one|bottom one"),
  rangeTo: list2("-|to|through|thru|till|until"),
  polite: list2(
    "please|pls|thanks|thank you|can we|can i|can you|could we|could i|could you|may i|lets|let me|i want to|i wanna|i would like to|id like to|i need to|i have to|we want to|ok|okay|hey|hi|um|uh|well|oh|now|just|sorry|actually|so|and|then|first|wait|roofdown|a moment|for a moment|for now|a bit"
  ),
  aboutTarget: list2(
    "my|our|the|a|an|answer|answers|question|questions|about|on|for|of|to|that|what i said|what i told you|i said|one|ones|part|stop|section|page|bit|please|back|again|in|at|is|it|its|was|now|some|something|mistake"
  ),
  jump: list2(
    "go to|jump to|skip to|take me to|move to|go on to|on to|back to|go back to|return to|lets do|lets go to|do|continue with|start with|show me|switch to"
  ),
  decades: {
    twenties: "20s",
    thirties: "30s",
    forties: "40s",
    fifties: "50s",
    sixties: "60s",
    seventies: "70s",
    eighties: "80s",
    nineties: "90s"
  }
};

// src/answers/reading/mark-tokens.ts
var MARK_ROLES = {
  ",": "comma",
  ";": "stop",
  ".": "stop",
  "!": "stop",
  "?": "stop",
  "|": "stop",
  ":": "colon",
  "=": "colon",
  "-": "to",
  "/": "slash",
  "&": "and",
  "+": "and"
};
var NUMBERS = "zero|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve".split("|");
var numberWords = new Map(NUMBERS.map((word, value2) => [word, value2]));
var ordinals = new Map(ENGLISH_TALK_WORDS.ordinals.map((word, index) => [word, index + 1]));
var lastWords = new Set(ENGLISH_TALK_WORDS.last);
var decisive = /* @__PURE__ */ new Set(["option", "sides", "yes", "no"]);
function letterOf(token2, found) {
  if (token2.kind !== "word" || !/^[a-z]$/.test(token2.text)) return void 0;
  if (found !== void 0 && decisive.has(found.role)) return void 0;
  return { role: "letter", value: token2.text.charCodeAt(0) - 96 };
}
function plainMeaning(token2, prepared) {
  switch (token2.kind) {
    case "number": {
      const ids2 = prepared.hints.get(token2.stem);
      return ids2 === void 0 ? { role: "number", value: token2.value } : { role: "hint", ids: ids2 };
    }
    case "ordinal":
      return { role: "ordinal", value: token2.value };
    case "mark":
      return { role: MARK_ROLES[token2.text] ?? "filler" };
    case "fraction":
      return { role: "word" };
    case "word": {
      const ids2 = prepared.hints.get(token2.stem);
      if (ids2 !== void 0) return { role: "hint", ids: ids2 };
      const number10 = numberWords.get(token2.text);
      if (number10 !== void 0) return { role: "number", value: number10 };
      const place = ordinals.get(token2.text);
      if (place !== void 0) return { role: "ordinal", value: place };
      return lastWords.has(token2.text) ? { role: "ordinal", value: -1 } : { role: "word" };
    }
    default:
      return token2.kind;
  }
}
function besideWords(token2, at, count2) {
  if (token2.text === "?" && count2 > 1) return { role: "guess" };
  return token2.text === "n" && at > 0 && at < count2 - 1 ? { role: "and" } : void 0;
}
function endOfPhrase(phrase, tokens, prepared, at) {
  if (phrase === void 0) return at + 1;
  const last = phrase.next - 1;
  if (phrase.item.role !== "except" || last === at || tokens[last]?.text !== "not") return phrase.next;
  return phraseAt(prepared.book, tokens, last)?.item.role === "notSure" ? last : phrase.next;
}
function markTokens(tokens, prepared, corrections) {
  const marks = [];
  const read = corrections?.tokens ?? tokens;
  for (let at = 0; at < read.length; ) {
    const token2 = read[at];
    const phrase = phraseAt(prepared.book, read, at);
    const letter = phrase === void 0 || phrase.next === at + 1 ? letterOf(token2, phrase?.item) : void 0;
    const next = letter === void 0 ? endOfPhrase(phrase, read, prepared, at) : at + 1;
    const loose = corrections?.loose.get(token2);
    const meaning = besideWords(token2, at, read.length) ?? (loose !== void 0 ? { role: "hint", ids: loose } : letter ?? phrase?.item ?? plainMeaning(token2, prepared));
    const covered = read.slice(at, next);
    const last = covered.at(-1) ?? token2;
    marks.push({
      ...meaning,
      text: covered.length === 1 ? token2.text : covered.map((one) => one.text).join(" "),
      start: token2.start,
      end: last.end,
      ...corrections !== void 0 && covered.some((one) => corrections.misspelt.has(one)) ? { misspelt: true } : {}
    });
    at = next;
  }
  return marks;
}

// src/answers/reading/correct-spelling.ts
function slipsAllowed(length) {
  if (length < 4) return 0;
  return length <= 5 ? 1 : length <= 8 ? 2 : 3;
}
var startsAlike = (word, other) => word[0] === other[0] || word[1] === other[1] || word[0] === other[1] || word[1] === other[0];
var sorted = (word) => [...word].sort().join("");
function nearestWords(word, known) {
  let limit = slipsAllowed(word.length);
  let best2 = [];
  if (limit === 0) return best2;
  for (const candidate of known) {
    const most = Math.min(limit, Math.max(1, slipsAllowed(candidate.length)));
    if (Math.abs(candidate.length - word.length) > most || !startsAlike(word, candidate)) continue;
    const jumbled = word.length > 4 && word.length === candidate.length && sorted(word) === sorted(candidate);
    const distance = jumbled ? 1 : editDistance(word, candidate, most);
    if (distance > most) continue;
    if (distance < limit) {
      limit = distance;
      best2 = [candidate];
    } else best2.push(candidate);
  }
  return best2;
}
function startedBy(start2, words) {
  const found = [];
  for (const word of words) if (word.startsWith(start2)) found.push(word);
  return found;
}
var optionsOf = (words, prepared) => [
  ...new Set(words.flatMap((word) => prepared.hints.get(word) ?? []))
];
function correctSpelling(tokens, prepared, isWord) {
  const misspelt = /* @__PURE__ */ new Set();
  const loose = /* @__PURE__ */ new Map();
  const corrected = tokens.map((token2) => {
    if (token2.kind !== "word" || token2.text.length < 3) return token2;
    if (prepared.known.has(token2.stem) || numberWords.has(token2.text)) return token2;
    const cut = optionsOf(startedBy(token2.stem, prepared.hints.keys()), prepared);
    if (cut.length > 0) {
      loose.set(token2, cut);
      return token2;
    }
    const near = isWord(token2.text) ? [] : nearestWords(token2.stem, prepared.spelling);
    const [word] = near;
    if (word === void 0) return token2;
    const ids2 = optionsOf(near, prepared);
    if (near.length > 1 && ids2.length > 1) {
      loose.set(token2, ids2);
      misspelt.add(token2);
      return token2;
    }
    const right = { ...token2, text: word, stem: stemOf(word) };
    misspelt.add(right);
    return right;
  });
  return misspelt.size === 0 && loose.size === 0 ? void 0 : { tokens: corrected, misspelt, loose };
}
function suggestOptions(tokens, prepared, isWord) {
  const strange = tokens.filter(
    (token2) => token2.kind === "word" && token2.text.length > 2 && !prepared.known.has(token2.stem) && !isWord(token2.text)
  );
  const near = (stem) => [...prepared.hints.keys()].filter(
    (word) => startsAlike(stem, word) && editDistance(stem, word, 2) <= (word.length > 5 ? 2 : 1)
  );
  return optionsOf(
    strange.flatMap((token2) => near(token2.stem)),
    prepared
  ).slice(0, 3);
}
function misspellsSide(tokens, prepared) {
  return tokens.some(
    (token2) => token2.kind === "word" && token2.text.length > 3 && !prepared.known.has(token2.stem) && !numberWords.has(token2.text) && nearestWords(token2.stem, prepared.sideSpelling).length > 0
  );
}

// src/answers/reading/gather-hints.ts
var CLAUSE = /[,;:()]|\b(?:or|but|just|only)\b/;
var absences = new Set(ENGLISH_TALK_WORDS.absences);
function splitByAbsence(phrases) {
  const present = /* @__PURE__ */ new Set();
  const absent = /* @__PURE__ */ new Set();
  for (const clause of phrases.flatMap((phrase) => phrase.toLowerCase().split(CLAUSE))) {
    const stems = stemsOf(clause);
    const at = stems.findIndex((stem) => absences.has(stem));
    for (const [index, stem] of stems.entries()) (at >= 0 && index > at ? absent : present).add(stem);
  }
  return { present, absent: new Set([...absent].filter((stem) => !present.has(stem))) };
}
function gatherHints(options, common) {
  const hints = /* @__PURE__ */ new Map();
  const absent = /* @__PURE__ */ new Map();
  for (const option of options) {
    const words = splitByAbsence(option.phrases);
    for (const stem of /* @__PURE__ */ new Set([...words.present, ...words.absent])) {
      if (stem.length < 3 || common.has(stem) || stem.includes("/")) continue;
      const list4 = words.present.has(stem) ? hints : absent;
      list4.set(stem, [...list4.get(stem) ?? [], option.id]);
    }
  }
  return { hints, absent };
}

// src/answers/reading/wordings.ts
function wordings(text) {
  if (typeof text === "string") return [text];
  return [text.resident, text.volunteer, text.trainee].filter((one) => one !== void 0);
}

// src/answers/reading/prepare-question.ts
var measured2 = /* @__PURE__ */ new Set(["length", "number", "slope"]);
function headOf(label) {
  const head = label.split(/[:,(;]/)[0]?.trim() ?? "";
  return head.length > 2 && head.length < label.length ? head : void 0;
}
function withHeads(options, labels) {
  const keyOf2 = (phrase) => stemsOf(phrase).join(" ");
  const heads = labels.map((list4) => [...new Set(list4.flatMap((label) => headOf(label) ?? []))]);
  return options.map((option, at) => {
    const taken = new Set(
      options.flatMap(
        (other, index) => index === at ? [] : [...other.phrases, ...heads[index] ?? []].map(keyOf2)
      )
    );
    const own2 = (heads[at] ?? []).filter((head) => !taken.has(keyOf2(head)));
    return { ...option, phrases: [...option.phrases, ...own2] };
  });
}
function prepareOptions(question) {
  if (question.kind === "yesNo") return ["yes", "no"].map((id) => ({ id, alone: false, phrases: [] }));
  if (measured2.has(question.kind)) {
    const picks = (question.picks ?? []).map((pick) => {
      const bound = readBound(pick.value, question.kind);
      const value2 = typeof bound === "number" ? { value: bound } : {};
      return {
        id: String(pick.value),
        alone: false,
        phrases: [...wordings(pick.label), ...pick.words],
        ...value2
      };
    });
    return withHeads(
      picks,
      (question.picks ?? []).map((pick) => wordings(pick.label))
    );
  }
  const options = (question.options ?? []).map((option) => ({
    id: option.id,
    alone: option.alone === true,
    phrases: [option.id.replaceAll("-", " "), ...wordings(option.label), ...option.words]
  }));
  return withHeads(
    options,
    (question.options ?? []).map((option) => wordings(option.label))
  );
}
var all2 = (phrases, role) => phrases.map((phrase) => [phrase, { role }]);
function sidePhrases(words, talk, letters2) {
  const named = sideNames.flatMap(
    (side) => [...words.sides[side], ...letters2 ? [talk.sideLetters[side]] : []].filter((phrase) => phrase.length > 1 || letters2).map((phrase) => [phrase, { role: "sides", sides: [side] }])
  );
  const both = talk.bothSides.map((phrase) => [phrase, { role: "sides", sides: ["left", "right"] }]);
  return [
    ...all2(talk.notSides, "filler"),
    ...all2(talk.rest, "rest"),
    ...both,
    ...named,
    ...all2(talk.same, "same"),
    ...all2([...talk.allSides, ...words.all], "allSides")
  ];
}
function answerPhrases(words, talk) {
  return [
    ...all2(words.skip, "skip"),
    ...all2(talk.guessNo, "guessNo"),
    ...all2(talk.guessYes, "guessYes"),
    ...all2(talk.echoYes, "echoYes"),
    ...all2(talk.echoNo, "echoNo"),
    ...all2(words.notSure, "notSure"),
    ...all2(words.yes, "yes"),
    ...all2(words.no, "no"),
    ...all2(words.none, "none"),
    ...all2([...words.all, "both"], "all")
  ];
}
function joiningPhrases(words, talk) {
  return [
    ...all2(talk.negators, "negator"),
    ...all2(words.except, "except"),
    ...all2(words.and, "and"),
    ...all2(talk.or, "or"),
    ...all2(talk.guess, "guess"),
    ...all2(talk.told, "told"),
    ...all2(talk.rangeTo, "to"),
    ...all2(talk.fillers, "filler")
  ];
}
var sideWords = (words) => [...new Set(Object.values(words.sides).flat().flatMap(stemsOf))].filter((word) => word.length > 3);
function joinMeanings(first, second) {
  if (first.role !== "option" || second.role !== "option") return first;
  return { role: "option", ids: [.../* @__PURE__ */ new Set([...first.ids ?? [], ...second.ids ?? []])] };
}
function prepare(question, words) {
  const talk = ENGLISH_TALK_WORDS;
  const options = prepareOptions(question);
  const sideful = question.by === "side" || question.kind === "sides";
  const named = options.flatMap(
    (option) => option.phrases.map((phrase) => [phrase, { role: "option", ids: [option.id] }])
  );
  const letters2 = question.kind !== "choice" && question.kind !== "several";
  const answers2 = [...sideful ? sidePhrases(words, talk, letters2) : [], ...answerPhrases(words, talk)];
  const joining = joiningPhrases(words, talk);
  const common = new Set([...all2(words.no, "no"), ...joining].flatMap(([phrase]) => stemsOf(phrase)));
  const { hints, absent } = gatherHints(options, common);
  const phrases = [...named, ...answers2, ...joining];
  const least = question.kind === "yesNo" ? 3 : 4;
  const answerWords = answers2.flatMap(([phrase]) => stemsOf(phrase)).filter((word) => word.length >= least);
  return {
    question,
    options,
    noneId: (options.find((option) => option.alone) ?? options.find((option) => option.id === "none"))?.id,
    book: buildPhraseBook(phrases, joinMeanings),
    hints,
    absent,
    known: new Set(phrases.flatMap(([phrase]) => stemsOf(phrase))),
    spelling: [.../* @__PURE__ */ new Set([...hints.keys(), ...answerWords])].filter((word) => !common.has(word)),
    sideSpelling: sideful ? sideWords(words).filter((word) => !common.has(word)) : [],
    sideful
  };
}
var cache2 = /* @__PURE__ */ new WeakMap();
function prepareQuestion(question, words) {
  const known = cache2.get(words) ?? /* @__PURE__ */ new WeakMap();
  cache2.set(words, known);
  const found = known.get(question) ?? prepare(question, words);
  known.set(question, found);
  return found;
}

// src/answers/reading/mark.ts
var PARTING = /* @__PURE__ */ new Set(["comma", "stop", "colon", "slash", "and", "or", "to"]);
var QUIET = /* @__PURE__ */ new Set(["filler", "guess", "told"]);
var isParting = (mark) => PARTING.has(mark.role);
var isQuiet = (mark) => QUIET.has(mark.role);
var meaningOf = (marks) => marks.filter((mark) => !PARTING.has(mark.role) && !QUIET.has(mark.role));

// src/answers/reading/value-reading.ts
var noValue = (problem, nearest2) => nearest2 === void 0 || nearest2.length === 0 ? { kind: "noValue", problem } : { kind: "noValue", problem, nearest: nearest2 };
function howKnown(marks) {
  if (marks.some((mark) => mark.role === "told")) return { how: "told" };
  const unsure = marks.some(
    ({ role }) => role === "guess" || role === "guessYes" || role === "guessNo" || role === "notSure"
  );
  return unsure ? { how: "guess" } : {};
}
function statusOnly(meaning) {
  if (meaning.length === 0) return void 0;
  if (meaning.every((mark) => mark.role === "skip"))
    return { kind: "value", answer: { status: "skipped" }, strict: true };
  const open = meaning.filter((mark) => mark.role !== "letter");
  if (open.length > 0 && open.every((mark) => mark.role === "notSure"))
    return { kind: "value", answer: { status: "notSure" }, strict: true };
  return void 0;
}

// src/answers/reading/assign-sides.ts
var sameAnswer = (first, second) => first.status === second.status && (first.status !== "given" || second.status !== "given" || JSON.stringify(first.value) === JSON.stringify(second.value));
function joinNotes(values) {
  return Object.assign({}, ...values.map((value2) => value2.note ?? {}).reverse());
}
function assignSides(assignments, asked3) {
  const sides = {};
  const notAsked = /* @__PURE__ */ new Set();
  for (const { selection, value: value2 } of assignments) {
    for (const side of selection.sides) {
      const before = sides[side];
      if (!asked3.includes(side)) notAsked.add(side);
      else if (before !== void 0 && !sameAnswer(before, value2.answer))
        return noValue({ code: "sideTwice", side });
      else sides[side] = value2.answer;
    }
  }
  const wide = assignments.filter(({ selection }) => selection.all || selection.rest);
  const [first, ...others] = wide;
  if (first !== void 0 && others.some((one) => !sameAnswer(one.value.answer, first.value.answer)))
    return noValue({ code: "mixedSides" });
  if (first !== void 0) for (const side of asked3) sides[side] ??= first.value.answer;
  if (Object.keys(sides).length === 0 && notAsked.size > 0)
    return noValue({ code: "sideNotAsked", sides: [...notAsked] });
  return {
    sides,
    notAsked: [...notAsked],
    strict: assignments.every(({ value: value2 }) => value2.strict),
    note: joinNotes(assignments.map(({ value: value2 }) => value2))
  };
}

// src/answers/reading/pick-by-place.ts
var PLACES = /* @__PURE__ */ new Set(["number", "ordinal", "letter"]);
function placeOf(mark, count2) {
  const value2 = mark.value ?? Number.NaN;
  return value2 === -1 && mark.role === "ordinal" ? count2 - 1 : value2 - 1;
}
function namesPlaces(marks) {
  const meaning = marks.filter((mark) => !isParting(mark) && !isQuiet(mark));
  return meaning.length > 0 && meaning.every((mark) => PLACES.has(mark.role));
}
function readPlaces(marks, count2) {
  const places = [];
  let from;
  let range = false;
  const relevant = marks.filter(
    (mark) => PLACES.has(mark.role) || mark.role === "to" || mark.role === "comma"
  );
  const ordinal = relevant.some((mark) => mark.role === "ordinal");
  for (const mark of relevant) {
    if (mark.role === "to") range = from !== void 0;
    if (!PLACES.has(mark.role) || ordinal && mark.text === "one") continue;
    const place = placeOf(mark, count2);
    if (!Number.isInteger(place) || place < 0 || place >= count2)
      return noValue({ code: "noSuchNumber", number: mark.value ?? 0, last: count2 });
    if (range && from !== void 0 && place > from)
      for (let between = from + 1; between < place; between += 1) places.push(between);
    places.push(place);
    from = place;
    range = false;
  }
  return [...new Set(places)];
}

// src/answers/reading/number-words-of.ts
var cache3 = /* @__PURE__ */ new WeakMap();
function takenPhrases(base) {
  const { units, numbers: numbers4, multipliers, fractions, vague, ...lists } = base;
  const keyed2 = [numbers4, multipliers, fractions, vague].flatMap((table) => Object.keys(table));
  return /* @__PURE__ */ new Set([...keyed2, ...Object.values(units).flat(), ...Object.values(lists).flat()]);
}
function merge(words) {
  const base = ENGLISH_NUMBER_WORDS;
  const taken = takenPhrases(base);
  const added = (phrases) => phrases.filter((phrase) => !taken.has(phrase));
  const numbers4 = Object.fromEntries(Object.entries(words.numbers).filter(([word]) => !taken.has(word)));
  const units = Object.entries(base.units).map(([unit2, phrases]) => [
    unit2,
    [...phrases, ...added(words.units[unit2] ?? [])]
  ]);
  return {
    ...base,
    numbers: { ...base.numbers, ...numbers4 },
    units: Object.fromEntries(units),
    about: [...base.about, ...added(words.about)],
    lessThan: [...base.lessThan, ...added(words.lessThan)],
    moreThan: [...base.moreThan, ...added(words.moreThan)],
    between: [...base.between, ...added(words.between)]
  };
}
function numberWordsOf(words) {
  const found = cache3.get(words) ?? merge(words);
  cache3.set(words, found);
  return found;
}

// src/answers/reading/read-count.ts
var numberOf = (key) => Number.parseInt(key.slice(1), 10) || 0;
function countedMembers(count2, group, members, used = members) {
  const highest = Math.max(0, ...[...members, ...used].map(numberOf));
  const added = Array.from(
    { length: Math.max(0, count2 - members.length) },
    (_, index) => `${group.keyLetter}${highest + index + 1}`
  );
  return [...members.slice(0, count2), ...added];
}
function withoutGroupWords(text, group) {
  const names = /* @__PURE__ */ new Set([...stemsOf(group.one), ...stemsOf(group.many)]);
  return text.split(" ").filter((word) => !stemsOf(word).some((stem) => names.has(stem))).join(" ");
}
function countIn(marks, text, context, group) {
  const meaning = meaningOf(marks).filter((mark) => mark.role !== "letter");
  const numbers4 = meaning.filter((mark) => mark.role === "number");
  const none = meaning.some((mark) => ["none", "no", "echoNo", "negator"].includes(mark.role));
  if (none && numbers4.length === 0) return 0;
  const plain2 = withoutGroupWords(text, group);
  const read = readNumber(plain2, { unsafeEnd: "high", words: numberWordsOf(context.words) });
  if (read.kind !== "notANumber") return read.value;
  return numbers4.length === 1 && !none ? numbers4[0]?.value : void 0;
}
function readCount(marks, text, context) {
  const group = context.groups.find((one) => one.id === context.question?.counts);
  const count2 = group === void 0 ? void 0 : countIn(marks, text, context, group);
  if (group === void 0 || count2 === void 0) return noValue({ code: "noMatch" });
  if (!Number.isInteger(count2)) return noValue({ code: "notWhole", value: count2 });
  if (count2 > group.max) return noValue({ code: "tooMany", count: count2, max: group.max });
  const value2 = countedMembers(count2, group, context.members, context.usedMembers);
  const names = /* @__PURE__ */ new Set([...stemsOf(group.one), ...stemsOf(group.many)]);
  const strict = marks.every(
    (mark) => mark.role !== "word" || stemsOf(mark.text).every((stem) => names.has(stem))
  );
  return { kind: "value", answer: { status: "given", value: value2, ...howKnown(marks) }, strict };
}

// src/answers/reading/pick-options.ts
var DENYING = /* @__PURE__ */ new Set(["negator", "echoNo"]);
var WORDLESS = /* @__PURE__ */ new Set(["letter", "echoYes", "guessYes", "guessNo", "notSure", "yes"]);
function splitParts(marks) {
  const parts2 = [];
  let part = [];
  for (const mark of marks) {
    if (!isParting(mark)) {
      part.push(mark);
      continue;
    }
    if (part.length > 0) parts2.push(part);
    part = mark.role === "or" ? [mark] : [];
  }
  if (part.length > 0) parts2.push(part);
  return parts2;
}
var meet = (lists) => lists.reduce((common, list4) => common.filter((id) => list4.includes(id)));
function bestOf(hints) {
  const score = /* @__PURE__ */ new Map();
  for (const hint of hints) for (const id of hint.ids ?? []) score.set(id, (score.get(id) ?? 0) + 1);
  const most = Math.max(0, ...score.values());
  return [...score].filter(([, count2]) => count2 === most).map(([id]) => id);
}
function compound(named, prepared) {
  const stems = named.flatMap((mark) => stemsOf(mark.text));
  const lists = stems.flatMap((stem) => {
    const ids2 = prepared.hints.get(stem);
    return ids2 === void 0 ? [] : [ids2];
  });
  const common = lists.length > 1 ? meet(lists) : [];
  return common.length === 1 ? common[0] : void 0;
}
function settle(named, hints) {
  const ids2 = new Set(named.filter((mark) => mark.ids?.length === 1).flatMap((mark) => mark.ids ?? []));
  const open = /* @__PURE__ */ new Set();
  for (const mark of named) {
    const several = mark.ids ?? [];
    if (several.length < 2 || several.some((id) => ids2.has(id))) continue;
    const others = [...named, ...hints].filter((other) => other !== mark && (other.ids?.length ?? 0) > 0);
    const common = others.length === 0 ? several : meet([several, ...others.map((other) => other.ids ?? [])]);
    if (common.length === 1) ids2.add(common[0]);
    else for (const id of several) open.add(id);
  }
  return { ids: [...ids2], open: ids2.size > 0 ? [] : [...open] };
}
function absentIn(mark, prepared) {
  if (mark === void 0 || mark.role !== "hint" && mark.role !== "word") return void 0;
  const [stem] = stemsOf(mark.text);
  return stem === void 0 ? void 0 : prepared.absent.get(stem);
}
function sortMarks(part, prepared, deniedBefore) {
  const sorted3 = { named: [], hints: [], denied: [], missing: [], unknown: 0 };
  let denies = deniedBefore;
  for (const [index, mark] of part.entries()) {
    if (isParting(mark) || mark.role === "number" && mark.text === "one") continue;
    const next = part[index + 1];
    const absent = absentIn(mark, prepared);
    const named = next?.role === "option" || next?.role === "hint" || absentIn(next, prepared) !== void 0;
    const deniesNext = mark.text === "no" && named;
    if (absent !== void 0) {
      if (denies) sorted3.missing.push({ ...mark, ids: absent });
      else sorted3.unknown += 1;
    } else if (mark.role === "no" || deniesNext) denies = deniesNext;
    else if (DENYING.has(mark.role)) denies = true;
    else if (mark.role === "option" || mark.role === "hint") {
      const list4 = denies ? sorted3.denied : mark.role === "option" ? sorted3.named : sorted3.hints;
      list4.push(mark);
    } else if (isQuiet(mark) && sorted3.denied.length > 0) {
      denies = false;
    } else if (mark.role === "word" || mark.role === "number" || mark.role === "ordinal") sorted3.unknown += 1;
    else if (!isQuiet(mark) && !WORDLESS.has(mark.role)) denies = false;
  }
  return sorted3;
}
var nothingPicked = {
  ids: [],
  denied: [],
  open: [],
  loose: false,
  unknown: 0,
  none: false,
  all: false,
  either: false
};
function placeIn(part, prepared) {
  const [only] = part;
  const isPlace2 = part.length === 1 && only?.role === "number" && /^\d+$/.test(only.text);
  return isPlace2 ? prepared.options[(only.value ?? 0) - 1]?.id : void 0;
}
function pickPart(part, prepared, deniedBefore) {
  const either = part[0]?.role === "or";
  const place = placeIn(part, prepared);
  if (place !== void 0) return { ...nothingPicked, ids: [place] };
  const { named, hints, denied, missing, unknown } = sortMarks(part, prepared, deniedBefore && either);
  const settled = settle(named, hints);
  const one = settled.ids.length > 1 ? compound(named, prepared) : void 0;
  const has = (...roles) => part.some((mark) => roles.includes(mark.role));
  const nothing3 = named.length + hints.length + denied.length === 0;
  const saysNone = has("none", "no") || unknown === 0 && has("negator", "echoNo");
  const shared = {
    denied: denied.flatMap((mark) => mark.ids?.length === 1 ? mark.ids : []),
    none: nothing3 && saysNone && prepared.noneId !== void 0,
    all: has("all", "allSides"),
    either
  };
  if (nothing3 && missing.length > unknown) {
    const best3 = bestOf(missing);
    return best3.length === 1 ? { ids: best3, open: [], ...shared, loose: true, unknown } : { ids: [], open: best3, ...shared, loose: true, unknown };
  }
  if (named.length > 0 || hints.length === 0) {
    const stray = hints.filter((hint) => !hint.ids?.some((id) => settled.ids.includes(id))).length;
    const ids2 = one === void 0 ? settled.ids : [one];
    return { ...settled, ids: ids2, ...shared, loose: false, unknown: unknown + stray };
  }
  const best2 = bestOf(hints);
  const enough = hints.length > unknown;
  const found = enough && best2.length === 1 ? best2 : [];
  return { ids: found, open: found.length > 0 ? [] : best2, ...shared, loose: true, unknown };
}

// src/answers/reading/read-measure.ts
var MOST_METRES = 1e6;
var MOST_PERCENT2 = 1e5;
var LAST_YEAR = 2100;
var rangeOf = (low, high) => ({
  range: high === void 0 ? { low } : { low, high }
});
function measureLength(text, context, words) {
  const { question, units } = context;
  const unit2 = question?.bare?.[units] ?? (units === "metric" ? "m" : "ft");
  const read = readLength(text, {
    unit: unit2,
    unsafeEnd: question?.unsafeEnd ?? "low",
    mostMetres: MOST_METRES,
    words
  });
  if (read.kind === "notALength") return read;
  return {
    value: read.metres,
    approximate: read.approximate,
    ...read.kind === "range" ? rangeOf(read.lowMetres, read.highMetres) : {},
    ...read.assumedUnit === void 0 ? {} : { assumedUnit: read.assumedUnit }
  };
}
function measureSlope(text, words) {
  const read = readSlope(text, { mostPercent: MOST_PERCENT2, words });
  if (read.kind === "notASlope") return read;
  const assumed = read.assumedUnit === void 0 ? {} : { assumedUnit: read.assumedUnit };
  return { value: read.percent, approximate: read.approximate || read.kind === "range", ...assumed };
}
function yearOutside(text, unread2, words) {
  if (unread2.reason !== "tooSmall" && unread2.reason !== "tooLarge") return unread2;
  const read = readNumber(text, { unsafeEnd: "low", words });
  return read.kind === "notANumber" ? unread2 : { value: read.value, approximate: false };
}
var DECADE_WORD = new RegExp(`\\b(${Object.keys(ENGLISH_TALK_WORDS.decades).join("|")})\\b`, "gi");
function measureNumber(text, context, words) {
  const isYear = context.question?.role === "yearBuilt";
  const plain2 = text.replace(DECADE_WORD, (word) => ENGLISH_TALK_WORDS.decades[word.toLowerCase()] ?? word);
  const first = isYear ? { least: boundOf(context, "min") ?? 0 } : {};
  const read = isYear ? readYear(plain2, { unsafeEnd: "low", most: boundOf(context, "max") ?? LAST_YEAR, words, ...first }) : readNumber(plain2, { unsafeEnd: "high", words });
  if (read.kind === "notANumber") return isYear ? yearOutside(plain2, read, words) : read;
  const range = read.kind === "range" ? rangeOf(read.low, read.high) : {};
  return { value: read.value, approximate: read.approximate, ...range };
}
function boundOf({ question }, key) {
  const written = question?.[key];
  const bound = written === void 0 || question === void 0 ? void 0 : readBound(written, question.kind);
  return typeof bound === "number" ? bound : void 0;
}
function measure2(text, context) {
  const words = numberWordsOf(context.words);
  switch (context.question?.kind) {
    case "length":
      return measureLength(text, context, words);
    case "slope":
      return measureSlope(text, words);
    default:
      return measureNumber(text, context, words);
  }
}
function measureWithin(text, marks, context) {
  const read = measure2(text, context);
  const named = marks.filter((mark) => mark.role === "option");
  if ("value" in read || named.length === 0 || !marks.some((mark) => mark.role === "number")) return read;
  const rest = named.reduce((left, mark) => left.replace(mark.text, " "), text).replace(/^[\s,]+|[\s,]+$/g, "");
  const within2 = measure2(rest, context);
  return "value" in within2 ? within2 : read;
}
var EDGE = 1e-9;
function bounds(context) {
  const min = boundOf(context, "min");
  const max = boundOf(context, "max");
  return { ...min === void 0 ? {} : { min }, ...max === void 0 ? {} : { max } };
}
function outside(value2, context) {
  const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = bounds(context);
  if (value2 >= min - EDGE && value2 <= max + EDGE) return void 0;
  return noValue({ code: "outside", value: value2, ...bounds(context) });
}
function unread({ reason, detail }) {
  return noValue({ code: "notAMeasure", reason, ...detail === void 0 ? {} : { detail } });
}
function pickByPlace(marks, text, prepared) {
  const meaning = meaningOf(marks);
  const ordinal = meaning.find((mark) => mark.role === "ordinal");
  const [only, ...more] = ordinal ? meaning.filter((mark) => mark.text !== "one") : meaning;
  if (only === void 0 || more.length > 0) return void 0;
  const lettered = only.role === "letter" || only.role === "ordinal";
  const numbered = only.role === "number" && /^(?:option|pick|choice|number|no\.?|#)\s*\w+\W*$|^\w+\)$/i.test(text);
  if (!lettered && !numbered) return void 0;
  const place = only.value === -1 ? prepared.options.length : only.value ?? 0;
  return prepared.options[place - 1]?.value;
}
function pickByLook(marks, prepared) {
  const parts2 = splitParts(marks).map((part) => pickPart(part, prepared, false));
  const ids2 = [...new Set(parts2.flatMap((part) => part.ids))];
  const [only] = ids2;
  if (only === void 0 || parts2.some((part) => part.denied.length > 0)) return void 0;
  if (ids2.length > 1) return noValue({ code: "ambiguous" }, ids2);
  return prepared.options.find((option) => option.id === only)?.value;
}
function wholePick(marks) {
  const meaning = meaningOf(marks);
  return meaning.length === 1 && meaning[0]?.role === "option" && meaning[0].ids?.length === 1;
}
function readMeasureValue(marks, text, prepared, context) {
  const said = text.trim();
  const given2 = (value2, note, how) => ({
    kind: "value",
    answer: { status: "given", value: value2, said, ...how },
    strict: true,
    ...Object.keys(note).length === 0 ? {} : { note }
  });
  const placed = pickByPlace(marks, said, prepared);
  if (placed !== void 0) return given2(placed, {}, {});
  if (wholePick(marks)) {
    const look2 = pickByLook(marks, prepared);
    if (typeof look2 === "number") return given2(look2, {}, howKnown(marks));
  }
  const read = measureWithin(said, marks, context);
  if ("value" in read) {
    const note = {
      ...read.assumedUnit === void 0 ? {} : { assumedUnit: read.assumedUnit },
      ...read.range === void 0 ? {} : { range: read.range },
      ...read.approximate ? { approximate: true } : {}
    };
    return outside(read.value, context) ?? given2(read.value, note, howKnown(marks));
  }
  const look = pickByLook(marks, prepared);
  const guessed = marks.some((mark) => mark.misspelt) ? { guessed: "from misspelling" } : {};
  if (typeof look === "number") return given2(look, guessed, howKnown(marks));
  return look ?? unread(read);
}

// src/answers/reading/read-options.ts
function pickParts(marks, prepared) {
  let denied = false;
  return splitParts(marks).filter((part) => !part.every(isQuiet)).map((part) => {
    const picked = pickPart(part, prepared, denied);
    denied = picked.denied.length > 0;
    return picked;
  });
}
var unique = (ids2) => [...new Set(ids2)];
var optionIds2 = (prepared) => prepared.options.map((one) => one.id);
var together = (prepared) => prepared.options.filter((option) => !option.alone && option.id !== prepared.noneId).map((one) => one.id);
function withoutNames(parts2, prepared) {
  const strict = parts2.every((part) => part.unknown === 0);
  const denied = unique(parts2.flatMap((part) => part.denied));
  if (denied.length > 0) {
    const left = optionIds2(prepared).filter((id) => !denied.includes(id));
    return left.length === 1 && prepared.options.length === 2 ? { ids: left, strict } : noValue({ code: "onlyNegated" }, left);
  }
  const open = unique(parts2.flatMap((part) => part.open));
  if (open.length > 0) return noValue({ code: open.length > 1 ? "ambiguous" : "noMatch" }, open);
  if (parts2.some((part) => part.none) && prepared.noneId !== void 0 && parts2.every((p) => p.unknown <= 3))
    return { ids: [prepared.noneId], strict };
  return noValue({ code: "noMatch" });
}
function chooseOne(marks, prepared) {
  const parts2 = pickParts(marks, prepared);
  const firm = parts2.filter((part) => !part.loose && part.ids.length > 0);
  const counted = firm.length > 0 ? firm : parts2;
  const ids2 = unique(counted.flatMap((part) => part.ids));
  const strict = parts2.every((part) => part.unknown === 0 && !part.loose && part.open.length === 0);
  if (ids2.length === 1) return { ids: ids2, strict };
  if (ids2.length === 0) return withoutNames(parts2, prepared);
  return noValue({ code: parts2.some((part) => part.either) ? "ambiguous" : "oneOnly" }, ids2);
}
function chooseSeveral(marks, prepared) {
  const parts2 = pickParts(marks, prepared);
  const ids2 = unique(parts2.flatMap((part) => part.ids));
  const strict = parts2.every((part) => part.unknown === 0 && !part.loose);
  if (ids2.length === 0) {
    const everything = together(prepared);
    const both = marks.some((mark) => mark.text === "both") && everything.length !== 2;
    const denied = parts2.some((part) => part.denied.length + part.unknown > 0);
    if (parts2.some((part) => part.all) && !both && !denied) return { ids: everything, strict };
    return withoutNames(parts2, prepared);
  }
  const open = unique(parts2.flatMap((part) => part.ids.length === 0 ? part.open : []));
  if (open.length > 0) return noValue({ code: "ambiguous" }, [...ids2, ...open]);
  const lost = parts2.some((part) => part.ids.length + part.denied.length === 0 && part.unknown > 0);
  if (lost) return noValue({ code: "noMatch" }, ids2);
  if (parts2.some((part) => part.either) && ids2.length > 1) return noValue({ code: "ambiguous" }, ids2);
  const alone2 = prepared.options.filter((option) => option.alone && ids2.includes(option.id));
  if (alone2.length > 0 && ids2.length > 1) return noValue({ code: "standsAlone" }, ids2);
  return { ids: optionIds2(prepared).filter((id) => ids2.includes(id)), strict };
}
function byPlace(marks, prepared, many) {
  const places = readPlaces(marks, prepared.options.length);
  const listed = marks.every((mark) => mark.role !== "number" || /^-?\d/.test(mark.text));
  const mixed = marks.some((mark) => mark.role === "letter") && marks.some((mark) => mark.role === "number");
  if ("kind" in places) return listed && !mixed ? places : noValue({ code: "noMatch" });
  const ids2 = places.flatMap((place) => prepared.options[place]?.id ?? []);
  if (!many && ids2.length > 1) return noValue({ code: "oneOnly" }, ids2);
  const alone2 = prepared.options.some((option) => option.alone && ids2.includes(option.id));
  if (alone2 && ids2.length > 1) return noValue({ code: "standsAlone" }, ids2);
  return { ids: optionIds2(prepared).filter((id) => ids2.includes(id)), strict: true };
}
function choose(marks, prepared, many) {
  if (namesPlaces(marks)) return byPlace(marks, prepared, many);
  return many ? chooseSeveral(marks, prepared) : chooseOne(marks, prepared);
}
function withExcept(before, after, prepared) {
  const left = splitParts(before).map((part) => pickPart(part, prepared, false));
  const whole = left.some((part) => part.all) || left.every((part) => part.unknown === 0 && part.ids.length === 0);
  const none = (part) => part.ids.length > 0 && part.ids.every((id) => id === prepared.noneId);
  const only = left.some((part) => part.none || none(part));
  const named = left.some((part) => part.ids.length > 0 && !none(part));
  if (named || !(whole || only)) {
    const both = chooseSeveral(before, prepared);
    return "kind" in both ? chooseSeveral([...before, ...after], prepared) : both;
  }
  const out = choose(after, prepared, true);
  if ("kind" in out) return out;
  if (!whole || only) return out;
  const ids2 = together(prepared).filter((id) => !out.ids.includes(id));
  return ids2.length === 0 ? noValue({ code: "noMatch" }) : { ids: ids2, strict: out.strict };
}
function readOptions(marks, prepared, many) {
  const at = many ? marks.findIndex((mark) => mark.role === "except") : -1;
  const picked = at < 0 ? choose(marks, prepared, many) : withExcept(marks.slice(0, at), marks.slice(at + 1), prepared);
  if ("kind" in picked) return picked;
  const value2 = many ? picked.ids : picked.ids[0] ?? "";
  const misspelt = marks.some((mark) => mark.misspelt);
  return {
    kind: "value",
    answer: { status: "given", value: value2, ...howKnown(marks) },
    strict: picked.strict,
    ...misspelt ? { note: { guessed: "from misspelling" } } : {}
  };
}

// src/answers/reading/read-yes-no.ts
var YES = /* @__PURE__ */ new Set(["yes", "guessYes"]);
var NO = /* @__PURE__ */ new Set(["no", "guessNo", "none"]);
var SOFT_YES = /* @__PURE__ */ new Set(["echoYes", "all"]);
var SOFT_NO = /* @__PURE__ */ new Set(["echoNo", "negator"]);
var asked = /* @__PURE__ */ new WeakMap();
function askedWords(prepared) {
  const { ask, good, role } = prepared.question;
  const texts = role === "danger" ? [ask, good, "danger"] : [ask];
  const found = asked.get(prepared) ?? new Set(texts.flatMap(wordings).flatMap(stemsOf));
  asked.set(prepared, found);
  return found;
}
function foreignWords(marks, prepared) {
  const known = askedWords(prepared);
  return marks.filter((mark) => mark.role === "word" && !stemsOf(mark.text).some((stem) => known.has(stem))).length;
}
function sideOf(meaning, yes, no) {
  const saysYes = meaning.some((mark) => yes.has(mark.role));
  const saysNo = meaning.some((mark) => no.has(mark.role));
  if (saysYes && saysNo) return "both";
  return saysYes ? "yes" : saysNo ? "no" : void 0;
}
function standsClear(meaning, marks, prepared) {
  const outright = (mark) => mark !== void 0 && (YES.has(mark.role) || NO.has(mark.role));
  if (meaning.every((mark) => mark.role !== "word")) return true;
  const first = meaning[0];
  if (!outright(first)) return outright(meaning.at(-1));
  if (first?.text !== "no") return true;
  const follower = marks[marks.indexOf(first) + 1];
  return follower?.role !== "word" || stemsOf(follower.text).some((stem) => askedWords(prepared).has(stem));
}
function answer(side, marks, strict) {
  const misspelt = marks.some((mark) => mark.misspelt);
  return {
    kind: "value",
    answer: { status: "given", value: side, ...howKnown(marks) },
    strict,
    ...misspelt ? { note: { guessed: "from misspelling" } } : {}
  };
}
function softAnswer(meaning, marks, prepared) {
  const words = meaning.filter((mark) => mark.role === "word").length;
  const side = sideOf(meaning, SOFT_YES, SOFT_NO);
  const leads = meaning[0] !== void 0 && (SOFT_YES.has(meaning[0].role) || SOFT_NO.has(meaning[0].role));
  if (side === "both") return noValue({ code: "ambiguous" }, ["yes", "no"]);
  if (side === void 0 || !leads || foreignWords(meaning, prepared) > 0)
    return noValue({ code: "noMatch" });
  return answer(side, marks, words === 0);
}
function readYesNo(marks, prepared) {
  if (namesPlaces(marks)) return byPlace2(marks);
  const meaning = meaningOf(marks).filter((mark) => mark.role !== "letter" && mark.role !== "number");
  const side = sideOf(meaning, YES, NO);
  if (side === "both") {
    const plain2 = sideOf(meaning, /* @__PURE__ */ new Set(["yes"]), /* @__PURE__ */ new Set(["no", "none"]));
    return plain2 === "yes" || plain2 === "no" ? answer(plain2, marks, true) : noValue({ code: "ambiguous" }, ["yes", "no"]);
  }
  if (side === void 0) return softAnswer(meaning, marks, prepared);
  if (marks.some((mark, at) => mark.role === "yes" && SOFT_NO.has(marks[at + 1]?.role ?? "filler")))
    return noValue({ code: "noMatch" }, ["yes", "no"]);
  const doubted = meaning.some((mark) => mark.role === "notSure");
  const words = meaning.some((mark) => mark.role === "word");
  if (doubted && words) return { kind: "value", answer: { status: "notSure" }, strict: false };
  return standsClear(meaning, marks, prepared) ? answer(side, marks, !words) : noValue({ code: "noMatch" }, ["yes", "no"]);
}
function byPlace2(marks) {
  const [first] = meaningOf(marks);
  if (first?.role === "number" && (first.value === 0 || !/^\d/.test(first.text)))
    return answer(first.value === 0 ? "no" : "yes", marks, true);
  const places = readPlaces(marks, 2);
  if (!Array.isArray(places)) return places;
  if (places.length !== 1) return noValue({ code: "oneOnly" }, ["yes", "no"]);
  return answer(places[0] === 0 ? "yes" : "no", marks, true);
}

// src/answers/reading/read-value.ts
function readGiven(part, prepared, context) {
  const { marks, text } = part;
  switch (prepared.question.kind) {
    case "choice":
      return readOptions(marks, prepared, false);
    case "several":
      return readOptions(marks, prepared, true);
    case "yesNo":
    case "sides":
      return readYesNo(marks, prepared);
    case "length":
    case "number":
    case "slope":
      return readMeasureValue(marks, text, prepared, context);
    case "count":
      return readCount(marks, text, context);
    case "text":
      return { kind: "value", answer: { status: "given", value: text }, strict: true };
    default:
      return prepared.question.kind;
  }
}
function readHedged(part, prepared, context) {
  const hedges = part.marks.filter((mark) => mark.role === "notSure");
  const marks = part.marks.filter((mark) => mark.role !== "notSure");
  let { text } = part;
  for (const hedge of hedges) text = text.replace(hedge.text, " ");
  const read = readGiven({ marks, text: text.replace(/^[\s,;.-]+|[\s,;.-]+$/g, "") }, prepared, context);
  const chosen = prepared.question.kind === "choice" || prepared.question.kind === "several";
  if (read.kind === "value" && (read.strict || chosen) && read.answer.status === "given")
    return { ...read, answer: { ...read.answer, how: read.answer.how ?? "guess" } };
  return { kind: "value", answer: { status: "notSure" }, strict: false };
}
function readValue(part, prepared, context) {
  const meaning = meaningOf(part.marks);
  const status = statusOnly(meaning);
  if (status !== void 0) return status;
  if (meaning.length === 0) return readBare(part, prepared, context);
  if (meaning.some((mark) => mark.role === "notSure")) return readHedged(part, prepared, context);
  return readGiven(part, prepared, context);
}
function readBare(part, prepared, context) {
  const { kind } = prepared.question;
  return kind === "length" || kind === "slope" || kind === "number" || kind === "text" ? readGiven(part, prepared, context) : noValue({ code: "noMatch" });
}

// src/answers/reading/read-side-values.ts
var everySide = { sides: [], all: true, rest: false };
var otherSides = { sides: [], all: false, rest: true };
var plainYesNo = (value2, how = {}) => ({
  kind: "value",
  answer: { status: "given", value: value2, ...how },
  strict: true
});
function valueBefore(before) {
  if (before === void 0) return void 0;
  if (before.status !== "bySide") return before;
  const given2 = Object.values(before.sides).filter((answer2) => answer2.status === "given");
  const [first] = given2;
  return first !== void 0 && given2.every((one) => JSON.stringify(one.value) === JSON.stringify(first.value)) ? first : void 0;
}
function readPart(part, reader, previous) {
  const meaning = meaningOf(part.marks);
  if (meaning.length > 0 && meaning.every((mark) => mark.role === "same")) {
    if (previous !== void 0) return previous;
    const before = valueBefore(reader.context.before);
    return before === void 0 ? noValue({ code: "valueMissing", sides: reader.asked }) : { kind: "value", answer: before, strict: true };
  }
  return readValue(part, reader.prepared, reader.context);
}
function readPairs(clauses, reader) {
  const assignments = [];
  for (const { selection, part } of clauses.pairs) {
    const value2 = readPart(part, reader, assignments.at(-1)?.value);
    if (value2.kind === "noValue") return value2;
    assignments.push({ selection, value: value2 });
  }
  return assignments;
}
function readSpread(clauses, reader, sided) {
  const { asked: asked3, prepared } = reader;
  let parts2 = clauses.spread;
  const [only] = parts2;
  const numbers4 = only?.marks.filter((mark) => mark.role === "number") ?? [];
  const inTurn = prepared.question.kind === "choice" && only !== void 0 && namesPlaces(only.marks);
  if (parts2.length === 1 && inTurn && numbers4.length === asked3.length && numbers4.length > 1)
    parts2 = numbers4.map((mark) => ({ marks: [mark], text: mark.text }));
  if (!sided && parts2.length > 1 && parts2.length !== asked3.length) return tooManyValues(parts2, reader);
  if (sided && parts2.length > 1) return noValue({ code: "mixedSides" });
  const assignments = [];
  for (const [index, part] of parts2.entries()) {
    const value2 = readPart(part, reader, assignments.at(-1)?.value);
    if (value2.kind === "noValue") return value2;
    const side = asked3[index];
    const own2 = parts2.length > 1 && side !== void 0 ? { sides: [side], all: false, rest: false } : otherSides;
    assignments.push({ selection: own2, value: value2 });
  }
  return assignments;
}
function tooManyValues(parts2, reader) {
  const marks = parts2.flatMap((part) => [
    ...part.marks,
    { role: "comma", text: ",", start: 0, end: 0 }
  ]);
  const value2 = readValue(
    { marks, text: parts2.map((part) => part.text).join(", ") },
    reader.prepared,
    reader.context
  );
  return value2.kind === "value" ? [{ selection: otherSides, value: value2 }] : value2;
}
function readListed(clauses, reader, sided) {
  const { listed } = clauses;
  if (listed === void 0) return [];
  const marks = reader.marks.filter((mark) => mark.role !== "notSure");
  if (reader.rules.namingIsYes) return [{ selection: listed, value: plainYesNo("yes", howKnown(marks)) }];
  const before = valueBefore(reader.context.before);
  if (before !== void 0)
    return [{ selection: listed, value: { kind: "value", answer: before, strict: true } }];
  return sided ? [] : noValue({ code: "valueMissing", sides: listed.all ? reader.asked : listed.sides });
}

// src/answers/reading/side-items.ts
function selectionOf(mark, numbered) {
  const none = { sides: [], all: false, rest: false };
  if (mark.role === "allSides" || mark.role === "all") return { ...none, all: true };
  if (mark.role === "rest") return { ...none, rest: true };
  if (mark.role === "sides") return { ...none, sides: mark.sides ?? [] };
  if (mark.role !== "number" && mark.role !== "ordinal") return void 0;
  const side = numbered[(mark.value ?? 0) - 1];
  return side === void 0 ? void 0 : { ...none, sides: [side] };
}
function numberedSides(marks, prepared, asked3) {
  const { kind } = prepared.question;
  if (kind !== "yesNo" && kind !== "sides") return [];
  return marks.some((mark) => mark.role === "sides" || mark.role === "word") ? [] : asked3;
}
function keepsBoth(mark, marks, asked3) {
  if (mark.text !== "both" || mark.role !== "allSides") return true;
  return asked3.length === 2 && !marks.some((one) => one.role === "sides");
}
function joinSelections(first, second) {
  const sides = [.../* @__PURE__ */ new Set([...first.sides, ...second.sides])];
  return {
    sides,
    all: sides.length === 0 && (first.all || second.all),
    rest: first.rest || second.rest
  };
}
var LOOSE_ENDS = new Set("on at in for along around by of to the is are".split(" "));
function isLooseEnd(marks, at, lower) {
  const mark = marks[at];
  const inches = mark.text === "in" && marks[at - 1]?.role !== "filler" && !/^ (?:the|my|our) /.test(lower.slice(mark.end));
  return isParting(mark) || mark.role === "filler" && LOOSE_ENDS.has(mark.text) && !inches;
}
function valuePart(marks, lower) {
  let from = 0;
  let to = marks.length;
  while (from < to && isParting(marks[from]) && marks[from]?.role !== "to") from += 1;
  while (to > from && isLooseEnd(marks, to - 1, lower)) to -= 1;
  const kept = marks.slice(from, to);
  const first = kept[0];
  const last = kept.at(-1);
  if (first === void 0 || last === void 0 || kept.every(isQuiet)) return void 0;
  const before = /[~≈<>#]\s*$/.exec(lower.slice(0, first.start))?.[0].length ?? 0;
  const after = /^["'%°]+/.exec(lower.slice(last.end))?.[0].length ?? 0;
  return { marks: kept, text: lower.slice(first.start - before, last.end + after) };
}
function insideNumber(mark, lower) {
  return mark.role === "comma" && /\d$/.test(lower.slice(0, mark.start)) && /^\d/.test(lower.slice(mark.end)) && !/\d,\d+,$/.test(lower.slice(0, mark.end)) && !/^\d+,\d/.test(lower.slice(mark.end));
}
var measured3 = /* @__PURE__ */ new Set(["length", "number", "slope"]);
var EMPTY_YES = /* @__PURE__ */ new Set(["yes", "echoYes", "guessYes"]);
function addsNothing(mark, at, marks, namingIsYes) {
  const beside = [marks[at - 1], marks[at + 1]].some(
    (one) => one?.role === "allSides" || one?.role === "all"
  );
  return mark.role === "same" && beside || !namingIsYes && EMPTY_YES.has(mark.role);
}
function partingUse(mark, first, isMeasure, lower) {
  if (mark.role === "except") return "except";
  if (mark.role === "stop") return "break";
  if (mark.role === "comma" && !(isMeasure && insideNumber(mark, lower))) return "break";
  return first && (isParting(mark) || mark.role === "filler" && !isMeasure) ? "drop" : void 0;
}
function sideItems(marks, lower, prepared, asked3) {
  const items2 = [];
  const { kind } = prepared.question;
  const namingIsYes = kind === "yesNo" || kind === "sides";
  const numbered = numberedSides(marks, prepared, asked3);
  let run = [];
  const flush = () => {
    const part = run.length > 0 ? valuePart(run, lower) : void 0;
    if (part !== void 0) items2.push({ type: "value", part });
    run = [];
  };
  const addSides = (selection) => {
    const last = items2.at(-1);
    flush();
    if (last?.type === "sides" && last === items2.at(-1) && last.selection.rest === selection.rest)
      items2[items2.length - 1] = { type: "sides", selection: joinSelections(last.selection, selection) };
    else items2.push({ type: "sides", selection });
  };
  for (const [at, mark] of marks.entries()) {
    if (!keepsBoth(mark, marks, asked3) || addsNothing(mark, at, marks, namingIsYes)) continue;
    const selection = selectionOf(mark, numbered);
    const use = partingUse(mark, run.length === 0, measured3.has(kind), lower);
    if (selection !== void 0) addSides(selection);
    else if (use === "break" || use === "except") {
      flush();
      items2.push(use === "except" ? { type: "except" } : { type: "break", firm: mark.role === "stop" });
    } else if (use === void 0) run.push(mark);
  }
  flush();
  return items2;
}

// src/answers/reading/side-clauses.ts
function joinParts(first, second) {
  const comma = { role: "comma", text: ",", start: 0, end: 0 };
  return { marks: [...first.marks, comma, ...second.marks], text: `${first.text}, ${second.text}` };
}
var noise = (part) => part.marks.every(({ role }) => role === "word" || role === "letter" || role === "filler");
function segmentsOf(items2) {
  const segments = [[]];
  for (const item of items2) {
    if (item.type === "sides" || item.type === "value") segments.at(-1)?.push(item);
    else segments.push([]);
  }
  return segments.filter((segment) => segment.length > 0);
}
function pairsIn(segment) {
  const ends = [segment[0], segment.at(-1)];
  const odd = segment.length % 2 === 1;
  const spare = odd ? ends.findIndex((end) => end?.type === "value" && noise(end.part)) : -1;
  if (odd && spare < 0) return void 0;
  const kept = odd ? spare === 0 ? segment.slice(1) : segment.slice(0, -1) : segment;
  const pairs = [];
  for (let at = 0; at + 1 < kept.length; at += 2) {
    const [first, second] = [kept[at], kept[at + 1]];
    if (first?.type === "value" && second?.type === "sides")
      pairs.push({ selection: second.selection, part: first.part, valueFirst: true });
    else if (first?.type === "sides" && second?.type === "value")
      pairs.push({ selection: first.selection, part: second.part, valueFirst: false });
  }
  return pairs;
}
function takeSides(state, selection) {
  const value2 = state.spread.pop();
  const last = state.pairs.at(-1);
  if (value2 !== void 0) state.pairs.push({ selection, part: value2, valueFirst: true });
  else if (last?.valueFirst && state.listed === void 0)
    state.pairs[state.pairs.length - 1] = { ...last, selection: joinSelections(last.selection, selection) };
  else state.listed = state.listed === void 0 ? selection : joinSelections(state.listed, selection);
}
function takeValue(state, part, rules) {
  const last = state.pairs.at(-1);
  const before = state.spread.at(-1);
  if (state.listed !== void 0) {
    state.pairs.push({ selection: state.listed, part, valueFirst: false });
    state.listed = void 0;
  } else if (before !== void 0 && (rules.valuesAddUp || rules.joins(before, part)))
    state.spread[state.spread.length - 1] = joinParts(before, part);
  else if (last === void 0 || before !== void 0) state.spread.push(part);
  else if (!last.valueFirst && (rules.valuesAddUp || rules.joins(last.part, part)))
    state.pairs[state.pairs.length - 1] = { ...last, part: joinParts(last.part, part) };
  else return noise(part);
  return true;
}
function takePairs(state, pairs, rules) {
  const [first, ...more] = pairs;
  if (first === void 0) return;
  let joined = first;
  const before = state.spread.at(-1);
  if (first.valueFirst && before !== void 0 && (rules.valuesAddUp || rules.joins(before, first.part))) {
    state.spread.pop();
    joined = { ...first, part: joinParts(before, first.part) };
  }
  if (!first.valueFirst && state.listed !== void 0 && !rules.namingIsYes) {
    joined = { ...first, selection: joinSelections(state.listed, first.selection) };
    state.listed = void 0;
  }
  state.pairs.push(joined, ...more);
}
function readClauses(items2, rules) {
  const state = { pairs: [], listed: void 0, spread: [] };
  for (const segment of segmentsOf(items2)) {
    const [only] = segment;
    if (segment.length > 1) {
      const pairs = pairsIn(segment);
      if (pairs === void 0) return void 0;
      takePairs(state, pairs, rules);
    } else if (only?.type === "sides") takeSides(state, only.selection);
    else if (only?.type === "value" && !takeValue(state, only.part, rules)) return void 0;
  }
  return state;
}

// src/answers/reading/read-by-side.ts
function othersAreNo(clauses, assigned, reader) {
  if (!reader.rules.namingIsYes) return false;
  const says = (wanted) => assigned.some(({ value: { answer: answer2 } }) => answer2.status === "given" && answer2.value === wanted);
  const saysYes = says("yes");
  const naming = clauses.listed !== void 0 || clauses.pairs.some((pair) => pair.valueFirst) && !says("no");
  const wide = assigned.some(({ selection }) => selection.all || selection.rest);
  return naming && saysYes && !wide;
}
function readPlain(items2, reader, fill = true) {
  const clauses = readClauses(items2, reader.rules);
  if (clauses === void 0) return noValue({ code: "mixedSides" });
  const pairs = readPairs(clauses, reader);
  if ("kind" in pairs) return pairs;
  const sided = pairs.length > 0 || clauses.listed !== void 0;
  const spread = readSpread(clauses, reader, sided);
  if ("kind" in spread) return spread;
  const listed = readListed(clauses, reader, pairs.length + spread.length > 0);
  if ("kind" in listed) return listed;
  const all3 = [...pairs, ...listed, ...spread];
  return fill && othersAreNo(clauses, all3, reader) ? [...all3, { selection: otherSides, value: plainYesNo("no") }] : all3;
}
var opposite = ({ answer: answer2 }) => plainYesNo(answer2.status === "given" && answer2.value === "yes" ? "no" : "yes");
function readException(before, after, reader) {
  const whole = before.length === 0 ? [{ selection: everySide, value: plainYesNo("yes") }] : readPlain(before, reader, false);
  if ("kind" in whole) return whole;
  const clauses = readClauses(after, reader.rules);
  const base = whole[0];
  if (clauses === void 0 || base === void 0 || whole.length > 1) return noValue({ code: "mixedSides" });
  const pairs = readPairs(clauses, reader);
  if ("kind" in pairs) return pairs;
  if (clauses.spread.length > 0) return noValue({ code: "mixedSides" });
  const left = clauses.listed ?? { sides: [], all: false, rest: false };
  const named = pairs.map((pair) => pair.selection).reduce(joinSelections, left);
  const others = reader.asked.filter((side) => !named.sides.includes(side));
  const excepted = reader.rules.namingIsYes && left.sides.length > 0 ? [{ selection: left, value: opposite(base.value) }] : [];
  return [
    { selection: { sides: others, all: false, rest: false }, value: base.value },
    ...excepted,
    ...pairs
  ];
}
var namesSides = (items2) => items2.some((item) => item.type === "sides" && item.selection.sides.length > 0);
function readItems(items2, reader) {
  const at = items2.findIndex((item) => item.type === "except");
  const before = items2.slice(0, Math.max(at, 0)).filter((item) => item.type !== "break");
  const exception = at >= 0 && !namesSides(before) && namesSides(items2.slice(at + 1));
  if (!exception || before.length === 0 && !reader.rules.namingIsYes) return readPlain(items2, reader);
  return readException(before, items2.slice(at + 1), reader);
}
function withoutNoise(items2) {
  const kept = [];
  for (const item of items2) {
    if (item.type === "value" && meaningOf(item.part.marks).every((mark) => mark.role === "word" || mark.role === "letter"))
      continue;
    const last = kept.at(-1);
    if (item.type === "sides" && last?.type === "sides" && last.selection.rest === item.selection.rest)
      kept[kept.length - 1] = { type: "sides", selection: joinSelections(last.selection, item.selection) };
    else kept.push(item);
  }
  return kept;
}
var sideThings = new Set(ENGLISH_TALK_WORDS.sideThings);
function saysMore({ marks, prepared }) {
  if (prepared.question.kind === "sides") return false;
  const kept = marks.filter((mark, at) => marks[at - 1]?.role !== "sides" || !sideThings.has(mark.text));
  return foreignWords(kept, prepared) > 0;
}
function itemsOf(lower, { marks, prepared, asked: asked3, rules }) {
  const items2 = sideItems(marks, lower, prepared, asked3);
  return rules.namingIsYes ? withoutNoise(items2) : items2;
}
function readNumbered({ marks, asked: asked3 }) {
  const places = readPlaces(marks, asked3.length);
  if ("kind" in places) return places;
  const sides = places.flatMap((place) => asked3[place] ?? []);
  return [
    { selection: { sides, all: false, rest: false }, value: plainYesNo("yes") },
    { selection: otherSides, value: plainYesNo("no") }
  ];
}
function rulesFor(prepared, context) {
  const { kind } = prepared.question;
  const measures2 = kind === "length" || kind === "number" || kind === "slope";
  return {
    namingIsYes: kind === "yesNo" || kind === "sides",
    valuesAddUp: kind === "several",
    joins: (first, second) => measures2 && readValue({ marks: [], text: `${first.text}, ${second.text}` }, prepared, context).kind === "value"
  };
}
function finish(assigned, asked3) {
  const missing = asked3.filter((side) => assigned.sides[side] === void 0);
  if (missing.length === asked3.length) return noValue({ code: "noMatch" });
  const note = {
    ...assigned.note,
    ...missing.length > 0 ? { missing } : {},
    ...assigned.notAsked.length > 0 ? { notAsked: assigned.notAsked } : {}
  };
  return {
    kind: "value",
    answer: { status: "bySide", sides: assigned.sides },
    strict: assigned.strict,
    ...Object.keys(note).length > 0 ? { note } : {}
  };
}
function readBySide(marks, lower, prepared, context) {
  const asked3 = context.sides.length > 0 ? context.sides : sideNames;
  const reader = { prepared, context, asked: asked3, rules: rulesFor(prepared, context), marks };
  if (reader.rules.namingIsYes && saysMore(reader)) return noValue({ code: "noMatch" });
  const status = statusOnly(meaningOf(marks));
  const assignments = status !== void 0 ? [{ selection: everySide, value: status }] : reader.rules.namingIsYes && namesPlaces(marks) ? readNumbered(reader) : readItems(itemsOf(lower, reader), reader);
  if ("kind" in assignments) return assignments;
  const assigned = assignSides(assignments, asked3);
  if ("kind" in assigned) return assigned;
  const words = reader.rules.namingIsYes && marks.some((mark) => mark.role === "word");
  return finish({ ...assigned, strict: assigned.strict && !words }, asked3);
}

// src/answers/reading/vocabulary.ts
function wordsOfQuestion(question) {
  const { ask, look, good, why, options, picks } = question;
  const texts = [
    ask,
    look,
    good,
    why,
    ...(options ?? []).map((one) => one.label),
    ...(picks ?? []).map((one) => one.label)
  ];
  const spoken = [...options ?? [], ...picks ?? []].flatMap((one) => one.words);
  return [...texts.flatMap(wordings), ...spoken, question.call.say, question.call.listen];
}
var vocabularies = /* @__PURE__ */ new WeakMap();
function vocabularyOf(questions) {
  const build2 = () => new Set(
    questions.flatMap(wordsOfQuestion).flatMap((text) => tokenise(text.toLowerCase()).map((token2) => token2.text))
  );
  const found = vocabularies.get(questions) ?? build2();
  vocabularies.set(questions, found);
  return found;
}
function phrasesIn(value2) {
  if (typeof value2 === "string") return [value2];
  return typeof value2 === "object" && value2 !== null ? Object.values(value2).flatMap(phrasesIn) : [];
}
var wordLists = /* @__PURE__ */ new WeakMap();
function vocabularyOfWords(words) {
  const build2 = () => new Set(phrasesIn(words).flatMap((phrase) => tokenise(phrase.toLowerCase()).map((token2) => token2.text)));
  const found = wordLists.get(words) ?? build2();
  wordLists.set(words, found);
  return found;
}

// src/answers/reading/read-answer.ts
function sidesValue(read) {
  const { answer: answer2 } = read;
  if (answer2.status !== "bySide") return answer2;
  const entries = Object.entries(answer2.sides);
  const value2 = entries.filter(([, one]) => one.status === "given" && one.value === "yes").map(([side]) => side);
  const open = entries.find(([, one]) => one.status !== "given")?.[1];
  const first = entries.map(([, one]) => one).find((one) => one.status === "given");
  if (value2.length === 0 && open !== void 0) return open;
  return { status: "given", value: value2, ...first?.how === void 0 ? {} : { how: first.how } };
}
function asReading(read, prepared) {
  if (read.kind === "noValue") {
    const { problem, nearest: nearest2 } = read;
    const reading2 = {
      kind: "notUnderstood",
      problem,
      ...nearest2 === void 0 ? {} : { nearest: nearest2 }
    };
    return { reading: reading2, strict: false };
  }
  const isSides = prepared.question.kind === "sides";
  const { missing, ...others } = read.note ?? {};
  const note = isSides || missing === void 0 ? others : { ...others, missing };
  const reading = {
    kind: "answer",
    answer: isSides ? sidesValue(read) : read.answer,
    ...Object.keys(note).length === 0 ? {} : { note }
  };
  return { reading, strict: read.strict };
}
function readMarks(marks, message, prepared, context) {
  const read = prepared.sideful ? readBySide(marks, message.lower, prepared, context) : readValue({ marks, text: message.lower }, prepared, context);
  return asReading(read, prepared);
}
var merged = (message, corrections) => {
  let lower = message.lower;
  const changed = corrections.tokens.filter((token2) => corrections.misspelt.has(token2));
  for (const token2 of [...changed].reverse())
    if (token2.text.length === token2.end - token2.start)
      lower = lower.slice(0, token2.start) + token2.text + lower.slice(token2.end);
  return { ...message, lower };
};
function readAsTyped(message, prepared, context) {
  return readMarks(markTokens(message.tokens, prepared), message, prepared, context);
}
function knownWord({ questions, words }) {
  const vocabulary = [vocabularyOf(questions), vocabularyOfWords(words)];
  return (word) => vocabulary.some((known) => known.has(word));
}
function readCorrected(message, prepared, context) {
  const corrections = correctSpelling(message.tokens, prepared, knownWord(context));
  if (corrections === void 0) return void 0;
  const marks = markTokens(message.tokens, prepared, corrections);
  const read = readMarks(marks, merged(message, corrections), prepared, context);
  const guessed = corrections.misspelt.size > 0 && read.reading.kind === "answer";
  if (!guessed || read.reading.kind !== "answer") return read;
  return {
    ...read,
    reading: { ...read.reading, note: { ...read.reading.note, guessed: "from misspelling" } }
  };
}
function isOnePhrase(message, prepared) {
  const marks = markTokens(message.tokens, prepared).filter((mark) => mark.role !== "stop");
  const meaning = meaningOf(marks);
  const role = meaning[0]?.role;
  if (marks.length !== 1 || meaning.length !== 1 || role === void 0) return false;
  const used = message.tokens.filter((token2) => token2.kind !== "mark");
  const last = used.at(-1);
  if (last === void 0 || marks[0]?.end !== last.end) return false;
  return !["word", "hint", "except", "negator", "same", "letter", "number", "ordinal"].includes(role) || isPlace(role);
}
var isPlace = (role) => role === "letter" || role === "number" || role === "ordinal";

// src/answers/reading/find-target.ts
var about = new Set(ENGLISH_TALK_WORDS.aboutTarget.flatMap(stemsOf));
function targetStems(stems) {
  return stems.filter((stem) => !about.has(stem));
}
var stopCache = /* @__PURE__ */ new WeakMap();
function stopNames(stops) {
  const found = stopCache.get(stops);
  if (found !== void 0) return found;
  const byName = /* @__PURE__ */ new Map();
  for (const stop of stops) {
    for (const name of [stop.id, ...wordings(stop.title), ...stop.words]) {
      for (const stems of [stemsOf(name), targetStems(stemsOf(name))]) {
        const key = stems.join(" ");
        if (key !== "" && !byName.has(key)) byName.set(key, stop.id);
      }
    }
  }
  const built = { byName, words: [...byName.keys()].filter((key) => !key.includes(" ")) };
  stopCache.set(stops, built);
  return built;
}
function findStop(stems, stops) {
  const { byName, words } = stopNames(stops);
  const exact = byName.get(stems.join(" ")) ?? byName.get(targetStems(stems).join(" "));
  if (exact !== void 0) return exact;
  const kept = targetStems(stems);
  const [only] = kept;
  if (kept.length !== 1 || only === void 0) return void 0;
  const ids2 = new Set(nearestWords(only, words).map((word) => byName.get(word)));
  return ids2.size === 1 ? [...ids2][0] : void 0;
}
var questionCache = /* @__PURE__ */ new WeakMap();
function questionWords(questions) {
  const found = questionCache.get(questions);
  if (found !== void 0) return found;
  const built = questions.map((question) => {
    const id = stemsOf(question.id.replace(/[.-]/g, " "));
    const short = targetStems(stemsOf(question.short ?? ""));
    const told = [
      ...wordings(question.ask),
      ...(question.options ?? []).flatMap((one) => wordings(one.label))
    ];
    const names = [id, short].map((stems) => stems.join(" ")).filter((name) => name !== "");
    return { question, names, named: /* @__PURE__ */ new Set([...id, ...short]), asked: new Set(told.flatMap(stemsOf)) };
  });
  questionCache.set(questions, built);
  return built;
}
function best(kept, words) {
  let most = 0;
  let found = [];
  for (const one of words) {
    const scores = kept.map((stem) => one.named.has(stem) ? 3 : one.asked.has(stem) ? 1 : 0);
    if (scores.includes(0)) continue;
    const score = scores.reduce((sum, part) => sum + part, 0);
    if (score > most) found = [];
    if (score >= most) found.push(one.question);
    most = Math.max(most, score);
  }
  return found;
}
function namedQuestion(stems, questions) {
  const name = targetStems(stems).join(" ");
  const found = questionWords(questions).filter((one) => one.names.includes(name));
  return found.length === 1 ? found[0]?.question : void 0;
}
function findQuestions(stems, questions) {
  const kept = targetStems(stems);
  return kept.length === 0 ? [] : best(kept, questionWords(questions));
}
function findMember(text, groups) {
  const stems = targetStems(stemsOf(text));
  for (const group of groups) {
    const names = /* @__PURE__ */ new Set([...stemsOf(group.one), ...stemsOf(group.many), group.keyLetter]);
    if (!stems.some((stem) => names.has(stem))) continue;
    const others = stems.filter((stem) => !names.has(stem) && stem !== "number");
    if (others.length === 0) return { group: group.id };
    const number10 = others.length === 1 ? numberOf2(others[0] ?? "") : void 0;
    if (number10 !== void 0) return { group: group.id, member: `${group.keyLetter}${number10}` };
  }
  return void 0;
}
var numbers2 = [
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve"
];
function numberOf2(stem) {
  if (/^\d{1,2}(?:st|nd|rd|th)?$/.test(stem)) return Number.parseInt(stem, 10);
  const ordinal = ENGLISH_TALK_WORDS.ordinals.indexOf(stem);
  const place = ordinal >= 0 ? ordinal : numbers2.indexOf(stem);
  return place >= 0 ? place + 1 : void 0;
}

// src/answers/reading/read-command.ts
var commands = [
  "back",
  "help",
  "why",
  "pause",
  "where",
  "startOver",
  "finish",
  "stop",
  "forget"
];
var targets = ["jump", "change", "remove"];
var polite = buildPhraseBook(ENGLISH_TALK_WORDS.polite.map((phrase) => [phrase, true]));
var cache4 = /* @__PURE__ */ new WeakMap();
function commandWords(words) {
  const found = cache4.get(words);
  if (found !== void 0) return found;
  const whole = /* @__PURE__ */ new Map();
  for (const command of commands)
    for (const phrase of words.commands[command]) {
      const key = stemsOf(phrase).join(" ");
      if (!whole.has(key)) whole.set(key, command);
    }
  const phrases = targets.flatMap(
    (target) => [...words.commands[target], ...target === "jump" ? ENGLISH_TALK_WORDS.jump : []].map(
      (phrase) => [phrase, target]
    )
  );
  const wholeTarget = new Map(phrases.map(([phrase, target]) => [stemsOf(phrase).join(" "), target]));
  const single2 = [...whole.keys()].filter((key) => !key.includes(" ") && key.length > 3);
  const built = { whole, wholeTarget, starts: buildPhraseBook(phrases), single: single2 };
  cache4.set(words, built);
  return built;
}
function withoutPolite(words) {
  let from = 0;
  let to = words.length;
  for (let found = phraseAt(polite, words, from); found !== void 0 && found.next < to; ) {
    from = found.next;
    found = phraseAt(polite, words, from);
  }
  while (to - 1 > from && phraseAt(polite, words, to - 1)?.next === to) to -= 1;
  return words.slice(from, to);
}
var keyOf = (words) => words.map((token2) => token2.stem).join(" ");
var spokenOf = (tokens) => tokens.filter((token2) => token2.kind !== "mark");
function readCommand(tokens, text, words) {
  const { whole, wholeTarget } = commandWords(words);
  const spoken = spokenOf(tokens);
  const keys = spoken.length === 0 ? [text] : [keyOf(spoken), keyOf(withoutPolite(spoken))];
  for (const key of keys) {
    const command = whole.get(key);
    if (command !== void 0) return { kind: "command", command };
  }
  for (const key of keys) {
    const target = wholeTarget.get(key);
    if (target === "change") return { kind: "change" };
    if (target === "remove") return { kind: "remove" };
  }
  return void 0;
}
function guessCommand(tokens, words, known) {
  const { whole, single: single2 } = commandWords(words);
  const spoken = withoutPolite(spokenOf(tokens));
  const [only] = spoken;
  if (spoken.length !== 1 || only === void 0 || known.has(only.stem)) return void 0;
  const found = new Set(nearestWords(only.stem, single2).map((word) => whole.get(word)));
  const [command] = found;
  return found.size === 1 && command !== void 0 ? { kind: "command", command } : void 0;
}
var unknownStop = (said, context) => ({
  kind: "notUnderstood",
  problem: { code: "unknownStop", said, stops: context.stops.map((stop) => stop.id) }
});
function changeOf(rest, context) {
  const stems = rest.map((token2) => token2.stem);
  if (targetStems(stems).length === 0) return { kind: "change" };
  const named = namedQuestion(stems, context.questions);
  if (named !== void 0) return { kind: "change", question: named.id, stop: named.stop };
  const stop = findStop(stems, context.stops);
  if (stop !== void 0) return { kind: "change", stop };
  const found = findQuestions(stems, context.questions);
  const [only] = found;
  if (found.length === 1 && only !== void 0) return { kind: "change", question: only.id, stop: only.stop };
  const stops = new Set(found.map((question) => question.stop));
  const [common] = stops;
  if (stops.size === 1 && common !== void 0) return { kind: "change", stop: common };
  const said = rest.map((token2) => token2.text).join(" ");
  return {
    kind: "notUnderstood",
    problem: { code: "unknownQuestion", said, questions: found.slice(0, 5).map((question) => question.id) }
  };
}
function readTarget(tokens, context) {
  const { starts } = commandWords(context.words);
  const spoken = withoutPolite(spokenOf(tokens));
  const start2 = phraseAt(starts, spoken, 0);
  if (start2 === void 0 || start2.next >= spoken.length) return void 0;
  const rest = spoken.slice(start2.next);
  const said = rest.map((token2) => token2.text).join(" ");
  switch (start2.item) {
    case "jump": {
      const stop = findStop(
        rest.map((token2) => token2.stem),
        context.stops
      );
      return stop === void 0 ? unknownStop(said, context) : { kind: "jump", stop };
    }
    case "change":
      return changeOf(rest, context);
    case "remove": {
      const found = findMember(said, context.groups);
      return found === void 0 ? void 0 : { kind: "remove", ...found };
    }
    default:
      return start2.item;
  }
}
function readStopName(tokens, context) {
  const stop = findStop(
    spokenOf(tokens).map((token2) => token2.stem),
    context.stops
  );
  return stop === void 0 ? void 0 : { kind: "jump", stop };
}

// src/answers/reading/emergency-words.ts
var DROPPED = new Set(
  "a an the is are am be been being i we some very really just my our your his her their this there here right".split(
    " "
  )
);
var EXPANDED = {
  theres: "there",
  its: "it",
  thats: "that",
  im: "i",
  weve: "have",
  ive: "have",
  theyre: "they",
  houses: "house"
};
function coreWords(words) {
  return words.flatMap((word, at) => {
    if (DROPPED.has(word)) return [];
    return (EXPANDED[word] ?? word).split(" ").filter((one) => !DROPPED.has(one)).map((one) => ({ word: one, at }));
  });
}
var plainWords = (tokens) => tokens.filter((token2) => token2.kind !== "mark");
function dangerPhrase(text) {
  const words = plainWords(tokenise(text.toLowerCase())).map((token2) => token2.text);
  const core = coreWords(words).map((one) => one.word);
  return core.length >= 2 ? { words: core, core: true, text } : { words, core: false, text };
}
function byWord(phrases, all3) {
  const map = /* @__PURE__ */ new Map();
  for (const phrase of phrases) {
    for (const word of new Set(all3 ? phrase.words : phrase.words.slice(0, 1)))
      map.set(word, [...map.get(word) ?? [], phrase]);
  }
  return map;
}
function unique2(phrases) {
  return [...new Map(phrases.map((phrase) => [`${phrase.core} ${phrase.words.join(" ")}`, phrase])).values()];
}
function build(words) {
  const { emergency } = words;
  const sure = unique2(emergency.sure.map(dangerPhrase));
  const doubt = unique2(emergency.doubt.map(dangerPhrase));
  const never = /* @__PURE__ */ new Map();
  for (const phrase of emergency.never) {
    const stems = stemsOf(phrase);
    const first = stems[0] ?? "";
    never.set(first, [...never.get(first) ?? [], stems]);
  }
  for (const list4 of never.values()) list4.sort((a, b) => b.length - a.length);
  return {
    sure,
    doubt,
    never,
    sureByWord: byWord(sure, true),
    doubtByFirst: byWord(doubt, false),
    spelling: [...new Set(sure.flatMap((phrase) => phrase.words))].filter((word) => word.length >= 4)
  };
}
var books = /* @__PURE__ */ new WeakMap();
function dangerBook(words) {
  const found = books.get(words) ?? build(words);
  books.set(words, found);
  return found;
}

// src/answers/reading/weigh-danger.ts
var set = (words) => new Set(words.split(" "));
var DENIES = set(
  "no not never nothing nobody none noone without isnt arent wasnt werent aint dont doesnt didnt havent hasnt wont cant cannot neither nor zero"
);
var BETWEEN_NO = set(
  "visible sign signs of any active actual real more current obvious immediate smell evidence trace or and flames flame fire fires smoke embers sparks open nearby wild big large new one has been told us ordered wildfire order orders warning warnings to"
);
var NO2 = set("no without zero");
var BREAKS = set(
  "but because so through sure certain only just think know idea until unless yet except cause since theres breathe way wait power stop"
);
var SUPPOSES = set(
  "if unless would could might may would suppose supposing imagine when whenever before after during since ago last once years yesterday history used past possible risk worry worried afraid against prevent preventing maybe"
);
var REACH = 6;
function clauseBefore(tokens, first) {
  const at = tokens.indexOf(first);
  const words = [];
  for (let index = at - 1; index >= 0 && words.length < REACH; index -= 1) {
    const token2 = tokens[index];
    if (token2.kind === "mark" && !"-/&".includes(token2.text)) {
      const listed = token2.text === "," && BETWEEN_NO.has(tokens[index - 1]?.text ?? "");
      if (!listed) break;
    } else words.push(token2.text);
  }
  return words;
}
function isDenied(before) {
  for (const [distance, word] of before.entries()) {
    if (DENIES.has(word)) {
      if (!NO2.has(word)) return !BREAKS.has(before[distance - 1] ?? "");
      return before.slice(0, distance).every((one) => BETWEEN_NO.has(one));
    }
    if (BREAKS.has(word)) return false;
  }
  return false;
}
function weighWords(before, level) {
  if (isDenied(before)) return 0;
  const unsure = before.some(
    (word, at) => (word === "sure" || word === "know") && DENIES.has(before[at + 1] ?? "")
  );
  const supposed = before.some((word) => SUPPOSES.has(word));
  return supposed || unsure ? level - 1 : level;
}

// src/answers/reading/read-emergency.ts
var MOST_WORDS_OF_A_CRY = 3;
function maskNever(tokens, parted, book) {
  const masked = tokens.map(() => false);
  const fits2 = (stem, token2, step) => token2 !== void 0 && token2.stem === stem && (step === 0 || !parted.has(token2));
  for (let at = 0; at < tokens.length; at += 1) {
    for (const stems of book.never.get(tokens[at]?.stem ?? "") ?? []) {
      if (!stems.every((stem, step) => fits2(stem, tokens[at + step], step))) continue;
      masked.fill(true, at, at + stems.length);
      break;
    }
  }
  return masked;
}
function findAt(phrase, words, masked, from) {
  return phrase.words.every((word, step) => {
    const found = words[from + step];
    return found !== void 0 && found.word === word && !masked[found.at];
  });
}
function findPhrases(phrasesOf, plain2, core, masked) {
  const found = [];
  for (const words of [core, plain2]) {
    for (let from = 0; from < words.length; from += 1) {
      for (const phrase of phrasesOf(words[from]?.word ?? "") ?? []) {
        if (phrase.core !== (words === core) || phrase.words[0] !== words[from]?.word) continue;
        if (!findAt(phrase, words, masked, from)) continue;
        found.push({
          phrase,
          first: words[from]?.at ?? 0,
          last: words[from + phrase.words.length - 1]?.at ?? 0
        });
      }
    }
  }
  return found;
}
var sorted2 = (word) => [...word].sort().join("");
function misspells(word, right) {
  if (word.length < 4 || word[0] !== right[0]) return false;
  if (right.length === 4) return word.length === 4 && sorted2(word) === sorted2(right);
  const most = right.length >= 9 ? 2 : 1;
  if (editDistance(word, right, most) > most) return false;
  return right.length >= 8 || word.length !== right.length || sorted2(word) === sorted2(right);
}
function putRight(words, book, known) {
  let changed = false;
  const right = words.map((word) => {
    if (word.length < 4 || known.has(word) || book.sureByWord.has(word) || book.doubtByFirst.has(word))
      return word;
    const found = book.spelling.find((candidate) => misspells(word, candidate));
    if (found !== void 0) changed = true;
    return found ?? word;
  });
  return changed ? right : void 0;
}
function search(texts, masked, book) {
  const plain2 = texts.map((word, at) => ({ word, at }));
  const core = coreWords(texts);
  return {
    sure: findPhrases((word) => book.sureByWord.get(word), plain2, core, masked),
    doubt: findPhrases((word) => book.doubtByFirst.get(word), plain2, core, masked)
  };
}
function weigh(found, level, tokens, words) {
  const cry = found.phrase.words.length > 1 || words.length <= MOST_WORDS_OF_A_CRY;
  const first = words[found.first];
  return weighWords(clauseBefore(tokens, first), cry ? level : Math.min(level, 1));
}
function findDanger(tokens, words, questions) {
  const book = dangerBook(words);
  const spoken = plainWords(tokens);
  const parted = new Set(
    tokens.filter((_, at) => tokens[at - 1]?.kind === "mark" && !"-/&".includes(tokens[at - 1]?.text ?? ""))
  );
  const masked = maskNever(spoken, parted, book);
  const texts = spoken.map((token2) => token2.text);
  let found = search(texts, masked, book);
  if (found.sure.length === 0) {
    const right = putRight(texts, book, vocabularyOf(questions));
    if (right !== void 0) found = search(right, masked, book);
  }
  let best2;
  for (const [list4, level] of [
    [found.sure, 2],
    [found.doubt, 1]
  ]) {
    for (const one of list4) {
      const weighed = weigh(one, level, tokens, spoken);
      if (weighed > (best2?.level ?? 0)) best2 = { level: weighed, found: one };
    }
  }
  if (best2 === void 0) return void 0;
  const covered = spoken.slice(best2.found.first, best2.found.last + 1);
  return { sure: best2.level === 2, matched: covered.map((token2) => token2.text).join(" "), tokens: covered };
}

// src/answers/reading/read-text.ts
var MOST_TEXT = 500;
function readText(message, prepared) {
  const status = statusOnly(meaningOf(markTokens(message.tokens, prepared)));
  if (status !== void 0) return { kind: "answer", answer: status.answer };
  const value2 = cleanText(message.text, MOST_TEXT);
  const cut = value2.length < message.text.length;
  return {
    kind: "answer",
    answer: { status: "given", value: value2 },
    ...cut ? { note: { cutTo: MOST_TEXT } } : {}
  };
}

// src/answers/reading/read-message.ts
var LINES = /\s*[\r\n]+\s*/g;
function messageOf(raw, keepLines) {
  const text = cleanText(keepLines ? raw : raw.trim().replace(LINES, "; "));
  const lower = text.toLowerCase();
  return { text, lower, tokens: tokenise(lower) };
}
function allowed(reading, context) {
  const aboutMembers = context.question?.of !== void 0 || context.question?.counts !== void 0;
  if (reading?.kind === "remove" && reading.group === void 0 && !aboutMembers) return void 0;
  return reading;
}
function notUnderstood(readings, message, prepared, context) {
  const problems = readings.filter((reading) => reading?.kind === "notUnderstood");
  const telling = problems.find((reading) => (reading.nearest?.length ?? 0) > 0);
  const first = telling ?? problems[0] ?? { kind: "notUnderstood", problem: { code: "noMatch" } };
  const near = first.problem.code === "noMatch" && !first.nearest ? suggestOptions(message.tokens, prepared, knownWord(context)) : [];
  return near.length > 0 ? { ...first, nearest: near } : first;
}
var ASKING = /^(?:what|whats|how|why|which|where|when|who|does|do|is|are|can|could|should|would|will|did)\b.*\?$/;
var ASKING_PLAINLY = /^(?:what(?:'?s| is| are| does| do| if| about)|how (?:do|can|should|would|big|wide|far|much|many)|why) \S+ \S+/;
var asks = ({ lower }) => ASKING.test(lower) || ASKING_PLAINLY.test(lower);
function readForQuestion(message, prepared, context) {
  const command = allowed(readCommand(message.tokens, message.text, context.words), context);
  if (prepared.question.kind === "text") {
    const target2 = command ?? readTarget(message.tokens, context);
    return target2 === void 0 || target2.kind === "notUnderstood" || target2.kind === "change" ? command ?? readText(message, prepared) : target2;
  }
  const misspelt = misspellsSide(message.tokens, prepared);
  const corrected = misspelt ? readCorrected(message, prepared, context) : void 0;
  const typed = readAsTyped(message, prepared, context);
  if (typed.reading.kind === "answer" && isOnePhrase(message, prepared)) return typed.reading;
  if (command !== void 0) return command;
  if (asks(message)) return readTarget(message.tokens, context) ?? { kind: "command", command: "help" };
  if (corrected?.reading.kind === "answer") return corrected.reading;
  if (typed.strict) return typed.reading;
  const target = readTarget(message.tokens, context);
  if (target !== void 0 && target.kind !== "notUnderstood") return target;
  if (typed.reading.kind === "answer") return typed.reading;
  const guessed = readCorrected(message, prepared, context);
  if (guessed?.reading.kind === "answer") return guessed.reading;
  return guessCommand(message.tokens, context.words, prepared.known) ?? target ?? notUnderstood([typed.reading, guessed?.reading], message, prepared, context);
}
function readWithoutQuestion(message, context) {
  const { tokens, text } = message;
  return readCommand(tokens, text, context.words) ?? readTarget(tokens, context) ?? readStopName(tokens, context) ?? guessCommand(tokens, context.words, vocabularyOf(context.questions)) ?? {
    kind: "notUnderstood",
    problem: { code: "noQuestion" }
  };
}
var MOST_WORDS_BESIDE = 2;
var small = new Set(ENGLISH_TALK_WORDS.fillers.flatMap(stemsOf));
function explains(danger, reading, message, prepared) {
  if (prepared === void 0 || reading.kind === "notUnderstood") return false;
  if (reading.kind !== "answer") return true;
  if (prepared.question.kind === "text") {
    const others = message.tokens.filter((token2) => token2.kind !== "mark" && !danger.tokens.includes(token2));
    return others.filter((token2) => !small.has(token2.stem)).length > MOST_WORDS_BESIDE;
  }
  return danger.tokens.every((token2) => prepared.known.has(token2.stem));
}
function readMessage(text, context) {
  const { question, words } = context;
  const message = messageOf(text, question?.kind === "text");
  if (message.text === "") return { kind: "notUnderstood", problem: { code: "empty" } };
  const prepared = question === void 0 ? void 0 : prepareQuestion(question, words);
  const danger = findDanger(message.tokens, words, context.questions);
  const plainOption = prepared !== void 0 && prepared.question.kind !== "text" && isOnePhrase(message, prepared);
  if (danger?.sure && !plainOption) return { kind: "emergency", sure: true, matched: danger.matched };
  const reading = prepared === void 0 ? readWithoutQuestion(message, context) : readForQuestion(message, prepared, context);
  if (danger === void 0 || explains(danger, reading, message, prepared)) return reading;
  return { kind: "emergency", sure: false, matched: danger.matched };
}

// src/conversation/units.ts
function unitsOf(checklist, sheet, chosen) {
  if (chosen) return chosen;
  const { index, flow } = checklist;
  const path = pathOf(index, sheet);
  const question = index.roles.get("units");
  const answer2 = question && path.byKey.has(question.id) ? sheet[question.id] : void 0;
  if (answer2?.status === "given") return answer2.value === "metric" ? "metric" : "imperial";
  return flow.rulebooks.find((one) => one.id === path.rulebook)?.units ?? "imperial";
}

// src/conversation/read.ts
function usedMembers(sheet, group) {
  const keys = Object.keys(sheet).flatMap(
    (key) => key.startsWith(`${group}/`) ? [key.split("/")[1] ?? ""] : []
  );
  return [...new Set(keys)];
}
function readFor(checklist, record7, step, text) {
  const { flow, index } = checklist;
  const words = flow.words[record7.language] ?? flow.words[flow.walk.language];
  if (!words) throw new Error(`The flow has no words for "${record7.language}".`);
  const group = step?.question.counts;
  const members = group === void 0 ? [] : membersOf(index, record7.sheet, group);
  const open = step ? openSides(step, record7.sheet) : [];
  const before = step && record7.sheet[step.key];
  return readMessage(text, {
    question: step?.question,
    words,
    stops: flow.stops,
    questions: flow.questions,
    groups: flow.groups,
    sides: open.length > 0 ? open : step?.sides ?? [],
    units: unitsOf(checklist, record7.sheet, record7.units),
    members,
    usedMembers: group === void 0 ? [] : [.../* @__PURE__ */ new Set([...members, ...usedMembers(record7.sheet, group)])],
    ...before ? { before } : {}
  });
}
function currentStep(checklist, record7) {
  const { key, phase } = record7.cursor;
  return phase === "asking" && key !== void 0 ? pathOf(checklist.index, record7.sheet).byKey.get(key) : void 0;
}

// src/conversation/read-yes-no.ts
var plain = (text) => text.toLowerCase().replace(/[^\p{L}\p{N}' ]+/gu, " ").replace(/\s+/g, " ").trim();
function readYesNo2(checklist, record7, text) {
  const { flow } = checklist;
  const words = flow.words[record7.language] ?? flow.words[flow.walk.language];
  const said = plain(text);
  if (words?.yes.some((word) => said === plain(word) || said.startsWith(`${plain(word)} `))) return "yes";
  if (words?.no.some((word) => said === plain(word) || said.startsWith(`${plain(word)} `))) return "no";
  return void 0;
}

// src/conversation/answer-kinds.ts
var unshown = /* @__PURE__ */ new Set(["length", "slope", "number", "text"]);
function kindsWith(kinds = {}, { id, kind }) {
  return !unshown.has(kind) || kinds[id] === kind ? kinds : { ...kinds, [id]: kind };
}
function isStillOfKind(kinds = {}, question) {
  const then = [question.id, ...question.renamedFrom].map((id) => kinds[id]).find((kind) => kind !== void 0);
  return unshown.has(question.kind) ? then === question.kind : true;
}

// src/conversation/take-answer.ts
function merged2(before, now2) {
  if (now2.status !== "bySide" || before?.status !== "bySide") return now2;
  return { status: "bySide", sides: { ...before.sides, ...now2.sides } };
}
function noteParts(note) {
  if (!note) return [];
  const parts2 = [];
  if (note.assumedUnit) parts2.push(say("note.assumed-unit", { unit: note.assumedUnit }, "quiet"));
  if (note.range) parts2.push(say("note.range", void 0, "quiet"));
  if (note.missing?.length) parts2.push(say("note.missing", { sides: { sides: note.missing } }));
  if (note.notAsked?.length) parts2.push(say("note.not-asked", { sides: { sides: note.notAsked } }, "quiet"));
  if (note.cutTo !== void 0) parts2.push(say("note.cut", { count: note.cutTo }, "quiet"));
  return parts2;
}
function takeAnswer(programme2, record7, step, answer2, note) {
  const whole = merged2(record7.sheet[step.key], answer2);
  const known = { ...record7, kinds: kindsWith(record7.kinds, step.question) };
  const next = advance(programme2, known, { type: "ANSWER", key: step.key, answer: whole });
  const danger = step.question.role === "danger" && answer2.status === "given" && answer2.value === "yes";
  if (danger) return stopForEmergency(programme2, next);
  const values = {
    ...stepValues(programme2.checklist, next, step),
    answer: { answer: whole, question: step.question.id }
  };
  const taken = answer2.status === "notSure" ? "note.not-sure" : answer2.status === "skipped" ? "note.skipped" : "note.taken";
  return { record: next, parts: [say(taken, values, "quiet"), ...noteParts(note)] };
}

// src/conversation/take-text.ts
function takeText(programme2, record7, raw) {
  const text = cleanText(raw);
  const { checklist } = programme2;
  const step = currentStep(checklist, record7);
  const reading = readFor(checklist, record7, step, text);
  if (reading.kind === "emergency" && reading.sure) return stopForEmergency(programme2, record7);
  if (record7.cursor.phase === "emergency") return takeSafe(programme2, record7, text);
  if (record7.cursor.pending) return takePending(programme2, record7, text);
  const forgetting = reading.kind === "command" && reading.command === "forget";
  if (record7.cursor.phase === "paused" && !forgetting) return resume(programme2, record7);
  if (reading.kind === "emergency") {
    const pending = withPending(record7, { kind: "emergency", matched: reading.matched });
    return { record: pending, parts: [say("emergency.is-it", { said: reading.matched }, "warning")] };
  }
  if (reading.kind === "answer" && step)
    return takeAnswer(programme2, record7, step, reading.answer, reading.note);
  if (reading.kind === "notUnderstood" || reading.kind === "answer")
    return takeOther(programme2, record7, text, reading);
  return takeRequest(programme2, record7, reading);
}
function takeSafe(programme2, record7, text) {
  const safe = readYesNo2(programme2.checklist, record7, text);
  if (safe === "yes") return goOnSafe(programme2, withoutPending(record7));
  return safe === "no" ? stopForEmergency(programme2, record7) : askSafe(record7);
}
function takePending(programme2, record7, text) {
  const { pending } = record7.cursor;
  const answer2 = readYesNo2(programme2.checklist, record7, text);
  const rest = withoutPending(record7);
  if (pending?.kind === "emergency") {
    if (answer2 !== "no") return stopForEmergency(programme2, rest);
    return { record: rest, parts: [say("emergency.not-one")] };
  }
  if (pending?.kind === "startOver" && answer2 === "yes") {
    const record8 = withoutDone(advance(programme2, rest, { type: "START_OVER" }));
    return { record: record8, parts: [say("walk.started-over")] };
  }
  if (pending?.kind === "forget" && answer2 === "yes") return forget(rest);
  return { record: rest, parts: [say("walk.kept")] };
}
function forget(record7) {
  const { units: _, silent: __, ...rest } = record7;
  const blank = { ...rest, sheet: {}, cursor: { phase: "paused" }, notes: [] };
  return { record: blank, parts: [say("walk.forgotten")], erase: true };
}
function resume(programme2, record7) {
  return { record: advance(programme2, record7, { type: "RESUME" }), parts: [say("walk.resumed")] };
}
function takeOther(programme2, record7, text, reading) {
  const { checklist } = programme2;
  const { phase } = record7.cursor;
  if (phase === "readBack") {
    const right = readYesNo2(checklist, record7, text);
    if (right === "yes") return confirm(programme2, record7);
    return { record: record7, parts: [say(right === "no" ? "read-back.what-to-change" : "help.readBack")] };
  }
  if (phase === "finished") return { record: record7, parts: [say("help.finished")] };
  if (reading.kind !== "notUnderstood") return { record: record7, parts: [say("help.asking")] };
  return { record: record7, parts: notUnderstoodParts(currentStep(checklist, record7), reading) };
}
function confirm(programme2, record7) {
  return {
    record: advance(programme2, record7, { type: "CONFIRM" }),
    parts: [say("report.here"), { kind: "report" }]
  };
}
function takeRequest(programme2, record7, reading) {
  if (reading.kind === "jump") return jumpTo(programme2, record7, reading.stop);
  if (reading.kind === "change") return changeAnswer(programme2, record7, reading);
  if (reading.kind === "remove") return removeMember(programme2, record7, reading);
  const { checklist } = programme2;
  switch (reading.command) {
    case "back":
      return goBack(programme2, record7);
    case "help":
      return { record: record7, parts: helpParts(checklist, record7) };
    case "why":
      return { record: record7, parts: whyParts(checklist, record7) };
    case "where":
      return { record: record7, parts: whereParts(checklist, record7) };
    case "pause":
    case "stop":
      return pause(programme2, record7);
    case "startOver":
      return { record: withPending(record7, { kind: "startOver" }), parts: [say("walk.start-over-sure")] };
    case "forget":
      return { record: withPending(record7, { kind: "forget" }), parts: [say("walk.forget-sure")] };
    case "finish":
      return finish2(programme2, record7);
  }
}
function pause(programme2, record7) {
  const paused = advance(programme2, record7, { type: "PAUSE", at: record7.cursor.key });
  return { record: paused, parts: [say("walk.paused")] };
}
function finish2(programme2, record7) {
  if (record7.cursor.phase !== "asking") return confirm(programme2, record7);
  const finished = advance(programme2, record7, { type: "FINISH" });
  return { record: finished, parts: readBackParts(programme2.checklist, finished) };
}

// src/conversation/hello.ts
function hello(programme2, record7) {
  const { phase } = record7.cursor;
  const answered = Object.keys(record7.sheet).length;
  if (phase === "emergency") return askSafe(record7);
  if (phase === "paused") return resume(programme2, record7);
  if (phase === "finished")
    return {
      record: record7,
      parts: [say("report.here"), { kind: "report" }, say("help.finished", void 0, "quiet")]
    };
  if (phase === "readBack") return { record: record7, parts: readBackParts(programme2.checklist, record7) };
  if (answered > 0) return { record: record7, parts: [say("walk.welcome-back", { answered })] };
  return {
    record: record7,
    parts: [
      say("opening.what", void 0, "heading"),
      say("opening.danger", void 0, "warning"),
      say("opening.how"),
      say("opening.promise", void 0, "quiet")
    ]
  };
}

// src/conversation/carrier-words.ts
function speaking(record7) {
  const { silent: _, ...rest } = record7;
  return rest;
}
function fallSilent(programme2, record7) {
  const { phase, key } = record7.cursor;
  const underWay = phase === "asking" || phase === "readBack";
  const paused = underWay ? advance(programme2, record7, { type: "PAUSE", at: key }) : record7;
  return { record: { ...paused, silent: true }, parts: [say("carrier.stopped")] };
}
function takeCarrierWord(programme2, record7, word) {
  switch (word) {
    case "stop":
      return fallSilent(programme2, record7);
    case "help":
      return { record: record7, parts: [say("carrier.help"), ...helpParts(programme2.checklist, record7)] };
  }
}
var isForget = (reading) => reading.kind === "command" && reading.command === "forget";
function takeWhileSilent(programme2, record7, message) {
  switch (message.kind) {
    case "carrier":
      return { record: record7, parts: message.word === "help" ? [say("carrier.help")] : [] };
    case "hello":
      return hello(programme2, speaking(record7));
    case "emergency":
      return stopForEmergency(programme2, speaking(record7));
    case "choose":
      return { record: record7, parts: [] };
    case "text": {
      const reading = readFor(programme2.checklist, record7, void 0, cleanText(message.text));
      if (reading.kind === "emergency") return takeText(programme2, speaking(record7), message.text);
      const erasing = record7.cursor.pending?.kind === "forget" || isForget(reading);
      return erasing ? takeText(programme2, record7, message.text) : { record: record7, parts: [] };
    }
  }
}

// src/conversation/first-words.ts
function greetingInstead(programme2, record7, message) {
  if (record7.revision > 0 || message.kind !== "text") return message;
  const reading = readFor(programme2.checklist, record7, void 0, cleanText(message.text));
  return reading.kind === "emergency" ? message : { kind: "hello" };
}

// src/conversation/flow-changed.ts
function fits(question, value2) {
  const ids2 = optionIds(question);
  if (question.kind === "choice" || question.kind === "yesNo")
    return typeof value2 === "string" && ids2.includes(value2);
  if (question.kind === "several" || question.kind === "sides")
    return Array.isArray(value2) && value2.every((one) => ids2.includes(String(one)));
  if (question.kind === "text") return typeof value2 === "string";
  if (question.kind === "count") return Array.isArray(value2);
  return typeof value2 === "number";
}
function whatFits(question, answer2, kinds) {
  const plainFits = (one) => one.status !== "given" || isStillOfKind(kinds, question) && fits(question, one.value);
  if (answer2.status !== "bySide") {
    const wants = question.by === void 0 || answer2.status !== "given";
    return wants && plainFits(answer2) ? answer2 : void 0;
  }
  if (question.by !== "side") return void 0;
  const kept = Object.entries(answer2.sides).filter(([, one]) => plainFits(one));
  if (kept.length === 0) return void 0;
  return kept.length === Object.keys(answer2.sides).length ? answer2 : { status: "bySide", sides: Object.fromEntries(kept) };
}
function presentKey(programme2, key) {
  const { flow, index } = programme2.checklist;
  const parts2 = key.split("/");
  const old = parts2.at(-1) ?? "";
  const id = index.questions.has(old) ? old : flow.questions.find((one) => one.renamedFrom.includes(old))?.id;
  return [...parts2.slice(0, -1), id ?? old].join("/");
}
function refit(programme2, record7) {
  const { questions } = programme2.checklist.index;
  let again = 0;
  const entries = Object.entries(record7.sheet).flatMap(([key, answer2]) => {
    const now2 = presentKey(programme2, key);
    const question = questions.get(now2.split("/").at(-1) ?? "");
    const kept = question ? whatFits(question, answer2, record7.kinds) : answer2;
    if (kept !== answer2) again++;
    return kept ? [[now2, kept]] : [];
  });
  return { sheet: Object.fromEntries(entries), again };
}
function refitCursor(programme2, { cursor }, sheet) {
  const { key, ...rest } = cursor;
  if (key === void 0) return cursor;
  const now2 = presentKey(programme2, key);
  return pathOf(programme2.checklist.index, sheet).byKey.has(now2) ? { ...rest, key: now2 } : rest;
}
function answersKept(programme2, record7) {
  const { flow, index } = programme2.checklist;
  if (record7.flow === flow.fingerprint) return { record: record7, parts: [] };
  const { sheet, again } = refit(programme2, record7);
  const open = pathOf(index, sheet).steps.filter((step) => isOpen(step, sheet));
  const cursor = refitCursor(programme2, record7, sheet);
  return {
    record: { ...record7, sheet, cursor, flow: flow.fingerprint },
    parts: [say("walk.flow-changed", { open: open.length, again })]
  };
}

// src/conversation/turn.ts
function choose2(programme2, record7, message) {
  const { checklist } = programme2;
  const step = pathOf(checklist.index, record7.sheet).byKey.get(message.key);
  if (!step || record7.cursor.phase === "emergency")
    return record7.cursor.phase === "emergency" ? askSafe(record7) : { record: record7, parts: [say("walk.late-unknown")] };
  const reading = readFor(checklist, record7, step, message.option);
  if (reading.kind !== "answer") return { record: record7, parts: [say("walk.late-unknown")] };
  const late = record7.cursor.key !== message.key;
  const turned = takeAnswer(programme2, record7, step, reading.answer, reading.note);
  if (!late) return turned;
  const values = { question: { text: `question/${step.question.id}/short` } };
  return { record: turned.record, parts: [say("walk.late-edit", values), ...turned.parts] };
}
function entered(programme2, record7) {
  if (record7.cursor.phase !== "asking" || record7.cursor.key !== void 0) return record7;
  const first = pathOf(programme2.checklist.index, record7.sheet).steps.find(
    (step) => isOpen(step, record7.sheet)
  );
  return first ? advance(programme2, record7, { type: "GO", key: first.key }) : advance(programme2, record7, { type: "FINISH" });
}
function arrival(programme2, before, after) {
  const { index } = programme2.checklist;
  const stopAt = ({ cursor, sheet }) => cursor.key === void 0 || cursor.phase !== "asking" ? void 0 : pathOf(index, sheet).byKey.get(cursor.key)?.question.stop;
  const stop = stopAt(after);
  if (stop === void 0 || stop === stopAt(before) || after.cursor.pending) return [];
  return [say(`stop/${stop}/title`, void 0, "heading"), say(`stop/${stop}/arrive`)];
}
function dispatch(programme2, record7, message) {
  if (record7.silent) return takeWhileSilent(programme2, record7, message);
  switch (message.kind) {
    case "hello":
      return hello(programme2, record7);
    case "text":
      return takeText(programme2, record7, message.text);
    case "choose":
      return choose2(programme2, record7, message);
    case "emergency":
      return stopForEmergency(programme2, record7);
    case "carrier":
      return takeCarrierWord(programme2, record7, message.word);
  }
}
function atTheEnd(programme2, before, turned) {
  const ended = before.cursor.phase === "asking" && turned.record.cursor.phase === "readBack";
  if (!ended || turned.parts.some((part) => part.kind === "readBack")) return turned;
  return {
    record: turned.record,
    parts: [...turned.parts, ...readBackParts(programme2.checklist, turned.record)]
  };
}
function takeTurn(programme2, stored, said, now2) {
  const { record: kept, parts: changed } = answersKept(programme2, stored);
  const record7 = entered(programme2, kept);
  const message = greetingInstead(programme2, record7, said);
  const turned = atTheEnd(programme2, record7, dispatch(programme2, record7, message));
  const arrived = message.kind === "hello" ? arrival(programme2, { ...record7, cursor: { phase: "asking" } }, turned.record) : arrival(programme2, record7, turned.record);
  const next = { ...turned.record, revision: stored.revision + 1, updatedAt: now2.toISOString() };
  const ask = askOf(programme2.checklist, next);
  const reply = {
    parts: [...changed, ...turned.parts, ...arrived],
    ...ask ? { ask } : {},
    phase: next.cursor.phase,
    progress: progressOf(programme2.checklist, next),
    revision: next.revision
  };
  return { record: next, reply, ...turned.erase ? { erase: true } : {} };
}

// src/wording/catalogue.ts
function questionTexts(flow) {
  return flow.questions.flatMap((one) => [
    [`question/${one.id}/short`, one.short ?? one.ask],
    [`question/${one.id}/ask`, one.ask],
    [`question/${one.id}/look`, one.look],
    [`question/${one.id}/good`, one.good],
    [`question/${one.id}/why`, one.why],
    [`question/${one.id}/say`, one.call.say],
    [`question/${one.id}/listen`, one.call.listen],
    [`question/${one.id}/cannotTell`, one.call.cannotTell],
    ...(one.options ?? []).map((option) => [`option/${one.id}/${option.id}`, option.label]),
    ...(one.picks ?? []).map((pick) => [`option/${one.id}/${pick.value}`, pick.label])
  ]);
}
function actionTexts(flow) {
  return flow.actions.flatMap((one) => [
    [`action/${one.id}/do`, one.do],
    [`action/${one.id}/why`, one.why],
    ...one.how.map((step, position) => [`action/${one.id}/how.${position}`, step]),
    ...one.laneWhen.map((lane, position) => [`action/${one.id}/because.${position}`, lane.because]),
    ...one.demandedWhen ? [[`action/${one.id}/demandedBy`, one.demandedWhen.by]] : [],
    ...(one.contractor?.ask ?? []).map((ask, position) => [`action/${one.id}/ask.${position}`, ask]),
    ...one.contractor ? [[`action/${one.id}/permit`, one.contractor.permit]] : []
  ]);
}
function ruleTexts(flow) {
  return flow.rulebooks.flatMap((book) => [
    [`rulebook/${book.id}/authority`, book.authority],
    ...Object.entries(book.limits).map(([id, limit]) => [`limit/${book.id}/${id}/what`, limit.what]),
    ...Object.entries(book.limits).flatMap(
      ([id, limit]) => limit.note ? [[`limit/${book.id}/${id}/note`, limit.note]] : []
    ),
    ...book.notes.map((note, position) => [`rulebook/${book.id}/note.${position}`, note.say])
  ]);
}
function catalogueOf(flow) {
  return new Map([
    ["walk/title", flow.walk.title],
    ...flow.stops.flatMap((one) => [
      [`stop/${one.id}/title`, one.title],
      [`stop/${one.id}/arrive`, one.arrive]
    ]),
    ...flow.groups.flatMap((one) => [
      [`group/${one.id}/one`, one.one],
      [`group/${one.id}/many`, one.many]
    ]),
    ...questionTexts(flow),
    ...flow.findings.flatMap((one) => [
      [`finding/${one.id}/say`, one.say],
      [`finding/${one.id}/why`, one.why],
      ...one.noAction ? [[`finding/${one.id}/noAction`, one.noAction]] : []
    ]),
    ...flow.elements.map((one) => [`element/${one.id}`, one.what]),
    ...flow.waysIn.map((one) => [`way/${one.id}`, one.say]),
    ...actionTexts(flow),
    ...flow.cautions.map((one) => [`caution/${one.id}`, one.say]),
    ...flow.costs.map((one) => [`cost/${one.id}`, one.what]),
    ...flow.upkeep.map((one) => [`upkeep/${one.id}`, one.do]),
    ...ruleTexts(flow),
    ...Object.entries(flow.phrases)
  ]);
}

// src/wording/word-reply.ts
var withoutMarks = (text) => text.replaceAll("**", "");
function say2(wording, { text, values }) {
  return withoutMarks(wording.text(text, values));
}
function wordAsk(wording, ask) {
  return {
    question: say2(wording, ask.say),
    choices: ask.choices.map(({ label, ...choice }) => ({ ...choice, label: say2(wording, label) })),
    several: ask.several,
    hint: say2(wording, ask.hint)
  };
}
function wordReply(reply, wording) {
  const blocks = reply.parts.map((part) => {
    if (part.kind === "report") return { kind: "report", tone: "plain", lines: [] };
    if (part.kind === "say") return { kind: "say", tone: part.tone, lines: say2(wording, part).split("\n") };
    const title = withoutMarks(wording.text(`stop/${part.stop}/title`));
    return {
      kind: "readBack",
      tone: "plain",
      lines: [title, ...part.lines.map((line2) => say2(wording, line2))]
    };
  });
  return { blocks, ...reply.ask ? { ask: wordAsk(wording, reply.ask) } : {} };
}

// src/wording/wording.ts
import { createIntl, createIntlCache } from "@formatjs/intl";

// src/wording/on-all-sides.ts
var capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);
function onAllSides(written, catalogue, side) {
  if (typeof side !== "object" || !("sides" in side) || side.sides.length < sideNames.length) return written;
  const [one, all3] = [catalogue.get("words/at-side"), catalogue.get("words/on-all-sides")];
  if (typeof one !== "string" || typeof all3 !== "string") return written;
  return written.replaceAll(one, all3).replaceAll(capital(one), capital(all3));
}

// src/wording/wording.ts
function forAudience(text, audience) {
  return typeof text === "string" ? text : text[audience] ?? text.resident;
}
var percentText = (percent2) => `${Math.round(percent2 * 10) / 10} %`;
function limitText({ dimension, value: value2 }, say3) {
  if (typeof value2 === "boolean") return value2 ? "yes" : "no";
  if (dimension === "length") return say3(value2);
  return dimension === "slope" ? percentText(value2) : value2;
}
function bySideText(wording, answer2, question) {
  const groups = /* @__PURE__ */ new Map();
  for (const side of sideNames) {
    const one = answer2.sides[side];
    if (!one) continue;
    const text = plainAnswerText(wording, one, question);
    groups.set(text, [...groups.get(text) ?? [], wording.text(`words/side/${side}`)]);
  }
  const [only] = groups.keys();
  const everywhere = sideNames.every((side) => answer2.sides[side]);
  if (groups.size === 1 && only !== void 0 && everywhere)
    return wording.text("words/every-side", { answer: only });
  const list4 = (sides) => wording.value({ list: sides, join: "and" });
  if (question.kind === "yesNo" && Object.values(answer2.sides).every((one) => one.status === "given")) {
    const yes = groups.get(wording.text("words/yesNo/yes"));
    return yes ? list4(yes) : wording.text("words/no-side");
  }
  return [...groups].map(([text, sides]) => `${list4(sides)}: ${text}`).join("; ");
}
function optionText(wording, question, id) {
  if (question.kind === "yesNo") return wording.text(`words/yesNo/${id}`);
  if (question.kind === "sides") return wording.text(`words/side/${id}`);
  return wording.text(`option/${question.id}/${id}`);
}
function plainAnswerText(wording, answer2, question) {
  if (answer2.status !== "given") return wording.text(`words/status/${answer2.status}`);
  const { value: value2 } = answer2;
  if (question.kind === "count") return String(value2 instanceof Array ? value2.length : value2);
  if (Array.isArray(value2))
    return wording.value({ list: value2.map((id) => optionText(wording, question, id)) });
  if (typeof value2 === "number") {
    if (question.kind === "length") return wording.length(value2);
    return question.kind === "slope" ? percentText(value2) : String(value2);
  }
  if (question.kind === "text") return (wording.reader.escape ?? ((typed) => typed))(String(value2));
  return optionText(wording, question, String(value2));
}
function valueText(wording, intl, texts, value2) {
  if (typeof value2 === "string") return value2;
  if (typeof value2 === "number") return String(value2);
  if ("text" in value2) return wording.text(value2.text, value2.values);
  if ("metres" in value2) return wording.length(value2.metres);
  if ("percent" in value2) return percentText(value2.percent);
  if ("money" in value2) {
    return intl.formatNumber(value2.money, {
      style: "currency",
      currency: value2.currency,
      maximumFractionDigits: 0
    });
  }
  if ("sides" in value2)
    return wording.value({ list: value2.sides.map((side) => wording.text(`words/side/${side}`)) });
  if ("member" in value2) {
    const one = wording.text(`group/${value2.member.group}/one`);
    return `${one} ${value2.member.number}`;
  }
  if ("list" in value2) {
    const type = value2.join === "or" ? "disjunction" : "conjunction";
    return intl.formatList(
      value2.list.map((one) => wording.value(one)),
      { type }
    );
  }
  const question = texts.questions.get(value2.question);
  if (!question) return "";
  return value2.answer.status === "bySide" ? bySideText(wording, value2.answer, question) : plainAnswerText(wording, value2.answer, question);
}
var byLanguage = /* @__PURE__ */ new Map();
function intlFor(language) {
  const known = byLanguage.get(language) ?? createIntl(
    { locale: language, defaultLocale: language, messages: {}, timeZone: "UTC" },
    createIntlCache()
  );
  byLanguage.set(language, known);
  return known;
}
var saidLimits = { imperial: /* @__PURE__ */ new WeakMap(), metric: /* @__PURE__ */ new WeakMap() };
function limitsIn(units, limits, length) {
  const known = saidLimits[units].get(limits) ?? Object.fromEntries([...limits].map(([id, limit]) => [id, limitText(limit, length)]));
  saidLimits[units].set(limits, known);
  return known;
}
var messages = /* @__PURE__ */ new Map();
function messageFor(intl, written) {
  const known = messages.get(intl) ?? /* @__PURE__ */ new Map();
  messages.set(intl, known);
  const before = known.get(written);
  if (before) return before;
  const names = [...new Set([...written.matchAll(/\{\s*(\w+)/g)].map((match) => match[1] ?? ""))];
  const message = { format: intl.formatters.getMessageFormat(written, intl.locale), names };
  known.set(written, message);
  return message;
}
function createWording(texts, reader) {
  const intl = intlFor(reader.language);
  const length = (lengthMetres) => sayLength(metres(lengthMetres), reader.units).text;
  const limits = limitsIn(reader.units, reader.limits, length);
  const wording = {
    reader,
    length,
    has: (id) => texts.catalogue.has(id),
    value: (value2) => valueText(wording, intl, texts, value2),
    text: (id, values) => {
      const text = texts.catalogue.get(id);
      if (text === void 0) throw new Error(`The flow has no text "${id}".`);
      const written = onAllSides(forAudience(text, reader.audience), texts.catalogue, values?.side);
      if (!written.includes("{")) return written;
      const { format, names } = messageFor(intl, written);
      const said = {};
      for (const name of names) {
        const value2 = values?.[name];
        said[name] = value2 === void 0 ? limits[name] : typeof value2 === "number" ? value2 : wording.value(value2);
      }
      return String(format.format(said));
    }
  };
  return wording;
}

// tests/support/programme.ts
import { createHash } from "node:crypto";
import { resolve } from "node:path";

// src/computations/house/computed-ids.ts
var HOUSE_IDS = [
  "vents-attic",
  "vents-floor",
  "vents-flow",
  "slope-spread",
  "crown-gap",
  "shrub-gap",
  "limb-up",
  "limb-seasons",
  "shrub-under-tree",
  "heat-shrub-glass",
  "heat-shrub-wood",
  "heat-firewood-glass",
  "heat-firewood-wood",
  "heat-deck-glass",
  "heat-deck-wood",
  "heat-fence-glass",
  "heat-fence-wood",
  "heat-shed-glass",
  "heat-shed-wood",
  "heat-house-glass",
  "heat-house-wood",
  "zones",
  "gravel",
  "mesh-high",
  "mesh-roof",
  "mesh-floor",
  "eave-sealant",
  "garage-strip",
  "fence-end"
];
var NAMED = [
  "crown-gap.gap",
  "crown-gap.short",
  "shrub-gap.gap",
  "shrub-gap.short",
  "limb-up.branchHeight",
  "limb-up.short",
  "shrub-under-tree.short",
  "vents-attic.factor",
  "vents-floor.factor",
  "slope-spread.timesFaster",
  "gravel.covered.sqft",
  "mesh-high.order.sqft",
  "mesh-roof.order.sqft",
  "mesh-floor.order.sqft",
  "eave-sealant.cartridges",
  "fence-end.length.ft"
];
var COMPUTED_IDS = [...HOUSE_IDS, ...NAMED];

// src/files/read-flows.ts
import { readFileSync } from "node:fs";
import { relative } from "node:path";

// src/files/list-yaml-files.ts
import { readdirSync } from "node:fs";
import { join } from "node:path";
var practice = /^practice(?:\/|\\)/;
function listYamlFiles(folder) {
  return readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((name) => /\.ya?ml$/.test(name) && !practice.test(name)).map((name) => join(folder, name)).sort();
}

// src/files/read-yaml.ts
import { isMap, isScalar, LineCounter, parseDocument } from "yaml";
function nodeAt(root, path) {
  let node = root;
  for (const key of path) {
    const next = child(node, key);
    if (!next) return node;
    node = next;
  }
  return node;
}
function child(node, key) {
  if (isMap(node)) {
    const pair = node.items.find((item) => isScalar(item.key) && String(item.key.value) === String(key));
    return pair?.value ?? pair?.key ?? void 0;
  }
  const items2 = node?.items;
  return typeof key === "number" ? items2?.[key] : void 0;
}
function keyNode(root, path) {
  const parent = nodeAt(root, path.slice(0, -1));
  const last = path.at(-1);
  if (!isMap(parent) || last === void 0) return nodeAt(root, path);
  const pair = parent.items.find((item) => isScalar(item.key) && String(item.key.value) === String(last));
  return pair?.key ?? parent;
}
function readYaml(path, text) {
  const lines = new LineCounter();
  const parsed = parseDocument(text, { lineCounter: lines, prettyErrors: false, uniqueKeys: true });
  const place = (offset) => {
    const { line: line2, col } = lines.linePos(offset);
    return { line: Math.max(line2, 1), column: Math.max(col, 1) };
  };
  const problems = parsed.errors.slice(0, 1).map((error) => ({ path, ...place(error.pos[0]), at: "", problem: `${error.message}.` }));
  const root = parsed.contents;
  const document = {
    path,
    value: problems.length > 0 ? void 0 : parsed.toJS(),
    positionOf: (at) => place(keyNode(root, at)?.range?.[0] ?? 0)
  };
  return { document, problems };
}

// src/files/read-flows.ts
function readFlows(folder, root) {
  const read = listYamlFiles(folder).map(
    (path) => readYaml(relative(root, path), readFileSync(path, "utf8"))
  );
  return { documents: read.map((one) => one.document), problems: read.flatMap((one) => one.problems) };
}

// src/flow/checks/check-actions.ts
function checkActions(parts2, lookup) {
  const cautions = parts2.cautions.map((one) => one.item);
  return [
    ...parts2.actions.flatMap((one) => [
      ...checkReferences(one, lookup),
      ...checkConditions(one, lookup),
      ...checkTreats(one, lookup),
      ...checkCautions(one, cautions)
    ]),
    ...parts2.upkeep.flatMap((one) => [
      ...one.item.when ? checkCondition({ located: one, lookup }, ["when"], one.item.when, scopeOf("house")) : [],
      ...references(one, "cautions", "caution", one.item.cautions, lookup.cautions),
      ...references(one, "sources", "source", one.item.sources, lookup.sources)
    ])
  ];
}
function checkReferences(located, lookup) {
  const { item } = located;
  return [
    ...reference(located, ["per"], "group", item.per, /* @__PURE__ */ new Set(["house", "side", ...lookup.groups.keys()])),
    ...references(located, "for", "finding", item.for, lookup.findings),
    ...item.for.flatMap((id, index) => {
      const finding = lookup.findings.get(id);
      const fits2 = !finding || finding.per === item.per || item.per === "house" || finding.per === "house";
      return fits2 ? [] : [
        problemAt(
          located,
          ["for", index],
          `"${id}" is found per ${finding.per}, this action is per ${item.per}.`
        )
      ];
    }),
    ...references(located, "requires", "action", item.requires, lookup.actions),
    ...references(located, "cautions", "caution", item.cautions, lookup.cautions),
    ...references(located, "rules", "limit", item.rules, lookup.limits),
    ...references(located, "workedOut", "computation", item.workedOut, lookup.computations),
    ...references(located, "sources", "source", item.sources, lookup.sources),
    ...item.cost.flatMap(({ line: line2, amount }, index) => [
      ...reference(located, ["cost", index, "line"], "cost line", line2, lookup.costs),
      ...typeof amount === "number" ? [] : reference(
        located,
        ["cost", index, "amount", "computed"],
        "computation",
        amount.computed,
        lookup.computations
      )
    ]),
    ...item.hours.low > item.hours.high ? [problemAt(located, ["hours"], "low is above high.")] : []
  ];
}
function checkConditions(located, lookup) {
  const { item } = located;
  const scope = scopeOf(item.per);
  const at = { located, lookup };
  return [
    ...item.when ? checkCondition(at, ["when"], item.when, scope) : [],
    ...item.laneWhen.flatMap((one, index) => checkCondition(at, ["laneWhen", index, "if"], one.if, scope)),
    ...item.cautionsWhen.flatMap((one, index) => [
      ...checkCondition(at, ["cautionsWhen", index, "if"], one.if, scope),
      ...one.cautions.flatMap(
        (id) => reference(located, ["cautionsWhen", index, "cautions"], "caution", id, lookup.cautions)
      )
    ]),
    ...item.demandedWhen ? checkCondition(at, ["demandedWhen", "if"], item.demandedWhen.if, scope) : []
  ];
}
function checkTreats(located, lookup) {
  return Object.entries(located.item.treats).flatMap(([id, residual]) => {
    const element = lookup.elements.get(id);
    if (!element) {
      const suggestion = didYouMean(id, lookup.elements.keys());
      return [problemAt(located, ["treats", id], `there is no element "${id}".`, suggestion)];
    }
    if (typeof residual === "number") return [];
    const missing = ["ember", "flame"].filter(
      (attack) => residual[attack] !== void 0 && !element[attack]
    );
    return missing.map(
      (attack) => problemAt(located, ["treats", id, attack], `"${id}" has no readiness under ${attack}.`)
    );
  });
}
var sentences = (text) => typeof text === "string" ? [text] : Object.values(text).filter((one) => one !== void 0);
function checkCautions(located, cautions) {
  const { item } = located;
  const given2 = /* @__PURE__ */ new Set([...item.cautions, ...item.cautionsWhen.flatMap((one) => one.cautions)]);
  const said = [item.do, ...item.how].flatMap(sentences).join(" ").toLowerCase();
  const problems = cautions.flatMap((caution) => {
    const word = caution.words.find((one) => new RegExp(`\\b${one.toLowerCase()}`).test(said));
    if (word === void 0 || given2.has(caution.id)) return [];
    return [
      problemAt(located, ["cautions"], `the action speaks of "${word}" without the caution "${caution.id}".`)
    ];
  });
  if (given2.size === 0 && item.harmless === void 0)
    problems.push(
      problemAt(
        located,
        ["id"],
        `"${item.id}" has no caution: list what can hurt, or say in "harmless" why nothing can.`
      )
    );
  return problems;
}

// src/flow/checks/check-calls.ts
function checkCalls(parts2, lookup) {
  const [call, ...moreCalls] = parts2.calls;
  const [short, ...moreShort] = parts2.shortCalls;
  const phrases = new Set(parts2.phrases.map((one) => one.item.id));
  return [
    ...moreCalls.map((one) => problemAt(one, [], 'there is more than one "call:".')),
    ...moreShort.map((one) => problemAt(one, [], 'there is more than one "shortCall:".')),
    ...(call?.item.unsafe ?? []).flatMap(
      (one, index) => call ? reference(call, ["unsafe", index, "id"], "phrase", `call.stop.${one.id}`, phrases) : []
    ),
    ...short ? references(short, "first", "question", short.item.first, lookup.questions) : [],
    ...Object.keys(short?.item.worth ?? {}).flatMap(
      (id) => short ? reference(short, ["worth", id], "question", id, lookup.questions) : []
    )
  ];
}

// src/flow/checks/check-findings.ts
function checkFindings(parts2, lookup) {
  const answered = new Set(parts2.actions.flatMap((action) => action.item.for));
  const used = /* @__PURE__ */ new Set([
    ...parts2.sets.flatMap((set2) => set2.item.members),
    ...parts2.waysIn.flatMap(
      (way) => way.item.chain.map((link) => "ember" in link ? link.ember : link.flame)
    )
  ]);
  return [
    ...parts2.findings.flatMap((one) => checkFinding(one, lookup, answered)),
    ...parts2.elements.flatMap((one) => checkElement(one, lookup, used)),
    ...parts2.sets.flatMap(
      (one) => references(one, "", "element", one.item.members, lookup.elements).map(atMember)
    ),
    ...parts2.waysIn.flatMap((one) => checkWayIn(one, lookup))
  ];
}
var atMember = (problem) => ({ ...problem, at: problem.at.replace("..", ".") });
function checkPer(located, lookup) {
  const { per } = located.item;
  return reference(located, ["per"], "group", per, /* @__PURE__ */ new Set(["house", "side", ...lookup.groups.keys()]));
}
function findingsIn(condition) {
  const parts2 = [...condition.all ?? [], ...condition.any ?? []];
  if (condition.not) parts2.push(condition.not);
  if (condition.where) parts2.push(condition.where);
  return [...condition.finding === void 0 ? [] : [condition.finding], ...parts2.flatMap(findingsIn)];
}
function restsOnItself(id, lookup, seen = []) {
  const finding = lookup.findings.get(id);
  if (!finding) return false;
  return findingsIn(finding.when).some(
    (next) => next === seen[0] || next === id || !seen.includes(next) && restsOnItself(next, lookup, [...seen, id])
  );
}
function checkFinding(located, lookup, answered) {
  const { item } = located;
  const problems = [
    ...checkPer(located, lookup),
    ...checkCondition({ located, lookup }, ["when"], item.when, scopeOf(item.per)),
    ...references(located, "sources", "source", item.sources, lookup.sources)
  ];
  if (restsOnItself(item.id, lookup))
    problems.push(problemAt(located, ["when"], "this finding rests on itself."));
  const has = answered.has(item.id);
  if (!has && item.noAction === void 0)
    problems.push(
      problemAt(
        located,
        ["id"],
        `no action is for the finding "${item.id}": add one, or say why there is none in "noAction".`
      )
    );
  if (has && item.noAction !== void 0)
    problems.push(
      problemAt(
        located,
        ["noAction"],
        `the finding "${item.id}" has an action: "noAction" does not belong here.`
      )
    );
  return problems;
}
function checkElement(located, lookup, used) {
  const { item } = located;
  const problems = [
    ...checkPer(located, lookup),
    ...checkCondition({ located, lookup }, ["when"], item.when, scopeOf(item.per)),
    ...references(located, "sources", "source", item.sources, lookup.sources)
  ];
  if (!item.ember && !item.flame)
    problems.push(problemAt(located, ["id"], 'an element needs a readiness: "ember:", "flame:" or both.'));
  for (const attack of ["ember", "flame"]) {
    const { low, high } = item[attack] ?? {};
    if (low !== void 0 && high !== void 0 && low > high)
      problems.push(problemAt(located, [attack, "low"], "low is above high."));
  }
  if (!used.has(item.id)) problems.push(problemAt(located, ["id"], `no way in holds "${item.id}".`));
  return problems;
}
function checkWayIn(located, lookup) {
  return [
    ...references(located, "sources", "source", located.item.sources, lookup.sources),
    ...located.item.chain.flatMap((link, index) => {
      const [attack, id] = "ember" in link ? ["ember", link.ember] : ["flame", link.flame];
      const inside2 = ["chain", index, attack];
      const members = lookup.sets.get(id) ?? (lookup.elements.has(id) ? [id] : void 0);
      if (!members)
        return reference(
          located,
          inside2,
          "element or set",
          id,
          /* @__PURE__ */ new Set([...lookup.sets.keys(), ...lookup.elements.keys()])
        );
      return members.filter((member) => lookup.elements.has(member) && !lookup.elements.get(member)?.[attack]).map((member) => problemAt(located, inside2, `"${member}" has no readiness under ${attack}.`));
    })
  ];
}

// src/flow/checks/check-questions.ts
var optionLists = /* @__PURE__ */ new Set(["choice", "several"]);
var withoutPrior = /* @__PURE__ */ new Set(["danger", "place", "units", "sides", "label"]);
function checkQuestions(parts2, lookup) {
  const position = new Map(parts2.questions.map((one, index) => [one.item.id, index]));
  return parts2.questions.flatMap((located, index) => [
    ...checkPlace(located, lookup),
    ...checkKind(located, lookup),
    ...checkPriors(located, lookup),
    ...checkBranch(located, lookup),
    ...checkOrder(located, position, index),
    ...references(located, "cautions", "caution", located.item.cautions, lookup.cautions),
    ...checkRenamed(located, position)
  ]);
}
function checkRenamed(located, position) {
  return located.item.renamedFrom.flatMap(
    (old, index) => position.has(old) ? [problemAt(located, ["renamedFrom", index], `"${old}" is still a question of its own.`)] : []
  );
}
function checkStop(located, lookup) {
  if (located.path.at(-1) !== 0) return [];
  const { document, item } = located;
  const file = { item, document, path: [] };
  return item.stop === "" ? [problemAt(located, [], 'a file with questions starts with "stop:" and the id of a stop.')] : reference(file, ["stop"], "stop", item.stop, lookup.stops);
}
function checkPlace(located, lookup) {
  const { item } = located;
  return [
    ...checkStop(located, lookup),
    ...item.of === void 0 ? [] : reference(located, ["of"], "group", item.of, lookup.groups),
    ...item.of !== void 0 && item.by ? [
      problemAt(
        located,
        ["by"],
        'a question about a member is not asked by side: ask "kind: sides" of the member.'
      )
    ] : [],
    ...item.role === "place" && item.when ? [problemAt(located, ["when"], "the place sets the limits of every branch: it is asked of everybody.")] : [],
    ...item.where && !item.by ? [problemAt(located, ["where"], '"where" goes with "by: side".')] : []
  ];
}
function checkKind(located, lookup) {
  const { item } = located;
  const problems = [];
  const needs = (key, present, wanted) => {
    if (present === wanted) return;
    const text = wanted ? `a ${item.kind} needs "${key}".` : `a ${item.kind} takes no "${key}".`;
    problems.push(problemAt(located, wanted ? ["kind"] : [key], text));
  };
  needs("options", (item.options?.length ?? 0) > 0, optionLists.has(item.kind));
  needs("unsafeEnd", item.unsafeEnd !== void 0, item.kind === "length");
  needs("bare", item.bare !== void 0, item.kind === "length");
  needs("counts", item.counts !== void 0, item.kind === "count");
  if (item.counts !== void 0)
    problems.push(...reference(located, ["counts"], "group", item.counts, lookup.groups));
  const ids2 = optionIds(item);
  const twice = ids2.filter((id, index) => ids2.indexOf(id) !== index);
  problems.push(...twice.map((id) => problemAt(located, ["options"], `the option "${id}" is there twice.`)));
  for (const key of ["min", "max"]) {
    const read = item[key] === void 0 ? 0 : readBound(item[key], item.kind);
    if (typeof read !== "number") problems.push(problemAt(located, [key], read.problem));
  }
  for (const [index, pick] of (item.picks ?? []).entries()) {
    const read = readBound(pick.value, item.kind);
    if (typeof read !== "number") problems.push(problemAt(located, ["picks", index, "value"], read.problem));
  }
  if (item.role === "place")
    problems.push(...ids2.flatMap((id) => reference(located, ["options"], "rulebook", id, lookup.rulebooks)));
  return problems;
}
function checkPriors(located, lookup) {
  const { item } = located;
  const open = item.kind === "text" || item.kind === "sides" || item.kind === "count";
  if (!item.priors) {
    if (open || item.role !== void 0 && withoutPrior.has(item.role)) return [];
    return [
      problemAt(
        located,
        ["kind"],
        `"${item.id}" needs "priors": how likely each answer is when it is not known.`
      )
    ];
  }
  return item.priors.flatMap((prior, index) => checkPrior(located, lookup, index, prior.are, prior.if));
}
function checkPrior(located, lookup, index, are, when) {
  const { item } = located;
  const inside2 = ["priors", index, "are"];
  const problems = when ? checkCondition({ located, lookup }, ["priors", index, "if"], when, scopeOf(item.of ?? "house")) : [];
  const measured4 = !["choice", "yesNo", "several"].includes(item.kind);
  const known = new Set(optionIds(item));
  for (const id of Object.keys(are)) {
    const read = measured4 ? readBound(item.kind === "number" ? Number(id) : id, item.kind) : 0;
    if (typeof read !== "number") problems.push(problemAt(located, [...inside2, id], read.problem));
    else if (!measured4) problems.push(...reference(located, [...inside2, id], "option", id, known));
  }
  const sum = Object.values(are).reduce((total, part) => total + part, 0);
  if (item.kind !== "several" && Math.abs(sum - 1) > 5e-3)
    problems.push(
      problemAt(located, inside2, `these probabilities add up to ${Number(sum.toFixed(3))}, not to 1.`)
    );
  return problems;
}
function checkBranch(located, lookup) {
  const { item } = located;
  const problems = [];
  const scope = scopeOf(item.of ?? "house");
  for (const key of ["when", "where"]) {
    const condition = item[key];
    if (!condition) continue;
    const inner = key === "where" ? { ...scope, side: true } : scope;
    problems.push(...checkCondition({ located, lookup }, [key], condition, inner));
    if (condition.whenUnknown === void 0 && mayBeUnknown(condition))
      problems.push(
        problemAt(
          located,
          [key],
          'say what to do when this is not known: "whenUnknown: yes" asks, "no" does not.'
        )
      );
  }
  return problems;
}
function mayBeUnknown(condition) {
  if (condition.whenUnknown !== void 0) return false;
  const parts2 = condition.all ?? condition.any ?? (condition.not ? [condition.not] : void 0);
  if (parts2) return parts2.some(mayBeUnknown);
  return condition.answered === void 0;
}
function checkOrder(located, position, index) {
  return ["when", "where"].flatMap((key) => {
    const condition = located.item[key];
    const later = condition ? questionsIn(condition).filter((id) => (position.get(id) ?? -1) >= index) : [];
    return later.map((id) => problemAt(located, [key], `it depends on "${id}", which is asked later.`));
  });
}
function questionsIn(condition) {
  const parts2 = [...condition.all ?? [], ...condition.any ?? []];
  if (condition.not) parts2.push(condition.not);
  if (condition.where) parts2.push(condition.where);
  const own2 = condition.question ?? condition.answered;
  return [...own2 === void 0 ? [] : [own2], ...parts2.flatMap(questionsIn)];
}

// src/flow/reach.ts
var tests = ["atLeast", "atMost", "above", "below"];
function* satisfy(raw, want, given2, all3) {
  const parts2 = raw.all ?? raw.any;
  if (parts2) {
    const together2 = raw.all !== void 0 === want;
    if (together2) yield* satisfyEach(parts2, want, given2, all3);
    else for (const part of parts2) yield* satisfy(part, want, given2, all3);
    return;
  }
  if (raw.not) return yield* satisfy(raw.not, !want, given2, all3);
  if (raw.where) return yield* satisfy(raw.where, want, given2, all3);
  const question = all3.get(raw.question ?? raw.answered ?? "");
  if (!question) return yield given2;
  if (raw.answered !== void 0)
    return yield* want ? onPath(question, given2, all3) : offPath(question, given2, all3);
  const wanted = wantedOf(raw, question, want);
  const merged3 = wanted && merge2(given2, question.id, wanted);
  if (merged3) yield* onPath(question, merged3, all3);
  if (!want) yield* offPath(question, given2, all3);
}
function* satisfyEach(parts2, want, given2, all3) {
  const [first, ...rest] = parts2;
  if (!first) return yield given2;
  for (const next of satisfy(first, want, given2, all3)) yield* satisfyEach(rest, want, next, all3);
}
function wantedOf(raw, question, want) {
  const named = raw.is !== void 0 ? [raw.is] : raw.oneOf;
  if (named) {
    const ids2 = named.map(String);
    const options = optionIds(question).filter((id) => ids2.includes(id) === want);
    return options.length > 0 ? { options } : void 0;
  }
  const test = tests.find((key) => raw[key] !== void 0);
  const bound = test && raw[test];
  return test && bound !== void 0 ? { measures: [{ test, bound, holds: want }] } : void 0;
}
var stands = { atLeast: "=>", atMost: "<=", above: ">", below: "<" };
function canAllHold(measures2) {
  return measures2.every((one) => {
    const same = measures2.filter((other) => JSON.stringify(other.bound) === JSON.stringify(one.bound));
    return ["<", "=", ">"].some((way) => same.every(({ test, holds }) => stands[test].includes(way) === holds));
  });
}
function merge2(given2, id, wanted) {
  const before = given2.get(id);
  const options = before?.options && wanted.options ? before.options.filter((one) => wanted.options?.includes(one)) : before?.options ?? wanted.options;
  if (options?.length === 0) return void 0;
  const measures2 = [...before?.measures ?? [], ...wanted.measures ?? []];
  if (!canAllHold(measures2)) return void 0;
  return new Map(given2).set(id, {
    ...options ? { options } : {},
    ...measures2.length > 0 ? { measures: measures2 } : {}
  });
}
function* onPath(question, given2, all3) {
  const count2 = question.of === void 0 ? void 0 : [...all3.values()].find((one) => one.counts === question.of);
  const start2 = count2 ? merge2(given2, count2.id, { measures: [{ test: "atLeast", bound: 1, holds: true }] }) : given2;
  const needs = [question.when, question.where].filter((one) => one !== void 0);
  if (start2) yield* satisfyEach(needs, true, start2, all3);
}
function* offPath(question, given2, all3) {
  if (question.when) yield* satisfy(question.when, false, given2, all3);
  if (question.where) yield* satisfy(question.where, false, given2, all3);
}
function answersThatReach(question, all3) {
  for (const found of onPath(question, /* @__PURE__ */ new Map(), all3)) return found;
  return void 0;
}

// src/flow/checks/check-reach.ts
function checkReach(parts2, lookup) {
  return parts2.questions.filter((one) => answersThatReach(one.item, lookup.questions) === void 0).map(
    (one) => problemAt(one, ["when"], `no answers lead to "${one.item.id}": its branch can never hold.`)
  );
}

// src/flow/checks/check-rulebooks.ts
function dimensionOf2(value2) {
  if (typeof value2 === "boolean") return "yes or no (true or false)";
  if (typeof value2 === "number") return "number";
  const length = readLength(value2, { unsafeEnd: "low" });
  if (length.kind === "length" && length.assumedUnit === void 0) return "length with a unit";
  return /%|°|deg/i.test(value2) && readSlope(value2).kind === "slope" ? "slope" : void 0;
}
function checkLimit(located, id, limit, general) {
  const inside2 = ["limits", id];
  const dimension = dimensionOf2(limit.value);
  if (dimension === void 0) {
    const text = `"${limit.value}" is neither a length with a unit, such as "5 ft", nor a slope, such as "20 %".`;
    return [problemAt(located, [...inside2, "value"], text)];
  }
  const over = general?.limits[id];
  if (!over) {
    const text = `the general rulebook has no limit "${id}": a place may change only what stands there.`;
    return [problemAt(located, inside2, text, didYouMean(id, Object.keys(general?.limits ?? {})))];
  }
  const wanted = dimensionOf2(over.value);
  return wanted === void 0 || wanted === dimension ? [] : [problemAt(located, [...inside2, "value"], `a ${wanted} is expected here, as in the general rulebook.`)];
}
function checkRulebooks(parts2, lookup) {
  const generalId = parts2.walks[0]?.item.generalRulebook;
  const general = parts2.rulebooks.find(({ item }) => item.id === generalId)?.item;
  return parts2.rulebooks.flatMap((located) => {
    const { item } = located;
    return [
      ...item.over === void 0 ? [] : reference(located, ["over"], "rulebook", item.over, lookup.rulebooks),
      ...Object.entries(item.limits).flatMap(([id, limit]) => [
        ...checkLimit(located, id, limit, general),
        ...reference(located, ["limits", id, "source"], "source", limit.source, lookup.sources)
      ]),
      ...item.notes.flatMap((note, index) => [
        ...reference(located, ["notes", index, "source"], "source", note.source, lookup.sources),
        ...note.stop === void 0 ? [] : reference(located, ["notes", index, "stop"], "stop", note.stop, lookup.stops)
      ])
    ];
  });
}

// src/flow/checks/check-parts.ts
function nowhere(documents, problem) {
  return { path: documents[0]?.path ?? "flows", line: 1, column: 1, at: "", problem };
}
function checkWhole(parts2, lookup, documents) {
  const [walk, second] = parts2.walks;
  if (!walk) return [nowhere(documents, 'no file has a "walk:" with the stops in order.')];
  const used = new Set(parts2.questions.map((one) => one.item.stop));
  return [
    ...second ? [problemAt(second, [], 'there is more than one "walk:".')] : [],
    ...walk.item.stops.map((stop, index) => ({ stop, index })).filter(({ stop }) => !used.has(stop.id)).map(({ stop, index }) => problemAt(walk, ["stops", index], `the stop "${stop.id}" has no questions.`)),
    ...parts2.groups.flatMap((group) => [
      ...reference(group, ["sides"], "question", group.item.sides, lookup.questions),
      ...parts2.questions.some(({ item }) => item.counts === group.item.id) ? [] : [
        problemAt(
          group,
          ["id"],
          `no question counts "${group.item.id}": one of "kind: count" is needed.`
        )
      ]
    ]),
    ...parts2.words.some((one) => one.item.language === walk.item.language) ? [] : [problemAt(walk, ["language"], `there is no "words:" for the language "${walk.item.language}".`)]
  ];
}
function checkTwice(parts2) {
  return [
    ...duplicateIds("question", parts2.questions),
    ...duplicateIds("finding", parts2.findings),
    ...duplicateIds("element", parts2.elements),
    ...duplicateIds("set", parts2.sets),
    ...duplicateIds("way in", parts2.waysIn),
    ...duplicateIds("action", parts2.actions),
    ...duplicateIds("caution", parts2.cautions),
    ...duplicateIds("cost line", parts2.costs),
    ...duplicateIds("upkeep", parts2.upkeep),
    ...duplicateIds("source", parts2.sources),
    ...duplicateIds("rulebook", parts2.rulebooks),
    ...duplicateIds("group", parts2.groups),
    ...onceOnly(parts2, "role", "has the role"),
    ...onceOnly(parts2, "counts", "counts")
  ];
}
function onceOnly(parts2, key, does) {
  return parts2.questions.flatMap((one, index) => {
    const value2 = one.item[key];
    const before = parts2.questions.slice(0, index).find(({ item }) => value2 !== void 0 && item[key] === value2);
    return before ? [problemAt(one, [key], `"${before.item.id}" already ${does} "${value2}".`)] : [];
  });
}
function checkParts(parts2, documents, computations) {
  const lookup = indexParts(parts2, computations);
  const general = parts2.walks.flatMap(
    (walk) => reference(walk, ["generalRulebook"], "rulebook", walk.item.generalRulebook, lookup.rulebooks)
  );
  if (general.length > 0) return general;
  const references2 = [
    ...checkWhole(parts2, lookup, documents),
    ...checkTwice(parts2),
    ...checkQuestions(parts2, lookup),
    ...checkFindings(parts2, lookup),
    ...checkActions(parts2, lookup),
    ...checkRulebooks(parts2, lookup),
    ...checkCalls(parts2, lookup),
    ...parts2.cautions.flatMap(
      (one) => one.item.sources.flatMap(
        (id, index) => reference(one, ["sources", index], "source", id, lookup.sources)
      )
    ),
    ...parts2.costs.flatMap((one) => reference(one, ["source"], "source", one.item.source, lookup.sources))
  ];
  return references2.length > 0 ? references2 : checkReach(parts2, lookup);
}

// src/flow/parts.ts
function single(files, key) {
  return files.flatMap(({ file, document }) => {
    const item = file[key];
    return item === void 0 ? [] : [{ item, document, path: [key] }];
  });
}
function keyed(files, key) {
  return files.flatMap(
    ({ file, document }) => Object.entries(file[key] ?? {}).map(([id, value2]) => ({ id, value: value2, document, path: [key, id] }))
  );
}
function gatherParts(files) {
  const walks = single(files, "walk");
  const order = walks[0]?.item.stops.map((stop) => stop.id) ?? [];
  const questions = files.flatMap(
    ({ file, document }) => (file.questions ?? []).map((item, index) => ({
      item: { ...item, stop: file.stop ?? "" },
      document,
      path: ["questions", index]
    }))
  ).sort((a, b) => order.indexOf(a.item.stop) - order.indexOf(b.item.stop));
  return {
    walks,
    questions,
    groups: gather(files, "groups"),
    findings: gather(files, "findings"),
    elements: gather(files, "elements"),
    sets: keyed(files, "sets").map(({ id, value: value2, ...at }) => ({
      ...at,
      item: { id, members: value2 }
    })),
    waysIn: gather(files, "waysIn"),
    actions: gather(files, "actions"),
    cautions: gather(files, "cautions"),
    costs: gather(files, "costs"),
    upkeep: gather(files, "upkeep"),
    sources: gather(files, "sources"),
    rulebooks: single(files, "rulebook"),
    words: single(files, "words"),
    calls: single(files, "call"),
    shortCalls: single(files, "shortCall"),
    phrases: keyed(files, "phrases").map(({ id, value: value2, ...at }) => ({
      ...at,
      item: { id, text: value2 }
    }))
  };
}

// src/flow/describe-issue.ts
var kindNames = {
  string: "text",
  object: "a mapping",
  record: "a mapping",
  array: "a list",
  number: "a number",
  int: "a whole number",
  boolean: "yes or no (true or false)"
};
function kindOf(value2) {
  if (value2 === null) return "nothing";
  return kindNames[Array.isArray(value2) ? "array" : typeof value2] ?? typeof value2;
}
var quoted = (values) => values.map((value2) => `"${String(value2)}"`).join(", ");
function tooSmall(issue) {
  if (issue.origin === "string")
    return issue.minimum === 1 ? "is empty." : `needs at least ${issue.minimum} characters.`;
  if (issue.origin === "array")
    return `needs at least ${issue.minimum} ${issue.minimum === 1 ? "entry" : "entries"}.`;
  return `must be ${issue.inclusive ? "at least" : "above"} ${issue.minimum}.`;
}
function describeIssue(issue, value2) {
  switch (issue.code) {
    case "invalid_value": {
      const values = issue.values.map(String);
      if (value2 === void 0) return [`is missing: one of ${quoted(values)}.`];
      const suggestion = typeof value2 === "string" ? didYouMean(value2, values) : void 0;
      const problem = `"${String(value2)}" is not one of ${quoted(values)}.`;
      return suggestion === void 0 ? [problem] : [problem, suggestion];
    }
    case "invalid_type": {
      const expected = kindNames[issue.expected] ?? issue.expected;
      return [
        value2 === void 0 ? `is missing: ${expected} expected.` : `${expected} is expected here, not ${kindOf(value2)}.`
      ];
    }
    case "invalid_union":
      return [value2 === void 0 ? "is missing." : `${kindOf(value2)} does not fit here.`];
    case "too_small":
      return [tooSmall(issue)];
    case "too_big":
      return [`must be at most ${issue.maximum}.`];
    case "invalid_format":
    case "invalid_key":
      return [`"${String(value2)}" is not right here: ${issue.message}.`];
    default:
      return [`${issue.message}.`];
  }
}

// src/flow/known-keys.ts
var definitionOf = (schema) => schema?.def;
function alternatives(schema) {
  const definition = definitionOf(schema);
  if (definition?.innerType !== void 0) return alternatives(definition.innerType);
  return definition?.options ? definition.options.flatMap(alternatives) : [schema];
}
function inside(schema, key) {
  return alternatives(schema).flatMap((one) => {
    const definition = definitionOf(one);
    const found = definition?.shape?.[key] ?? definition?.element ?? definition?.valueType;
    return found === void 0 ? [] : [found];
  });
}
function knownKeys(schema, path) {
  let at = [schema];
  for (const key of path) at = at.flatMap((one) => inside(one, key));
  const keys = at.flatMap(alternatives).flatMap((one) => Object.keys(definitionOf(one)?.shape ?? {}));
  return [...new Set(keys)];
}

// src/flow/schema/file.ts
import * as z9 from "zod";

// src/flow/schema/action.ts
import * as z3 from "zod";

// src/flow/schema/condition.ts
import * as z2 from "zod";
var Bound = z2.union([Quantity, z2.strictObject({ limit: Id })]);
var Scalar = z2.union([z2.string(), z2.number(), z2.boolean()]);
var subjects = ["question", "computed", "limit"];
var tests2 = ["is", "oneOf", "atLeast", "atMost", "above", "below"];
var alone = ["all", "any", "not", "answered", "finding"];
function oneShape(raw) {
  const heads = [...subjects, ...alone, "some", "every"].filter((key) => key in raw);
  const testCount = tests2.filter((key) => key in raw).length;
  const [head] = heads;
  if (head === void 0)
    return "A condition starts with one of: question, computed, limit, all, any, not, answered, finding, some, every";
  if (heads.length > 1)
    return `A condition has one subject, this has ${heads.join(" and ")}: put them under "all:" or "any:"`;
  if (subjects.includes(head)) {
    return testCount === 1 ? void 0 : `"${head}" needs exactly one of: ${tests2.join(", ")}`;
  }
  if (testCount > 0) return `"${head}" takes no comparison`;
  if (head === "some" || head === "every")
    return raw.where ? void 0 : `"${head}" needs "where:" with a condition`;
  return raw.where ? `"where" goes with "some" or "every" only` : void 0;
}
var Condition = z2.strictObject({
  get all() {
    return z2.array(Condition).min(1).optional();
  },
  get any() {
    return z2.array(Condition).min(1).optional();
  },
  get not() {
    return Condition.optional();
  },
  question: Id.optional(),
  computed: Id.optional(),
  limit: Id.optional(),
  is: Scalar.optional(),
  oneOf: z2.array(Scalar).min(1).optional(),
  atLeast: Bound.optional(),
  atMost: Bound.optional(),
  above: Bound.optional(),
  below: Bound.optional(),
  answered: Id.optional(),
  finding: Id.optional(),
  some: Id.optional(),
  every: Id.optional(),
  get where() {
    return Condition.optional();
  },
  whenUnknown: z2.enum(["yes", "no"]).optional()
}).superRefine((raw, context) => {
  const problem = oneShape(raw);
  if (problem) context.addIssue({ code: "custom", message: problem });
});

// src/flow/schema/action.ts
var Residual = z3.number().min(0).max(1);
var Amount = z3.union([
  z3.number().positive(),
  z3.strictObject({ computed: Id, otherwise: z3.number().positive() })
]);
var Action = z3.strictObject({
  id: Id,
  per: Per.default("house"),
  /** The findings it answers: it is proposed where one of them is. */
  for: z3.array(Id).min(1),
  /** Proposed only where this holds too. */
  when: Condition.optional(),
  do: Text,
  why: Text,
  /** How to do it, step by step, plain. */
  how: z3.array(Text).default([]),
  lane: Lane,
  /** The first that holds moves the job to another lane, and says why. */
  laneWhen: z3.array(z3.strictObject({ if: Condition, lane: Lane, because: Text })).default([]),
  /** element id -> what is left of its readiness; one number, or by attack. */
  treats: z3.record(
    z3.string(),
    z3.union([Residual, z3.strictObject({ ember: Residual.optional(), flame: Residual.optional() })])
  ),
  insteadOf: Id.optional(),
  requires: z3.array(Id).default([]),
  /** Jobs with the same word are joined when shown. */
  mergeBy: Id.optional(),
  cost: z3.array(z3.strictObject({ line: Id, amount: Amount })).default([]),
  /** Computations of the house whose result the job tells, where it has one. */
  workedOut: z3.array(Id).default([]),
  hours: z3.strictObject({ low: z3.number().min(0), high: z3.number().min(0) }),
  cautions: z3.array(Id).default([]),
  cautionsWhen: z3.array(z3.strictObject({ if: Condition, cautions: z3.array(Id).min(1) })).default([]),
  /** Needed where no caution is listed: why this cannot hurt. */
  harmless: z3.string().min(3).optional(),
  /** The limits of the rulebook behind it. */
  rules: z3.array(Id).default([]),
  demandedWhen: z3.strictObject({ if: Condition, by: Text }).optional(),
  contractor: z3.strictObject({ ask: z3.array(Text).min(1), permit: Text }).optional(),
  /** Work that comes back, or a habit. */
  comesBack: z3.boolean().optional(),
  sources: z3.array(Id).default([])
});
var Caution = z3.strictObject({
  id: Id,
  say: Text,
  /** Words in an action that call for this caution. */
  words: z3.array(z3.string()).default([]),
  sources: z3.array(Id).min(1)
});
var Cost = z3.strictObject({
  id: Id,
  what: Text,
  unit: z3.string().min(1),
  low: z3.number().min(0),
  high: z3.number().min(0),
  currency: z3.string().regex(/^[A-Z]{3}$/, "a currency is three capital letters, such as USD"),
  year: z3.number().int(),
  source: Id
});
var Upkeep = z3.strictObject({
  id: Id,
  seasons: z3.array(Season).min(1),
  when: Condition.optional(),
  do: Text,
  cautions: z3.array(Id).default([]),
  sources: z3.array(Id).default([])
});

// src/flow/schema/call.ts
import * as z4 from "zod";
var Phrases = z4.array(z4.string().min(1)).min(1);
var Call = z4.strictObject({
  words: z4.strictObject({
    /** Alone: the stop line to read out. The first is the key. */
    stopLine: Phrases,
    /** Before a free note. */
    note: Phrases,
    /** Before the minutes that a call may take. */
    minutes: Phrases,
    /** Instead of a number of minutes: all questions. */
    noLimit: Phrases,
    /** Before a number to call back. */
    callBack: Phrases,
    /** Instead of a number: none, or forget the one that is kept. */
    noNumber: Phrases,
    /** Before an answer that corrects an earlier one. */
    earlier: Phrases,
    /** Said beside an answer, without meaning. */
    aside: Phrases,
    /** Between the name of a thing and what it is. */
    is: Phrases,
    /** What was left out for time. */
    leftOut: Phrases
  }),
  /** The first whose words are heard gives its stop line, `call.stop.ID`. */
  unsafe: z4.array(
    z4.strictObject({
      id: Id,
      words: Phrases,
      /** Never it, although it holds such words. */
      never: z4.array(z4.string().min(1)).default([])
    })
  ).min(1)
});
var ShortCall = z4.strictObject({
  /** Asked before all others, in this order. */
  first: z4.array(Id).default([]),
  /** How the worths were worked out. */
  basis: z4.string().min(3),
  /**
   * question id -> how often a house's first three jobs would be others if its answer were not known, among houses
   * that are asked it
   */
  worth: z4.record(z4.string(), z4.number().min(0).max(1))
});

// src/flow/schema/finding.ts
import * as z5 from "zod";
var Finding = z5.strictObject({
  id: Id,
  per: Per.default("house"),
  when: Condition,
  /** What was found, with {side} or {member} where it is by side or member. */
  say: Text,
  /** Why it matters, one sentence. */
  why: Text,
  sources: z5.array(Id).min(1),
  /** A finding without an action says why there is none. */
  noAction: z5.string().min(1).optional()
});
var Readiness = z5.strictObject({
  level: z5.enum(["rarely", "seldom", "sometimes", "often", "readily"]),
  value: z5.number().gt(0).max(1).optional(),
  low: z5.number().gt(0).max(1).optional(),
  high: z5.number().gt(0).max(1).optional()
});
var Element = z5.strictObject({
  id: Id,
  per: Per.default("house"),
  when: Condition,
  /** A noun phrase in plain words, without side: "quarter-inch mesh". */
  what: Text,
  ember: Readiness.optional(),
  flame: Readiness.optional(),
  basis: z5.string().min(3),
  sources: z5.array(Id).default([]),
  /** Meets the rulebook: stays in the sum, brings no action. */
  sound: z5.boolean().optional()
});
var Link = z5.union([z5.strictObject({ ember: Id }), z5.strictObject({ flame: Id })]);
var WayIn = z5.strictObject({
  id: Id,
  say: Text,
  chain: z5.array(Link).min(1).max(5),
  /** Counted once a side (usual), or once for the house. */
  once: z5.boolean().optional(),
  sources: z5.array(Id).default([])
});

// src/flow/schema/question.ts
import * as z6 from "zod";
var Option = z6.strictObject({
  id: Id,
  label: Text,
  words: z6.array(z6.string().min(1)).default([]),
  /** In a question with several answers: this one stands alone ("none of these"). */
  alone: z6.boolean().optional()
});
var Pick = z6.strictObject({
  value: Quantity,
  label: Text,
  words: z6.array(z6.string().min(1)).default([])
});
var Prior = z6.strictObject({
  if: Condition.optional(),
  /** option id, or a quantity such as `4 ft`, to probability; `several`: each on its own. */
  are: z6.record(z6.string(), z6.number().min(0).max(1)),
  basis: z6.string().min(3)
});
var CallText = z6.strictObject({
  /** Read aloud, one breath, no jargon. */
  say: z6.string().min(1),
  /** What to listen for, and what the answers people give mean. */
  listen: z6.string().min(1),
  /** What to do if they cannot tell. */
  cannotTell: z6.string().min(1)
});
var questionKinds = [
  "choice",
  "yesNo",
  "several",
  "sides",
  "length",
  "number",
  "slope",
  "text",
  "count"
];
var questionRoles = [
  "danger",
  "place",
  "units",
  "sides",
  "yearBuilt",
  "tenure",
  "building",
  "label"
];
var Question = z6.strictObject({
  id: Id,
  kind: z6.enum(questionKinds),
  /** One value for each side, asked in one prompt. */
  by: z6.literal("side").optional(),
  /** With `by: side`: the sides it is asked about. */
  where: Condition.optional(),
  /** A question about each member of this group. */
  of: Id.optional(),
  /** With `kind: count`: the group whose members it counts. */
  counts: Id.optional(),
  role: z6.enum(questionRoles).optional(),
  /** Asked only when this holds; its root says what to do when unknown. */
  when: Condition.optional(),
  /** Two or three words for lists: "roof covering". */
  short: z6.string().min(1).optional(),
  ask: Text,
  look: Text,
  good: Text,
  why: Text,
  call: CallText,
  options: z6.array(Option).optional(),
  /** Lengths: the end of a range that is taken, since it is the unsafe one. */
  unsafeEnd: z6.enum(["low", "high"]).optional(),
  /** Lengths: the units a bare number is in. */
  bare: z6.strictObject({ imperial: z6.enum(["in", "ft", "yd"]), metric: z6.enum(["mm", "cm", "m"]) }).optional(),
  /** Measures that people can pick by sight; a range is given at its unsafe end. */
  picks: z6.array(Pick).optional(),
  min: Quantity.optional(),
  max: Quantity.optional(),
  priors: z6.array(Prior).optional(),
  /** Seconds a person needs to answer, for the short call. */
  seconds: z6.number().positive().default(15),
  /** Where to look for, or measure: never by climbing. */
  cautions: z6.array(Id).default([]),
  renamedFrom: z6.array(Id).default([])
});
var Group = z6.strictObject({
  id: Id,
  one: z6.string().min(1),
  many: z6.string().min(1),
  max: z6.number().int().min(1).max(12),
  /** Members' keys are this letter and a number that is never used twice. */
  keyLetter: z6.string().regex(/^[a-z]$/, "a key letter is one small letter"),
  /** The member question that says on which sides it stands. */
  sides: Id
});

// src/flow/schema/rulebook.ts
import * as z7 from "zod";
var Limit = z7.strictObject({
  value: z7.union([Quantity, z7.boolean()]),
  what: Text,
  source: Id,
  note: Text.optional()
});
var Rulebook = z7.strictObject({
  id: Id,
  title: z7.string().min(1),
  /** Rulebooks over which this one lies; the general one lies under all. */
  over: Id.optional(),
  invented: z7.boolean().optional(),
  hemisphere: z7.enum(["north", "south"]).default("north"),
  units: z7.enum(["imperial", "metric"]),
  currency: z7.string().regex(/^[A-Z]{3}$/, "a currency is three capital letters, such as USD"),
  emergencyNumber: z7.string().min(1),
  /** Whom to ask about local code. */
  authority: Text,
  limits: z7.record(Id, Limit),
  notes: z7.array(z7.strictObject({ say: Text, source: Id, stop: Id.optional() })).default([])
});
var Source = z7.strictObject({
  id: Id,
  title: z7.string().min(1),
  by: z7.string().min(1),
  year: z7.union([z7.number().int(), z7.string()]).optional(),
  status: KnownBy,
  note: z7.string().optional(),
  url: z7.string().url().optional()
});

// src/flow/schema/words.ts
import * as z8 from "zod";
var Phrases2 = z8.array(z8.string().min(1)).min(1);
var Words = z8.strictObject({
  language: z8.string().regex(/^[a-z]{2}(-[A-Z]{2})?$/),
  yes: Phrases2,
  no: Phrases2,
  notSure: Phrases2,
  skip: Phrases2,
  none: Phrases2,
  all: Phrases2,
  /** Between a whole and what is left out of it: "all except the back". */
  except: Phrases2,
  and: Phrases2,
  sides: z8.strictObject({ front: Phrases2, left: Phrases2, back: Phrases2, right: Phrases2 }),
  commands: z8.strictObject({
    back: Phrases2,
    help: Phrases2,
    why: Phrases2,
    pause: Phrases2,
    where: Phrases2,
    jump: Phrases2,
    change: Phrases2,
    startOver: Phrases2,
    finish: Phrases2,
    stop: Phrases2,
    remove: Phrases2,
    /** Erase everything kept about this person, after one more question. */
    forget: Phrases2
  }),
  emergency: z8.strictObject({
    /** Said like this, it is an emergency. */
    sure: Phrases2,
    /** It may be one: met with one short question. */
    doubt: Phrases2,
    /** Never one, although it holds such a word: "fire pit". */
    never: Phrases2
  }),
  numbers: z8.record(z8.string(), z8.number()),
  /** unit id -> the words for it */
  units: z8.record(z8.string(), Phrases2),
  about: Phrases2,
  lessThan: Phrases2,
  moreThan: Phrases2,
  between: Phrases2
});

// src/flow/schema/file.ts
var Level = z9.strictObject({ value: z9.number(), low: z9.number(), high: z9.number() });
var Stop = z9.strictObject({
  id: Id,
  title: Text,
  /** Said on arriving: where to stand and what the stop is about. */
  arrive: Text,
  /** Where it stands in the small drawing of the house. */
  drawing: z9.enum([
    "about",
    "roof",
    "eaves",
    "vents",
    "siding",
    "openings",
    "zone0",
    "trees",
    "fences",
    "outbuildings",
    "zone1"
  ]),
  words: z9.array(z9.string()).default([])
});
var Walk = z9.strictObject({
  id: Id,
  title: Text,
  language: z9.string(),
  generalRulebook: Id,
  stops: z9.array(Stop).min(1),
  /** The named levels of readiness, with their usual ranges. */
  levels: z9.strictObject({ rarely: Level, seldom: Level, sometimes: Level, often: Level, readily: Level }),
  /** A trade job is advised only while a way in that it closes weighs at least this. */
  tradeFloor: z9.number().positive(),
  /** Shares are said in these words, from the largest down. */
  shareWords: z9.array(z9.strictObject({ atLeast: z9.number().min(0).max(1), say: z9.string() })).min(2)
});
var FlowFile = z9.strictObject({
  walk: Walk.optional(),
  groups: z9.array(Group).optional(),
  /** The stop to which the questions of this file belong. */
  stop: Id.optional(),
  questions: z9.array(Question).optional(),
  findings: z9.array(Finding).optional(),
  elements: z9.array(Element).optional(),
  sets: z9.record(Id, z9.array(Id).min(1)).optional(),
  waysIn: z9.array(WayIn).optional(),
  actions: z9.array(Action).optional(),
  cautions: z9.array(Caution).optional(),
  costs: z9.array(Cost).optional(),
  upkeep: z9.array(Upkeep).optional(),
  sources: z9.array(Source).optional(),
  rulebook: Rulebook.optional(),
  words: Words.optional(),
  call: Call.optional(),
  shortCall: ShortCall.optional(),
  /** phrase id -> text that the program says outside questions */
  phrases: z9.record(z9.string(), Text).optional()
});

// src/flow/read-file.ts
function valueAt(root, path) {
  let value2 = root;
  for (const key of path) {
    if (typeof value2 !== "object" || value2 === null) return void 0;
    value2 = value2[key];
  }
  return value2;
}
function unfold(issue, path) {
  const here = [...path, ...issue.path];
  if (issue.code !== "invalid_union" || issue.errors.length === 0) return [{ issue, path: here }];
  const branches = issue.errors.map((errors) => errors.flatMap((inner) => unfold(inner, here)));
  const furthest = (found) => Math.max(...found.map((one) => one.path.length + (one.issue.code === "unrecognized_keys" ? 1 : 0)));
  branches.sort((a, b) => furthest(b) - furthest(a) || a.length - b.length);
  return branches[0] ?? [{ issue, path: here }];
}
var sayPath = (path) => path.map(String).join(".");
function followsFrom({ issue, path }, all3) {
  return all3.some((other) => {
    if (other.issue.code !== "unrecognized_keys") return false;
    if (issue.code === "custom") return sayPath(other.path) === sayPath(path);
    const missing = issue.code === "invalid_type" || issue.code === "invalid_value" || issue.code === "invalid_union";
    const last = String(path.at(-1));
    const known = knownKeys(FlowFile, other.path);
    return missing && sayPath(other.path) === sayPath(path.slice(0, -1)) && other.issue.keys.some((key) => nearest(key, known) === last);
  });
}
function problemsAt({ issue, path }, document) {
  const at = sayPath(path);
  if (issue.code === "unrecognized_keys") {
    const known = knownKeys(FlowFile, path);
    return issue.keys.map((key) => ({
      path: document.path,
      ...document.positionOf([...path, key]),
      at,
      problem: `"${key}" is not known here.`,
      suggestion: didYouMean(key, known) ?? `Known: ${known.join(", ")}.`
    }));
  }
  const [problem, suggestion] = describeIssue(issue, valueAt(document.value, path));
  const position = document.positionOf(path);
  return [
    { path: document.path, ...position, at, problem, ...suggestion === void 0 ? {} : { suggestion } }
  ];
}
function readFlowFile(document) {
  const parsed = FlowFile.safeParse(document.value ?? {});
  if (parsed.success) return { file: parsed.data, problems: [] };
  const found = parsed.error.issues.flatMap((issue) => unfold(issue, []));
  const missing = ({ path }) => valueAt(document.value, path) === void 0;
  const telling = found.filter(
    (one) => !(followsFrom(one, found) && (one.issue.code === "custom" || missing(one)))
  );
  return { problems: telling.flatMap((one) => problemsAt(one, document)) };
}

// src/flow/build-flow.ts
var items = (located) => located.map((one) => one.item);
function assemble(parts2, outside2) {
  const walk = parts2.walks[0]?.item;
  if (!walk) return void 0;
  const call = parts2.calls[0]?.item;
  const shortCall = parts2.shortCalls[0]?.item;
  const flow = {
    walk,
    stops: walk.stops,
    groups: items(parts2.groups),
    questions: items(parts2.questions),
    findings: items(parts2.findings),
    elements: items(parts2.elements),
    sets: Object.fromEntries(parts2.sets.map(({ item }) => [item.id, item.members])),
    waysIn: items(parts2.waysIn),
    actions: items(parts2.actions),
    cautions: items(parts2.cautions),
    costs: items(parts2.costs),
    upkeep: items(parts2.upkeep),
    sources: items(parts2.sources),
    rulebooks: items(parts2.rulebooks),
    words: Object.fromEntries(parts2.words.map(({ item }) => [item.language, item])),
    ...call ? { call } : {},
    ...shortCall ? { shortCall } : {},
    phrases: Object.fromEntries(parts2.phrases.map(({ item }) => [item.id, item.text]))
  };
  return { ...flow, fingerprint: outside2.fingerprint(JSON.stringify(flow)) };
}
function buildFlow(documents, outside2) {
  const read = documents.map((document) => ({ document, ...readFlowFile(document) }));
  const shapeProblems = read.flatMap((one) => one.problems);
  const files = read.flatMap(
    (one) => one.file ? [{ file: one.file, document: one.document }] : []
  );
  const parts2 = gatherParts(files);
  const problems = shapeProblems.length > 0 ? shapeProblems : checkParts(parts2, documents, outside2.computations);
  const flow = problems.length === 0 ? assemble(parts2, outside2) : void 0;
  return flow ? { flow, problems: [] } : { problems };
}

// src/flow/problem.ts
function sayProblem(problem) {
  const where = `${problem.path}:${problem.line}:${problem.column}`;
  const inside2 = problem.at === "" ? "" : ` ${problem.at}:`;
  const suggestion = problem.suggestion === void 0 ? "" : ` ${problem.suggestion}`;
  return `${where}${inside2} ${problem.problem}${suggestion}`;
}

// tests/support/programme.ts
function readFlow() {
  const root = resolve(".");
  const { documents, problems } = readFlows(resolve("flows"), root);
  const built = buildFlow(documents, {
    computations: COMPUTED_IDS,
    fingerprint: (text) => createHash("sha256").update(text).digest("hex").slice(0, 16)
  });
  if (!built.flow) throw new Error([...problems, ...built.problems].map(sayProblem).join("\n"));
  return built.flow;
}
var programme;
function realProgramme() {
  programme ??= buildProgramme(readFlow());
  return programme;
}

// tests/support/random-answers.ts
function seededRandom(seed) {
  let state = seed >>> 0;
  return () => {
    state = state + 1831565813 >>> 0;
    let mixed = Math.imul(state ^ state >>> 15, state | 1);
    mixed ^= mixed + Math.imul(mixed ^ mixed >>> 7, mixed | 61);
    return ((mixed ^ mixed >>> 14) >>> 0) / 4294967296;
  };
}
function oneOf(list4, random) {
  const found = list4[Math.floor(random() * list4.length)];
  if (found === void 0) throw new Error("There is nothing to choose from.");
  return found;
}
var measures = {
  length: [
    "0 ft",
    "1/16 in",
    "1/8 in",
    "1/4 in",
    "6 in",
    "2 ft",
    "4 ft",
    "5 ft",
    "6 ft",
    "9 ft",
    "10 ft",
    "18 ft",
    "30 ft",
    "70 ft"
  ],
  slope: ["0 %", "5 %", "19 %", "20 %", "35 %", "40 %", "60 %"],
  number: ["1925", "1978", "1990", "2008", "2015"]
};
function within(question, value2) {
  const end = (bound) => bound === void 0 ? void 0 : readBound(bound, question.kind);
  const [low, high] = [end(question.min), end(question.max)];
  return (typeof low !== "number" || value2 >= low) && (typeof high !== "number" || value2 <= high);
}
function sayableMeasures(question) {
  return (measures[question.kind] ?? []).filter((text) => {
    const value2 = readBound(text, question.kind);
    return typeof value2 === "number" && within(question, value2);
  });
}

// tests/support/random-talk.ts
var list3 = (words) => words.length > 1 ? `${words.slice(0, -1).join(", ")} and ${words.at(-1)}` : words[0] ?? "";
function some(all3, random) {
  const found = all3.filter(() => random() < 0.4);
  return found.length > 0 ? found : [oneOf(all3, random)];
}
function numbers3(question, ask, random) {
  if (!ask.several) return String(oneOf(ask.choices, random).number);
  const alone2 = new Set((question.options ?? []).filter((option) => option.alone).map((option) => option.id));
  const together2 = ask.choices.filter((choice) => !alone2.has(choice.id));
  const picked = random() < 0.3 && alone2.size > 0 ? ask.choices.filter((choice) => alone2.has(choice.id)).slice(0, 1) : some(together2, random);
  return list3(picked.map((choice) => String(choice.number)));
}
function value(question, ask, random) {
  switch (question.kind) {
    case "choice":
    case "several":
      return numbers3(question, ask, random);
    case "yesNo":
      return question.role === "danger" ? "no" : oneOf(["yes", "no", "y", "nope"], random);
    case "sides":
      return list3(some(["front", "left", "back", "right"], random));
    case "count":
      return oneOf(["none", "1", "two"], random);
    case "text":
      return oneOf(["Blue house", "clean gutters by May"], random);
    default:
      return oneOf(sayableMeasures(question), random);
  }
}
function bySide(question, ask, random) {
  if (question.kind === "yesNo")
    return random() < 0.3 ? oneOf(["all", "none"], random) : list3(some(ask.sides, random));
  if (random() < 0.4 || ask.sides.length < 2) return `${value(question, ask, random)} on all sides`;
  const first = some(ask.sides.slice(1), random);
  const rest = random() < 0.7 ? `, rest ${value(question, ask, random)}` : "";
  return `${value(question, ask, random)} ${list3(first)}${rest}`;
}
function sayAnswer(programme2, ask, random) {
  const question = programme2.checklist.index.questions.get(ask.question);
  if (!question) throw new Error(`There is no question ${ask.question}.`);
  const chance = random();
  if (chance < 0.06 && question.role !== "danger") return oneOf(["not sure", "no idea", "skip"], random);
  return ask.sides.length > 0 ? bySide(question, ask, random) : value(question, ask, random);
}

// .config/bench/measure.ts
function lowerQuartile(numbers4) {
  const sorted3 = [...numbers4].sort((a, b) => a - b);
  return sorted3[Math.floor(sorted3.length / 4)] ?? Number.NaN;
}
async function inTurns(things, { warm, rounds }) {
  const names = Object.keys(things);
  const times2 = new Map(names.map((name) => [name, []]));
  for (let round = 0; round < warm + rounds; round++) {
    for (const name of names) {
      const milliseconds = await things[name]();
      if (round >= warm) times2.get(name)?.push(milliseconds);
    }
  }
  return Object.fromEntries(names.map((name) => [name, lowerQuartile(times2.get(name) ?? [])]));
}
function sayRatio(what, ratio, wanted, met) {
  console.log(`${met ? "met    " : "NOT MET"} ${what}: ${ratio.toFixed(2)} (wanted: ${wanted})`);
}

// .config/bench/reducer.ts
function reducerFor(programme2, asked3) {
  const { flow } = programme2.checklist;
  const words = flow.words[flow.walk.language];
  if (!words) throw new Error("The flow has no words in its own language.");
  return (stored, text) => {
    const { sheet, next } = JSON.parse(stored);
    const question = asked3[next];
    if (!question) return stored;
    const reading = readMessage(text, {
      question,
      words,
      stops: flow.stops,
      questions: flow.questions,
      groups: flow.groups,
      sides: question.by === "side" ? sideNames : [],
      units: "imperial",
      members: []
    });
    if (reading.kind !== "answer") return stored;
    const after = { sheet: { ...sheet, [question.id]: reading.answer }, next: next + 1 };
    return JSON.stringify(after);
  };
}

// .config/bench/sixty-questions.ts
var materials = ["wood", "stone", "metal", "other"];
var count = 60;
var sixtyQuestions = Array.from({ length: count }, (_, at) => ({
  id: `part.q${at + 1}`,
  ask: `What is part ${at + 1} made of?`,
  options: materials
}));
var sixtyAnswers = sixtyQuestions.map((_, at) => materials[at % materials.length] ?? "");
function sixtyQuestionFlow() {
  const real2 = realProgramme().checklist.flow;
  const [stop] = real2.stops;
  if (!stop) throw new Error("The real walk has no stops.");
  const questions = sixtyQuestions.map(
    ({ id, ask, options }) => ({
      id,
      stop: stop.id,
      kind: "choice",
      ask,
      look: "Look at it.",
      good: "Stone.",
      why: "Some of it burns.",
      call: { say: ask, listen: "A word.", cannotTell: "Leave it." },
      options: options.map((option) => ({ id: option, label: option, words: [] })),
      seconds: 5,
      cautions: [],
      renamedFrom: []
    })
  );
  return {
    ...real2,
    stops: [stop],
    groups: [],
    questions,
    findings: [],
    elements: [],
    sets: {},
    waysIn: [],
    actions: [],
    upkeep: [],
    fingerprint: "sixty"
  };
}

// .config/bench/turn.ts
var now = /* @__PURE__ */ new Date("2026-06-12T16:00:00Z");
var start = (programme2) => JSON.stringify(takeTurn(programme2, newWalk(programme2, "bench", now), { kind: "hello" }, now).record);
function walkOurs(programme2, answers2, say3) {
  let stored = start(programme2);
  const started = performance.now();
  for (const text of answers2) {
    const { record: record7, reply } = takeTurn(programme2, JSON.parse(stored), { kind: "text", text }, now);
    say3?.(record7, reply);
    stored = JSON.stringify(record7);
  }
  const milliseconds = performance.now() - started;
  if (JSON.parse(stored).cursor.phase !== "readBack") throw new Error("The walk did not come to its end.");
  return milliseconds;
}
function walkReducer(reduce, answers2) {
  let stored = JSON.stringify({ sheet: {}, next: 0 });
  const started = performance.now();
  for (const text of answers2) stored = reduce(stored, text);
  const milliseconds = performance.now() - started;
  if (JSON.parse(stored).next !== answers2.length) throw new Error("The reducer did not take every answer.");
  return milliseconds;
}
function realWalk(programme2, seed) {
  const random = seededRandom(seed);
  let turned = takeTurn(programme2, newWalk(programme2, "bench", now), { kind: "hello" }, now);
  const answers2 = [];
  const asked3 = [];
  while (turned.reply.ask) {
    const { ask } = turned.reply;
    const question = programme2.checklist.index.questions.get(ask.question);
    const text = ask.sides.length > 0 ? "not sure" : sayAnswer(programme2, ask, random);
    if (question) asked3.push(question);
    answers2.push(ask.question === "trees.count" || ask.question === "outbuildings.count" ? "none" : text);
    turned = takeTurn(programme2, turned.record, { kind: "text", text: answers2.at(-1) ?? "" }, now);
  }
  return { answers: answers2, asked: asked3 };
}
function speaker(programme2) {
  const { flow, index } = programme2.checklist;
  const texts = { catalogue: catalogueOf(flow), questions: index.questions };
  return ({ sheet, audience, language }, reply) => {
    const { limits } = pathOf(index, sheet);
    const units = unitsOf(programme2.checklist, sheet);
    wordReply(reply, createWording(texts, { language, audience, units, limits }));
  };
}
function installPeers() {
  const from = resolve2(".config/bench/peers");
  mkdirSync(".bench", { recursive: true });
  const same = (name) => existsSync(`.bench/${name}`) && readFileSync2(`.bench/${name}`, "utf8") === readFileSync2(`${from}/${name}`, "utf8");
  if (existsSync(".bench/node_modules") && same("package.json")) return;
  for (const name of ["package.json", "package-lock.json"]) copyFileSync(`${from}/${name}`, `.bench/${name}`);
  const { status } = spawnSync("npm", ["install", "--ignore-scripts", "--no-audit", "--no-fund"], { cwd: ".bench", stdio: "inherit" });
  if (status !== 0) throw new Error("The peers could not be installed: see above.");
}
async function peer(name) {
  const { walkOnce } = await import(pathToFileURL(resolve2(`.config/bench/peers/${name}.mjs`)).href);
  const questions = sixtyQuestions.map((one) => ({ ...one, id: one.id.replace(".", "-"), options: [...one.options] }));
  return async () => {
    const { milliseconds, kept } = await walkOnce(questions, sixtyAnswers);
    if (kept !== sixtyAnswers.length) throw new Error(`${name} kept ${kept} of ${sixtyAnswers.length} answers.`);
    return milliseconds;
  };
}
var perTurn = (milliseconds, turns) => `${(milliseconds / turns * 1e3).toFixed(0)} us a turn`;
var real = realProgramme();
var { answers, asked: asked2 } = realWalk(real, 4);
var reduceReal = reducerFor(real, asked2);
var sixty = buildProgramme(sixtyQuestionFlow());
var reduceSixty = reducerFor(sixty, sixty.checklist.flow.questions);
var own = await inTurns(
  {
    turn: () => walkOurs(real, answers),
    worded: () => walkOurs(real, answers, speaker(real)),
    reducer: () => walkReducer(reduceReal, answers),
    sixty: () => walkOurs(sixty, sixtyAnswers),
    sixtyReducer: () => walkReducer(reduceSixty, sixtyAnswers)
  },
  { warm: 15, rounds: 31 }
);
console.log(`The real walk, ${answers.length} turns: ${perTurn(own.turn, answers.length)}, with the reply in words ${perTurn(own.worded, answers.length)}; reducer ${perTurn(own.reducer, answers.length)}`);
console.log(`Sixty questions: ${perTurn(own.sixty, 60)}; reducer ${perTurn(own.sixtyReducer, 60)}`);
var overReducer = own.turn / own.reducer;
sayRatio("a turn of the real walk over a hand-written reducer", overReducer, "at most 5", overReducer <= 5);
installPeers();
var speak = speaker(sixty);
var against = await inTurns(
  {
    ours: () => walkOurs(sixty, sixtyAnswers, speak),
    wordless: () => walkOurs(sixty, sixtyAnswers),
    botbuilder: await peer("botbuilder"),
    grammy: await peer("grammy"),
    survey: await peer("survey")
  },
  { warm: 3, rounds: 9 }
);
for (const [name, milliseconds] of Object.entries(against)) console.log(`Sixty questions, replies in words, ${name}: ${perTurn(milliseconds, 60)}`);
var times = (name) => against[name] / against.ours;
sayRatio("botbuilder-dialogs over ours", times("botbuilder"), "over 1", times("botbuilder") > 1);
sayRatio("@grammyjs/conversations over ours", times("grammy"), "at least 10", times("grammy") >= 10);
sayRatio("survey-core over ours", times("survey"), "at least 10", times("survey") >= 10);
var wordless = against.grammy / against.wordless;
console.log(`Without the reply in words ${perTurn(against.wordless, 60)}: @grammyjs/conversations takes ${wordless.toFixed(1)} times as long.`);
