package form

// jobFields are what a job is known by in the list of jobs and on its sheet.
// Dates are as a page's date control writes them: "2026-03-09". Words take three
// bytes for each character that their controls take.
const jobFields = `
590 engine   words 240
591 owner    words 240
592 date.in  words 20
593 date.out words 20
594 notes    words 6000
595 archived tick
`
