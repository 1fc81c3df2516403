package fitting

// gradeNames are what the answers call a grade.
var gradeNames = [...]string{unmeasured: "not measured", sound: "right", asked: "not known", doubtful: "too close to call", amiss: "wrong"}
