/** Topic 5 of the published checks: lines, couplers, velocities. */
import { columnPressure } from '../../../src/formulas/atmosphere.ts'
import {
  boreForVelocity,
  equivalentLength,
  hoseFrictionFactor,
  lossCoefficientDrop,
  meanVelocity,
  reynolds,
  straightDrop,
} from '../../../src/formulas/line.ts'
import { motorSpeed } from '../../../src/formulas/motor.ts'
import { hydraulicPower, pumpFlow } from '../../../src/formulas/pump.ts'
import { lossCoefficientOf } from '../../../src/formulas/restriction.ts'
import {
  barFromPascals,
  cubicMetresPerRevFromIn3,
  cubicMetresPerSecondFromGpm,
  cubicMetresPerSecondFromLpm,
  feetFromMetres,
  gpmFromCubicMetresPerSecond,
  inchesFromMetres,
  kwFromWatts,
  metresFromFeet,
  metresFromInches,
  metresFromMm,
  mmFromMetres,
  psiFromPascals,
  revsPerSecondFromRpm,
  rpmFromRevsPerSecond,
  squareMetresPerSecondFromCst,
} from '../../../src/units/shop-units.ts'
import { GRAVITY } from '../../../src/units/si.ts'
import type { MetresPerSecond } from '../../../src/units/si.ts'
import type { Expression, Expressions } from '../entry.ts'

/** Feet a second and back: the length's factor. */
const perSecond = (velocity: MetresPerSecond): number => feetFromMetres(Number(velocity))
const feetPerSecond = (feet: number): MetresPerSecond => Number(metresFromFeet(feet))


const WATER = 1000

const hose: Expression = (given) => {
  const bore = metresFromInches(given('D'))
  const velocity = meanVelocity(cubicMetresPerSecondFromGpm(given('Q')), bore)
  const friction = hoseFrictionFactor(reynolds(velocity, bore, squareMetresPerSecondFromCst(given('nu'))))
  const drop = straightDrop(friction, metresFromFeet(given('L')), bore, velocity, given('SG') * WATER)
  return { dp: psiFromPascals(drop) }
}

const coupler: Expression = (given) => {
  const velocity = meanVelocity(cubicMetresPerSecondFromLpm(given('Q')), metresFromMm(given('size')))
  return { K: lossCoefficientOf(given('dp') * 1000, velocity, given('rho')) }
}

const feetASecond: Expression = (given) => ({
  v: perSecond(meanVelocity(cubicMetresPerSecondFromGpm(given('Q')), metresFromInches(given('D')))),
})

export const lines: Expressions = {
  'ff-churchill-lam': (given) => ({ f: hoseFrictionFactor(given('Re')) }),
  'ln-esp-4-1': (given) => ({
    Re: reynolds(
      feetPerSecond(given('v')),
      metresFromInches(given('D')),
      squareMetresPerSecondFromCst(given('nu')),
    ),
  }),
  'ln-esp-4-4': (given) => {
    const bore = metresFromMm(given('D'))
    const rho = given('gamma') / GRAVITY
    const friction = hoseFrictionFactor(reynolds(given('v'), bore, given('nu')))
    const drop = straightDrop(friction, given('L'), bore, given('v'), rho)
    return { h: drop / columnPressure(rho, 1), dp: barFromPascals(drop) }
  },
  'ln-esp-4-6': (given) => {
    const velocity = meanVelocity(cubicMetresPerSecondFromGpm(given('Q')), metresFromInches(given('D')))
    const rho = given('SG') * WATER
    return { h: feetFromMetres(lossCoefficientDrop(given('K'), velocity, rho) / columnPressure(rho, 1)) }
  },
  'ln-esp-4-8': (given) => {
    const bore = metresFromInches(given('D'))
    const velocity = meanVelocity(cubicMetresPerSecondFromGpm(given('Q')), bore)
    const friction = hoseFrictionFactor(reynolds(velocity, bore, squareMetresPerSecondFromCst(given('nu'))))
    return { Le: feetFromMetres(equivalentLength(given('K'), bore, friction)) }
  },
  'ln-esp-9-5': (given) => {
    // Offset takes the whole stated volumetric loss of pump and of motor.
    const flow = pumpFlow(
      cubicMetresPerRevFromIn3(given('Vp')),
      revsPerSecondFromRpm(given('np')),
      1 - given('evp'),
      0,
      1,
      0,
      1,
    )
    const bore = metresFromInches(given('D'))
    const rho = given('SG') * WATER
    const velocity = meanVelocity(flow, bore)
    const friction = hoseFrictionFactor(reynolds(velocity, bore, squareMetresPerSecondFromCst(given('nu'))))
    const way =
      straightDrop(friction, metresFromFeet(given('L')), bore, velocity, rho) +
      lossCoefficientDrop(given('K'), velocity, rho) +
      columnPressure(rho, metresFromFeet(given('dz')))
    const speed = motorSpeed(flow, cubicMetresPerRevFromIn3(given('Vm')), 1 / given('evm') - 1, 0, 0, 1, 1)
    return {
      Q: gpmFromCubicMetresPerSecond(flow),
      p1: given('p2') + psiFromPascals(way),
      nm: rpmFromRevsPerSecond(speed),
    }
  },
  'ln-cengel-8-1': (given) => {
    const bore = metresFromMm(given('D'))
    const friction = hoseFrictionFactor(reynolds(given('v'), bore, given('mu') / given('rho')))
    const drop = straightDrop(friction, given('L'), bore, given('v'), given('rho'))
    const flow = (given('v') * Math.PI * bore * bore) / 4
    return { dp: drop / 1000, P: kwFromWatts(hydraulicPower(flow, drop)) }
  },
  'ln-crane-7-9': (given) => {
    const bore = metresFromInches(given('D'))
    const velocity = meanVelocity(cubicMetresPerSecondFromGpm(given('Q')), bore)
    return { v: perSecond(velocity), Re: reynolds(velocity, bore, given('mu') / given('rho')) }
  },
  'hose-0.375-3': hose,
  'hose-0.375-8': hose,
  'hose-0.5-4': hose,
  'hose-0.5-5': hose,
  'hose-0.5-20': hose,
  'hose-0.75-10': hose,
  'hose-1-20': hose,
  'coup-14541-6.3': coupler,
  'coup-14541-10': coupler,
  'coup-14541-20': coupler,
  'vel-10gpm-0.75': feetASecond,
  'vel-10gpm-0.625': feetASecond,
  'vel-20lpm': (given) => {
    const at = (velocity: number) => mmFromMetres(boreForVelocity(cubicMetresPerSecondFromLpm(given('Q')), velocity))
    return {
      suction_min: at(1.5),
      suction_max: at(0.5),
      return_min: at(4),
      return_max: at(2),
      press_min: at(10),
      press_max: at(3),
    }
  },
  'vel-100lpm': (given) => ({
    D: mmFromMetres(boreForVelocity(cubicMetresPerSecondFromLpm(given('Q')), given('v'))),
  }),
  'vel-16gpm': (given) => ({
    D: inchesFromMetres(boreForVelocity(cubicMetresPerSecondFromGpm(given('Q')), feetPerSecond(given('v')))),
  }),
  'vel-esp-10-2': (given) => ({ D: mmFromMetres(boreForVelocity(given('Q'), given('v'))) }),
  'vel-esp-3-14': (given) => ({
    v: meanVelocity(cubicMetresPerSecondFromLpm(given('Q')), metresFromMm(given('D'))),
  }),
  'ln-sul-5-5': (given) => {
    const velocity = meanVelocity(cubicMetresPerSecondFromGpm(given('Q')), metresFromInches(given('D')))
    return { dp: psiFromPascals(lossCoefficientDrop(given('K'), velocity, given('SG') * WATER)) }
  },
}

