import { describe, expect, it } from 'vitest'
import { JOBS, type Job } from '../../src/consequences/uses.ts'
import { bookedJobs, containments } from '../../src/costing/contained-jobs.ts'

const booked = (...jobs: readonly (readonly [Job, number])[]) =>
  bookedJobs(jobs.map(([job, quantity]) => ({ component: '', job, quantity }))).map(({ job, quantity }) => [
    job,
    quantity,
  ])

const TEST = ['test and record', 1]

describe('bookedJobs', () => {
  it('a clean reservoir contains the oil change', () => {
    expect(booked(['change oil', 1], ['clean reservoir', 1])).toEqual([['clean reservoir', 1], TEST])
  })

  it('a new relief contains setting that one, not another', () => {
    expect(booked(['replace relief', 1], ['set relief', 1])).toEqual([['replace relief', 1], TEST])
    expect(booked(['replace relief', 1], ['set relief', 2])).toEqual([['replace relief', 1], ['set relief', 1], TEST])
  })

  it('two motors contain the sprockets of two sides', () => {
    expect(booked(['replace motor', 2], ['replace sprocket', 2])).toEqual([['replace motor', 2], TEST])
    expect(booked(['replace motor', 1], ['replace sprocket', 2])).toEqual([
      ['replace motor', 1],
      ['replace sprocket', 1],
      TEST,
    ])
  })

  it('a pump swap contains no coupling: that adds 1.5 to 4 h to it', () => {
    expect(booked(['replace pump', 1], ['replace coupling', 1])).toEqual([
      ['replace pump', 1],
      ['replace coupling', 1],
      TEST,
    ])
  })

  it('hoses share nothing', () => {
    expect(booked(['replace hose', 1], ['replace hose', 4])).toEqual([['replace hose', 5], TEST])
  })

  it('the oil is changed once, however often it is asked for', () => {
    expect(booked(['change oil', 1], ['change oil', 1])).toEqual([['change oil', 1], TEST])
  })

  it('is tested and recorded once, and not at all where nothing is done', () => {
    expect(booked(['test and record', 3])).toEqual([TEST])
    expect(booked()).toEqual([])
  })

  it('knows only jobs of the closed list, and no job that contains itself', () => {
    for (const { job, contains } of containments) {
      expect(JOBS).toContain(job)
      expect(JOBS).toContain(contains)
      expect(job).not.toBe(contains)
    }
  })
})
