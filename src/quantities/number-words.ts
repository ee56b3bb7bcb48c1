import type { UnitId } from './conversions.ts';

/** The words of one language with which people say numbers, units and doubt; keys and phrases in lower case. */
export type NumberWords = {
  readonly numbers: Readonly<Record<string, number>>;
  readonly multipliers: Readonly<Record<string, number>>;
  readonly fractions: Readonly<Record<string, number>>;
  /** Loose amounts with the least and the most they may stand for. */
  readonly vague: Readonly<Record<string, readonly [least: number, most: number]>>;
  readonly articles: readonly string[];
  readonly and: readonly string[];
  readonly of: readonly string[];
  /** Between the ends of a range: `5 to 10`. */
  readonly to: readonly string[];
  /** Before a range whose ends are joined by `and`. */
  readonly between: readonly string[];
  readonly minus: readonly string[];
  readonly about: readonly string[];
  readonly lessThan: readonly string[];
  readonly moreThan: readonly string[];
  readonly atMost: readonly string[];
  readonly atLeast: readonly string[];
  /** A little under, or a little over: a tenth either way. */
  readonly nearly: readonly string[];
  readonly justOver: readonly string[];
  /** Whole phrases that mean no distance at all. */
  readonly nothing: readonly string[];
  /** Between rise and run: `4 in 12`. */
  readonly rise: readonly string[];
  /** Between the sides of a rectangle: `10 by 12`. */
  readonly by: readonly string[];
  readonly flat: readonly string[];
  /** What follows a fraction in digits: `1/8th`. */
  readonly fractionEndings: readonly string[];
  /** Words that begin the place from which was measured, after the length: `10 feet behind the garage`. */
  readonly places: readonly string[];
  /** Words that change nothing. */
  readonly fillers: readonly string[];
  readonly units: Readonly<Partial<Record<UnitId, readonly string[]>>>;
};

const SMALL = [
  'zero|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen',
  'seventeen|eighteen|nineteen',
].join('|');
const TENS = 'twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety';

const numbers: Record<string, number> = { fourty: 40, oh: 0 };
for (const [value, word] of SMALL.split('|').entries()) numbers[word] = value;
for (const [index, word] of TENS.split('|').entries()) numbers[word] = 20 + 10 * index;

const list = (words: string): readonly string[] => words.split('|');

/** English as it is typed in North America and elsewhere; a flow's words file may override it. */
export const ENGLISH_NUMBER_WORDS: NumberWords = {
  numbers,
  multipliers: { hundred: 100, thousand: 1000, dozen: 12 },
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
    'thirty-second': 1 / 32,
    'thirty second': 1 / 32,
  },
  vague: { couple: [2, 2], pair: [2, 2], few: [3, 5], several: [4, 7] },
  articles: list('a|an'),
  and: list('and|&|n'),
  of: list('of|of a|of an'),
  to: list('to|or|through|till|until|but'),
  between: list('between|from|anywhere from|anywhere between|somewhere between'),
  minus: list('minus|negative'),
  about: list(
    [
      '~|≈|about|around|roughly|approx|approximately|circa|ca|maybe|perhaps|probably|or so|ish|give or take|-ish',
      'more or less|i think|i guess|i would say|i would guess|id say|id guess|looks like|looks to be|say|guessing',
      'my guess is|it looks|some|could be|might be|must be|should be|est|estimated|i believe|kind of|sort of',
    ].join('|'),
  ),
  lessThan: list(
    '<|less than|under|below|fewer than|smaller than|closer than|shorter than|narrower than|before',
  ),
  moreThan: list(
    '>|more than|over|above|greater than|larger than|bigger than|beyond|past|farther than|further than|taller than|wider than|longer than|after|upwards of|in excess of|well over',
  ),
  atMost: list(
    '<=|≤|at most|up to|no more than|not more than|within|or less|or under|or closer|or below|or fewer|max|maximum|inside of|not over|no bigger than|no wider than|no taller than|or smaller',
  ),
  atLeast: list(
    '>=|≥|+|at least|no less than|not less than|or more|or over|or better|or farther|or further|or above|plus|min|minimum|and up|and over|or taller|or wider|or bigger|or larger',
  ),
  nearly: list(
    'nearly|almost|not quite|just under|just below|a bit under|a little under|slightly under|a bit less than|a little less than|a hair under|just shy of|close to',
  ),
  justOver: list(
    'just over|a bit over|a hair over|a little over|slightly over|a bit more than|a little more than|just above',
  ),
  nothing: list(
    [
      'none|nothing|nil|touching|touching it|touching the house|touching the wall|touching the roof|touching the siding|touches|it touches|it is touching|they touch|no gap|no gap at all|no space|no distance|in contact',
      'right against it|against it|against the wall|right against the wall|up against it|up against the wall|flush',
      'they are touching|right on it|attached|right up against it|none at all|no clearance',
    ].join('|'),
  ),
  rise: list('in|:|per|over|every|for each|for every|in every|to|on|out of|across'),
  by: list('x|×|by|*'),
  flat: list(
    'flat|level|none|no slope|it is flat|it is level|flat ground|all flat|dead flat|completely flat|dead level',
  ),
  fractionEndings: list('th|ths|s|rd|rds|nd|nds|st'),
  places: list(
    'on|behind|beside|near|nearest|against|next to|toward|towards|into|in front of|where|between the|over by|by the',
  ),
  fillers: list(
    [
      'it|is|its|the|that|they|are|theyre|thats|were|there|away|off|out|high|tall|wide|long|deep|thick|apart|across|up|down|total|overall|mesh|gap|hole|holes',
      'distance|space|clear|clearance|far|in total|all together|altogether|from the wall|from the house|from it|from the roof|or thereabouts',
      'i|would|be|was|built|built in|in the year|year|years old|rises|rise|drops|drop|falls|goes|up by|down by|run|slope|grade|gradient|steep|each|at|just|only|exactly|very|well|yeah|yes|um|uh|hmm|oh about|like|measured|we|have|has|got|of them|left|per side|from the ground|above the ground|above ground|off the ground|from the trunk|from the fence|.|!|?|(|)|=',
    ].join('|'),
  ),
  units: {
    mm: list('mm|millimetre|millimetres|millimeter|millimeters|mil|mils'),
    cm: list('cm|cms|centimetre|centimetres|centimeter|centimeters'),
    m: list('m|metre|metres|meter|meters|mtr|mtrs'),
    km: list('km|kilometre|kilometres|kilometer|kilometers'),
    in: list('in|ins|inch|inches|inchs|"'),
    ft: list("ft|feet|foot|foots|feets|fts|'"),
    yd: list('yd|yds|yard|yards'),
    mi: list('mi|mile|miles'),
    sqmm: list('mm2|mm²|sq mm|square millimetres|square millimeters'),
    sqcm: list('cm2|cm²|sq cm|square centimetres|square centimeters|square centimetre|square centimeter'),
    sqm: list('m2|m²|sq m|sqm|sq metres|sq meters|square metres|square meters|square metre|square meter'),
    sqin: list('in2|in²|sq in|sqin|sq inches|sq inch|square inches|square inch|square in'),
    sqft: list('ft2|ft²|sq ft|sqft|sf|sq feet|sq foot|square feet|square foot|square ft'),
    sqyd: list('yd2|yd²|sq yd|sq yds|square yards|square yard'),
    acre: list('acre|acres'),
    ha: list('ha|hectare|hectares'),
    litre: list('l|litre|litres|liter|liters'),
    cum: list('m3|m³|cu m|cubic metres|cubic meters|cubic metre|cubic meter'),
    cuft: list('ft3|ft³|cu ft|cubic feet|cubic foot'),
    cuyd: list('yd3|yd³|cu yd|cu yds|cubic yards|cubic yard'),
    gal: list('gal|gals|gallon|gallons'),
    degree: list('°|deg|degs|degree|degrees'),
    percent: list('%|percent|per cent|pct'),
    cuin: list('cu in|cubic inches|cubic inch|in3|in³'),
    floz: list('fl oz|floz|fluid ounce|fluid ounces|oz|ounce|ounces'),
    ml: list('ml|millilitre|millilitres|milliliter|milliliters'),
    W: list('w|watt|watts'),
    MW: list('mw|megawatt|megawatts'),
    'W/m2': list('w/m2|w/m²|watts per square metre|watts per square meter|w/sq m'),
    'm/s': list('m/s|metres per second|meters per second|metres a second|meters a second'),
    'ft/min': list('ft/min|fpm|feet per minute|feet a minute'),
    mph: list('mph|miles per hour|miles an hour'),
    K: list('k|kelvin|kelvins'),
    tonne: list('t|tonne|tonnes'),
    ton: list('ton|tons|short tons'),
    'Btu/h': list('btu/h|btuh'),
    kW: list('kw|kilowatt|kilowatts'),
    'kW/m2': list(
      'kw/m2|kw/m²|kw/sq m|kw per square metre|kw per square meter|kilowatts per square metre|kilowatts per square meter',
    ),
    C: list('c|celsius|°c|degrees c|degrees celsius'),
    F: list('f|fahrenheit|°f|degrees f|degrees fahrenheit'),
    kg: list('kg|kgs|kilo|kilos|kilogram|kilograms'),
    lb: list('lb|lbs|pound|pounds'),
    s: list('sec|secs|second|seconds'),
    min: list('minute|minutes'),
    h: list('hr|hrs|hour|hours'),
  },
};
