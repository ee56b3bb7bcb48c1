/** Words with which people wrap, hedge and join answers in one language; phrases in lower case. */
export interface TalkWords {
  /** Change nothing. */
  readonly fillers: readonly string[];
  readonly or: readonly string[];
  /** Deny what follows. */
  readonly negators: readonly string[];
  /** Words after which a label names what is not there: "no gutter", "nothing closes it". */
  readonly absences: readonly string[];
  /** Say that the answer is complete; none of these when nothing else is said. */
  readonly nothingElse: readonly string[];
  /** What went before was wrong: "no wait", "i mean". */
  readonly takenBack: readonly string[];
  /** The same where a "no" stands beside them, or what follows says something different. */
  readonly maybeTakenBack: readonly string[];
  /** Ways to say that something holds only at times or on terms. */
  readonly terms: readonly string[];
  /** Before "one", which then stands for the thing and is no number. */
  readonly pointing: readonly string[];
  /** "No problems": what may be denied without naming a thing. */
  readonly trouble: readonly string[];
  /** Yes and no by echo; an outright yes or no beside them wins. */
  readonly echoYes: readonly string[];
  readonly echoNo: readonly string[];
  /** Yes and no as a guess. */
  readonly guessYes: readonly string[];
  readonly guessNo: readonly string[];
  /** The answer beside them is a guess. */
  readonly guess: readonly string[];
  /** The answer beside them comes from someone else. */
  readonly told: readonly string[];
  /** Sides that were not named. */
  readonly rest: readonly string[];
  readonly allSides: readonly string[];
  /** The left and the right side. */
  readonly bothSides: readonly string[];
  /** Words of sides that mean no side here: "right next to it". */
  readonly notSides: readonly string[];
  readonly sideLetters: Readonly<Record<'front' | 'left' | 'back' | 'right', string>>;
  /** What may be named by the side it stands on: "the front door", "the back fence". */
  readonly sideThings: readonly string[];
  /** The value given before. */
  readonly same: readonly string[];
  /** "First" to "tenth". */
  readonly ordinals: readonly string[];
  readonly last: readonly string[];
  readonly rangeTo: readonly string[];
  /** Wrapped round a command: "can we … please". */
  readonly polite: readonly string[];
  /** Round the name of a stop or question: "my answer about the …". */
  readonly aboutTarget: readonly string[];
  /** Jump, beyond the words file. */
  readonly jump: readonly string[];
  /** "Twenties" to "nineties", as digits. */
  readonly decades: Readonly<Record<string, string>>;
}

const list = (words: string): readonly string[] => words.split('|');

/** English as it is typed and spoken. */
export const ENGLISH_TALK_WORDS: TalkWords = {
  fillers: list(
    [
      'a|an|the|of|on|in|at|to|for|by|from|it|its|it is|they|they are|theyre|them|is|are|was|were|am|be|been|i|we|you|my|our|your|me|us',
      'have|has|had|got|ive got|we have|we have got|weve got|i have|there|there is|there are|theres|here|this|that|thats|these|those|that is|which|what',
      'house|home|side|sides|kind|kinds|type|types|sort|option|options|answer|choice|number|letter|pick|no.|please|thanks|thank you|whole|entire|part|corner|corners|any|over|near|beside|outside|about',
      'um|uh|hmm|er|well|oh|so|ok then|hi|hello|hey|just|only|really|actually|basically|mostly|mainly|pretty|very|quite|too|already|still|now|then|lol|haha',
      'see|i see|i can see|we can see|can see|call it|called|would be|id go with|ill go with|go with|lets say|put|mark|made of|made from|made out of|as well|as|anything',
      'do|does|did|can|will|would|around|along|up|down|out|facing|toward|towards|em|one of|of them|of it|sorry|dear|honey|sir|maam|mate|most of it|most|more or less all',
    ].join('|'),
  ),
  or: list('or|or maybe|or else|either'),
  negators: list(
    'not|isnt|arent|wasnt|dont|doesnt|didnt|havent|hasnt|aint|cant|cannot|wont|wouldnt|couldnt|shouldnt|werent|nobody|noone|nor|dont have|do not have|does not have|doesnt have|have no|has no|havent got|is not|are not|its not|theres no|there is no|there are no|not any|without any|never|no longer',
  ),
  absences: list('no|not|without|nothing|none|never'),
  nothingElse: list(
    'nothing else|and nothing else|nothing more|nothing else there|nothing else at all|no other ones|nothing besides|nothing apart from that|nowhere else|and nowhere else',
  ),
  trouble: list('problem|problems|issue|issues|trouble|complaint|complaints|worries|concerns|answer'),
  takenBack: list(
    'i mean|i meant|i meant to say|meant to say|scratch that|strike that|make that|make it|correction|let me correct that|i take that back|take that back|or rather|oops|whoops|my mistake|my bad',
  ),
  maybeTakenBack: list('wait|wait a minute|wait a second|hold on|hang on|sorry|actually'),
  terms: list('if|unless|as long as|provided|only if|only when|depending on|sometimes|occasionally'),
  pointing: list('the|this|that|which|closest|nearest|other|same'),
  echoYes: list(
    'it is|it does|they are|they do|there is|there are|i do|we do|we have|i have|it has|they have|does|some|some of it|some of them|a few|a little|a little bit|a bit|a couple|several|lots|plenty|many|loads|tons|a lot',
  ),
  echoNo: list(
    'it isnt|it is not|its not|it doesnt|it does not|they arent|they are not|they dont|there isnt|there arent|there is not|there are not|i dont|we dont|we havent|we havent got|i havent|it hasnt|not any|not yet|not anymore|not at all|not really|not here|hardly any|hardly|of course not|definitely not|absolutely not|certainly not|unfortunately not|im afraid not|afraid not',
  ),
  guessYes: list(
    'i think so|i would say so|id say so|i believe so|i guess so|i suppose so|i would think so|id think so|think so|probably|probably so|most likely|very likely|likely|i expect so|should be|must be|looks like it|seems so|it seems so|seems like it|presumably|i assume so|i reckon so|i reckon|pretty sure|i hope so',
  ),
  guessNo: list(
    'i dont think so|i do not think so|i dont believe so|i doubt it|doubt it|doubtful|unlikely|not likely|probably not|dont think so|i think not|i dont think|dont think|i hope not|hope not|i guess not|not that i know of|not that i know|not that i can see|not that i see|not as far as i can see|not as far as i know|i dont see any|dont see any|i cant see any|cant see any|i dont see one|i dont see|shouldnt be|i wouldnt say so|wouldnt say so|i wouldnt think so|wouldnt think so',
  ),
  guess: list(
    'i think|i guess|i believe|i suppose|i would say|id say|i would guess|id guess|guessing|my guess is|my guess|i want to say|id have to say|probably|most likely|likely|presumably|maybe|perhaps|possibly|could be|might be|must be|should be|looks like|it looks like|looks|seems|seems like|seems to be|it seems|i reckon|as far as i know|as far as i can tell|i assume|pretty sure|fairly sure|kind of|sort of|from memory|if i remember right',
  ),
  told: list(
    'my husband says|my wife says|my partner says|my son says|my daughter says|my dad says|my mom says|my mum says|my neighbor says|my neighbour says|the neighbor says|the neighbour says|the landlord says|my landlord says|the owner says|she says|he says|they say|he said|she said|they said|they told me|i was told|we were told|was told|im told|i am told|told me|according to|the inspector said|the roofer said|the seller said|the realtor said|says|apparently|supposedly',
  ),
  rest: list(
    'rest|the rest|rest of it|rest of them|all the rest|elsewhere|everywhere else|everything else|all else|all others|all the others|all other sides|the other sides|other sides|other side|the other side|others|the others|other ones|the other ones|other three|other two|the other three|the other two|remaining|remaining sides|the remaining sides|remainder|anywhere else|any other side|all the other sides',
  ),
  allSides: list(
    'both|all|all of it|all of them|all sides|all the sides|all four|all four sides|all 4 sides|all three|all round|all around|all the way round|all the way around|all over|everywhere|everything|every side|every one|each|each side|each one|on every side|on all sides|on each side|whole house|the whole house|whole thing|entire house|the entire house|round the house|around the house|any side',
  ),
  bothSides: list(
    'both sides|on both sides|at both sides|to both sides|the sides|on the sides|at the sides|either side|on either side|left and right both',
  ),
  notSides: list(
    'right against|right next to|right next|right up against|right up to|right on it|right there|right here|right now|right away|left from|left behind|left there|left lying|left standing|left out|right above|right below|right under|right by it|right behind it|all right|alright|thats right|left over|left to do|right at the wall|right at the house|right to the ground|right down to|right into the ground|right to the grass',
  ),
  sideLetters: { front: 'f', left: 'l', back: 'b', right: 'r' },
  sideThings: list(
    'door|porch|deck|yard|garden|wall|half|end|steps|stairs|entrance|patio|lawn|fence|gate|window|windows|gutter|gutters|eave|eaves|roof|bit|section|face',
  ),
  same: list(
    'same|the same|same again|same as before|same thing|ditto|likewise|same for|same for the|same on|same with|as before',
  ),
  ordinals: list('first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth'),
  last: list('last|the last|last one|the last one|bottom one'),
  rangeTo: list('-|to|through|thru|till|until'),
  polite: list(
    'please|pls|thanks|thank you|can we|can i|can you|could we|could i|could you|may i|lets|let me|i want to|i wanna|i would like to|id like to|i need to|i have to|we want to|ok|okay|hey|hi|um|uh|well|oh|now|just|sorry|actually|so|and|then|first|wait|roofdown|a moment|for a moment|for now|a bit',
  ),
  aboutTarget: list(
    'my|our|the|a|an|answer|answers|question|questions|about|on|for|of|to|that|what i said|what i told you|i said|one|ones|part|stop|section|page|bit|please|back|again|in|at|is|it|its|was|now|some|something|mistake',
  ),
  jump: list(
    'go to|jump to|skip to|take me to|move to|go on to|on to|back to|go back to|return to|lets do|lets go to|do|continue with|start with|show me|switch to',
  ),
  decades: {
    twenties: '20s',
    thirties: '30s',
    forties: '40s',
    fifties: '50s',
    sixties: '60s',
    seventies: '70s',
    eighties: '80s',
    nineties: '90s',
  },
};
