/**
 * The words of a search for the cheapest way: on the terminal, in the customer's copy and in the shop's. Functions take
 * ready text, never numbers.
 */
import { en } from './wording.ts'

const { capital, list, quoted } = en

const sentences = (entries: readonly string[]): string => `${entries.join('. ')}.`

export const reach = {
  goal: {
    speed: (speed: string) => `${speed} on the level`,
    attachment: (flow: string, pressure: string) => `${flow} at ${pressure} for the attachment`,
    oil: (celsius: string) => `oil that settles at ${celsius} or less`,
  },
  /** What a way gives, in a sentence. */
  gives: {
    speed: (speed: string) => speed,
    attachment: (flow: string) => `${flow} for the attachment`,
    oil: (celsius: string) => `oil that settles at ${celsius}`,
    oilNever: 'oil that never settles',
  },
  /** The same beside a step of a chart. */
  shortly: {
    speed: (speed: string) => speed,
    attachment: (flow: string) => flow,
    oil: (celsius: string) => `oil ${celsius}`,
    oilNever: 'oil never settles',
  },
  /** A wish that a way does not give, behind its name. */
  misses: {
    'travel-speed': (reached: string, wanted: string) => `does only ${reached} (you want ${wanted})`,
    'attachment-flow': (reached: string, wanted: string) =>
      `gives the attachment only ${reached} (it asks for ${wanted})`,
    'oil-temperature': (reached: string, wanted: string) => `leaves the oil at ${reached} (you want ${wanted} or less)`,
  },
  missesSettling: (wanted: string) => `leaves the oil so hot that it never settles (you want ${wanted} or less)`,
  butMisses: (gives: string, misses: string) => `gives ${gives}, but ${misses}`,
  /** What is reached, by the measure of the search. */
  measure: {
    'travel-speed': 'speed on the level',
    'attachment-flow': 'oil for the attachment',
    'oil-temperature': 'settled oil temperature',
  },
  /** The best of what costs less. */
  best: {
    'travel-speed': (speed: string) => `gives at most ${speed}`,
    'attachment-flow': (flow: string) => `gives the attachment at most ${flow}`,
    'oil-temperature': (celsius: string) => `leaves the oil at ${celsius} or more`,
  },
  asItIs: 'the machine as it is',
  nothing: 'no cost',
  /** The same behind a preposition or a verb. */
  free: 'nothing',
  about: (price: string) => `about ${price}`,
  notReached: 'not worked out',
  and: ' + ',
  verdict: {
    does: 'does it',
    short: 'falls short',
    stopped: 'outside a limit',
  },
  tolerance: (name: string, tolerance: string) => `${name} (${tolerance})`,
  change: (component: string, to: string, from: string) =>
    `${component}: ${to}${from === '' ? '' : `, in place of ${from}`}`,
  secondPump: (pump: string) => `second pump (${pump})`,
  specialOrder: (what: string) => `${what}, with a special order`,
  million: (count: string) => `${count}\u00a0million`,
  /** A thousand million. */
  billion: (count: string) => `${count}\u00a0billion`,
  /** A million million. */
  trillion: (count: string) => `${count}\u00a0trillion`,
  overABillion: 'more than a\u00a0billion',

  terminal: {
    wanted: (goal: string) => `Wanted: ${goal}`,
    today: (reached: string) => `Today: ${reached}`,
    disagree: (text: string) => `Measure first, before any of this is offered: ${text}`,
    fault: (text: string) => `Put right first, and all of this holds for the machine after that: ${text}`,
    already: 'The machine does it as it is.',
    cheapest: 'The cheapest way there',
    cheapestSoFar: 'The cheapest way that was found',
    cheapestInStock: 'The cheapest without a special order',
    cheapestUnpriced: 'May cost less, but something of it has no price yet',
    sameInStock: 'Nothing of it is on special order.',
    noneInStock: 'Without a special order nothing reaches it.',
    noneInStockFound: 'Without a special order nothing was found that reaches it.',
    withinBudget: (budget: string) => `What ${budget} pays for`,
    budgetNothing: (budget: string) =>
      `${budget} pays for nothing without a special order that goes noticeably further than the machine does as it is. Counted by the likely price, between the two that are printed.`,
    budgetCheapest: (budget: string) =>
      `${budget} pays for the cheapest way, and for nothing without a special order that goes noticeably further.`,
    budgetInStock: (budget: string) =>
      `${budget} pays for the cheapest way without a special order, and for nothing that goes further.`,
    budgetNearest: (budget: string) => `${budget} pays for the nearest that can be had.`,
    nothingReaches: 'Nothing on the list reaches it within every limit.',
    nothingFound: 'Nothing was found that reaches it within every limit.',
    nearest: 'The nearest that can be had',
    nearestSoFar: 'The nearest that was found',
    noNearest: 'Nothing on the list brings it nearer than the machine as it is.',
    stops: 'What stops what would go further',
    wouldTake: 'What would have to be true',
    pastLimits: (what: string, gives: string, price: string) => `for ${what}, which would give ${gives} (${price})`,
    price: 'price',
    reaches: 'reaches',
    changes: 'changes',
    brings: 'brings',
    noBrings: 'nothing else has to change',
    answer: 'answer',
    curve: (measure: string) => `Price against ${measure}`,
    moves: 'What moves the answer most',
    holds: 'still does it',
    breaks: 'no longer does it at one end',
    counts: 'How it was found',
    byHand: 'The ways written by hand',
    byHandNone: 'None of them does it.',
    byHandLess: (name: string, less: string) => `The search is cheaper than ${quoted(name)} by ${less}.`,
    byHandSame: (name: string) => `Nothing is cheaper than ${quoted(name)}.`,
    byHandMore: (name: string, less: string) =>
      `${quoted(name)} is cheaper by ${less}: it changes something that the search does not vary.`,
    byHandOpen: (name: string) => `${quoted(name)} may be cheaper, but something of it has no price yet.`,
    byHandMissedMore: (name: string, less: string) =>
      `${quoted(name)} is cheaper by ${less}: the search was long enough before it came to that.`,
    byHandMissed: (name: string) => `${quoted(name)} does it: the search was long enough before it came to that.`,
    unpriced: (items: readonly string[]) => `no price yet: ${list(items)}`,
    byHandOnly: (name: string) => `${quoted(name)} does it: it changes something that the search does not vary.`,
    action: { replace: 'replace', add: 'add', adapt: 'adapt' },
    part: (action: string, component: string, part: string) => `${action} ${component}: ${part}`,
    toOrder: 'on special order',
    notToBeHad: 'not to be had',
    times: (part: string, count: string) => (count === '1' ? part : `${part} × ${count}`),
  },

  counts: {
    combinations: (count: string) =>
      `${count} ${count === '1' ? 'combination' : 'combinations'} of the parts on the list`,
    evaluated: (count: string) => `${count} worked out in full, with all that must change beside them`,
    cutByPrice: (count: string) => `${count} passed over: they cannot be cheaper than what was found`,
    cutByReach: (count: string) => `${count} passed over: they cannot reach it`,
    cutByLimit: (count: string) => `${count} passed over: they cannot be built`,
    besides: (count: string) => `${count} more worked out in full, for the nearest and for what stands in the way`,
    open: (count: string) =>
      `${count} not looked at: the search was long enough, and something cheaper is not ruled out`,
  },

  customer: {
    heading: (name: string) => `${quoted(name)}: what we looked for and found`,
    found: (count: string, goal: string) =>
      `We went through every way that our parts list allows, ${count}. This is the cheapest that gives ${goal}, counted with everything that has to change along with it. It passes no limit that would rule it out.`,
    foundSoFar: (count: string, goal: string) =>
      `Our parts list allows ${count} ways, too many to look at every one. Of those that we looked at this is the cheapest that gives ${goal}, counted with everything that has to change along with it. It passes no limit that would rule it out.`,
    only: (goal: string) =>
      `We went through our parts list. It has one way that gives ${goal}, counted with everything that has to change along with it.`,
    isFound: (what: string, price: string, reached: string) =>
      `What was found: ${what}. It costs ${price}, work and tax included, and gives ${reached}.`,
    /** Behind what it costs. */
    ordered: 'Part of it has to be ordered specially.',
    noPrice: (items: readonly string[]) => `Not priced yet, and on top of that: ${list(items)}.`,
    below: (best: string, price: string, what: string) =>
      `Why nothing cheaper does it: whatever costs less ${best} (${what}, ${price}).`,
    belowSeveral:
      'Why nothing cheaper does it: whatever on our list costs less and keeps to the limits misses at least one of these wishes.',
    belowSeveralKnown:
      'Why nothing cheaper does it, as far as every price is known: whatever on our list costs less and keeps to the limits misses at least one of these wishes.',
    cheaper: (what: string, price: string, misses: string) =>
      `The nearest that costs less (${what}, ${price}) ${misses}.`,
    belowNothing:
      'Why nothing cheaper does it: whatever on our list costs less and keeps to the limits brings you hardly any further than you are today.',
    belowKnown: (best: string, price: string, what: string) =>
      `Why nothing cheaper does it, as far as every price is known: whatever costs less ${best} (${what}, ${price}).`,
    unpriced: (price: string, what: string, items: readonly string[]) =>
      `One way may cost less (${what}): what has a price of it comes to ${price}. Not priced yet: ${list(items)}.`,
    next: (price: string, reached: string, what: string) =>
      `The next that does it with other parts costs ${price} and gives ${reached} (${what}).`,
    already: (goal: string) => `You want ${goal}: your machine does that as it is.`,
    none: (count: string, goal: string) =>
      `We went through every way that our parts list allows, ${count}. None of them gives ${goal} within the limits that we check.`,
    noneSoFar: (count: string, goal: string) =>
      `Our parts list allows ${count} ways, too many to look at every one. We found none that gives ${goal} within the limits that we check.`,
    nearest: (reached: string, price: string, what: string) =>
      `The nearest that can be had is ${reached}, for ${price} (${what}).`,
    nearestSoFar: (reached: string, price: string, what: string) =>
      `The nearest that we found is ${reached}, for ${price} (${what}).`,
    wouldTake: (what: readonly string[]) => `To get there it would take ${list(what)}.`,
    pastLimits: (way: string, gives: string, what: readonly string[]) =>
      `To get there it would take ${list(what)}: with ${way} the machine would then give ${gives}.`,
    moves: (what: readonly string[]) => `What may be off by a little and moves this most: ${what.join('; ')}.`,
    move: (what: string, span: string) => `${what}, ${span}`,
    moveBreaks: (what: string, span: string) => `${what}, ${span}, so that it may fall short`,
    noNearest: 'Nothing on our list brings you any further than you are today.',
    /** Of several wishes one is drawn. */
    chartNoteSeveral: (measure: string, others: readonly string[]) =>
      `Each step is the cheapest that our list has for so much ${measure}, whatever else it gives. ${others.length === 1 ? `Your other wish (${list(others)}) has` : `Your other wishes (${list(others)}) have`} no line here; what a step gives of ${others.length === 1 ? 'it' : 'them'} stands beside the step.`,
    chartNote:
      'Each step is the cheapest that our list has for what it gives, looked for in equal steps up to what you want, ten at most; smaller gains in between are left out.',
  },

  chart: {
    heading: (measure: string) => `What more money buys: price against ${measure}`,
    title: (measure: string) => `Price against ${measure}, step by step`,
    describe: (steps: readonly string[], wanted: string) =>
      `Steps, from the machine as it is. ${sentences(steps)}${wanted === '' ? '' : ` ${capital(wanted)}.`}`,
    step: (value: string, what: string) => `${value}, ${what}`,
    wanted: (value: string) => `wanted: ${value}`,
    value: (price: string, reached: string) => `${price}: ${reached}`,
    axis: (currency: string) => `price in ${currency}, the likely figure, tax included`,
    more: (count: string) => `${count} more steps are drawn and not named`,
  },

  shop: {
    heading: 'How the search came to it',
    intro: (name: string, goal: string) => `${quoted(name)}: the cheapest way from the parts list to ${goal}.`,
    curve: 'Price against what it gives: every step',
    price: 'Price',
    reaches: 'Gives',
    what: 'What changes',
    offered: 'offered',
    counts: 'How many ways were tried',
  },
} as const
