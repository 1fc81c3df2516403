package balance

// fieldGroups are what the names of the step's fields begin with, each before a
// blank: where a job holds any, the sheet takes the answer in.
const fieldGroups = "weight. knife. hole. cylinder. "

// places are where a reading on the knife-edges is of.
var places = [...]string{"whole", "drive", "timing"}
