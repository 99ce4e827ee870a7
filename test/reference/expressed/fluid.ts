/** Topic 4 of the published checks: oil. */
import {
  densityAt,
  dynamicViscosity,
  indexReferences,
  specificHeatAt,
  viscosityAt,
  viscosityIndex,
  waltherConstants,
  waltherConstantsFrom,
} from '../../../src/formulas/fluid.ts'
import { cstFromSquareMetresPerSecond, squareMetresPerSecondFromCst } from '../../../src/units/shop-units.ts'
import type { Expression, Expressions } from '../entry.ts'

/** Density at 15 °C that densityAt assumes; other oils and gravities scale from it. */
const OUR_DENSITY = 870

const index: Expression = (given) => ({
  VI: viscosityIndex(squareMetresPerSecondFromCst(given('U')), squareMetresPerSecondFromCst(given('Y'))) ?? Number.NaN,
})

const interpolated: Expression = (given) => {
  const rho = (oil: number) => (densityAt(oil) * given('rho15')) / OUR_DENSITY
  const kinematic = (mPas: number, oil: number) => (mPas * 1e-3) / rho(oil)
  const constants = waltherConstantsFrom(kinematic(given('eta30'), 30), 30, kinematic(given('eta100'), 100), 100)
  return { eta60: dynamicViscosity(viscosityAt(constants, 60), rho(60)) * 1000 }
}

const graded: Expression = (given) => {
  const constants = waltherConstants(
    squareMetresPerSecondFromCst(given('nu40')),
    squareMetresPerSecondFromCst(given('nu100')),
  )
  return { nu: cstFromSquareMetresPerSecond(viscosityAt(constants, given('T'))) }
}

/** Cragoe falls with the root of the specific gravity. */
const heat: Expression = (given) => ({
  cp: specificHeatAt(given('T')) * Math.sqrt(OUR_DENSITY / 1000 / given('SG')),
})

export const fluid: Expressions = {
  'vi-A': (given) => {
    const references = indexReferences(squareMetresPerSecondFromCst(given('Y')))
    return {
      ...index(given),
      L: cstFromSquareMetresPerSecond(references?.low ?? Number.NaN),
      H: cstFromSquareMetresPerSecond(references?.high ?? Number.NaN),
    }
  },
  'vi-B1': index,
  'vi-B2': index,
  'wal-250': interpolated,
  'wal-45': interpolated,
  'wal-vg46-0': graded,
  'wal-vg46-20': graded,
  'wal-vg46-80': graded,
  'cp-rabie': heat,
  'cp-incropera': heat,
}
