import type { Grades } from '../../grading/grades.ts'

export const gradesJson = ({ title, learners, questions, teach }: Grades): string =>
  `${JSON.stringify({ grades: 1, title, learners: learners.map(({ pictures: _, ...learner }) => learner), questions, teach }, null, 1)}\n`
