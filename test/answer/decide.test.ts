/** The closed list of reasons (methods, "The answer"): each code where it just holds and where it just does not. */
import { describe, expect, test } from 'vitest'
import { decide } from '../../src/answer/decide.ts'
import { isProtecting, type OptionFacts } from '../../src/answer/facts.ts'
import { cost, evaluation, facts, finding, gain, point } from './facts.ts'

const codes = (over: Partial<OptionFacts>) => decide(facts(over)).reasons.map(({ code }) => code)
const answer = (over: Partial<OptionFacts>) => decide(facts(over)).answer

const after = (over: Parameters<typeof evaluation>[0], machine = facts().after.machine): Partial<OptionFacts> => ({
  after: { machine, evaluation: evaluation({ travel: { level: point({ speedKmh: 2.6 }) }, ...over }) },
})

describe('a fine option', () => {
  test('is recommended on the one condition that brakes are tested at the new speed', () => {
    const { answer, reasons, conditions } = decide(facts())
    expect({ answer, reasons }).toEqual({ answer: 'conditions', reasons: [] })
    expect(conditions).toHaveLength(1)
    expect(conditions[0]).toMatch(/brakes/iu)
  })

  test('that changes no speed is simply recommended', () => {
    const cooler = { machine: facts().after.machine, evaluation: evaluation({ heat: { steadyOilC: 50 } }) }
    const wants = { travelSpeed: null, attachment: null, oilBelow: null }
    expect(decide(facts({ after: cooler, wants })).answer).toBe('recommend')
  })
})

describe('declining reasons', () => {
  test('engine-power: a stop, not a watch, and not one that was there before', () => {
    const power = (over: object) => after({ findings: [finding('engine-power', { value: 10, limit: 8, ...over })] })
    expect(codes(power({ severity: 'stop' }))).toEqual(['engine-power'])
    expect(answer(power({ severity: 'stop' }))).toBe('decline')
    expect(codes(power({ severity: 'watch' }))).toEqual([])
    expect(codes(power({ severity: 'stop', existing: true }))).toEqual([])
  })

  test('no-part', () => {
    const { reasons } = decide(facts({ missing: ['the swivel', 'the pump'] }))
    expect(reasons).toEqual([
      {
        code: 'no-part',
        text: 'No part is to be had for the swivel and the pump, and it cannot be done without.',
      },
    ])
  })

  describe('not-worth-it where no travel speed is wanted', () => {
    const wants = { travelSpeed: null, attachment: null, oilBelow: 80 }
    const judged = (over: Parameters<typeof evaluation>[0], was: Parameters<typeof evaluation>[0] = {}) => {
      const { machine } = facts().after
      const sides = {
        before: { machine, evaluation: evaluation(was) },
        after: { machine, evaluation: evaluation(over) },
      }
      return decide(facts({ ...sides, wants }))
    }
    const slower = { travel: { level: point({ speedKmh: 1.8 }) } }
    const hotter = { heat: { steadyOilC: 64 } }
    // Each within its limits: 1.8 km/h in place of 2, 64 °C in place of 58, both more than 2 % worse.
    test('what only makes things worse, though within every limit, is declined and says what gets worse', () => {
      const { answer, reasons } = judged({ ...slower, ...hotter })
      expect(answer).toBe('decline')
      expect(reasons).toEqual([
        {
          code: 'not-worth-it',
          text: 'Nothing that we work out for it gets better, and it drives slower and the oil gets hotter.',
        },
      ])
      expect(judged({ heat: { steadyOilC: null } }).answer).toBe('decline')
      expect(judged({ findings: [finding('line-velocity', { severity: 'watch' })] }).answer).toBe('decline')
    })
    test('one figure that gets better by more than 2 % is reason enough, one that gets better by less is none', () => {
      const pulls = (newtons: number) => ({ level: point({ speedKmh: 1.8, tractiveForceN: newtons }) })
      // 5500 N is what it pulls before: 5640 is 2.5 % more, 5590 is 1.6 %.
      expect(judged({ travel: pulls(5640), ...hotter }).answer).toBe('recommend')
      expect(judged({ travel: pulls(5590), ...hotter }).answer).toBe('decline')
      const past = (value: number) => [finding('line-velocity', { value, limit: 6, severity: 'watch' })]
      expect(judged({ ...slower, findings: past(6.2) }, { findings: past(7) }).answer).toBe('recommend')
      expect(judged({ ...slower, findings: past(7) }, { findings: past(6.2) }).answer).toBe('decline')
      expect(judged({ ...hotter }, { heat: { steadyOilC: null } }).answer).toBe('recommend')
    })
    test('a circuit that was not there is not held against nothing', () => {
      const { machine } = facts().after
      const pump = { pumpFlowLpm: 20, theoreticalFlowLpm: 21, inletPressureBarAbs: 0.9, neutralPressureBar: 8 }
      const circuits = { second: { ...pump, reliefSettingBar: 180, shaftTorqueNm: 30 } }
      const is = { ...evaluation({ ...slower, ...hotter }), circuits }
      expect(
        decide(facts({ wants, before: { machine, evaluation: evaluation() }, after: { machine, evaluation: is } }))
          .answer,
      ).toBe('recommend')
    })
    test('where a speed is wanted the gain in speed decides, as before', () => {
      expect(codes({ ...after(slower), gain: gain({ speedRatio: 0.9 }) })).toEqual(['within-error'])
    })
  })

  test('oil-too-hot: severe and hotter than without, or not settling with more heat', () => {
    const severe = (steadyOilC: number | null, kw = 1) =>
      after({ heat: { steadyOilC, risk: 'severe', averageHeatKw: kw } })
    expect(codes(severe(90))).toEqual(['oil-too-hot'])
    const hotBefore = {
      before: { machine: facts().before.machine, evaluation: evaluation({ heat: { steadyOilC: 95, risk: 'severe' } }) },
    }
    expect(codes({ ...severe(90), ...hotBefore })).toEqual([])
    expect(codes(severe(null))).toEqual(['oil-too-hot'])
    const never = {
      before: {
        machine: facts().before.machine,
        evaluation: evaluation({ heat: { steadyOilC: null, risk: 'severe', averageHeatKw: 2 } }),
      },
    }
    expect(codes({ ...severe(null, 2.5), ...never })).toEqual(['oil-too-hot'])
    expect(codes({ ...severe(null, 1.5), ...never })).toEqual([])
    expect(codes(after({ heat: { steadyOilC: 80, risk: 'high' } }))).toEqual([])
  })

  test('oil-too-hot: hotter means into the class, or by more than 2 %: 84 x 1.02 is 85.68', () => {
    const from = (was: object, is: object) =>
      codes({
        ...after({ heat: { risk: 'severe', ...is } }),
        before: { machine: facts().before.machine, evaluation: evaluation({ heat: was }) },
      })
    const severe = { steadyOilC: 84, risk: 'severe' }
    expect(from(severe, { steadyOilC: 85.67 })).toEqual([])
    expect(from(severe, { steadyOilC: 85.69 })).toEqual(['oil-too-hot'])
    expect(from({ steadyOilC: 81.9, risk: 'high' }, { steadyOilC: 82.1 })).toEqual(['oil-too-hot'])
  })

  test('braking-or-slope: no holding brake, or no counterbalance above 15 %, and only where it gets faster', () => {
    const brakes = (holding: boolean, counterbalance: boolean) => ({
      ...facts().after.machine,
      brakes: { holding, counterbalance },
    })
    const at = (grade: number) => ({ site: { ...facts().site, steepestGrade: grade } })
    expect(codes({ ...after({}, brakes(false, true)) })).toEqual(['braking-or-slope'])
    expect(codes({ ...after({}, brakes(true, false)), ...at(0.2) })).toEqual(['braking-or-slope'])
    expect(codes({ ...after({}, brakes(true, false)), ...at(0.15) })).toEqual([])
    const same = { after: { machine: brakes(false, false), evaluation: evaluation() }, gain: gain({ speedRatio: 1.2 }) }
    expect(codes(same)).toEqual([])
  })

  test('pull-lost: a turn or a grade that was possible no longer is', () => {
    const weak = point({ tractiveForceN: 4300, neededForceN: 4400 })
    expect(codes(after({ travel: { level: point({ speedKmh: 2.6 }), turn: weak } }))).toEqual(['pull-lost'])
    const stalled = point({ stalled: true, speedKmh: 0, neededForceN: 2700 })
    expect(codes(after({ travel: { level: point({ speedKmh: 2.6 }), grade: stalled } }))).toEqual(['pull-lost'])
    const before = { before: { machine: facts().before.machine, evaluation: evaluation({ travel: { turn: weak } }) } }
    expect(codes({ ...after({ travel: { level: point({ speedKmh: 2.6 }), turn: weak } }), ...before })).toEqual([])
  })

  test('governor: rated speed raised, or the engine touched', () => {
    const { machine } = facts().after
    const faster = { ...machine, engine: { ...machine.engine, ratedSpeed: machine.engine.ratedSpeed * 1.05 } }
    expect(codes(after({}, faster))).toEqual(['governor'])
    expect(codes({ changes: { engine: { 'net-power': '10 kW' } } })).toEqual(['governor'])
    expect(codes({ changes: { engine: { 'spare-current': '12 A' } } })).toEqual([])
  })

  test('within-error: a gain under 10 %, where a speed is wanted', () => {
    const small = { gain: gain({ speedRatio: 1.099 }) }
    expect(codes(small)).toEqual(['within-error'])
    expect(codes({ gain: gain({ speedRatio: 1.1 }) })).toEqual([])
    expect(codes({ ...small, wants: { travelSpeed: null, attachment: null, oilBelow: 70 } })).toEqual([])
  })

  test('within-error: a machine that stands before and after gains nothing; one that moves afterwards gains all of it', () => {
    const standing = point({ speedKmh: 0, stalled: true, limitedBy: 'relief' })
    const from = (speedKmh: number) => ({
      before: { machine: facts().before.machine, evaluation: evaluation({ travel: { level: standing } }) },
      ...after({ travel: { level: speedKmh === 0 ? standing : point({ speedKmh }) } }),
      gain: gain({ speedKmh, speedRatio: null, paybackYears: null }),
    })
    expect(codes(from(0))).toEqual(['within-error'])
    expect(answer(from(0))).toBe('decline')
    expect(codes(from(1))).toEqual([])
    // The star of the method: held only where a travel speed is wanted.
    expect(codes({ ...from(0), wants: { travelSpeed: null, attachment: null, oilBelow: 70 } })).not.toContain(
      'within-error',
    )
  })

  test('not-worth-it: payback, share of the value, or a better way for less', () => {
    expect(codes({ gain: gain({ paybackYears: 2.01 }) })).toEqual(['not-worth-it'])
    expect(codes({ gain: gain({ paybackYears: 2 }) })).toEqual([])
    // 40 % of a machine worth 7400 is 2960.
    expect(codes({ cost: cost(2961) })).toEqual(['not-worth-it'])
    expect(codes({ cost: cost(2960) })).toEqual([])
    // What has no price yet comes on top of both.
    const said = (over: Partial<OptionFacts>) => decide(facts(over)).reasons.map(({ text }) => text)
    const open = (likely: number) => ({ ...cost(likely), unpriced: ['Two-speed valve'] })
    const slow = gain({ paybackYears: 2.4 })
    expect(said({ gain: slow })).toEqual(['It would take 2.4 seasons to earn its price.'])
    expect(said({ gain: slow, cost: open(1500) })).toEqual(['It would take at least 2.4 seasons to earn its price.'])
    // 3700 of 7400.
    expect(said({ cost: cost(3700) })).toEqual(['It would cost 50 % of what the machine is worth.'])
    expect(said({ cost: open(3700) })).toEqual(['It would cost at least 50 % of what the machine is worth.'])
    // 2.4 minutes a trip, 8 trips a day: 19.2 minutes a day.
    const way = (minutes: number, price: number) => ({
      alternatives: [{ name: 'Nearer', saves: minutes * 60, cost: price }],
    })
    expect(codes(way(20, 100))).toEqual(['not-worth-it'])
    expect(codes(way(19, 100))).toEqual([])
    expect(codes(way(20, 1600))).toEqual([])
  })
})

// No code of the method holds for it by its letter; `not-worth-it` is what it gives a protecting option that helps nothing.
describe('a way that changes nothing, where no travel speed is wanted', () => {
  const wants = { travelSpeed: null, attachment: null, oilBelow: null }
  const becomes = (over: Parameters<typeof evaluation>[0], more: Partial<OptionFacts> = {}) =>
    facts({ after: { machine: facts().after.machine, evaluation: evaluation(over) }, wants, ...more })
  const same = becomes({})

  test('is declined as not worth it, and says why', () => {
    const { answer, reasons } = decide(same)
    expect(answer).toBe('decline')
    expect(reasons.map(({ code }) => code)).toEqual(['not-worth-it'])
    expect(reasons[0]?.text).toMatch(/^Nothing .* changes/u)
  })

  test('compared with the repaired machine where a fault is open', () => {
    const faults = [{ component: 'circuits.main.pump', text: 'worn' }]
    const { answer, reasons } = decide({ ...same, faults })
    expect(answer).toBe('decline')
    expect(reasons.map(({ text }) => text).join(' ')).toMatch(/Beyond the repair nothing/u)
  })

  // A change is one from 2 % on (method, "Findings"): 2 km/h to 2.04, 58 °C to 56.84.
  test('a speed or a temperature counts from 2 % on, a finding from its severity on', () => {
    const codesOf = (over: Parameters<typeof evaluation>[0]) => decide(becomes(over)).reasons.map(({ code }) => code)
    expect(codesOf({ travel: { level: point({ speedKmh: 2.039 }) } })).toEqual(['not-worth-it'])
    expect(codesOf({ travel: { level: point({ speedKmh: 2.042 }) } })).toEqual([])
    expect(codesOf({ heat: { steadyOilC: 57 } })).toEqual(['not-worth-it'])
    expect(codesOf({ heat: { steadyOilC: 56 } })).toEqual([])
    const from = (severity: 'ok' | 'watch') => evaluation({ findings: [finding('valve-flow', { severity })] })
    const judged = (is: 'ok' | 'watch', was: 'ok' | 'watch') =>
      decide(
        facts({
          wants,
          before: { machine: facts().before.machine, evaluation: from(was) },
          after: { machine: facts().after.machine, evaluation: from(is) },
        }),
      ).answer
    expect(judged('ok', 'watch')).toBe('recommend')
    expect(judged('watch', 'watch')).toBe('decline')
  })

  test('a machine that stood and now moves, and oil that now settles, are changes', () => {
    const before = (over: Parameters<typeof evaluation>[0]) => ({
      before: { machine: facts().before.machine, evaluation: evaluation(over) },
    })
    const moves = becomes({}, before({ travel: { level: point({ speedKmh: 0, stalled: true }) } }))
    expect(decide(moves).reasons).toEqual([])
    const settles = becomes({}, before({ heat: { steadyOilC: null, risk: 'severe' } }))
    expect(decide(settles).reasons).toEqual([])
  })
})

describe('conditions', () => {
  const held = (over: Partial<OptionFacts>) => decide(facts(over))

  test('fault-first, not against a protecting option', () => {
    const faults = [{ component: 'circuits.main.pump', text: 'worn' }]
    expect(codes({ faults })).toEqual(['fault-first'])
    expect(held({ faults }).answer).toBe('conditions')
    expect(codes({ faults, protecting: true, changes: { filter: { part: 'f' } } })).not.toContain('fault-first')
  })

  test('speed-class: more than 10 % above the maker, or past 20 km/h', () => {
    const speed = (kmh: number) => after({ travel: { level: point({ speedKmh: kmh }) } })
    const maker = (kmh: number | null) => ({
      ...facts().after.machine,
      designTravelSpeed: kmh === null ? null : kmh / 3.6,
    })
    expect(codes({ ...after({ travel: { level: point({ speedKmh: 2.65 }) } }, maker(2.4)) })).toEqual(['speed-class'])
    expect(codes({ ...after({ travel: { level: point({ speedKmh: 2.63 }) } }, maker(2.4)) })).toEqual([])
    expect(codes({ ...after({ travel: { level: point({ speedKmh: 21 }) } }, maker(null)) })).toEqual(['speed-class'])
    expect(codes({ ...speed(3.5) })).toEqual([])
  })

  test('maker-consent: a changed speed without it', () => {
    const status = { ...facts().status, makerConsent: false }
    expect(codes({ status })).toEqual(['maker-consent'])
    const same = {
      machine: facts().after.machine,
      evaluation: evaluation({ travel: { level: point({ speedKmh: 2.03 }) } }),
    }
    expect(codes({ status, after: same })).toEqual([])
  })

  test('warranty-lease-hire and open-defects', () => {
    expect(codes({ status: { ...facts().status, leased: true } })).toEqual(['warranty-lease-hire'])
    const said = (over: object) => decide(facts({ status: { ...facts().status, ...over } })).reasons[0]?.text
    expect(said({ warranty: true })).toBe(
      'The machine is under warranty: whoever gives the warranty has to agree in writing.',
    )
    expect(said({ leased: true, hiredOut: true })).toBe(
      'The machine is leased and hired out: its owner and whoever hires it out have to agree in writing.',
    )
    expect(codes({ status: { ...facts().status, openDefects: ['seat belt'] } })).toEqual(['open-defects'])
  })

  test('data-missing: nobody has looked at the brake', () => {
    const unread = { ...facts().after.machine, brakes: { holding: null, counterbalance: true } }
    expect(codes(after({}, unread))).toEqual(['data-missing'])
  })
})

describe('protecting options', () => {
  const protect = (was: object, is: object, more: Partial<OptionFacts> = {}): Partial<OptionFacts> => ({
    protecting: true,
    changes: { cooler: { part: 'c' } },
    before: { machine: { ...facts().before.machine, filter: WITH_FILTER }, evaluation: evaluation({ heat: was }) },
    after: { machine: { ...facts().after.machine, filter: WITH_FILTER }, evaluation: evaluation({ heat: is }) },
    ...more,
  })
  const WITH_FILTER = {
    part: null,
    ratedFlow: 1e-3,
    drop: null,
    reference: null,
    fineness: null,
    beta: null,
    bypass: 1.7e5,
  }

  test('hot oil a class cooler is recommended, moderate oil on conditions, cool oil declined', () => {
    expect(answer(protect({ steadyOilC: 88, risk: 'severe' }, { steadyOilC: 78, risk: 'high' }))).toBe('recommend')
    expect(answer(protect({ steadyOilC: 78, risk: 'high' }, { steadyOilC: 74, risk: 'high' }))).toBe('decline')
    expect(answer(protect({ steadyOilC: 66, risk: 'moderate' }, { steadyOilC: 56, risk: 'low' }))).toBe('conditions')
    const cool = decide(facts(protect({ steadyOilC: 55, risk: 'low' }, { steadyOilC: 45, risk: 'low' })))
    expect(cool.answer).toBe('decline')
    expect(cool.reasons.map(({ code }) => code)).toEqual(['not-worth-it'])
  })

  test('one that helps too little does not say that nothing is wrong', () => {
    const said = (over: Partial<OptionFacts>) => decide(facts(over)).reasons.map(({ text }) => text)
    const fine = { steadyOilC: 55, risk: 'low' as const }
    expect(said(protect(fine, fine))).toEqual(['Oil, inlet and cleanliness are within their limits without it.'])
    const hot = { steadyOilC: 78, risk: 'high' as const }
    expect(said(protect(hot, { ...hot, steadyOilC: 74 }))).toEqual([
      'It does too little against what is wrong: the oil gets hot.',
    ])
    const thin = { ...hot, steadyOilC: 68, steadyViscosityCst: 11 }
    expect(said(protect(thin, thin))).toEqual(['It does too little against what is wrong: the oil gets too thin.'])
    const boils = { steadyOilC: null, steadyViscosityCst: null, risk: 'severe' as const }
    const short = [finding('inlet-pressure-cold', { value: 0.3, limit: 0.7, severity: 'change' })]
    const starved = { machine: facts().before.machine, evaluation: evaluation({ heat: boils, findings: short }) }
    expect(starved.machine.filter).toBeNull()
    expect(said({ ...protect({}, {}), before: starved, after: starved })).toEqual([
      'It does too little against what is wrong: the oil does not settle; a pump is short of oil at its inlet; there is no filter.',
    ])
  })

  test('oil too thin is cured at 12 cSt', () => {
    const thin = { steadyOilC: 68, risk: 'high' as const, steadyViscosityCst: 11 }
    expect(answer(protect(thin, { ...thin, steadyOilC: 66, steadyViscosityCst: 12 }))).toBe('recommend')
  })

  test('a filter where there is none', () => {
    const { before, after: is, ...rest } = protect({}, {}) as OptionFacts
    const bare = { machine: { ...before.machine, filter: null }, evaluation: before.evaluation }
    expect(answer({ ...rest, before: bare, after: is })).toBe('recommend')
  })

  test('an inlet whose shortage is halved', () => {
    const inlet = (bar: number) => [finding('inlet-pressure-cold', { value: bar, limit: 0.7, severity: 'change' })]
    const with_ = (was: number, is: number) => ({
      ...protect({}, {}),
      before: {
        machine: { ...facts().before.machine, filter: WITH_FILTER },
        evaluation: evaluation({ findings: inlet(was) }),
      },
      after: {
        machine: { ...facts().after.machine, filter: WITH_FILTER },
        evaluation: evaluation({ findings: inlet(is) }),
      },
    })
    expect(answer(with_(0.3, 0.5))).toBe('recommend')
    expect(answer(with_(0.3, 0.49))).toBe('decline')
  })

  test('what counts as protecting', () => {
    expect(isProtecting({ cooler: { part: 'c' }, filter: { part: 'f' }, fluid: { grade: 'ISO VG 68' } })).toBe(true)
    expect(isProtecting({ circuits: { main: { lines: { suction: { hose: -16 } } } } })).toBe(true)
    expect(isProtecting({ circuits: { main: { lines: { pressure: { hose: -16 } } } } })).toBe(false)
    expect(isProtecting({ cooler: { part: 'c' }, travel: { motor: { part: 'm' } } })).toBe(false)
    expect(isProtecting({})).toBe(false)
  })

  test('a protecting option is never held to speed or payback', () => {
    const slow = protect(
      { steadyOilC: 88, risk: 'severe' },
      { steadyOilC: 60, risk: 'low' },
      { gain: gain({ speedRatio: 1, paybackYears: null }), cost: cost(5000) },
    )
    expect(answer(slow)).toBe('recommend')
  })
})
