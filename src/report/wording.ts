/**
 * Every sentence of the customer's copy that no check owns, in one catalogue (the names of components, checks and figures
 * are in wording-names.ts, the words of the circuit drawing in wording-drawing.ts, the cautions in wording-cautions.ts, the
 * last pages in wording-know.ts), so that a second language is these five files again; that is why this one is long. Written
 * for someone who digs gardens: short sentences, trade words explained. Functions take ready text, never numbers: rounding is
 * done in format.ts.
 * Characters are those of the embedded fonts (test/report/glyphs.test.ts): no arrows, no signs for "at most", no fractions.
 */

import { cautions } from './wording-cautions.ts'
import { drawing } from './wording-drawing.ts'
import { know } from './wording-know.ts'
import { names } from './wording-names.ts'

/** Where a fault sits, as far as the customer is told. */
export type FaultPlace = 'pump' | 'relief' | 'suction' | 'engine' | 'drive' | 'other'

const list = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`
const quoted = (name: string): string => `“${name}”`
const number = (count: number): string =>
  ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'][count] ?? String(count)
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
/** A condition or reason as a sentence of its own. */
const sentence = (text: string): string => capital(/[.!?:]$/.test(text) ? text : `${text}.`)

const FAULTS: { readonly [place in FaultPlace]: string } = {
  pump: 'the pump is worn',
  relief: 'the relief valve, which caps the oil pressure, is set too low',
  suction: 'the pump does not get its oil freely on the suction side',
  engine: 'the engine does not reach its speed',
  drive: 'the travel drive loses speed behind the pump',
  other: 'something is not as it should be',
}

export const en = {
  lang: 'en',
  decimalMark: '.',
  groupMark: ',',
  dash: '–',
  and: ' and ',
  plus: ' + ',
  list,
  quoted,
  capital,
  sentence,
  notWorkedOut: 'not worked out',
  notRead: 'not read',
  above: (value: string) => `above ${value}`,
  noPrice: 'no price yet',
  moneyFrom: (amount: string) => `from ${amount}`,
  /** The same inside a sentence. */
  moneyAtLeast: (amount: string) => `at least ${amount}`,
  months: [
    'January',
    'February',
    'March',
    'April',
    'May',
    'June',
    'July',
    'August',
    'September',
    'October',
    'November',
    'December',
  ],
  date: (day: number, month: string, year: string) => `${day} ${month} ${year}`,
  units: { absolute: 'absolute' },
  forOne: (price: string, unit: string) => `${price} per ${unit} gained`,
  days: (count: string) => (count === '1' ? '1 day' : `${count} days`),
  stalled: 'does not move',
  cannotClimb: 'does not climb it',
  yes: 'yes',
  no: 'no',
  onWheels: 'does not apply',
  page: { before: 'Page ', between: ' of ' },

  letterhead: {
    quote: 'Quote no.',
    date: 'Date',
    validUntil: 'Valid until',
    customer: 'For',
    machine: 'Machine',
    job: 'Job',
    phone: 'Tel.',
    machineLine: (name: string, type: string, mass: string) => `${name}, ${type}, ${mass}`,
    documentTitle: (quoteNumber: string, machine: string, customer: string) =>
      `${quoteNumber === '' ? '' : `Quote ${quoteNumber}: `}${machine}, for ${customer}`,
    footer: (shop: string, quote: string, machine: string) =>
      [shop, quote, machine].filter((part) => part !== '').join(' · '),
    /** Of several machines of one model under one quote the title says which. */
    footerMachine: (title: string, machine: string) => `${title}, ${machine}`,
    footerQuote: (quoteNumber: string) => `Quote ${quoteNumber}`,
  },

  answer: {
    heading: 'The answer',
    youAsked: 'You asked',
    why: 'Why we say so',
    now: 'now',
    provisional:
      'This answer is provisional: it rests on a figure that nobody has read yet. “How we know” says which figures were assumed.',
    conditions: 'To be settled first',
    cautions: 'Please mind',
    speed: 'Travel speed on the level',
    trip: (length: string) => `Your trip of ${length}, one way`,
    tripUnknown: 'Time for your trip',
    tripNotTold: 'no trip stated',
    oil: 'Oil after your working day',
    compare: (what: string) => `Now, and ${what}`,
    onlyNow: 'Now',
    afterwards: 'then',
    restored: 'put right',
    with: (name: string) => `with ${quoted(name)}`,
    ifWeDid: (name: string) => `with ${quoted(name)}, which we advise against`,
    offered: (name: string) => `with ${quoted(name)}, our offer`,
    notYet: 'to be said after measuring',
    range: (span: string) => `eight times in ten: ${span}`,
    /** Both ends round to the figure itself. */
    rangeAlike: 'eight times in ten: the same',
    wanted: (speed: string) => `you asked for ${speed}`,
    askedAgainst: (name: string, reason: string) => `${quoted(name)}: ${reason}`,
    named: (name: string, value: string, repaired: boolean, conditional: boolean) =>
      `${repaired ? 'once put right, ' : ''}${quoted(name)} would give ${value}${conditional ? ', on conditions' : ''}`,
    namedAgainst: (name: string, value: string) => `${quoted(name)} would give ${value}; we advise against it`,
    passes: (limit: string, time: string) => `passes ${limit} after ${time}`,
    staysBelow: (limit: string) => `stays below ${limit} all day`,
    stillRising: 'and still rising after eight hours',
    price: 'Price, tax included',
    leadTime: 'Wait for parts',
    recommend: 'What we recommend',
    recommendFirst: 'What we recommend first',
    offer: 'What we offer instead',
    next: 'What we propose next',
    putRight: 'Put the machine right',
    beside: (name: string) => `and beside it: ${name}`,
    withCooler: 'only with the cooler that it needs',
    timedRun: (speed: string) => `the timed run gave ${speed}`,
    inRepair: 'All of it is in the repair already and costs nothing more.',
    orInstead: (name: string) => `or instead: ${name}`,
    meanwhile: (name: string) => `possible in the meantime: ${name}`,
    madeOf: (asked: number, follow: number) =>
      follow === 0
        ? `${capital(number(asked))} ${asked === 1 ? 'part' : 'parts'}, nothing else has to change.`
        : `${capital(number(asked))} ${asked === 1 ? 'part' : 'parts'}, and ${number(follow)} more that must change with ${asked === 1 ? 'it' : 'them'}. See “Why one part is not enough”.`,
    unpriced: (items: readonly string[]) => `Not priced yet: ${list(items)}.`,
    measureName: 'Measure again',
    measureOffer:
      'Travel time, oil flow, pressure and temperature, all with warm oil. We tell you the price before we start; then you get a full answer.',
    fallbackOffer: [
      'Hire or borrow a second machine or a dumper for the long hauls; we will help you work out what that costs.',
      'If speed matters every day, talk to us about a machine that was built for it. We can value yours.',
    ],
    alternative: (saves: string, price: string) =>
      saves === '' ? `Costs ${price}.` : `Saves about ${saves} a day and costs ${price}.`,
    free: 'nothing',
    // The answer itself, one per kind. Each says what, how much, and why.
    restore: (machine: string, faults: readonly FaultPlace[], now: string, then: string) =>
      `Let us put your ${machine} right first: ${list(faults.map((fault) => FAULTS[fault]))}.${then === '' ? '' : ` Repaired, it should do about ${then} on the level; now it does ${now}.`}`,
    restoreLead: 'A faster machine with a fault in it would still be a machine with a fault, and you would pay twice.',
    restoreFast: (machine: string) => `A repair does that; it changes nothing in how your ${machine} was built.`,
    protectCooler: (machine: string, name: string, now: string, then: string, wantedSpeed: boolean) =>
      `${wantedSpeed ? 'Not faster, but cooler' : 'Yes, it can run cooler'}: with ${quoted(name)} the oil of your ${machine} should settle at about ${then} instead of ${now}.`,
    protectOther: (machine: string, name: string, wantedSpeed: boolean) =>
      `${wantedSpeed ? 'Not faster, but better protected' : 'Yes, it can be protected'}: ${quoted(name)} will not change how fast your ${machine} drives. It keeps the oil and the pump in better order.`,
    upgrade: (machine: string, name: string, now: string, then: string) =>
      `Yes: with ${quoted(name)} your ${machine} should do about ${then} on the level instead of ${now}.`,
    upgradeOnConditions: (machine: string, name: string, now: string, then: string) =>
      `Yes, on conditions: with ${quoted(name)} your ${machine} should do about ${then} on the level instead of ${now}.`,
    attachment: (machine: string, name: string, gets: string, wants: string, conditional: boolean) =>
      `Yes${conditional ? ', on conditions' : ''}: with ${quoted(name)} your ${machine} would give the attachment ${gets} of oil; it asks for ${wants}.`,
    declineAttachment: (gets: string, wants: string) =>
      `It would give the attachment ${gets} of oil; it asks for ${wants}.`,
    attachmentCard: 'Oil for the attachment',
    attachmentWants: (wants: string) => `it asks for ${wants}`,
    same: (machine: string, name: string, conditional: boolean) =>
      `Yes${conditional ? ', on conditions' : ''}: ${quoted(name)} can be fitted to your ${machine}. Its travel speed stays about what it is.`,
    /** Of a way that was looked for and falls short. */
    nearest: (wanted: string, name: string, gives: string) =>
      `Not quite: nothing that we have gives ${wanted}. The nearest is “${name}”: it gives ${gives}.`,
    conditionsLead:
      'The points under “To be settled first” come first. If one of them cannot be met, we would not do it.',
    decline: (name: string, because: string) => `No: we advise against ${quoted(name)}, because ${because}.`,
    declineAll: (machine: string, faster: boolean) =>
      faster
        ? `No: we found nothing that we would sell you to make your ${machine} faster.`
        : `No: we found nothing that we would sell you to do that on your ${machine}.`,
    declineGives: (speed: string, now: string, wanted: string) =>
      `It would give ${speed} on the level; now it does ${now}${wanted === '' ? '' : `, and you asked for ${wanted}`}.`,
    declineStops: (wanted: string) =>
      `With it the machine would not move under full lever${wanted === '' ? '' : `, let alone at the ${wanted} you asked for`}.`,
    offerCooler: (name: string, then: string, now: string) =>
      `What helps is ${quoted(name)}: the oil should settle at about ${then} instead of ${now}.`,
    offerSpeed: (name: string, then: string, now: string) =>
      `What helps is ${quoted(name)}: about ${then} on the level instead of ${now}.`,
    offerAlternative: (name: string, saves: string) =>
      `What helps more is ${quoted(name)}: it ${saves === '' ? '' : `saves about ${saves} a day and `}changes nothing on the machine.`,
    power: {
      allDay: (limit: string) => `${limit}, what the engine may give all day`,
      peak: (limit: string) => `${limit}, the most that the engine has here, for moments`,
    },
    checked: (heading: string, value: string, limit: string) => `${heading}: ${value}; limit ${limit}.`,
    checkedPlain: (heading: string) => `${heading}.`,
    offerOther: (name: string) => `What we can offer is ${quoted(name)}.`,
    measureDisagree: (machine: string) =>
      `Not yet: our readings of your ${machine} do not agree with each other, and we would rather measure again than guess with your money.`,
    measureMissing: (machine: string) =>
      `Not yet: a reading that the answer hangs on is missing, and we would rather measure your ${machine} than guess with your money.`,
    neverSettles: 'a temperature that keeps rising',
    because: {
      'engine-power': (asks: string, has: string) =>
        `the engine cannot drive it${asks === '' ? '' : `. With the levers at the stop the pump would ask ${asks} of it, and it has ${has}`}`,
      'no-part': () => 'a part that would have to change with it is not to be had',
      'oil-too-hot': (settles: string) =>
        settles === ''
          ? 'the oil would get hotter all day and never settle'
          : `the oil would get too hot: it would settle at about ${settles}`,
      'braking-or-slope': () => 'its brakes and your slopes do not allow a faster machine',
      'pull-lost': () => 'it would no longer climb or turn where it does today',
      governor: () => 'it would turn the engine beyond what its maker allows',
      'within-error': (stands: boolean) =>
        stands ? 'it would not get it moving' : 'it would gain so little that a stopwatch could hardly show it',
      'not-worth-it': () => 'it costs more than it brings you',
      'fault-first': () => 'a fault has to be put right first',
      'speed-class': () => 'it would be faster than the machine was built for',
      'maker-consent': () => 'its maker has not agreed to it in writing',
      'warranty-lease-hire': () => 'the machine is under warranty, leased or hired out',
      'open-defects': () => 'open defects have to be put right first',
      'data-missing': () => 'a reading that the answer hangs on is missing',
    },
  },

  ways: {
    heading: 'Your ways, side by side',
    intro:
      'Doing nothing is one of them. Where a range is given, the true figure should lie in it eight times out of ten.',
    way: 'Way',
    level: 'On the level',
    grade: (grade: string) => `Up ${grade} grade`,
    turn: 'Turns on the spot',
    oil: 'Oil, settled',
    price: 'Price',
    brings: 'Brings you',
    asItIs: 'Leave it as it is',
    restored: 'Put it right',
    alternativeNote: 'Changes nothing on the machine.',
    asItIsHot: 'No cost today, but the oil stays too hot.',
    asItIsWarm: 'No cost today. The oil runs warm: change it more often.',
    asItIsFine: 'No cost, and nothing is gained.',
    asItIsFault: 'No cost today, but the fault stays and will grow.',
    restoredNote: 'Everything back to what the machine was built for.',
    restoredHotter: (then: string, now: string) =>
      `Put right, it takes up more power again, so the oil settles hotter: at ${then} instead of ${now}.`,
    withCooler: (settles: string, without: string) =>
      `The oil stays at ${settles} only with the cooler that it needs; as asked, with nothing added, ${without === '' ? 'it would never settle' : `it would get to ${without}`}.`,
    inRepair: 'in the repair',
    sameAs: (name: string) => `The same changes for the same price as ${name}.`,
    noGain: 'no gain counted: it would not work as it should',
    verdict: {
      recommend: 'we recommend',
      conditions: 'on conditions',
      decline: 'we advise against',
      best: 'the best we have',
      open: 'possible too',
      nothingFound: 'nothing found',
      nothingNeeded: 'nothing to change',
      asItIs: 'nothing done',
      first: 'do this first',
    },
    conditionsFirst: 'To be settled first:',
    perTrip: (time: string) => `${time} a trip`,
    perDay: (time: string) => `${time} a day`,
    perYear: (time: string) => `${time} a year`,
    pays: (years: string) => `pays back in ${years} years`,
    paysSoon: 'pays back within a year',
    // Where something has no price yet.
    atLeast: (price: string) => `at least ${price}`,
    paysAtBest: (years: string) => `pays back in ${years} years at best`,
    nothing: 'nothing',
    protects: 'protects oil and pump',
    noDifference: 'no difference in speed or heat',
    faultGone: 'the fault is gone',
    attachmentGets: (flow: string) => `${flow} for the attachment`,
    free: 'nothing',
    saves: (what: string) => `saves ${what}`,
    costs: (what: string) => `costs ${what}`,
    cooler: (degrees: string) => `oil ${degrees} cooler`,
    hotter: (degrees: string) => `oil ${degrees} hotter`,
    notSettled: 'keeps rising',
  },

  speedChart: {
    heading: 'How fast on the level',
    title: 'Travel speed on the level, now and with each way',
    now: 'As it is',
    restored: 'Put right',
    wanted: (speed: string) => `you want ${speed}`,
    unit: (unit: string) => `${unit}, oil at 50 °C; thin line: the range in which it should lie eight times in ten`,
    unitUs: (unit: string) => `${unit}, oil at 122 °F; thin line: the range in which it should lie eight times in ten`,
    describe: (parts: readonly string[]) => `Bars. ${parts.join('. ')}.`,
    bar: (name: string, value: string, range: string) => `${name}: ${value}${range === '' ? '' : `, range ${range}`}`,
    way: 'Way',
    speed: (unit: string) => `Speed, ${unit}`,
    range: (unit: string) => `Range, ${unit}`,
  },

  oilChart: {
    heading: 'How hot the oil gets',
    title: 'Oil temperature over a working day of eight hours, now and with each way',
    describe: (parts: readonly string[], limits: string) =>
      `Curves from a cold start at air temperature. ${parts.join('. ')}. Limits drawn in: ${limits}.`,
    curve: (name: string, hour: string, end: string) => `${name}: ${hour} after one hour, ${end} after eight hours`,
    hours: 'hours of work, from a cold start',
    warm: 'warm from',
    hot: 'hot from',
    severe: 'too hot from',
    way: 'Way',
    after: (hours: string) => `After ${hours}\u00a0h`,
    reaches: (limit: string) => `Passes ${limit}`,
    never: 'no',
    // The three limits of the risk bands, as a customer needs them.
    limitsNote: (warm: string, hot: string, severe: string) =>
      `Above ${warm} the oil is warm and ages sooner. Above ${hot} it is hot and gets thin. Above ${severe} seals and hoses suffer.`,
  },

  parts: {
    heading: 'Why one part is not enough',
    /** Where nothing follows from what is fitted. */
    headingPlain: 'What is changed on your machine',
    groupOption: (name: string) => quoted(name),
    groupRestore: 'Putting it right',
    intro: (asked: number, follow: number) =>
      follow === 0
        ? 'Nothing else has to change with it.'
        : `${capital(number(asked))} ${asked === 1 ? 'change' : 'changes'} asked for, and ${number(follow)} more that ${follow === 1 ? 'follows' : 'follow'} from ${asked === 1 ? 'it' : 'them'}.`,
    introDeclined: 'We advise against it; this is what it would take, and where it ends.',
    introBrief: (parts: string) => `It would also take: ${parts}.`,
    introRestore: 'What the repair takes.',
    work: (job: string) => `no part, only work: ${job}`,
    workOnly: 'no part, only work',
    sameHousing: 'in one housing with the other pump',
    none: 'No part of the machine has to change.',
    number: 'No.',
    what: 'What',
    why: 'Why it must change',
    part: 'Part',
    price: 'Price',
    asked: 'Asked for',
    change: (from: string, to: string) => (from === '' ? to : `${to}, in place of ${from}`),
    limitIs: (value: string, limit: string) => `${value}; limit ${limit}`,
    notToBeHad: 'not to be had',
    specialOrder: (price: string) => `${price}, special order`,
    inPrice: 'in the total',
    /** What the small things are for that a bigger one brings with it. */
    purposes: {
      'cooler-bypass': 'Cold oil is thick and could burst the cooler; the bypass lets it past until it is warm.',
      thermostat: 'Switches the fan on only while the oil is hot, so that it does not empty the battery.',
      harness: 'Feeds the fan: relay, fuse and cable.',
    } as { readonly [component: string]: string },
    wayPrice: (price: string) => `In all ${price}, work and tax included.`,
    noPartFits: 'no part fits',
    times: (quantity: string, text: string) => (quantity === '1' ? text : `${quantity} × ${text}`),
    adapter: (from: string, to: string) => `adapter ${from} to ${to}`,
    stops: 'What no part cures',
    stopValue: 'Worked out',
    stopLimit: 'Limit',
    stopWhat: 'What',
    existing: 'What is already outside its limit today',
    existingNote:
      'It is so today, before anything is changed. What the way that is told above leaves of it is not in its price.',
    existingAlone: 'It is so today, before anything is changed.',
    source: (source: string) => `Limit: ${source}`,
  },

  cost: {
    heading: 'What it costs',
    quoteFor: (name: string) => quoted(name),
    quoteRestore: 'Putting it right',
    offered: 'our offer instead',
    part: 'Parts and material',
    quantity: 'Quantity',
    each: 'Each',
    amount: 'Amount',
    ready: 'Wait',
    shelf: 'on the shelf',
    leadUnknown: 'to be asked',
    leadSome: (days: string) => `${days}, some to be asked`,
    shelfSome: 'on the shelf, some to be asked',
    labour: 'Work',
    hours: 'Hours',
    rate: (rate: string) => `at ${rate} an hour`,
    partsTotal: 'Parts and material',
    labourTotal: 'Work, the likely figure',
    supplies: 'Shop supplies',
    freight: 'Freight',
    allowance: 'Allowance for what shows only when it is apart, at most',
    tax: 'Tax',
    total: 'Total, tax included',
    totalPriced: 'Likely so far, tax included, of what has a price',
    totalSpan: 'It may come to',
    pricedSoFar: 'What has a price comes to',
    totalSpanNote: (high: string) => `We call you before it goes beyond ${high}.`,
    deposit: (what: string) => `Deposit on the old part, given back with it: ${what}`,
    depositNote: 'A deposit is paid with the parts and is not in the total.',
    totalOpen: 'These have no price yet and come on top',
    leadTime: (days: string) => `Longest wait for a part: ${days}.`,
    allInStock: 'All parts are on our shelf.',
    leadOpen: 'The wait for the parts is still to be asked.',
    shelfOpen: 'Most parts are on our shelf; for some the wait is still to be asked.',
    none: 'Nothing is priced here, because there is nothing that we would sell you on these figures.',
    noneMeasure: 'Nothing is priced yet. The measuring comes first, and we tell you its price before we start.',
    notIncluded: 'Not included',
    notIncludedItems: [
      'wear that shows only when parts are off, beyond the allowance above',
      'seized or broken bolts and fittings, earlier changes by others',
      'tracks, tyres and undercarriage',
      'a hire machine while yours is here, loss of earnings',
      'delivery and collection, unless listed',
    ],
    declinedItem: (name: string) => `${quoted(name)}, which we advise against`,
    terms: 'Terms',
    validity: (until: string) => `This quote holds until ${until}.`,
    signFor: (title: string, machine: string, quoteNumber: string) =>
      `${title}, ${machine}${quoteNumber === '' ? '' : `, quote ${quoteNumber}`}`,
    sign: 'Go ahead',
    received: 'Received',
    signText: (work: string, limit: string) =>
      `${work === '' ? 'I ask for the work above to be done.' : `${work}: I ask for this work to be done.`} ${limit === '' ? 'You ask me before anything is ordered that has no price yet.' : `You may go up to ${limit} without asking me again.`}`,
    signTextNone: 'I have received this report.',
    signature: 'Signature',
    signDate: 'Date',
    name: 'Name',
    shopSign: 'For the shop',
    advised: 'Advised, not authorised',
    advisedIntro:
      'We told you about these points. Where you do not want the work, or want something that we advise against, tick it, so that both of us know.',
    advisedDeclined: (name: string, reason: string) => `${quoted(name)}: we advise against it. ${reason}`,
    advisedOffered: (name: string) => `${quoted(name)}: we recommend it; I do not want it now.`,
    advisedRestore: 'Putting the machine right: we recommend it; I do not want it now.',
    advisedMeasure: 'Measuring again: we recommend it; I do not want it now.',
    advisedFinding: (text: string, why: string) => `${text}. ${why}`,
    advisedSign: 'I have read these points and leave the ticked ones undone.',
  },

  know,

  ...cautions,
  ...drawing,
  ...names,
} as const

export type Wording = typeof en
