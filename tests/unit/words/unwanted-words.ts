/** A way of putting it that users must not meet, and what stands in its place. */
export interface Unwanted {
  says: RegExp;
  instead: string;
}

/** Words that read translated, second words for one thing, and remarks on sources that say nothing to a user. */
export const UNWANTED: readonly Unwanted[] = [
  // How a source is known.
  { says: /from memory/i, instead: '(not verified), by sourceWords' },
  {
    says: /was seen\)|page was seen|read on the web|stored cop(y|ies)|read in (several )?copies|form read at/i,
    instead: 'title, year and place',
  },
  { says: /web (page|text|article)|TDS-\d/i, instead: 'title, year and place' },
  // One word for one thing.
  { says: /\btake (it )?away\b|\btake \S+ (away|off the bench)\b/i, instead: 'remove' },
  { says: /\bforget the search\b|\bleave out \$\{/i, instead: 'remove' },
  { says: /\bput back\b/i, instead: 'clear the selection' },
  { says: /\b(take|bring) back\b/i, instead: 'unarchive, restore, undo' },
  { says: /\bknown from\b/i, instead: 'how known' },
  { says: /\bitem number\b/i, instead: 'item code' },
  // The glossary names it beside the word itself, for those who look for it so.
  { says: /(?<!value )\b(acid|saponification) number\b/i, instead: 'acid value, saponification value' },
  { says: /\binner phase\b/i, instead: 'internal phase' },
  {
    says: /\bbalance reads\b|reads in steps|what (your|the) balance (can )?reads?\b/i,
    instead: 'balance readability',
  },
  { says: /\bConcentration of the base\b/, instead: 'strength of the base' },
  { says: /\bFraction to neutralise\b/, instead: 'share to neutralise' },
  { says: /\bwhat was seen\b/i, instead: 'observations' },
  { says: /\b(Ctrl|Alt|Shift) [A-Z0-9]\b/, instead: 'Ctrl+Z' },
  { says: /\bready product\b/i, instead: 'finished product' },
  { says: /\bshare that stays\b/i, instead: 'retention factor' },
  { says: /\w papers\b|\bpapers \w|\bpast (its|their) last day\b/i, instead: 'documents, expired' },
  { says: /\btold by\b|\bcannot be told\b/i, instead: 'recorded by, not known' },
  { says: /\btak(e|en|ing)( \w+){0,3} back\b|\bbrought back\b/i, instead: 'undo, restore' },
  { says: /\bput(ting)? (it |this |\w+s )?right\b|\bmend (it|them|the)\b/i, instead: 'correct' },
  {
    says: /\b(limits?|limit of law) (is|was|are|were) (passed|kept)\b|\bpassed (then|today|on its day)\b/i,
    instead: 'met, broken',
  },
  // What reads translated.
  { says: /\bstands? (in|on|at|without|beside|twice|here|alone)\b/i, instead: 'is, there is' },
  { says: /\bhangs? on\b/i, instead: 'depends on' },
  {
    says: /(?<!\bthere )\bis no (amount|atom|currency|date|element|emulsion|ester|figure|file|material|number|PDF|salt|share|spreadsheet|substance|worksheet)\b/i,
    instead: 'is not a …',
  },
  { says: /stand(s|ing)? (it stands )?for by\b|\bstands for a time\b/i, instead: 'equals' },
  { says: /\bnothing to say\b/i, instead: 'every check passes' },
  { says: /^leave it$|>leave it</i, instead: 'cancel' },
  { says: /\bbest is\b/i, instead: 'optimise for' },
  {
    says: /\bwiden the wish\b|\bwished (is|level|type)\b|(type|level|origin) wished\b|\bmaker’s (own )?wish\b/i,
    instead: 'the conditions, what you asked for',
  },
  { says: /\bis not told\b|\bdoes? not tell\b|\bnone can be told\b/i, instead: 'is not known' },
  { says: /\bsigns that the typeface\b|\bhas no sign for\b|\beach sign as\b/i, instead: 'characters' },
  { says: /\blook whether\b/i, instead: 'check that' },
  { says: /\bbench lately\b|\bopen on this machine lately\b/i, instead: 'recent' },
  { says: /\bgets? on with\b/i, instead: 'compatible with' },
  { says: /\bask for little\b|\bleave room: with\b|\breckon(ed)?\b/i, instead: 'plain words' },
  { says: /\bare (all|both)? ?in print\b/i, instead: 'have been published' },
  { says: /\bclean vessels\b/i, instead: 'sanitised vessels' },
];

/** What of a text a user must not meet, each with what to say instead. */
export function unwantedIn(text: string): string[] {
  return UNWANTED.flatMap(({ says, instead }) => {
    const found = says.exec(text);
    return found ? [`“${found[0]}” in “${text.slice(0, 120)}”: say “${instead}”`] : [];
  });
}
