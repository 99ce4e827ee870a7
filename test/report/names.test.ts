import { describe, expect, it } from 'vitest'
import { componentName, pathName, plainName } from '../../src/report/names.ts'

describe('componentName', () => {
  it.each([
    ['circuits.main.pump', 'pump'],
    ['circuits.left.pump', 'left pump'],
    ['circuits.arms.relief', 'relief valve of the arms circuit'],
    ['circuits.main.lines.suction', 'suction hose'],
    ['circuits.arms.auxiliary.lines.out', 'attachment hose out of the arms circuit'],
    ['circuits.arms', 'hydraulic circuit of the arms circuit'],
    ['travel.motor', 'travel motors'],
    ['travel.lines.swivel-to-motor', 'travel hoses (swivel to motor)'],
    ['travel', 'travel drive'],
    ['cooler', 'oil cooler'],
    ['lamp-set', 'lamp set'],
  ])('%s', (id, name) => expect(componentName(id)).toBe(name))
})

describe('plainName', () => {
  it('explains a trade word', () => expect(plainName('travel.swivel').gloss).toContain('turning joint'))
  it('explains nothing that explains itself', () => expect(plainName('engine').gloss).toBe(''))
})

describe('pathName', () => {
  it.each([
    ['circuits.main.pump.min-inlet-pressure', 'Pump: lowest pressure at its inlet'],
    ['engine.governor-droop', 'Engine: speed lost under load'],
    ['travel.swivel.bore', 'Swivel: bore'],
    ['other-cooling-surface', 'Other cooling surface'],
    ['site.ground.rolling-resistance', 'Site: ground, rolling resistance'],
  ])('%s', (path, name) => expect(pathName(path)).toBe(name))
})
