/**
 * Every sentence of the technician’s copy in one catalogue, beside wording.ts; that is why this one is long. Orders, short,
 * in the order of the hand. Functions take ready text, never numbers. Acceptance figures and steps are common practice
 * without a source unless they say otherwise; the machine maker’s own instructions come first.
 */
import { BRAKE_SLOPE } from '../survey/brake-slope.ts'
import { en as shared } from './wording.ts'
import type { KindWords } from './wording-machine-kind.ts'

const { quoted, capital } = shared

export interface Steps {
  readonly heading: string
  readonly note: string
  readonly steps: readonly string[]
}

/** What each job asks for beside its parts; a job that is not here is done as the maker's manual says. */
const JOBS: { readonly [job: string]: readonly string[] } = {
  'clean reservoir': [
    'Drain the tank into the drum, open it, wipe it out with lint-free cloth; no rag threads, no petrol.',
    'Clean or change the strainer. Close the tank with a new gasket.',
  ],
  'change oil': ['Drain the oil warm, not hot. Clean round the filler first. Close the drain with a new seal.'],
  'fit filter': [
    'Cut the filter into the return, after the valve and before the tank, arrow with the flow, where the element can be pulled.',
  ],
  'replace pump': [
    'Compare old and new pump: turning direction, flange, pilot, shaft, ports. Stop where one differs.',
    'Clean the mounting face. Seat the pilot by hand: no hammer, no pulling in with the bolts. Grease a spline, keep oil off a taper.',
    'Fill pump and suction hose with clean oil before the hose goes on.',
  ],
  'fit second pump': [
    'Check turning direction, pilot and shaft of every section. Support a long tandem at its rear where its maker asks for it.',
    'Fill both sections and the suction hose with clean oil before the hose goes on.',
  ],
  'replace coupling': [
    'Set the gap between the hubs as the coupling’s maker says and turn the engine over by hand: nothing touches, nothing wanders.',
  ],
  'replace relief': ['Screw the new relief valve all the way down to its lowest pressure before it goes in.'],
  'set relief': ['Clean the relief valve before it is opened; count the turns out and note them.'],
  'replace valve': [
    'Tag every hose at the valve with its port. Move spools one by one by hand: each must come back by itself.',
    'Tie the valve down evenly: a twisted valve sticks.',
  ],
  'replace swivel': [
    'Tag every hose above and below with its port. Tighten the bolts as the maker says and turn the house full circle: no hose pulls.',
  ],
  'replace motor': [
    'Chock both tracks or all wheels: without its motor nothing holds this side.',
    'Fill the motor’s case with clean oil through the uppermost drain; lead the drain hose to the tank from there.',
    'Both sides get the same motor. Check that each turns forward for forward before the cover goes on.',
  ],
  'replace sprocket': ['Clean the faces, new bolts, tighten crosswise as the maker says; track sag as in the manual.'],
  'replace hose': [
    'Flush or shoot each new hose clean; keep it capped until it goes on.',
    'No twist (the printed line stays straight), no bend under the hose’s least radius, 50 mm from the exhaust; clamp it and move the machine’s parts through their whole travel.',
  ],
  'fit cooler': [
    'Fit the cooler where air gets in and out, with its bypass; fan switch in the return, relay and fuse close to the battery, battery off meanwhile.',
    'Fit it on rubber; the lines carry no weight of it.',
  ],
  'fit shift line': [
    'Lead the shift line through a spare passage of the swivel to both motors; neither passage nor line may carry the motors’ working pressure.',
    'Springs must bring the motors back to slow by themselves when the line is opened.',
  ],
}

export const technician = {
  title: (machine: string, quote: string) => `Work order${quote === '' ? '' : ` ${quote}`}: ${machine}`,
  titleMeasure: (machine: string, quote: string) => `Measuring sheet${quote === '' ? '' : ` ${quote}`}: ${machine}`,
  titleNone: (machine: string, quote: string) => `No work order${quote === '' ? '' : ` for ${quote}`}: ${machine}`,
  footer: 'For the workshop',
  sheetRestore: 'Putting it right',
  sheetOption: (name: string) => quoted(name),
  lead: 'For someone trained on hydraulics. The maker’s instructions come first; where this sheet and they differ, they count.',
  offered: 'Offered, not ordered: nothing is taken apart before the customer has signed.',
  against: 'We advise against this way. The sheet is here because it was asked for; it is not an order.',
  conditions: 'Not before this is settled',
  nothing: 'No work is ordered',
  nothingText: (why: string, instead: string) =>
    `We advised against what was asked, and there is nothing of ours to fit in its place.${why === '' ? '' : ` ${why}`}${instead === '' ? '' : ` We pointed to: ${quoted(instead)}.`} The customer’s copy has the whole answer.`,
  facts: {
    machine: 'Machine',
    customer: 'For',
    quote: 'Quote no.',
    serial: 'Serial no.',
    hours: 'Hour meter',
    date: 'Date',
    technician: 'Technician',
    gauge: 'Gauge no., tested on',
  },

  running: { tracks: 'both tracks', wheels: 'the wheels' },

  dead: {
    heading: 'Before a tool touches it',
    note: 'Oil under pressure goes through skin and gloves. If it does: hospital at once, even if the wound looks small, and say “high-pressure injection”.',
    steps: (cool: string, { park, release }: KindWords) => [
      park,
      `Let the oil cool below ${cool}. Hot oil burns.`,
      `Engine off. ${release} until nothing answers (key on, engine off, where they need current). Open the breather slowly.`,
      'Check with a gauge that the pressure is gone. No fitting is cracked open “to see”.',
      'Key out, battery isolator off, tag on both.',
      'What cannot be lowered is blocked on stands. Nobody goes under what a cylinder or a jack holds.',
      'Wash, photograph, tag each hose with its port. Caps, plugs, catch pan, drum and absorbent ready: both ends are capped at once.',
    ],
  },

  pull: {
    heading: 'Parts to pull',
    note: 'One line each. Tick it when it lies on the bench and its ends were tried with the thread gauge.',
    part: 'Part',
    quantity: 'Quantity',
    length: 'Length each',
    bore: 'Bore',
    rated: 'Rated for (asked)',
    shelf: 'Shelf',
    end: 'Joint',
    connection: 'Connection, thread',
    standard: 'Standard; seal',
    tighten: 'Tighten',
    pulled: 'pulled',
    number: 'No.',
    cutToFit: 'cut to fit',
    asked: (rated: string, asked: string) => `${rated} (${asked})`,
    atLeast: (asked: string) => `at least ${asked}`,
    pieces: (count: string, metres: string) => `${count} from ${metres}`,
    id: (id: string) => `List no. ${id}`,
    toOrder: 'not on the list: order or find',
    kit: (name: string) => `in: ${name}`,
    mount: (words: string) => `Mount: ${words}`,
    oldBack: 'Keep the old part: it goes back for the deposit.',
    shelfHas: 'on the shelf',
    shelfNot: (days: string) => `order, ${days}`,
    shelfAsk: 'ask',
    firstTo: (what: string) => `first end, to ${what}`,
    secondTo: (what: string) => `second end, to ${what}`,
    inletFrom: (what: string) => `inlet, from ${what}`,
    outletTo: (what: string) => `outlet, to ${what}`,
    workTo: (what: string) => `work ports, ${what}`,
    places: {
      both: 'both ends',
      first: 'first end',
      second: 'second end',
      inlet: 'inlet',
      outlet: 'outlet',
      work: 'work ports',
      port: 'port',
    },
    adapter: (name: string) => `by: ${name}`,
    unread: 'not read: try the thread gauge',
    makers: 'as its maker says',
    turnsOr: (torque: string, turns: string) => `${torque}, or ${turns}`,
    none: 'Nothing is fitted; the work is setting and checking.',
    sources: 'Where the tightening comes from',
    sourcesNote:
      'Dry threads, plated nuts and aluminium ports need less. A figure of the machine’s or the fitting’s maker wins over these. Published tables differ; the range is the lowest and the highest of them.',
    twice: 'Look twice: it enters, and does not fit',
    twiceRow: (connection: string, other: string) => `${connection}: not ${other}`,
  },

  work: {
    heading: 'Order of work',
    note: 'Common practice, no source, where no other is named.',
    jobs: JOBS,
    unknownJob: 'As the maker’s manual says.',
    job: (job: string, where: string) => (where === '' ? capital(job) : `${capital(job)}: ${where}`),
    times: (job: string, count: string) => `${job}, ${count} times`,
  },

  engine: {
    off: {
      heading: 'Engine: throttle and governor',
      note: (fault: string) => fault,
      steps: [
        'Throttle, from the hand to the engine: cable and linkage free from end to end, not stretched, no play. At full throttle the arm on the engine touches its stop; set the cable until it does.',
        'Governor: its spring whole, not stretched, the right one and in the right hole; its linkage free. A tired spring is replaced, never bent or hung over.',
        'Air filter and fuel filter clean or new: an engine that is short of either is slow only under load.',
      ],
    },
    running: {
      heading: 'Engine: speed',
      note: 'Back to what its maker set, never beyond: a governor turned up is tampering, and the pump was chosen for the speed on the plate.',
      steps: (rated: string) => [
        'Warm, full throttle, controls at rest: read the no-load speed with a tachometer. At the full-throttle stop it is set to the figure of the engine’s maker and no higher; then lock and seal the stop.',
        `One function at relief for a few seconds: read the speed again. The plate gives ${rated} under full load. An engine that has its no-load speed and falls too far has lost power: compression, injection or carburettor come next.`,
      ],
    },
  },

  prime: {
    heading: 'Fill and prime',
    note: '',
    steps: (oil: string, litres: string) => [
      `Oil ${oil}${litres === '' ? '' : `, ${litres} to go in`}, through a 10 µm filter cart into a clean tank. Never a second grade on top of the first.`,
      'Open the suction valve where there is one. Bleed the pump at a loosened joint on the suction side: a low-pressure joint, never one after the pump.',
      'Where it can be done, crank with the fuel cut until clean oil shows.',
    ],
  },
  start: {
    heading: 'First start, unloaded',
    note: ({ reach }: KindWords) => `Nobody within reach of ${reach}. One hand on the stop.`,
    steps: ({ strokes, lowered }: KindWords, running: string) => [
      'Relief valves that were replaced or altered are screwed down. Controls in neutral, attachment off.',
      'Start and idle for some minutes, hands off the controls. A pump that howls or foams is stopped at once: it draws air.',
      'Top up as the level falls. Wait until the foam is gone.',
      `${strokes} Then ${running} gently forward and back: each must turn the way of its control.`,
      `Raise the engine speed in steps. Check the level again, ${lowered}.`,
    ],
  },
  relief: {
    heading: 'Relief valves',
    note: 'Above the book’s figure is never “a bit more”: hoses, motors and frame were chosen for it.',
    steps: (cool: string, rpm: string) => [
      `Gauge on the pump’s test port, ${rpm} of the engine, oil at ${cool}.`,
      'Down first, then up to the figure by the gauge, coming from below. Hold it there for seconds, not minutes.',
    ],
    circuit: (circuit: string, setting: string, was: string) =>
      was === '' ? `${capital(circuit)}: ${setting}.` : `${capital(circuit)}: ${setting}; it was ${was}.`,
    close: 'Lock the nut, seal it, write down what the gauge says.',
    readOnly:
      'Nothing is set here: they are read. What is more than 3 % off is written down and told before it is touched.',
  },
  leaks: {
    heading: 'Look for leaks',
    note: '',
    steps: [
      'With cardboard and a lamp, at arm’s length, goggles on: never with a hand. Gloves are no armour against a jet.',
      'Idle first, then at relief for a few seconds. What weeps is tightened with the engine off and the pressure gone, as before the work.',
      'After the first warm-up and when all is cold again, go over every joint that was opened.',
    ],
  },

  record: {
    heading: 'Commissioning record',
    note: 'Acceptance figures are common practice, no source, but for those that say “our forecast”. A reading that is not accepted sends the machine back to the bench, not out of the gate.',
    reading: 'Reading',
    accepted: 'Accepted when',
    found: 'Found',
    ok: 'OK',
    noted: 'written down',
    oilStart: 'Oil: grade, lot; temperature at the start',
    air: 'Air temperature',
    idle: 'Engine speed, no load, and at relief',
    idleOk: 'falls by no more than 10 % at relief',
    idleRepaired: 'no load: the engine maker’s figure, not above; falls by no more than 10 % at relief',
    relief: (circuit: string) => `Relief pressure, ${circuit}`,
    reliefOk: (setting: string) => `${setting} ± 3 %`,
    inlet: 'Pressure at the pump inlet, cold and warm',
    inletOk: (limit: string) => `no lower than ${limit}`,
    flow: (low: string, high: string) => `Pump flow, each section, at ${low}, ${high} and working pressure`,
    flowOk: (low: string, high: string) => `loses no more than 10 % from ${low} to ${high}`,
    travel: (course: string) => `Travel, ${course} on the level, three runs each way: seconds`,
    travelOk: (speeds: string, times: string) => `our forecast: ${speeds}, that is ${times}`,
    travelAbout: (speed: string, time: string) => `our forecast: about ${speed}, ${time}`,
    sides: 'Left track against right: seconds for three turns each, raised and blocked',
    sidesOk: 'within 5 %',
    drift: (course: string) => `Drift over ${course}`,
    driftOk: (limit: string) => `${limit} at most`,
    pressure: 'Pressure while travelling on the level; return pressure',
    drain: 'Case drain of each motor, where there is one',
    drainOk: 'both alike, written down',
    oil: 'Oil temperature after 60 min of the day’s work, and air',
    oilOk: (limit: string, air: string) =>
      `steady, ${limit} at most in air of ${air}, or as much less as the air is cooler`,
    oilForecast: (settled: string) => `our forecast: settles at about ${settled}`,
    fan: 'Fan switches on and off at',
    charge: 'Charging voltage, everything switched on',
    chargeOk: 'more than 13.5 V',
    attachment: (pressure: string) =>
      `Flow at the attachment’s couplers${pressure === '' ? '' : `, the pump at ${pressure}`}`,
    attachmentOk: (flow: string) => `our forecast: ${flow}`,
    brake: `Holds by itself on a slope of ${BRAKE_SLOPE}, engine off, 5 min, both ways, nobody below`,
    brakeOk: 'does not creep',
    stop: 'Stopping distance from top speed',
    stopOk: 'no longer than agreed with the maker; written down',
    armOk: 'as before',
    leak: 'Leaks at relief, by cardboard',
    leakOk: 'none',
    papers: 'Decals, note in the manual, photographs at the same angles as before',
    deviations: 'Deviations and why',
    signed: 'Technician',
    second: 'Checked by',
    signDate: 'Date',
  },

  later: {
    heading: 'And later',
    ten: 'After 10 hours',
    tenSteps: [
      'Call the customer: noise, leaks, heat, anything new.',
      'Cold: every joint that was opened, bolts of pump and motors.',
      'Oil level and oil temperature after work.',
    ],
    fifty: 'After 50 hours',
    fiftySteps: [
      'Change the filter element; take an oil sample.',
      'Repeat the timed run, at the same oil temperature and engine speed as now.',
      'Write what it does beside what we said: it makes the next forecast better.',
    ],
    done: 'Done on, by',
  },

  readings: {
    heading: 'Readings',
    note: 'Three of each, warm oil, the same gauge and the same course each time. Written down as they are, also where they do not fit.',
    how: 'How',
    list: {
      oilStart: 'thermometer in the tank, beside the return',
      air: 'in the shade',
      idle: 'tachometer; controls at rest, then at relief',
      relief: 'gauge at the test port, control at the stop, seconds only',
      inlet: 'gauge in the suction line, at the pump',
      flow: 'meter after the pump, load valve closed slowly',
      travel: 'with a run-up, full engine speed, oil temperature noted',
      sides: 'each side alone; chocks and stands, nobody near',
      drift: 'against a stretched line',
      pressure: 'gauges before and after the valve',
      drain: 'measuring jug, one minute, oil cooled down',
      oil: 'thermometer in the tank, air in the shade beside it',
    },
  },

  measure: {
    heading: 'Measure first',
    lead: 'No parts yet. The readings below are taken with warm oil, three times each, and written down as they are.',
    why: 'Why',
    start: {
      heading: 'Getting at the readings',
      note: '',
      steps: [
        'Gauges and meter go in with the engine off and the pressure gone. Hoses of the meter rated for the relief setting, and tied down.',
        'Stand clear of the test hoses while the engine runs. The load valve of the meter is open at the start and never shut at full speed.',
      ],
    },
  },
} as const
