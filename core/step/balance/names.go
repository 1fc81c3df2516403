package balance

// fieldGroups are what the names of the step's fields begin with, each before a
// blank: where a job holds any, the sheet takes the answer in.
const fieldGroups = "weight. knife. hole. cylinder. "
