/** The least time in ms of each of some tasks, which take turns: what else the machine does only ever adds to it. */
export function leastTimes(
  tasks: readonly (() => unknown)[],
  { rounds, warmUp = 2 }: { readonly rounds: number; readonly warmUp?: number },
): number[] {
  const times = tasks.map((): number[] => [])
  for (let round = 0; round < rounds + warmUp; round++) {
    tasks.forEach((task, i) => {
      const start = performance.now()
      task()
      if (round >= warmUp) times[i]!.push(performance.now() - start)
    })
  }
  return times.map((each) => Math.min(...each))
}

interface Timed {
  readonly points: number
  readonly count: number
  readonly ms: number
}

/** The powers of points and leaves with which the time grows: least squares on the logarithms. */
export function fitGrowth(rows: readonly Timed[]): { readonly points: number; readonly leaves: number } {
  const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / values.length
  const centred = (values: readonly number[]) => values.map((v) => v - mean(values))
  const [p, n, t] = [
    centred(rows.map(({ points }) => Math.log(points))),
    centred(rows.map(({ count }) => Math.log(count))),
    centred(rows.map(({ ms }) => Math.log(ms))),
  ]
  const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, v, i) => sum + v * b[i]!, 0)
  const whole = dot(p, p) * dot(n, n) - dot(p, n) ** 2
  return {
    points: (dot(t, p) * dot(n, n) - dot(t, n) * dot(p, n)) / whole,
    leaves: (dot(t, n) * dot(p, p) - dot(t, p) * dot(p, n)) / whole,
  }
}
